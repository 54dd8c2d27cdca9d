package org.capwright.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import org.capwright.drawing.Ink;
import org.capwright.drawing.Letters;
import org.capwright.drawing.Script;
import org.capwright.drawing.Typeface;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Order and forms of characters. */
class ScriptTest {

    private static String shown(String text) {
        int[] points = Script.of(text, Typeface.REGULAR).shown();
        return new String(points, 0, points.length);
    }

    @Test
    void hebrewRunsFromRightToLeft() {
        // shin, lamed, vav, final mem: the reader begins at the right
        assertEquals("\u05DD\u05D5\u05DC\u05E9", shown("\u05E9\u05DC\u05D5\u05DD"));
        // Unicode Standard Annex 9: a number after Hebrew belongs to it, so that it stands to its left.
        assertEquals("gown 40 \u05DD\u05D5\u05DC\u05E9", shown("gown \u05E9\u05DC\u05D5\u05DD 40"));
    }

    /** The forms are those of the Unicode code charts, block Arabic Presentation Forms-B: seen initial FEB3, lam medial FEE0, alef final FE8E, meem isolated FEE1. */
    @Test
    void arabicLettersJoin() {
        // seen, lam, alef, meem: lam and alef make one sign, which joins only to its right (FEFC is its final form)
        assertEquals("\uFEE1\uFEFC\uFEB3", shown("\u0633\u0644\u0627\u0645"));
        // beh, yeh, teh: initial, medial, final
        assertEquals("\uFE96\uFEF4\uFE91", shown("\u0628\u064A\u062A"));
        // dal never reaches to the left: dal isolated, alef isolated, reh isolated
        assertEquals("\uFEAD\uFE8D\uFEA9", shown("\u062F\u0627\u0631"));
    }

    @ParameterizedTest
    @CsvSource({"e\u0301,\u00E9", "A\u030A,\u00C5"})
    void accentsAreComposed(String apart, String composed) {
        assertEquals(composed, shown(apart));
    }

    @Test
    void everyTextCanBeShown() {
        for (long seed = 0; seed < 3000; seed++) {
            Random random = new Random(seed);
            StringBuilder text = new StringBuilder();
            for (int i = 0; i < random.nextInt(12); i++) {
                if (random.nextInt(4) == 0) {
                    text.append((char) random.nextInt(0x10000)); // lone surrogates among them
                } else if (random.nextBoolean()) {
                    text.append((char) (0x590 + random.nextInt(0x170)));
                } else {
                    text.appendCodePoint(random.nextInt(0x110000));
                }
            }
            for (int codePoint : Script.of(text.toString(), Typeface.BOLD).shown()) {
                assertTrue(Typeface.BOLD.has(codePoint), "seed " + seed);
            }
        }
    }

    @Test
    void textIsBrokenWithinTheWidthAndNothingIsLost() {
        for (long seed = 0; seed < 500; seed++) {
            Random random = new Random(seed);
            StringBuilder text = new StringBuilder("w");
            for (int i = 0; i < 200; i++) {
                text.append(random.nextInt(9) == 0 ? ' ' : (char) ('a' + random.nextInt(26)));
            }
            double width = 12 + random.nextDouble() * 60;
            var lines = Wrapped.lines(text.toString(), Letters.regular(3, Ink.BLACK), width);
            for (String line : lines) {
                assertTrue(Typeface.REGULAR.width(line, 3) <= width + 1e-9, "seed " + seed);
            }
            assertEquals(
                    text.toString().replaceAll("\\s", ""),
                    String.join("", lines).replaceAll("\\s", ""),
                    "seed " + seed);
        }
    }
}
