package org.capwright.gradeimport;

import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.capwright.check.CheckedMeasure;

/**
 * What a layout found.
 *
 * @param sizes labels in the order of the table
 * @param values millimetres or counts per size
 * @param base label of the base size, where the table states it
 * @param factors by what the figures of a point were multiplied: 2 for a half width
 */
record TableContent(
        List<String> sizes,
        Map<String, Map<CheckedMeasure, Double>> values,
        Optional<String> base,
        Map<CheckedMeasure, Double> factors) {

    static TableContent of(List<String> sizes, Optional<String> base) {
        return new TableContent(sizes, new LinkedHashMap<>(), base, new EnumMap<>(CheckedMeasure.class));
    }

    void put(String size, PointNames.Match point, double value) {
        of(size).put(point.measure(), value);
        factors.put(point.measure(), point.factor());
    }

    Map<CheckedMeasure, Double> of(String size) {
        return values.computeIfAbsent(size, s -> new EnumMap<>(CheckedMeasure.class));
    }
}
