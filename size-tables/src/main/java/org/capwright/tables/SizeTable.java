package org.capwright.tables;

import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.capwright.quantity.InvalidMeasuresException;
import org.capwright.quantity.Violation;
import org.capwright.words.Text;

/**
 * A table of measurements by size. All lengths are in millimetres, whatever unit the table is published in.
 *
 * <p>A size may have a second name, its label; every lookup takes either.
 *
 * @param info what the table is and where it comes from
 * @param sizes the sizes, smallest first, at least one
 * @param labels size by label, in the order of the sizes; may be empty
 * @param people number of people measured per size, for class means; else empty
 * @param rows the rows, each dimension once
 */
public record SizeTable(
        TableInfo info, List<String> sizes, Map<String, String> labels, Map<String, Integer> people, List<Row> rows) {

    /**
     * Copies the collections, keeping their order.
     *
     * @param info what the table is and where it comes from
     * @param sizes the sizes, smallest first, at least one
     * @param labels size by label, in the order of the sizes; may be empty
     * @param people number of people measured per size, for class means; else empty
     * @param rows the rows, each dimension once
     */
    public SizeTable {
        sizes = List.copyOf(sizes);
        labels = Collections.unmodifiableMap(new LinkedHashMap<>(labels));
        people = Collections.unmodifiableMap(new LinkedHashMap<>(people));
        rows = List.copyOf(rows);
    }

    /**
     * The short name of the table.
     *
     * @return the id in kebab-case
     */
    public String id() {
        return info.id();
    }

    /**
     * The size meant by a name.
     *
     * @param sizeOrLabel a size or a label
     * @return the size, or empty when the table knows neither
     */
    public Optional<String> size(String sizeOrLabel) {
        return sizes.contains(sizeOrLabel) ? Optional.of(sizeOrLabel) : Optional.ofNullable(labels.get(sizeOrLabel));
    }

    /**
     * The row of a dimension.
     *
     * @param dimension the dimension
     * @return the row, or empty when the source does not give it
     */
    public Optional<Row> row(TableDimension dimension) {
        for (Row row : rows) {
            if (row.dimension() == dimension) {
                return Optional.of(row);
            }
        }
        return Optional.empty();
    }

    /**
     * One value of the table.
     *
     * @param sizeOrLabel a size or a label
     * @param dimension the dimension
     * @return the value, or empty when the size, the row or the value is missing
     */
    public Optional<TableValue> value(String sizeOrLabel, TableDimension dimension) {
        return size(sizeOrLabel).flatMap(size -> row(dimension).flatMap(row -> row.value(size)));
    }

    /**
     * The class limits of one value.
     *
     * @param sizeOrLabel a size or a label
     * @param dimension the dimension
     * @return the limits in millimetres, or empty when the source gives none
     */
    public Optional<Interval> limits(String sizeOrLabel, TableDimension dimension) {
        return size(sizeOrLabel)
                .flatMap(size -> row(dimension)
                        .flatMap(row -> Optional.ofNullable(row.limits().get(size))));
    }

    /**
     * The growth of a dimension between neighbouring sizes.
     *
     * @param dimension the dimension
     * @return the increments, smallest size first; none where either size has a gap, and none at all when no body
     *     dimension orders the sizes, as with age classes
     */
    public List<Increment> increments(TableDimension dimension) {
        Optional<Row> row = row(dimension);
        if (row.isEmpty() || info.key().isEmpty()) {
            return List.of();
        }
        List<Increment> increments = new ArrayList<>(sizes.size());
        for (int i = 1; i < sizes.size(); i++) {
            String from = sizes.get(i - 1);
            String to = sizes.get(i);
            Optional<TableValue> lower = row.get().value(from);
            Optional<TableValue> upper = row.get().value(to);
            if (lower.isPresent() && upper.isPresent()) {
                Provenance provenance = lower.get().provenance() == Provenance.INTERPOLATED
                        ? Provenance.INTERPOLATED
                        : upper.get().provenance();
                double growth = upper.get().millimetres() - lower.get().millimetres();
                increments.add(new Increment(from, to, dimension, growth, provenance));
            }
        }
        return List.copyOf(increments);
    }

    /**
     * The table narrowed to some sizes, which then bear the names asked for. With it the increments run from each
     * chosen size to the next chosen one.
     *
     * @param sizesOrLabels sizes or labels in the order of the table, each once
     * @return the narrower table, without labels
     * @throws InvalidMeasuresException naming every size that is unknown, repeated or out of order
     */
    public SizeTable select(List<String> sizesOrLabels) {
        List<Violation> violations = new ArrayList<>();
        Map<String, String> chosen = new LinkedHashMap<>();
        int last = -1;
        for (int i = 0; i < sizesOrLabels.size(); i++) {
            String name = sizesOrLabels.get(i);
            Optional<String> size = size(name);
            if (size.isEmpty()) {
                violations.add(Violation.other(new TableSubject.Size(i), name, oneOf()));
                continue;
            }
            int place = sizes.indexOf(size.get());
            if (place <= last) {
                violations.add(Violation.other(
                        new TableSubject.Size(i),
                        name,
                        Text.of("sizes in the order of the table, each once: {sizes}")
                                .with("sizes", names())));
            }
            last = Math.max(last, place);
            chosen.put(name, size.get());
        }
        if (sizesOrLabels.isEmpty()) {
            violations.add(Violation.other(TableSubject.Field.SIZES, "none", "at least one size"));
        }
        if (!violations.isEmpty()) {
            throw new InvalidMeasuresException(violations);
        }
        List<Row> narrowed = new ArrayList<>(rows.size());
        for (Row row : rows) {
            narrowed.add(new Row(
                    row.dimension(), renamed(row.values(), chosen), renamed(row.limits(), chosen), row.tolerance()));
        }
        return new SizeTable(info, List.copyOf(chosen.keySet()), Map.of(), renamed(people, chosen), narrowed);
    }

    private static <V> Map<String, V> renamed(Map<String, V> bySize, Map<String, String> chosen) {
        Map<String, V> renamed = new LinkedHashMap<>();
        chosen.forEach((name, size) -> {
            if (bySize.containsKey(size)) {
                renamed.put(name, bySize.get(size));
            }
        });
        return renamed;
    }

    private Text oneOf() {
        return Text.of("a size of {table}: {sizes}").with("table", id()).with("sizes", names());
    }

    private Text names() {
        return labels.isEmpty()
                ? Text.names(sizes)
                : Text.of("{sizes}; labels {labels}")
                        .with("sizes", Text.names(sizes))
                        .with("labels", Text.names(List.copyOf(labels.keySet())));
    }

    /**
     * A dimension as a continuous function of the key of the table.
     *
     * @param dimension a dimension of the table
     * @return the curve; keep it when several values are asked for
     * @throws InvalidMeasuresException when the table lacks the dimension or has no key
     */
    public DimensionCurve curve(TableDimension dimension) {
        return DimensionCurve.of(this, dimension);
    }

    /**
     * A dimension at a value of the key, such as a bust girth between two sizes. At a size of the table it is the
     * table's own value with its own provenance, in between it is marked {@link Provenance#INTERPOLATED}.
     *
     * @param dimension a dimension of the table
     * @param key value of the key dimension in millimetres, within the range that has values
     * @return the value
     * @throws InvalidMeasuresException when the key is out of range, naming the range, or the dimension or key is missing
     */
    public TableValue interpolate(TableDimension dimension, double key) {
        return curve(dimension).at(key);
    }

    /**
     * A dimension between two sizes.
     *
     * @param dimension a dimension of the table
     * @param lower a size or label
     * @param upper a larger size or label
     * @param fraction how far from the lower to the upper size, 0 to 1, measured on the key
     * @return the value, marked {@link Provenance#INTERPOLATED} unless it falls on a size
     * @throws InvalidMeasuresException when a size is unknown or has no value, or the fraction is out of range
     */
    public TableValue interpolate(TableDimension dimension, String lower, String upper, double fraction) {
        if (!(fraction >= 0 && fraction <= 1)) {
            throw new InvalidMeasuresException(
                    Violation.other(new TableSubject.Argument("fraction"), Double.toString(fraction), "0 to 1"));
        }
        BodyDimension key = requiredKey();
        double from = keyOf(key, "lower", lower);
        double to = keyOf(key, "upper", upper);
        if (to < from) {
            throw new InvalidMeasuresException(Violation.other(
                    new TableSubject.Argument("upper"),
                    upper,
                    Text.of("a size not below {size}").with("size", lower)));
        }
        return interpolate(dimension, fraction == 1 ? to : from + fraction * (to - from));
    }

    BodyDimension requiredKey() {
        return info.key()
                .orElseThrow(() -> new InvalidMeasuresException(Violation.other(
                        new TableSubject.Argument("table"),
                        id(),
                        "a table whose sizes are ordered by a body dimension")));
    }

    private double keyOf(BodyDimension key, String field, String sizeOrLabel) {
        return value(sizeOrLabel, key)
                .orElseThrow(() -> new InvalidMeasuresException(
                        Violation.other(new TableSubject.Argument(field), sizeOrLabel, oneOf())))
                .millimetres();
    }
}
