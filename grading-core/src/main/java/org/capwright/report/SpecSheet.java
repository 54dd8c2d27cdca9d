package org.capwright.report;

import java.util.ArrayList;
import java.util.List;
import org.capwright.drawing.Canvas;
import org.capwright.drawing.Ink;
import org.capwright.drawing.Letters;
import org.capwright.drawing.Place;
import org.capwright.drawing.Stroke;
import org.capwright.exchange.PrintedName;
import org.capwright.grade.PointOfMeasure;
import org.capwright.grade.SpecTable;
import org.capwright.measure.Unit;
import org.capwright.pattern.PatternSet;

/** The spec table as bands: each point of measure with its values, and the jumps between the columns they lie between. */
final class SpecSheet {

    private static final double LEAST_NAME = 38;
    private static final double TOLERANCE = 14;
    private static final double LEAST_COLUMN = 12;
    private static final double WIDEST_COLUMN = 26;
    private static final double JUMP = 2.2;

    private final SpecTable table;
    private final Unit unit;
    private final int first;
    private final int last;
    private final double column;
    private final double name;

    private SpecSheet(SpecTable table, Unit unit, int first, int last, double column, double name) {
        this.table = table;
        this.unit = unit;
        this.first = first;
        this.last = last;
        this.column = column;
        this.name = name;
    }

    static List<Band> bands(PatternSet set, double width) {
        SpecTable table = SpecTable.of(set.run());
        double room = width - LEAST_NAME - TOLERANCE;
        int sizes = table.sizes().size();
        int groups = (int) Math.ceil(sizes / Math.floor(room / LEAST_COLUMN));
        int inGroup = (sizes + groups - 1) / groups;
        double column = Math.min(WIDEST_COLUMN, room / inGroup);
        double name = width - TOLERANCE - column * inGroup;
        List<Band> bands = new ArrayList<>();
        bands.add(TextBands.heading("Spec table, " + set.title().unit().symbol()));
        for (int first = 0; first < sizes; first += inGroup) {
            new SpecSheet(table, set.title().unit(), first, Math.min(sizes, first + inGroup), column, name).add(bands);
        }
        return bands;
    }

    private void add(List<Band> bands) {
        Band header = Band.of(6, this::header).keptWithNext();
        bands.add(header);
        for (PointOfMeasure row : table.rows()) {
            bands.add(Band.of(7.6, (canvas, left, top) -> row(canvas, left, top, row))
                    .under(header));
        }
        bands.add(TextBands.space());
    }

    private double middle(double left, int size) {
        return left + name + (size - first + 0.5) * column;
    }

    private double right(double left) {
        return left + name + (last - first) * column + TOLERANCE;
    }

    private void header(Canvas canvas, double left, double top) {
        tint(canvas, left, top, 6);
        canvas.text(TextBands.QUIET, Place.LEFT, left, top - 4, "Point of measure");
        for (int i = first; i < last; i++) {
            String size = table.sizes().get(i);
            canvas.text(
                    Letters.bold(2.9, i == table.base() ? Ink.ACCENT : Ink.QUIET)
                            .within(size, column - 1),
                    Place.CENTRE,
                    middle(left, i),
                    top - 4,
                    size);
        }
        canvas.text(TextBands.QUIET, Place.RIGHT, right(left), top - 4, "±");
        canvas.stroke(Stroke.solid(Ink.QUIET, 0.25)).line(left, top - 5.7, right(left), top - 5.7);
    }

    private void tint(Canvas canvas, double left, double top, double height) {
        if (table.base() >= first && table.base() < last) {
            canvas.ink(Ink.TINT)
                    .box(middle(left, table.base()) - column / 2, top - height, column, height)
                    .fill();
        }
    }

    private void row(Canvas canvas, double left, double top, PointOfMeasure row) {
        tint(canvas, left, top, 7.6);
        canvas.text(TextBands.BODY.within(row.name(), name - 2), Place.LEFT, left, top - 3.4, row.name());
        for (int i = first; i < last; i++) {
            canvas.text(
                    i == table.base() ? TextBands.BOLD : TextBands.BODY,
                    Place.CENTRE,
                    middle(left, i),
                    top - 3.4,
                    unit.format(row.values().get(i)));
        }
        canvas.text(TextBands.BODY, Place.RIGHT, right(left), top - 3.4, unit.format(row.tolerance()));
        List<Double> jumps = row.jumps();
        for (int i = first; i < last; i++) {
            if (i > 0) {
                String jump = unit.format(jumps.get(i - 1));
                canvas.text(
                        Letters.regular(JUMP, Ink.QUIET),
                        Place.CENTRE,
                        middle(left, i) - column / 2,
                        top - 6.5,
                        PrintedName.signed(jump));
            }
        }
        canvas.stroke(TextBands.RULE).line(left, top - 7.4, right(left), top - 7.4);
    }
}
