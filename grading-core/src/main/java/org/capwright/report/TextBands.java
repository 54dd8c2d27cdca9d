package org.capwright.report;

import java.util.ArrayList;
import java.util.List;
import org.capwright.drawing.Ink;
import org.capwright.drawing.Letters;
import org.capwright.drawing.Place;
import org.capwright.drawing.Stroke;

/** Title, headings and paragraphs of what is read. */
final class TextBands {

    static final double LEADING = 4.3;
    static final Letters BODY = Letters.regular(2.9, Ink.TEXT);
    static final Letters BOLD = Letters.bold(2.9, Ink.TEXT);
    static final Letters QUIET = Letters.bold(2.9, Ink.QUIET);
    static final Stroke RULE = Stroke.solid(Ink.RULE, 0.15);
    private static final double TITLE_LEADING = 9;

    private TextBands() {}

    /** What the paper is about: a name as large as can be, broken where it is long, and one line about it. */
    static Band title(String name, String about, double width) {
        Letters letters = Letters.bold(8, Ink.TEXT);
        List<String> lines = Wrapped.lines(name, letters, width);
        return Band.of(TITLE_LEADING * lines.size() + 10, (canvas, left, top) -> {
            for (int i = 0; i < lines.size(); i++) {
                canvas.text(letters, Place.LEFT, left, top - 6.4 - TITLE_LEADING * i, lines.get(i));
            }
            double y = top - TITLE_LEADING * lines.size() - 3;
            canvas.text(Letters.regular(3.6, Ink.QUIET).within(about, width), Place.LEFT, left, y, about);
            canvas.stroke(Stroke.solid(Ink.ACCENT, 0.6)).line(left, y - 2.6, left + width, y - 2.6);
        });
    }

    static Band heading(String words) {
        return heading(words, Ink.ACCENT);
    }

    static Band heading(String words, Ink ink) {
        Letters letters = Letters.bold(4.2, ink);
        return Band.of(9, (canvas, left, top) -> canvas.text(letters, Place.LEFT, left, top - 5.4, words))
                .keptWithNext();
    }

    static List<Band> paragraph(String words, double width) {
        return List.of(lines(words, BODY, LEADING, width));
    }

    static List<Band> small(String words, double width) {
        return List.of(lines(words, Letters.regular(2.4, Ink.QUIET), 3.5, width));
    }

    static Band space() {
        return Band.of(3, (canvas, left, top) -> {});
    }

    static Band lines(String words, Letters letters, double leading, double width) {
        List<String> lines = Wrapped.lines(words, letters, width);
        return Band.of(leading * lines.size() + 1.5, (canvas, left, top) -> {
            for (int i = 0; i < lines.size(); i++) {
                canvas.text(letters, Place.LEFT, left, top - 1.1 * letters.size() - leading * i, lines.get(i));
            }
        });
    }

    /** Words in columns with a rule below; columns begin at shares of the width. */
    static Band row(Letters letters, double width, double[] shares, String... cells) {
        List<Band> columns = new ArrayList<>();
        for (int i = 0; i < cells.length; i++) {
            double end = i + 1 < cells.length ? shares[i + 1] : 1;
            columns.add(lines(cells[i], letters, LEADING, (end - shares[i]) * width - 2));
        }
        double height = columns.stream().mapToDouble(Band::height).max().orElse(0);
        return Band.of(height, (canvas, left, top) -> {
            for (int i = 0; i < cells.length; i++) {
                columns.get(i).drawing().draw(canvas, left + shares[i] * width, top);
            }
            canvas.stroke(RULE).line(left, top - height + 0.3, left + width, top - height + 0.3);
        });
    }
}
