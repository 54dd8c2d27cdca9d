package org.capwright.tables;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.capwright.quantity.InvalidMeasuresException;
import org.capwright.quantity.Violation;
import org.capwright.words.Text;

/**
 * A row of a table as a function of the dimension that orders the sizes: a monotone piecewise cubic through the values
 * (Fritsch and Butland 1984), which keeps growing where the values grow and never overshoots them.
 *
 * <p>A gap splits the curve, and nothing is extrapolated: outside the stretches that have values a call is refused.
 */
public final class DimensionCurve {

    private record Stretch(Interval range, double[] keys, List<TableValue> values, MonotoneCurve curve) {}

    private final TableDimension dimension;
    private final BodyDimension key;
    private final List<Stretch> stretches;

    private DimensionCurve(TableDimension dimension, BodyDimension key, List<Stretch> stretches) {
        this.dimension = dimension;
        this.key = key;
        this.stretches = List.copyOf(stretches);
    }

    static DimensionCurve of(SizeTable table, TableDimension dimension) {
        BodyDimension key = table.requiredKey();
        Row row = table.row(dimension)
                .orElseThrow(() -> new InvalidMeasuresException(Violation.other(
                        new TableSubject.Argument("dimension"),
                        dimension.id(),
                        Text.of("a dimension of {source}: {names}")
                                .with("source", table.id())
                                .with(
                                        "names",
                                        Text.names(table.rows().stream()
                                                .map(r -> r.dimension().id())
                                                .toList())))));
        List<Stretch> stretches = new ArrayList<>();
        List<Double> keys = new ArrayList<>();
        List<TableValue> values = new ArrayList<>();
        for (String size : table.sizes()) {
            Optional<TableValue> place = table.value(size, key);
            Optional<TableValue> value = row.value(size);
            if (place.isPresent() && value.isPresent()) {
                keys.add(place.get().millimetres());
                values.add(value.get());
            } else {
                close(stretches, keys, values);
            }
        }
        close(stretches, keys, values);
        return new DimensionCurve(dimension, key, stretches);
    }

    private static void close(List<Stretch> stretches, List<Double> keys, List<TableValue> values) {
        if (!keys.isEmpty()) {
            double[] x = keys.stream().mapToDouble(Double::doubleValue).toArray();
            double[] y = values.stream().mapToDouble(TableValue::millimetres).toArray();
            stretches.add(
                    new Stretch(new Interval(x[0], x[x.length - 1]), x, List.copyOf(values), new MonotoneCurve(x, y)));
            keys.clear();
            values.clear();
        }
    }

    /**
     * The ranges of the key in which the curve has values, smallest first. A single value makes a range of no width.
     *
     * @return ranges in millimetres, at least one unless the row is all gaps
     */
    public List<Interval> ranges() {
        return stretches.stream().map(Stretch::range).toList();
    }

    /**
     * The value at a key.
     *
     * @param place value of the key dimension in millimetres, within one of {@link #ranges()}
     * @return the table's own value at a size, else a value marked {@link Provenance#INTERPOLATED}
     * @throws InvalidMeasuresException outside the ranges, naming them
     */
    public TableValue at(double place) {
        for (Stretch stretch : stretches) {
            if (stretch.range.contains(place)) {
                for (int i = 0; i < stretch.keys.length; i++) {
                    if (stretch.keys[i] == place) {
                        return stretch.values.get(i);
                    }
                }
                return new TableValue(stretch.curve.at(place), Provenance.INTERPOLATED);
            }
        }
        List<Text> ranges = new ArrayList<>();
        for (Stretch stretch : stretches) {
            ranges.add(Text.of("{least} to {greatest}")
                    .with("least", Text.figures(String.valueOf(stretch.range.lower())))
                    .with("greatest", Text.figures(stretch.range.upper() + " mm")));
        }
        throw new InvalidMeasuresException(Violation.other(
                key,
                place + " mm",
                Text.of("for {measure} {ranges}")
                        .with("measure", Text.of(dimension.id()))
                        .with(
                                "ranges",
                                ranges.stream()
                                        .reduce((first, second) -> Text.of("{first} or {second}")
                                                .with("first", first)
                                                .with("second", second))
                                        .orElse(Text.name("")))));
    }
}
