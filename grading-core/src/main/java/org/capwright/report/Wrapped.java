package org.capwright.report;

import java.util.ArrayList;
import java.util.List;
import java.util.StringTokenizer;
import org.capwright.drawing.Letters;

/** Breaks text into lines: at spaces, and inside a word only where it is wider than a whole line. */
final class Wrapped {

    private static final String SPACES = " \t\n\u000b\f\r";

    private Wrapped() {}

    static List<String> lines(String text, Letters letters, double width) {
        List<String> lines = new ArrayList<>();
        StringBuilder line = new StringBuilder();
        double space = letters.width(" ");
        double filled = 0;
        StringTokenizer words = new StringTokenizer(text.strip(), SPACES);
        while (words.hasMoreTokens()) {
            String word = words.nextToken();
            double more = letters.width(word);
            if (!line.isEmpty() && filled + space + more <= width) {
                line.append(' ').append(word);
                filled += space + more;
                continue;
            }
            if (!line.isEmpty()) {
                lines.add(line.toString());
                line.setLength(0);
            }
            if (more <= width) {
                line.append(word);
                filled = more;
            } else {
                breakUp(word, line, lines, letters, width);
                filled = letters.width(line.toString());
            }
        }
        if (!line.isEmpty() || lines.isEmpty()) {
            lines.add(line.toString());
        }
        return lines;
    }

    /** Fills lines with a word that is wider than any of them; the last is not yet full. */
    private static void breakUp(String word, StringBuilder line, List<String> lines, Letters letters, double width) {
        for (int codePoint : word.codePoints().toArray()) {
            String longer = line + Character.toString(codePoint);
            if (!line.isEmpty() && letters.width(longer) > width) {
                lines.add(line.toString());
                line.setLength(0);
            }
            line.appendCodePoint(codePoint);
        }
    }
}
