package org.capwright.tables;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * The values of one dimension over the sizes of a table.
 *
 * @param dimension the dimension
 * @param values value by size in the order of the sizes; a size that is not here is a gap
 * @param limits limits of the class by size in millimetres, where the source gives limits
 * @param tolerance half width of the allowed deviation in millimetres, where a garment standard gives one
 */
public record Row(
        TableDimension dimension,
        Map<String, TableValue> values,
        Map<String, Interval> limits,
        OptionalDouble tolerance) {

    /**
     * Copies the maps, keeping their order.
     *
     * @param dimension the dimension
     * @param values value by size in the order of the sizes; a size that is not here is a gap
     * @param limits limits of the class by size in millimetres, where the source gives limits
     * @param tolerance half width of the allowed deviation in millimetres, where a garment standard gives one
     */
    public Row {
        values = Collections.unmodifiableMap(new LinkedHashMap<>(values));
        limits = Collections.unmodifiableMap(new LinkedHashMap<>(limits));
    }

    /**
     * The value of a size.
     *
     * @param size a size of the table
     * @return the value, or empty for a gap
     */
    public Optional<TableValue> value(String size) {
        return Optional.ofNullable(values.get(size));
    }
}
