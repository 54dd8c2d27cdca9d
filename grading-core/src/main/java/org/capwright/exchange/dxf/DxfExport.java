package org.capwright.exchange.dxf;

import java.time.LocalDate;
import java.util.Optional;
import org.capwright.grade.Alignment;
import org.capwright.pattern.PatternSet;

/**
 * Writes a pattern as DXF R12 (AC1009): one drawing unit is one millimetre, y up, coordinates with up to six decimals, lines ended by CR LF, 7-bit ASCII with
 * other letters as {@code \U+XXXX}, text of more than 255 characters cut off. Only entities of R12 are used; curves are polylines. The same pattern gives the same bytes;
 * no clock is read, a creation date stands in the file only if it is given.
 *
 * <p>Layer and text conventions after ASTM D6673, from memory, no claim of conformity: 1 boundary (cut line) and system text, 2 turn points, 3 curve points, 4
 * notches, 6 mirror line (fold), 7 grain line, 8 internal lines, 14 sew line (net line), 15 annotation. A double notch is two points on layer 4, 6 mm apart along the cut
 * line.
 */
public final class DxfExport {

    private DxfExport() {}

    /**
     * The nest: all sizes of each piece over one another, the pieces side by side. Each size has layers of its own that name it ({@code CUT-40}, {@code NET-40},
     * {@code MARKS-40}), a colour, its number on its cut line and a line in the legend beside the piece; the net line is dashed.
     *
     * @param set the pieces of all sizes
     * @param alignment the point on which the sizes lie over one another
     * @return a whole DXF file
     */
    public static byte[] nest(PatternSet set, Alignment alignment) {
        return NestDrawing.of(set, alignment, Optional.empty());
    }

    /**
     * The nest with its date of creation.
     *
     * @param set the pieces of all sizes
     * @param alignment the point on which the sizes lie over one another
     * @param created written into the file
     * @return a whole DXF file
     */
    public static byte[] nest(PatternSet set, Alignment alignment, LocalDate created) {
        return NestDrawing.of(set, alignment, Optional.of(created));
    }

    /**
     * One block per piece and size, in the coordinates of the draft (origin at fold line x bicep line), each inserted once: a row per piece, a column per size.
     *
     * @param set the pieces of all sizes
     * @return a whole DXF file
     */
    public static byte[] blocks(PatternSet set) {
        return BlockDrawing.of(set, Optional.empty());
    }

    /**
     * One block per piece and size, with the date of creation.
     *
     * @param set the pieces of all sizes
     * @param created written into the file
     * @return a whole DXF file
     */
    public static byte[] blocks(PatternSet set, LocalDate created) {
        return BlockDrawing.of(set, Optional.of(created));
    }

    /**
     * The base size for rooms that grade by points: one block per piece, with the number of its grade rule ({@code # n}) at every grade point. The rules stand in the table
     * that {@link RuleTable#of(PatternSet)} gives; {@link PointGrading} gives both at the cost of one.
     *
     * @param set the pieces of all sizes
     * @return a whole DXF file
     */
    public static byte[] graded(PatternSet set) {
        return PointGrading.of(set).drawing();
    }
}
