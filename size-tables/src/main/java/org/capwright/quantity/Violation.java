package org.capwright.quantity;

import java.util.Optional;
import java.util.OptionalDouble;
import org.capwright.words.Text;

/**
 * One thing that is wrong with a measure, and what would work.
 *
 * @param subject what it is about
 * @param size the size of a run that it is about; empty for the base size and where it holds for all
 * @param reason plain words without the value and its bounds; the boundary adds these in the caller's unit and language
 * @param quantity what kind of number the value and its bounds are
 * @param value the value that was given or follows from what was given, if there is one
 * @param least the least value that would work, if there is a lower bound
 * @param greatest the greatest value that would work, if there is an upper bound
 * @param given the value as it was written, where it is no number or its unit is unknown
 */
public record Violation(
        Subject subject,
        Optional<String> size,
        Text reason,
        Quantity quantity,
        OptionalDouble value,
        OptionalDouble least,
        OptionalDouble greatest,
        Optional<String> given) {

    /**
     * A violation of which no text was given.
     *
     * @param subject what it is about
     * @param reason plain words
     * @param quantity what kind of number the value and its bounds are
     * @param value the value, if there is one
     * @param least the least value that would work, if there is a lower bound
     * @param greatest the greatest value that would work, if there is an upper bound
     */
    public Violation(
            Subject subject,
            String reason,
            Quantity quantity,
            OptionalDouble value,
            OptionalDouble least,
            OptionalDouble greatest) {
        this(subject, Text.of(reason), quantity, value, least, greatest);
    }

    /**
     * A violation of which no text was given.
     *
     * @param subject what it is about
     * @param reason plain words
     * @param quantity what kind of number the value and its bounds are
     * @param value the value, if there is one
     * @param least the least value that would work, if there is a lower bound
     * @param greatest the greatest value that would work, if there is an upper bound
     */
    public Violation(
            Subject subject,
            Text reason,
            Quantity quantity,
            OptionalDouble value,
            OptionalDouble least,
            OptionalDouble greatest) {
        this(subject, Optional.empty(), reason, quantity, value, least, greatest, Optional.empty());
    }

    /**
     * A number outside a range.
     *
     * @param subject what it is about
     * @param reason plain words
     * @param quantity what kind of number it is
     * @param value the number
     * @param least least value that works
     * @param greatest greatest value that works
     * @return the violation
     */
    public static Violation outside(
            Subject subject, Text reason, Quantity quantity, double value, double least, double greatest) {
        return new Violation(
                subject,
                reason,
                quantity,
                OptionalDouble.of(value),
                OptionalDouble.of(least),
                OptionalDouble.of(greatest));
    }

    /**
     * A number outside a range.
     *
     * @param subject what it is about
     * @param reason plain words without parts that change
     * @param quantity what kind of number it is
     * @param value the number
     * @param least least value that works
     * @param greatest greatest value that works
     * @return the violation
     */
    public static Violation outside(
            Subject subject, String reason, Quantity quantity, double value, double least, double greatest) {
        return outside(subject, Text.of(reason), quantity, value, least, greatest);
    }

    /**
     * A length outside a range.
     *
     * @param subject what it is about
     * @param reason plain words
     * @param value millimetres
     * @param least least value that works, mm
     * @param greatest greatest value that works, mm
     * @return the violation
     */
    public static Violation lengthOutside(Subject subject, Text reason, double value, double least, double greatest) {
        return outside(subject, reason, Quantity.LENGTH, value, least, greatest);
    }

    /**
     * A length outside a range.
     *
     * @param subject what it is about
     * @param reason plain words without parts that change
     * @param value millimetres
     * @param least least value that works, mm
     * @param greatest greatest value that works, mm
     * @return the violation
     */
    public static Violation lengthOutside(Subject subject, String reason, double value, double least, double greatest) {
        return lengthOutside(subject, Text.of(reason), value, least, greatest);
    }

    /**
     * A length below its lower bound.
     *
     * @param subject what it is about
     * @param reason plain words
     * @param value millimetres
     * @param least least value that works, mm
     * @return the violation
     */
    public static Violation lengthBelow(Subject subject, Text reason, double value, double least) {
        return new Violation(
                subject,
                reason,
                Quantity.LENGTH,
                OptionalDouble.of(value),
                OptionalDouble.of(least),
                OptionalDouble.empty());
    }

    /**
     * A length below its lower bound.
     *
     * @param subject what it is about
     * @param reason plain words without parts that change
     * @param value millimetres
     * @param least least value that works, mm
     * @return the violation
     */
    public static Violation lengthBelow(Subject subject, String reason, double value, double least) {
        return lengthBelow(subject, Text.of(reason), value, least);
    }

    /**
     * A length above its upper bound.
     *
     * @param subject what it is about
     * @param reason plain words
     * @param value millimetres
     * @param greatest greatest value that works, mm
     * @return the violation
     */
    public static Violation lengthAbove(Subject subject, Text reason, double value, double greatest) {
        return new Violation(
                subject,
                reason,
                Quantity.LENGTH,
                OptionalDouble.of(value),
                OptionalDouble.empty(),
                OptionalDouble.of(greatest));
    }

    /**
     * A length above its upper bound.
     *
     * @param subject what it is about
     * @param reason plain words without parts that change
     * @param value millimetres
     * @param greatest greatest value that works, mm
     * @return the violation
     */
    public static Violation lengthAbove(Subject subject, String reason, double value, double greatest) {
        return lengthAbove(subject, Text.of(reason), value, greatest);
    }

    /**
     * Something wrong that no range mends.
     *
     * @param subject what it is about
     * @param reason plain words
     * @return the violation
     */
    public static Violation of(Subject subject, Text reason) {
        return new Violation(
                subject,
                reason,
                Quantity.OTHER,
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                OptionalDouble.empty());
    }

    /**
     * Something wrong that no range mends.
     *
     * @param subject what it is about
     * @param reason plain words without parts that change
     * @return the violation
     */
    public static Violation of(Subject subject, String reason) {
        return of(subject, Text.of(reason));
    }

    /**
     * A value that is not among those that work.
     *
     * @param subject what it is about
     * @param given the value, as it was written
     * @param allowed what would work, in words, with its unit
     * @return the violation
     */
    public static Violation other(Subject subject, String given, Text allowed) {
        return new Violation(
                subject,
                Optional.empty(),
                Text.of("{allowed} would work").with("allowed", allowed),
                Quantity.OTHER,
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                Optional.of(given));
    }

    /**
     * A value that is not among those that work.
     *
     * @param subject what it is about
     * @param given the value, as it was written
     * @param allowed what would work, in words without parts that change
     * @return the violation
     */
    public static Violation other(Subject subject, String given, String allowed) {
        return other(subject, given, Text.of(allowed));
    }

    /**
     * The same violation, said of one size of a run.
     *
     * @param label name of the size
     * @return a violation of this size
     */
    public Violation inSize(String label) {
        return new Violation(subject, Optional.of(label), reason, quantity, value, least, greatest, given);
    }

    /**
     * What is wrong, with the size that it is wrong in.
     *
     * @return for example {@code size 38: the wrist cannot be wider than the elbow}
     */
    public Text sentence() {
        return size.map(label ->
                        Text.of("size {size}: {reason}").with("size", label).with("reason", reason))
                .orElse(reason);
    }
}
