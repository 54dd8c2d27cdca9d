package org.capwright.pattern;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** How wide words will be at most in any ordinary type, in line heights. */
final class TextWidth {

    /** Width of a letter of an alphabet, on the safe side. */
    private static final double LETTER = 0.62;

    /** Words are not parted until they are wider than this. */
    private static final double LONGEST_WORD = 12;

    /** Width of an ideograph, a syllable block or a picture. */
    private static final double WIDE = 1.0;

    private TextWidth() {}

    static double of(String line) {
        int letters = 0;
        int wide = 0;
        for (int i = 0; i < line.length(); ) {
            int letter = line.codePointAt(i);
            double width = of(letter);
            letters += width == LETTER ? 1 : 0;
            wide += width == WIDE ? 1 : 0;
            i += Character.charCount(letter);
        }
        return letters * LETTER + wide * WIDE;
    }

    private static double of(int letter) {
        if (letter < 0x80) {
            return LETTER;
        }
        int type = Character.getType(letter);
        if (type == Character.NON_SPACING_MARK || type == Character.ENCLOSING_MARK || type == Character.FORMAT) {
            return 0;
        }
        boolean wide = letter >= 0x1100
                && (Character.isIdeographic(letter)
                        || (letter <= 0x115f)
                        || (letter >= 0x2e80 && letter <= 0xa4cf)
                        || (letter >= 0xac00 && letter <= 0xd7a3)
                        || (letter >= 0xf900 && letter <= 0xfaff)
                        || (letter >= 0xff00 && letter <= 0xff60)
                        || letter >= 0x10000);
        return wide ? WIDE : LETTER;
    }

    static double widest(List<String> lines) {
        double widest = 1;
        for (String line : lines) {
            widest = Math.max(widest, of(line));
        }
        return widest;
    }

    /** Breaks lines at spaces, or inside a word that is too long, so that none is wider than asked. */
    static List<String> broken(List<String> lines, double width) {
        double longest = lines.stream()
                .flatMap(line -> Arrays.stream(line.split(" ", -1)))
                .mapToDouble(TextWidth::of)
                .max()
                .orElse(0);
        double most = Math.max(width, Math.min(longest, LONGEST_WORD));
        List<String> broken = new ArrayList<>();
        for (String line : lines) {
            StringBuilder current = new StringBuilder();
            for (String word : line.split(" ", -1)) {
                String rest = word;
                if (current.length() > 0 && of(current + " " + rest) > most) {
                    broken.add(current.toString());
                    current.setLength(0);
                }
                while (of(rest) > most) {
                    int fits = fitting(rest, most);
                    broken.add(rest.substring(0, fits));
                    rest = rest.substring(fits);
                }
                current.append(current.length() > 0 ? " " : "").append(rest);
            }
            broken.add(current.toString());
        }
        return broken;
    }

    /** The line, or as much of it as fits with an ellipsis. */
    static String shortened(String line, double width) {
        return of(line) <= width ? line : line.substring(0, fitting(line, width - LETTER)) + "…";
    }

    /** How many chars of a line fit, at least one code point; a letter is not parted from its marks. */
    private static int fitting(String line, double width) {
        double sum = 0;
        int index = 0;
        while (index < line.length()) {
            int letter = line.codePointAt(index);
            sum += of(letter);
            if (sum > width && index > 0) {
                return index;
            }
            index += Character.charCount(letter);
        }
        return index;
    }
}
