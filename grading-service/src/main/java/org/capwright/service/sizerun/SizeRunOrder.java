package org.capwright.service.sizerun;

import java.util.List;
import java.util.Optional;
import org.capwright.draft.SleeveStyle;
import org.capwright.grade.Alignment;
import org.capwright.grade.GradeRule;
import org.capwright.grade.SizeRun;
import org.capwright.measure.Dimensions;
import org.capwright.measure.Rounding;
import org.capwright.measure.Unit;
import org.capwright.pattern.PatternOptions;
import org.capwright.tables.SizeTable;

/**
 * A request for a size run, read and found consistent; lengths in millimetres.
 *
 * @param name name of the style
 * @param revision revision of the style
 * @param unit unit of the answer
 * @param sizes names of the sizes, smallest first
 * @param base position of the base size
 * @param style what is the same in every size
 * @param dimensions dimensions of the base size
 * @param rules grade rules
 * @param pleats the pleats asked for
 * @param sizeTable table to compare the jumps with
 * @param options allowances and corners
 * @param alignment point on which the nest lies
 * @param layout how a DXF file is laid out
 * @param rounding grid of the shown values
 */
public record SizeRunOrder(
        String name,
        String revision,
        Unit unit,
        List<String> sizes,
        int base,
        SleeveStyle style,
        Dimensions dimensions,
        List<GradeRule> rules,
        Optional<PleatOrder> pleats,
        Optional<SizeTable> sizeTable,
        PatternOptions options,
        Alignment alignment,
        Layout layout,
        Rounding rounding) {

    /** How a DXF file is laid out. */
    public enum Layout {
        /** All sizes over one another. */
        NEST,
        /** One block per piece and size. */
        BLOCKS
    }

    /**
     * Drafts every size.
     *
     * @return the run
     */
    SizeRun graded() {
        return SizeRun.grade(style, dimensions, sizes, base, rules);
    }
}
