package org.capwright.report;

import java.util.ArrayList;
import java.util.List;
import org.capwright.drawing.Canvas;
import org.capwright.drawing.Ink;
import org.capwright.drawing.Letters;
import org.capwright.drawing.Place;
import org.capwright.drawing.Stroke;

/**
 * A table of figures, a column for each size or interval, in as many blocks as the width asks for.
 *
 * @param title what the names are; may be empty
 * @param columns what the figures are of
 * @param lead position of the column that stands out; -1 for none
 * @param last what the figure at the end of every row is; empty for none
 */
record FigureTable(String title, List<String> columns, int lead, String last) {

    private static final double LEAST_NAME = 40;
    private static final double LAST = 14;
    private static final double LEAST_COLUMN = 12;
    private static final double WIDEST_COLUMN = 26;
    private static final double HEAD = 6;
    private static final double ROW = 5;
    private static final double BETWEEN = 2.6;
    private static final double INDENT = 4;

    /**
     * One row.
     *
     * @param name what the figures are; moved in where it begins with a space
     * @param letters regular, or bold for what is to be seen first
     * @param figures one per column, empty for none
     * @param jumps what stands smaller between neighbouring columns; may be empty
     * @param last the figure at the end; may be empty
     */
    record Row(String name, Letters letters, List<String> figures, List<String> jumps, String last) {

        static Row of(String name, Letters letters, List<String> figures) {
            return new Row(name, letters, figures, List.of(), "");
        }

        double height() {
            return jumps.isEmpty() ? ROW : ROW + BETWEEN;
        }
    }

    /** Columns that stand side by side. */
    private record Part(int first, int end, double name, double column) {

        double middle(double left, int index) {
            return left + name + (index - first + 0.5) * column;
        }

        double width() {
            return name + (end - first) * column;
        }
    }

    List<Band> bands(List<Row> rows, double width) {
        double end = last.isEmpty() ? 0 : LAST;
        double room = width - LEAST_NAME - end;
        int groups = (int) Math.ceil(columns.size() / Math.floor(room / LEAST_COLUMN));
        int inGroup = Math.max(1, (columns.size() + groups - 1) / Math.max(1, groups));
        double column = Math.min(WIDEST_COLUMN, room / inGroup);
        List<Band> bands = new ArrayList<>();
        for (int first = 0; first < columns.size(); first += inGroup) {
            Part part =
                    new Part(first, Math.min(columns.size(), first + inGroup), width - end - column * inGroup, column);
            Band header = Band.of(HEAD, (canvas, left, top) -> header(canvas, left, top, part, end))
                    .keptWithNext();
            bands.add(header);
            for (Row row : rows) {
                bands.add(Band.of(row.height(), (canvas, left, top) -> row(canvas, left, top, part, end, row))
                        .under(header));
            }
            bands.add(TextBands.space());
        }
        return bands;
    }

    private void header(Canvas canvas, double left, double top, Part part, double end) {
        tint(canvas, left, top, part, HEAD);
        canvas.text(TextBands.QUIET, Place.LEFT, left, top - 4, title);
        for (int i = part.first; i < part.end; i++) {
            Letters letters = Letters.bold(2.9, i == lead ? Ink.ACCENT : Ink.QUIET);
            figure(canvas, letters, left, top - 4, part, i, columns.get(i));
        }
        double right = left + part.width() + end;
        canvas.text(TextBands.QUIET, Place.RIGHT, right, top - 4, last);
        canvas.stroke(Stroke.solid(Ink.QUIET, 0.25)).line(left, top - 5.7, right, top - 5.7);
    }

    private static void figure(Canvas canvas, Letters letters, double left, double y, Part part, int i, String words) {
        canvas.text(letters.within(words, part.column - 1), Place.CENTRE, part.middle(left, i), y, words);
    }

    private void tint(Canvas canvas, double left, double top, Part part, double height) {
        if (lead >= part.first && lead < part.end) {
            double x = part.middle(left, lead) - part.column / 2;
            canvas.ink(Ink.TINT).box(x, top - height, part.column, height).fill();
        }
    }

    private void row(Canvas canvas, double left, double top, Part part, double end, Row row) {
        tint(canvas, left, top, part, row.height());
        String name = row.name.strip();
        double indent = row.name.startsWith(" ") ? INDENT : 0;
        canvas.text(row.letters.within(name, part.name - indent - 2), Place.LEFT, left + indent, top - 3.4, name);
        for (int i = part.first; i < part.end; i++) {
            String words = row.figures.get(i).isEmpty() ? "–" : row.figures.get(i);
            figure(canvas, i == lead ? TextBands.BOLD : row.letters, left, top - 3.4, part, i, words);
        }
        double right = left + part.width() + end;
        canvas.text(row.letters, Place.RIGHT, right, top - 3.4, row.last);
        for (int i = Math.max(part.first, 1); i < part.end && !row.jumps.isEmpty(); i++) {
            double x = part.middle(left, i) - part.column / 2;
            canvas.text(Letters.regular(2.2, Ink.QUIET), Place.CENTRE, x, top - 6.5, row.jumps.get(i - 1));
        }
        double y = top - row.height() + 0.2;
        canvas.stroke(TextBands.RULE).line(left, y, right, y);
    }
}
