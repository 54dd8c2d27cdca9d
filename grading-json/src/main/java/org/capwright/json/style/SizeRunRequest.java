package org.capwright.json.style;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.capwright.FileFormat;
import org.capwright.GradeRules;
import org.capwright.Pieces;
import org.capwright.SizeRun;
import org.capwright.StructuredSleeve;
import org.capwright.draft.Overlay;
import org.capwright.draft.SleeveStyle;
import org.capwright.grade.Alignment;
import org.capwright.grade.GradeRule;
import org.capwright.grade.GradedSize;
import org.capwright.grade.Sizes;
import org.capwright.json.problem.FoundViolations;
import org.capwright.json.problem.RefusedRequestException;
import org.capwright.json.problem.RequestPlaces;
import org.capwright.measure.Dimensions;
import org.capwright.pattern.PatternOptions;
import org.capwright.pattern.PatternSet;
import org.capwright.quantity.InvalidMeasuresException;
import org.capwright.quantity.Rounding;
import org.capwright.quantity.Unit;
import org.capwright.report.Paper;
import org.capwright.report.WornPicture;
import org.capwright.tables.SizeTable;
import org.capwright.words.Language;
import org.capwright.words.Text;

/**
 * A request for a size run, read and found consistent; lengths in millimetres.
 *
 * @param name name of the style, in the words of whoever named it; where nobody did, in the language
 * @param revision revision of the style
 * @param unit unit of the answer
 * @param sizes names of the sizes, smallest first
 * @param base position of the base size
 * @param style what is the same in every size
 * @param dimensions dimensions of the base size
 * @param rules grade rules
 * @param sizeTable table to compare the jumps with
 * @param options allowances and corners
 * @param alignment point on which the nest lies
 * @param layout how a DXF file is laid out
 * @param paper what a PDF is printed on
 * @param plotterWidth width of the roll of a pen plotter, mm, if one was stated
 * @param printed sizes that are printed; empty for all
 * @param materials what to reckon of cloth and trimming, if it was asked for
 * @param rounding grid of the shown values, if one was asked for
 * @param worn a picture of the sleeve as it is worn, if one was sent
 * @param language what is said beside the figures
 */
public record SizeRunRequest(
        Text name,
        String revision,
        Unit unit,
        List<String> sizes,
        int base,
        SleeveStyle style,
        Dimensions dimensions,
        List<GradeRule> rules,
        Optional<SizeTable> sizeTable,
        PatternOptions options,
        Alignment alignment,
        Layout layout,
        Paper paper,
        OptionalDouble plotterWidth,
        List<String> printed,
        Optional<MaterialRequest> materials,
        Optional<Rounding> rounding,
        Optional<WornPicture> worn,
        Language language) {

    /** How a DXF file is laid out. */
    public enum Layout {
        /** All sizes over one another. */
        NEST,
        /** One block per piece and size. */
        BLOCKS
    }

    /**
     * The grid of the shown values.
     *
     * @return the one asked for, else 1 mm, 0.1 cm or 1/8 in
     */
    public Rounding shownRounding() {
        return rounding.orElse(new Rounding(unit == Unit.INCH ? 25.4 / 8 : 1));
    }

    /**
     * The form of a DXF file.
     *
     * @return the one that {@code layout} asks for
     */
    public FileFormat dxf() {
        return layout == Layout.BLOCKS ? FileFormat.DXF_BLOCKS : FileFormat.DXF_NEST;
    }

    /**
     * The same order, compared with other bodies.
     *
     * @param bodies a table of bodies
     * @return a new order
     */
    public SizeRunRequest against(SizeTable bodies) {
        return with(Optional.of(bodies), options, language);
    }

    /**
     * The same run in a language.
     *
     * @param other what is said beside the figures
     * @return the same style, sizes and rules
     */
    public SizeRunRequest in(Language other) {
        return with(sizeTable, options, other);
    }

    /**
     * One size of the run by itself, as if it were a run of that size alone; without cloths to lay and a table to compare jumps with. It has as many pleats as in the run, where their number follows from all sizes.
     *
     * @param size a drafted size of the run
     * @return the request for it
     */
    public SizeRunRequest alone(GradedSize size) {
        SleeveStyle inRun = size.draft()
                .overlay()
                .flatMap(Overlay::pleats)
                .map(pleats -> style.counted(pleats.count()))
                .orElse(style);
        return new SizeRunRequest(
                name,
                revision,
                unit,
                List.of(size.label()),
                0,
                inRun,
                size.draft().dimensions(),
                List.of(),
                Optional.empty(),
                options,
                alignment,
                layout,
                paper,
                plotterWidth,
                List.of(),
                Optional.empty(),
                rounding,
                Optional.empty(),
                language);
    }

    /**
     * A run of which all else is as usual.
     *
     * @param title what stands on every file
     * @param style what is the same in every size
     * @param dimensions dimensions of the base size
     * @param rules grade rules
     * @param sizes the sizes
     * @return the run
     */
    public static SizeRunRequest usual(
            PatternSet.Title title, SleeveStyle style, Dimensions dimensions, List<GradeRule> rules, Sizes sizes) {
        return new SizeRunRequest(
                Text.name(title.style()),
                title.revision(),
                title.unit(),
                sizes.labels(),
                sizes.base(),
                style,
                dimensions,
                rules,
                Optional.empty(),
                PatternOptions.usual(),
                Alignment.FOLD_AND_BICEP_LINE,
                Layout.NEST,
                Paper.A4,
                OptionalDouble.empty(),
                List.of(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                title.language());
    }

    /**
     * The same run, its pieces finished otherwise.
     *
     * @param other allowances, corners and marks
     * @return a new run
     */
    public SizeRunRequest finished(PatternOptions other) {
        return with(sizeTable, other, language);
    }

    /**
     * What stands on every file.
     *
     * @return name, revision and unit
     */
    public PatternSet.Title title() {
        return new PatternSet.Title(name.in(language), revision, unit, language);
    }

    /**
     * Drafts every size, by the front door of the engine as any program does.
     *
     * @return the run
     * @throws InvalidMeasuresException if a size cannot be drafted
     */
    public SizeRun graded() {
        return StructuredSleeve.of(title(), style, dimensions)
                .grade(GradeRules.of(rules), new Sizes(sizes, base), options);
    }

    /**
     * Drafts the pieces.
     *
     * @param graded the run of this request
     * @return the pieces
     * @throws InvalidMeasuresException if a piece cannot be made
     */
    public Pieces pieces(SizeRun graded) {
        Pieces pieces =
                graded.pieces(options).alignedOn(alignment).onPaper(paper).printedIn(printed);
        Pieces shown = rounding.map(pieces::roundedTo).orElse(pieces);
        return worn.map(picture -> shown.withWornPicture(picture.png())).orElse(shown);
    }

    /**
     * What the engine refused, at the fields of this request.
     *
     * @param refused what is wrong
     * @return with what would work, in the unit of the request
     */
    public RefusedRequestException refused(InvalidMeasuresException refused) {
        FoundViolations found = new FoundViolations(unit);
        found.addAll(refused.violations(), RequestPlaces.of(style));
        return new RefusedRequestException(found.list());
    }

    private SizeRunRequest with(Optional<SizeTable> bodies, PatternOptions finish, Language words) {
        return new SizeRunRequest(
                name,
                revision,
                unit,
                sizes,
                base,
                style,
                dimensions,
                rules,
                bodies,
                finish,
                alignment,
                layout,
                paper,
                plotterWidth,
                printed,
                materials,
                rounding,
                worn,
                words);
    }
}
