package org.capwright.exchange.dxf;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.capwright.geometry.Point;
import org.capwright.pattern.PatternSet;
import org.capwright.quantity.FileBytes;

/**
 * The grade rule table that goes with the drawing of the base size: how far each kind of point lies in every size from its place in the base size. The
 * deltas are cumulative from the base size, in the axes of the drawing, the origin of the draft (fold line x bicep line) keeping its place. Text conventions after ASTM D6673, from
 * memory, no claim of conformity.
 *
 * @param name name of the table, also stated in the drawing
 * @param sizes labels, smallest first, white space as {@code _}
 * @param sampleSize label of the base size
 * @param rules rules, numbered from 1
 */
public record RuleTable(String name, List<String> sizes, String sampleSize, List<Rule> rules) {

    /** Deltas are given to a ten thousandth of a millimetre. */
    static final double GRID = 1e-4;

    /**
     * One rule.
     *
     * @param number its number, which stands as {@code # n} at every point that moves by it
     * @param deltas millimetres per size, smallest first; zero for the base size
     */
    public record Rule(int number, List<Point> deltas) {}

    /**
     * The rules of all pieces of a pattern.
     *
     * @param set the pieces of all sizes
     * @return the table for the drawing that {@link DxfExport#graded(PatternSet)} gives
     */
    public static RuleTable of(PatternSet set) {
        return PointGrading.of(set).rules();
    }

    /**
     * The table as a file.
     *
     * @return 7-bit ASCII, lines ended by CR LF
     */
    public byte[] bytes() {
        return bytes(Optional.empty());
    }

    /**
     * The table as a file with its date of creation.
     *
     * @param created written into the file
     * @return 7-bit ASCII, lines ended by CR LF
     */
    public byte[] bytes(LocalDate created) {
        return bytes(Optional.of(created));
    }

    private byte[] bytes(Optional<LocalDate> created) {
        FileBytes out = new FileBytes();
        created.ifPresent(date -> line(out, "CREATION DATE: " + date));
        line(out, "AUTHOR: CAPWRIGHT");
        line(out, "UNITS: METRIC");
        line(out, "GRADE RULE TABLE: " + name);
        if (sizes.stream().allMatch(size -> size.chars().allMatch(c -> c >= '0' && c <= '9'))) {
            line(out, "NUMERIC SIZE LIST");
        }
        line(out, "SIZE LIST: " + String.join(" ", sizes));
        line(out, "SAMPLE SIZE: " + sampleSize);
        for (Rule rule : rules) {
            out.put("RULE: DELTA ");
            out.whole(rule.number);
            out.put("\r\n");
            for (Point delta : rule.deltas) {
                out.put(delta.x(), 1, DxfWriter.DECIMALS);
                out.put(',');
                out.put(delta.y(), 1, DxfWriter.DECIMALS);
                out.put("\r\n");
            }
        }
        line(out, "END");
        return out.all();
    }

    private static void line(FileBytes out, String words) {
        out.put(DxfText.escaped(words));
        out.put("\r\n");
    }
}
