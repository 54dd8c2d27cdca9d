package org.capwright.check;

import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.DoubleFunction;
import org.capwright.words.Text;

/**
 * The range in which a value passes.
 *
 * @param least least value that passes, if there is a lower bound
 * @param greatest greatest value that passes, if there is an upper bound
 */
public record Expected(OptionalDouble least, OptionalDouble greatest) {

    /** No bounds: there is nothing to compare with. */
    public static final Expected ANYTHING = new Expected(OptionalDouble.empty(), OptionalDouble.empty());

    /**
     * A range with two bounds.
     *
     * @param least least value that passes
     * @param greatest greatest value that passes
     * @return the range
     */
    public static Expected between(double least, double greatest) {
        return new Expected(OptionalDouble.of(least), OptionalDouble.of(greatest));
    }

    /**
     * A range without upper bound.
     *
     * @param least least value that passes
     * @return the range
     */
    public static Expected atLeast(double least) {
        return new Expected(OptionalDouble.of(least), OptionalDouble.empty());
    }

    /**
     * A range without lower bound.
     *
     * @param greatest greatest value that passes
     * @return the range
     */
    public static Expected atMost(double greatest) {
        return new Expected(OptionalDouble.empty(), OptionalDouble.of(greatest));
    }

    /**
     * Whether a value passes.
     *
     * @param value the value
     * @return true within the bounds, the bounds themselves included
     */
    public boolean contains(double value) {
        return value >= least.orElse(Double.NEGATIVE_INFINITY) && value <= greatest.orElse(Double.POSITIVE_INFINITY);
    }

    /**
     * The range in words.
     *
     * @param number writes a bound
     * @return for example {@code 1 to 2}, {@code at least 1}; nothing without bounds
     */
    public Optional<Text> text(DoubleFunction<Text> number) {
        if (least.isPresent() && greatest.isPresent()) {
            Text low = number.apply(least.getAsDouble());
            Text high = number.apply(greatest.getAsDouble());
            return Optional.of(
                    low.equals(high)
                            ? low
                            : Text.of("{least} to {greatest}")
                                    .with("least", low)
                                    .with("greatest", high));
        }
        if (least.isPresent()) {
            return Optional.of(Text.of("at least {least}").with("least", number.apply(least.getAsDouble())));
        }
        return greatest.isPresent()
                ? Optional.of(Text.of("at most {greatest}").with("greatest", number.apply(greatest.getAsDouble())))
                : Optional.empty();
    }
}
