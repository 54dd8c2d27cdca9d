package org.capwright.tables;

import org.capwright.quantity.InvalidMeasuresException;
import org.capwright.quantity.Violation;

/**
 * A closed range of lengths or of other figures.
 *
 * @param lower the lower end, finite
 * @param upper the upper end, finite, not below the lower end
 */
public record Interval(double lower, double upper) {

    /**
     * Refuses ends that are not finite or stand the wrong way round.
     *
     * @param lower the lower end, finite
     * @param upper the upper end, finite, not below the lower end
     */
    public Interval {
        if (!Double.isFinite(lower) || !Double.isFinite(upper) || lower > upper) {
            throw new InvalidMeasuresException(Violation.other(
                    new TableSubject.Argument("interval"),
                    lower + " to " + upper,
                    "finite ends, lower not above upper"));
        }
    }

    /**
     * Whether a value lies in the range.
     *
     * @param value any value
     * @return true from the lower to the upper end, both included
     */
    public boolean contains(double value) {
        return value >= lower && value <= upper;
    }

    /**
     * The distance between the ends.
     *
     * @return upper minus lower, at least zero
     */
    public double width() {
        return upper - lower;
    }

    /**
     * The middle of the range.
     *
     * @return the mean of both ends
     */
    public double middle() {
        return lower + (upper - lower) / 2;
    }
}
