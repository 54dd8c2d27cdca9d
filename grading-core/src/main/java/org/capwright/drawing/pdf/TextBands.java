package org.capwright.drawing.pdf;

import java.util.List;

/** Paragraphs of a report. */
final class TextBands {

    private static final double BODY = 2.9;
    private static final double LEADING = 4.3;

    private TextBands() {}

    static List<Band> paragraph(String words, double width) {
        return List.of(lines(words, Typeface.REGULAR, BODY, LEADING, Ink.TEXT, width));
    }

    static List<Band> small(String words, double width) {
        return List.of(lines(words, Typeface.REGULAR, 2.4, 3.5, Ink.QUIET, width));
    }

    static Band lines(String words, Typeface face, double size, double leading, Ink ink, double width) {
        List<String> lines = Wrapped.lines(words, face, size, width);
        return Band.of(leading * lines.size() + 1.5, (canvas, left, top) -> {
            canvas.ink(ink);
            for (int i = 0; i < lines.size(); i++) {
                canvas.text(face, size, Canvas.Place.LEFT, left, top - 1.1 * size - leading * i, lines.get(i));
            }
        });
    }
}
