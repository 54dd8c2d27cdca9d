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
        StringTokenizer words = new StringTokenizer(text.strip(), SPACES);
        while (words.hasMoreTokens()) {
            String word = words.nextToken();
            String tried = line.isEmpty() ? word : line + " " + word;
            if (letters.width(tried) <= width) {
                line.setLength(0);
                line.append(tried);
                continue;
            }
            if (!line.isEmpty()) {
                lines.add(line.toString());
                line.setLength(0);
            }
            for (int codePoint : word.codePoints().toArray()) {
                String longer = line + Character.toString(codePoint);
                if (!line.isEmpty() && letters.width(longer) > width) {
                    lines.add(line.toString());
                    line.setLength(0);
                }
                line.appendCodePoint(codePoint);
            }
        }
        if (!line.isEmpty() || lines.isEmpty()) {
            lines.add(line.toString());
        }
        return lines;
    }
}
