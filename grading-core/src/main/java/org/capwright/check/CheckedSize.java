package org.capwright.check;

import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What is known of one size: figures, and lines where there are any. A figure that is not there is not checked.
 *
 * @param label name of the size
 * @param values millimetres or counts by measure, all finite
 * @param lines lines of the nest, each kind at most once; empty when only a spec table is known
 */
public record CheckedSize(String label, Map<CheckedMeasure, Double> values, List<NestLine> lines) {

    /**
     * Copies the collections.
     *
     * @param label name of the size
     * @param values millimetres or counts by measure, all finite
     * @param lines lines of the nest, each kind at most once; empty when only a spec table is known
     * @throws IllegalArgumentException if a value is not finite
     */
    public CheckedSize {
        EnumMap<CheckedMeasure, Double> copy = new EnumMap<>(CheckedMeasure.class);
        values.forEach((measure, value) -> {
            if (!Double.isFinite(value)) {
                throw new IllegalArgumentException(
                        "size " + label + ", " + measure.code() + ": " + value + " is no number");
            }
            copy.put(measure, value);
        });
        values = Collections.unmodifiableMap(copy);
        lines = List.copyOf(lines);
    }

    /**
     * A size of a spec table. The cap ease follows from cap line and armhole where both are known.
     *
     * @param label name of the size
     * @param values millimetres or counts by measure
     */
    public CheckedSize(String label, Map<CheckedMeasure, Double> values) {
        this(label, withEase(values), List.of());
    }

    private static Map<CheckedMeasure, Double> withEase(Map<CheckedMeasure, Double> values) {
        Double capLine = values.get(CheckedMeasure.CAP_LINE);
        Double armhole = values.get(CheckedMeasure.ARMHOLE);
        if (capLine == null || armhole == null) {
            return values;
        }
        Map<CheckedMeasure, Double> all = new EnumMap<>(values);
        all.put(CheckedMeasure.CAP_EASE, capLine - armhole);
        return all;
    }

    /**
     * One figure.
     *
     * @param measure which
     * @return millimetres or a count, or empty when it is not known
     */
    public OptionalDouble value(CheckedMeasure measure) {
        Double value = values.get(measure);
        return value == null ? OptionalDouble.empty() : OptionalDouble.of(value);
    }

    /**
     * One line.
     *
     * @param kind which
     * @return the line, or empty when it is not known
     */
    public Optional<NestLine> line(NestLine.Kind kind) {
        return lines.stream().filter(line -> line.kind() == kind).findFirst();
    }

    /**
     * The size with one figure changed or added; the cap ease follows.
     *
     * @param measure which
     * @param value millimetres or a count
     * @return a new size
     */
    public CheckedSize with(CheckedMeasure measure, double value) {
        Map<CheckedMeasure, Double> copy = new EnumMap<>(CheckedMeasure.class);
        copy.putAll(values);
        copy.put(measure, value);
        return new CheckedSize(label, copy).withLines(lines);
    }

    /**
     * The size without one figure.
     *
     * @param measure which
     * @return a new size
     */
    public CheckedSize without(CheckedMeasure measure) {
        Map<CheckedMeasure, Double> copy = new EnumMap<>(CheckedMeasure.class);
        copy.putAll(values);
        copy.remove(measure);
        if (measure == CheckedMeasure.CAP_LINE || measure == CheckedMeasure.ARMHOLE) {
            copy.remove(CheckedMeasure.CAP_EASE);
        }
        return new CheckedSize(label, copy, lines);
    }

    /**
     * The size under another name.
     *
     * @param name the new label
     * @return a new size
     */
    public CheckedSize labelled(String name) {
        return new CheckedSize(name, values, lines);
    }

    /**
     * The size with other lines.
     *
     * @param changed lines of the nest, each kind at most once
     * @return a new size
     */
    public CheckedSize withLines(List<NestLine> changed) {
        return new CheckedSize(label, values, changed);
    }

    /** Nothing known but the name, so that no check compares its neighbours across it. */
    CheckedSize blank() {
        return new CheckedSize(label, Map.of(), List.of());
    }
}
