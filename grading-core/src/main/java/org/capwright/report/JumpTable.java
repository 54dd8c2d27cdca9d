package org.capwright.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.capwright.check.BodyReference;
import org.capwright.check.CheckedGrade;
import org.capwright.check.CheckedMeasure;
import org.capwright.drawing.Canvas;
import org.capwright.drawing.Ink;
import org.capwright.drawing.Letters;
import org.capwright.drawing.Place;
import org.capwright.drawing.Stroke;
import org.capwright.exchange.PrintedName;
import org.capwright.measure.Unit;
import org.capwright.tables.BodyDimension;

/** A table of figures by interval between neighbouring sizes, in as many blocks as the width asks for. */
final class JumpTable {

    private static final double NAME = 46;
    private static final double LEAST_COLUMN = 13;
    private static final double WIDEST_COLUMN = 24;
    private static final double ROW = 5;

    /**
     * One row.
     *
     * @param name what the figures are
     * @param figures one per interval, empty for none
     * @param letters regular, or bold for what is to be seen first
     */
    record Row(String name, List<String> figures, Letters letters) {}

    private final List<String> intervals;
    private final List<Row> rows;
    private final double width;

    private JumpTable(List<String> intervals, List<Row> rows, double width) {
        this.intervals = intervals;
        this.rows = rows;
        this.width = width;
    }

    static List<Band> bands(List<String> intervals, List<Row> rows, double width) {
        return new JumpTable(intervals, rows, width).bands();
    }

    /** Names of the intervals of a grade. */
    static List<String> intervals(CheckedGrade grade) {
        List<String> names = new ArrayList<>();
        for (int i = 0; i < grade.intervals(); i++) {
            names.add(String.join("–", grade.pair(i)));
        }
        return names;
    }

    /** Garment, body, and what the garment has more, for every measure that a body has. */
    static List<Row> jumps(CheckedGrade grade, Unit unit) {
        List<Row> rows = new ArrayList<>();
        for (CheckedMeasure measure : CheckedMeasure.values()) {
            List<String> garment = new ArrayList<>();
            List<String> body = new ArrayList<>();
            List<String> more = new ArrayList<>();
            Optional<BodyDimension> dimension = grade.body().flatMap(reference -> reference.counterpart(measure));
            for (int i = 0; i < grade.intervals(); i++) {
                OptionalDouble jump = grade.jump(i, measure);
                OptionalDouble grown = grown(grade, dimension, i);
                garment.add(jump.isPresent() ? PrintedName.signed(unit.format(jump.getAsDouble())) : "");
                body.add(grown.isPresent() ? PrintedName.signed(unit.format(grown.getAsDouble())) : "");
                more.add(
                        jump.isPresent() && grown.isPresent()
                                ? PrintedName.signed(unit.format(jump.getAsDouble() - grown.getAsDouble()))
                                : "");
            }
            if (measure.body().isEmpty() || garment.stream().allMatch(String::isEmpty)) {
                continue;
            }
            rows.add(new Row(PrintedName.capital(measure.code()), garment, TextBands.BOLD));
            dimension.ifPresent(of -> {
                rows.add(new Row("   " + PrintedName.of(of.id()), body, TextBands.BODY));
                rows.add(new Row("   garment less body", more, TextBands.BODY));
            });
        }
        return rows;
    }

    private static OptionalDouble grown(CheckedGrade grade, Optional<BodyDimension> dimension, int interval) {
        Optional<BodyReference> body = grade.body();
        return body.isPresent() && dimension.isPresent()
                ? body.get().jump(grade.label(interval), grade.label(interval + 1), dimension.get())
                : OptionalDouble.empty();
    }

    private List<Band> bands() {
        int most = (int) Math.floor((width - NAME) / LEAST_COLUMN);
        int groups = (intervals.size() + most - 1) / most;
        int inGroup = groups == 0 ? 1 : (intervals.size() + groups - 1) / groups;
        double column = Math.min(WIDEST_COLUMN, (width - NAME) / inGroup);
        List<Band> bands = new ArrayList<>();
        for (int first = 0; first < intervals.size(); first += inGroup) {
            int from = first;
            int to = Math.min(intervals.size(), first + inGroup);
            Band header = Band.of(6, (canvas, left, top) -> header(canvas, left, top, from, to, column))
                    .keptWithNext();
            bands.add(header);
            for (Row row : rows) {
                bands.add(Band.of(ROW, (canvas, left, top) -> row(canvas, left, top, row, from, to, column))
                        .under(header));
            }
            bands.add(TextBands.space());
        }
        return bands;
    }

    private void header(Canvas canvas, double left, double top, int from, int to, double column) {
        for (int i = from; i < to; i++) {
            String name = intervals.get(i);
            canvas.text(
                    TextBands.QUIET.within(name, column - 1),
                    Place.RIGHT,
                    left + NAME + column * (i - from + 1),
                    top - 4,
                    name);
        }
        canvas.stroke(Stroke.solid(Ink.QUIET, 0.25))
                .line(left, top - 5.6, left + NAME + column * (to - from), top - 5.6);
    }

    private static void row(Canvas canvas, double left, double top, Row row, int from, int to, double column) {
        canvas.text(
                row.letters.within(row.name, NAME - 2),
                Place.LEFT,
                left + (row.name.startsWith(" ") ? 4 : 0),
                top - 3.5,
                row.name.strip());
        for (int i = from; i < to; i++) {
            String figure = row.figures.get(i);
            canvas.text(
                    row.letters.within(figure.isEmpty() ? "–" : figure, column - 1),
                    Place.RIGHT,
                    left + NAME + column * (i - from + 1),
                    top - 3.5,
                    figure.isEmpty() ? "–" : figure);
        }
        canvas.stroke(TextBands.RULE).line(left, top - 4.9, left + NAME + column * (to - from), top - 4.9);
    }
}
