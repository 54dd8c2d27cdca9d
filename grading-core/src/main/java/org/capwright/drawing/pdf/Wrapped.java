package org.capwright.drawing.pdf;

import java.util.ArrayList;
import java.util.List;

/** Breaks text into lines: at spaces, and inside a word only where it is wider than a whole line. */
final class Wrapped {

    private Wrapped() {}

    static List<String> lines(String text, Typeface face, double size, double width) {
        List<String> lines = new ArrayList<>();
        StringBuilder line = new StringBuilder();
        for (String word : text.strip().split("\\s+")) {
            String tried = line.isEmpty() ? word : line + " " + word;
            if (face.width(tried, size) <= width) {
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
                if (!line.isEmpty() && face.width(longer, size) > width) {
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
