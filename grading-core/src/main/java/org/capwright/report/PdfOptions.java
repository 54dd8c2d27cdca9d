package org.capwright.report;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.capwright.grade.Alignment;
import org.capwright.lay.Materials;

/**
 * How a pattern is printed. Guaranteed to be immutable.
 *
 * @param paper what it is printed on
 * @param sizes labels of the sizes to print, nested over one another where there are several; empty means every size of the run
 * @param alignment the point on which the sizes of a nest lie over one another
 * @param sewingOrder the steps of sewing, in order, without numbers; may be empty
 * @param cautions what to beware of; may be empty
 * @param materials what to buy, shown on the cover with the lays of the base size; empty where nobody asked
 * @param worn a picture of the sleeve as it is worn, for the cover; empty where nobody sent one
 * @param created the date that the file states; empty for none, so that the same pattern always gives the same bytes
 */
public record PdfOptions(
        Paper paper,
        List<String> sizes,
        Alignment alignment,
        List<String> sewingOrder,
        List<String> cautions,
        Optional<Materials> materials,
        Optional<WornPicture> worn,
        Optional<Instant> created) {

    /**
     * Copies the lists.
     *
     * @param paper what it is printed on
     * @param sizes labels of the sizes to print, nested over one another where there are several; empty means every size of the run
     * @param alignment the point on which the sizes of a nest lie over one another
     * @param sewingOrder the steps of sewing, in order, without numbers; may be empty
     * @param cautions what to beware of; may be empty
     * @param materials what to buy, shown on the cover with the lays of the base size; empty where nobody asked
     * @param worn a picture of the sleeve as it is worn, for the cover; empty where nobody sent one
     * @param created the date that the file states; empty for none, so that the same pattern always gives the same bytes
     */
    public PdfOptions {
        sizes = List.copyOf(sizes);
        sewingOrder = List.copyOf(sewingOrder);
        cautions = List.copyOf(cautions);
    }

    /**
     * All sizes nested on the fold line and the bicep line, without sewing order, cautions or date.
     *
     * @param paper what is printed on
     * @return the options
     */
    public static PdfOptions on(Paper paper) {
        return new PdfOptions(
                paper,
                List.of(),
                Alignment.FOLD_AND_BICEP_LINE,
                List.of(),
                List.of(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty());
    }

    /**
     * These options for some sizes.
     *
     * @param labels labels of sizes; empty for all
     * @return new options
     */
    public PdfOptions withSizes(List<String> labels) {
        return new PdfOptions(paper, labels, alignment, sewingOrder, cautions, materials, worn, created);
    }

    /**
     * These options with another alignment.
     *
     * @param point where the sizes of a nest lie over one another
     * @return new options
     */
    public PdfOptions withAlignment(Alignment point) {
        return new PdfOptions(paper, sizes, point, sewingOrder, cautions, materials, worn, created);
    }

    /**
     * These options with words for the one who sews.
     *
     * @param steps the steps of sewing, in order
     * @param warnings what to beware of
     * @return new options
     */
    public PdfOptions withSewing(List<String> steps, List<String> warnings) {
        return new PdfOptions(paper, sizes, alignment, steps, warnings, materials, worn, created);
    }

    /**
     * These options with what to buy.
     *
     * @param needs cloths and trimmings
     * @return new options
     */
    public PdfOptions withMaterials(Materials needs) {
        return new PdfOptions(paper, sizes, alignment, sewingOrder, cautions, Optional.of(needs), worn, created);
    }

    /**
     * These options with a picture.
     *
     * @param picture the sleeve as it is worn
     * @return new options
     */
    public PdfOptions withWorn(WornPicture picture) {
        return new PdfOptions(paper, sizes, alignment, sewingOrder, cautions, materials, Optional.of(picture), created);
    }

    /**
     * These options with a date.
     *
     * @param instant the date that the file states
     * @return new options
     */
    public PdfOptions withDate(Instant instant) {
        return new PdfOptions(paper, sizes, alignment, sewingOrder, cautions, materials, worn, Optional.of(instant));
    }
}
