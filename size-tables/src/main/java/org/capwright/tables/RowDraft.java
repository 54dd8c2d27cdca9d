package org.capwright.tables;

import java.util.List;
import java.util.OptionalDouble;

/**
 * A row of a table that a user proposes.
 *
 * @param dimension name of the dimension, such as {@code upperArmGirth}
 * @param values one value per size in the unit of the table; empty for a gap
 */
public record RowDraft(String dimension, List<OptionalDouble> values) {

    /**
     * Copies the values.
     *
     * @param dimension name of the dimension, such as {
     * @param values one value per size in the unit of the table; empty for a gap
     */
    public RowDraft {
        values = List.copyOf(values);
    }
}
