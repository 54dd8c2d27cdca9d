package org.capwright.report;

import java.util.ArrayList;
import java.util.List;
import org.capwright.measure.SleeveSubject.Option;
import org.capwright.quantity.InvalidMeasuresException;
import org.capwright.quantity.Subject;
import org.capwright.quantity.Violation;

/** What a pattern is printed on. */
public sealed interface Paper {

    /** Left free on every side of a page, mm; home printers cannot reach 3 to 6.4 mm. Common practice, no source. */
    double MARGIN = 10;

    /** What neighbouring pages have in common, mm, to be glued over one another. Common practice, no source. */
    double OVERLAP = 10;

    /** The least side of a page that takes the test squares side by side, mm. */
    double LEAST = 140;

    /** The greatest side of a page: 14400 units of 1/72 inch, mm (PDF Reference 1.6, appendix C). */
    double GREATEST = 14400 / 72.0 * 25.4;

    /** ISO 216 A4, 210 mm by 297 mm. */
    Sheets A4 = new Sheets("A4", 210, 297);

    /** ISO 216 A0, 841 mm by 1189 mm; as copy shops plot it. */
    Sheets A0 = new Sheets("A0", 841, 1189);

    /** ISO 216 A3, 297 mm by 420 mm. */
    Sheets A3 = new Sheets("A3", 297, 420);

    /** US Letter, 8 1/2 in by 11 in. */
    Sheets LETTER = new Sheets("Letter", 215.9, 279.4);

    /**
     * Sheets that are glued together; they are laid upright or across, whichever needs fewer.
     *
     * @param name what the sheet is called
     * @param width shorter side, mm, {@link #LEAST} to {@link #GREATEST}
     * @param height longer side, mm, {@link #LEAST} to {@link #GREATEST}
     */
    record Sheets(String name, double width, double height) implements Paper {

        /**
         * Checks the sides.
         *
         * @param name what the sheet is called
         * @param width shorter side, mm, {@link #LEAST} to {@link #GREATEST}
         * @param height longer side, mm, {@link #LEAST} to {@link #GREATEST}
         * @throws InvalidMeasuresException if a page would be too small for its margins and the test squares, or larger than a PDF page can be
         */
        public Sheets {
            List<Violation> found = new ArrayList<>(2);
            check(found, Option.PAPER_WIDTH, width);
            check(found, Option.PAPER_HEIGHT, height);
            if (!found.isEmpty()) {
                throw new InvalidMeasuresException(found);
            }
        }

        private static void check(List<Violation> found, Subject subject, double side) {
            if (!(side >= LEAST && side <= GREATEST)) {
                found.add(Violation.lengthOutside(
                        subject,
                        "a page must hold its margins and the test squares, and be no larger than a PDF page can be",
                        side,
                        LEAST,
                        GREATEST));
            }
        }
    }

    /**
     * Paper from a roll, as a plotter takes it: one page as long as the pattern; more than one where a PDF page cannot be that long.
     *
     * @param width width of the paper, mm; the widest piece and a margin on both sides must fit
     */
    record Roll(double width) implements Paper {}

    /**
     * The light of a projector on the cutting table: one page without a margin, thick lines, a grid, and lengths to set the projector by.
     *
     * @param width width that the pieces are laid within, mm; the page is as much wider as its rulers need
     * @param ground what the lines stand on
     */
    record Projection(double width, Ground ground) implements Paper {}

    /** What projected lines stand on. */
    enum Ground {
        /** Light lines on dark: for dark cloth, or a dim room. */
        DARK,
        /** Dark lines on light: for light cloth, or a bright room. */
        LIGHT
    }
}
