package org.capwright.tables;

import org.capwright.quantity.InvalidMeasuresException;
import org.capwright.quantity.Violation;

/**
 * One value of a table.
 *
 * @param millimetres the length in millimetres, finite and positive
 * @param provenance where the value comes from
 */
public record TableValue(double millimetres, Provenance provenance) {

    /**
     * Refuses a length that is not finite and positive.
     *
     * @param millimetres the length in millimetres, finite and positive
     * @param provenance where the value comes from
     */
    public TableValue {
        if (!(millimetres > 0) || Double.isInfinite(millimetres)) {
            throw new InvalidMeasuresException(Violation.other(
                    new TableSubject.Argument("millimetres"), Double.toString(millimetres), "above 0 mm"));
        }
    }
}
