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
 */
record TableContent(List<String> sizes, Map<String, Map<CheckedMeasure, Double>> values, Optional<String> base) {

    static TableContent of(List<String> sizes, Optional<String> base) {
        return new TableContent(sizes, new LinkedHashMap<>(), base);
    }

    Map<CheckedMeasure, Double> of(String size) {
        return values.computeIfAbsent(size, s -> new EnumMap<>(CheckedMeasure.class));
    }
}
