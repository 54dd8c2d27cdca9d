package org.capwright.grade;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.capwright.measure.Dimension;
import org.capwright.measure.Dimensions;
import org.capwright.measure.SleeveSubject;
import org.capwright.quantity.InvalidMeasuresException;
import org.capwright.quantity.Violation;

/**
 * How much a dimension grows from each size to the next. Guaranteed to be immutable.
 *
 * @param dimension what grows
 * @param increments millimetres, one per interval between neighbouring sizes, smallest size first; negative where the dimension shrinks
 */
public record GradeRule(Dimension dimension, List<Double> increments) {

    /**
     * Checks the increments and keeps them on the grid on which sums are exact.
     *
     * @param dimension what grows
     * @param increments millimetres, one per interval between neighbouring sizes, smallest size first; negative where the dimension shrinks
     * @throws InvalidMeasuresException if an increment is no finite number
     */
    public GradeRule {
        List<Double> snapped = new ArrayList<>(increments.size());
        for (double increment : increments) {
            if (!Double.isFinite(increment)) {
                throw new InvalidMeasuresException(
                        Violation.of(new SleeveSubject.GradeOf(dimension), "has an increment that is not a number"));
            }
            snapped.add(Dimensions.snap(increment));
        }
        increments = List.copyOf(snapped);
    }

    /**
     * A rule with the same increment between all sizes.
     *
     * @param dimension what grows
     * @param increment millimetres per size
     * @param sizes how many sizes the run has, 1 or more
     * @return the rule
     * @throws IllegalArgumentException if there is no size
     */
    public static GradeRule uniform(Dimension dimension, double increment, int sizes) {
        if (sizes < 1) {
            throw new IllegalArgumentException("sizes: " + sizes + " is not 1 or more");
        }
        return new GradeRule(dimension, Collections.nCopies(sizes - 1, increment));
    }

    /**
     * The value in a size, built outward from the base size. Exact: going back by the same rule gives the very same number.
     *
     * @param value millimetres in the base size, on the grid of {@link Dimensions}
     * @param from position of the base size in the run
     * @param to position of the size asked for
     * @return millimetres
     */
    public double apply(double value, int from, int to) {
        double sum = value;
        for (int i = from; i < to; i++) {
            sum += increments.get(i);
        }
        for (int i = from; i > to; i--) {
            sum -= increments.get(i - 1);
        }
        return sum;
    }
}
