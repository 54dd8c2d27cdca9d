package org.capwright.measure;

import java.util.OptionalDouble;

/**
 * One thing that is wrong with a measure, and what would work.
 *
 * @param pointer where the measure stands in a request, as a JSON pointer (RFC 6901), for example {@code /sleeve/capHeight}
 * @param reason plain words without numbers; the boundary adds the numbers in the caller's unit
 * @param quantity what kind of number the value and its bounds are
 * @param value the value that was given or follows from what was given, if there is one
 * @param minimum the least value that would work, if there is a lower bound
 * @param maximum the greatest value that would work, if there is an upper bound
 */
public record Violation(
        String pointer,
        String reason,
        Quantity quantity,
        OptionalDouble value,
        OptionalDouble minimum,
        OptionalDouble maximum) {

    /**
     * A length outside a range.
     *
     * @param pointer where the measure stands
     * @param reason plain words
     * @param value millimetres
     * @param minimum least value that works, mm
     * @param maximum greatest value that works, mm
     * @return the violation
     */
    public static Violation lengthOutside(String pointer, String reason, double value, double minimum, double maximum) {
        return new Violation(
                pointer,
                reason,
                Quantity.LENGTH,
                OptionalDouble.of(value),
                OptionalDouble.of(minimum),
                OptionalDouble.of(maximum));
    }

    /**
     * A length below its lower bound.
     *
     * @param pointer where the measure stands
     * @param reason plain words
     * @param value millimetres
     * @param minimum least value that works, mm
     * @return the violation
     */
    public static Violation lengthBelow(String pointer, String reason, double value, double minimum) {
        return new Violation(
                pointer,
                reason,
                Quantity.LENGTH,
                OptionalDouble.of(value),
                OptionalDouble.of(minimum),
                OptionalDouble.empty());
    }

    /**
     * A length above its upper bound.
     *
     * @param pointer where the measure stands
     * @param reason plain words
     * @param value millimetres
     * @param maximum greatest value that works, mm
     * @return the violation
     */
    public static Violation lengthAbove(String pointer, String reason, double value, double maximum) {
        return new Violation(
                pointer,
                reason,
                Quantity.LENGTH,
                OptionalDouble.of(value),
                OptionalDouble.empty(),
                OptionalDouble.of(maximum));
    }

    /**
     * Something wrong that no range mends.
     *
     * @param pointer where it stands
     * @param reason plain words
     * @return the violation
     */
    public static Violation of(String pointer, String reason) {
        return new Violation(
                pointer,
                reason,
                Quantity.OTHER,
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                OptionalDouble.empty());
    }

    /**
     * The same violation, said of one size of a run.
     *
     * @param size label of the size
     * @return a violation whose reason names the size
     */
    public Violation inSize(String size) {
        return new Violation(pointer, "size " + size + ": " + reason, quantity, value, minimum, maximum);
    }
}
