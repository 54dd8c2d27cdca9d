package org.capwright;

import org.capwright.measure.Dimension;
import org.capwright.measure.Dimensions;
import org.capwright.quantity.InvalidMeasuresException;
import org.capwright.quantity.Subject;
import org.capwright.quantity.Unit;
import org.capwright.quantity.Violation;
import org.capwright.words.Text;

/**
 * Dimensions as they are given, step by step.
 *
 * @param unit the unit they are given in
 * @param dimensions those given so far
 */
record Given(Unit unit, Dimensions dimensions) {

    Given with(Dimension dimension, double value) {
        return new Given(unit, dimensions.with(dimension, length(dimension, value)));
    }

    /** A length in mm. Ranges are judged when the run is graded; what is no number has none. */
    double length(Subject subject, double value) {
        if (!Double.isFinite(value)) {
            throw new InvalidMeasuresException(
                    Violation.of(subject, Text.of("is not a number: {value}").with("value", String.valueOf(value))));
        }
        return unit.toMillimetres(value);
    }
}
