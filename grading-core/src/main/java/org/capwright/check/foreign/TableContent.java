package org.capwright.check.foreign;

import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.capwright.check.Measure;

/**
 * What a layout found.
 *
 * @param sizes labels in the order of the table
 * @param values millimetres or counts per size
 * @param base label of the base size, where the table states it
 */
record TableContent(List<String> sizes, Map<String, Map<Measure, Double>> values, Optional<String> base) {

    static TableContent of(List<String> sizes, Optional<String> base) {
        return new TableContent(sizes, new LinkedHashMap<>(), base);
    }

    Map<Measure, Double> of(String size) {
        return values.computeIfAbsent(size, s -> new EnumMap<>(Measure.class));
    }
}
