package org.capwright.check;

import java.util.List;
import java.util.OptionalDouble;
import org.capwright.quantity.Decimals;
import org.capwright.quantity.Quantity;
import org.capwright.quantity.Subject;
import org.capwright.quantity.Unit;

/**
 * What a check found. The words carry no lengths; those stand in {@code value} and {@code expected}, so that they can be shown in the reader's unit.
 *
 * @param code which check, in kebab-case; the page of the check in the documentation has this name
 * @param severity how grave it is
 * @param sizes one size, or two: a jump from the first to the second
 * @param subject what it is about, most often a {@link CheckedMeasure}
 * @param quantity what kind of number {@code value} and {@code expected} are
 * @param value what was found; absent where a figure is missing
 * @param expected what would pass
 * @param message what is the matter, in plain words
 * @param source where the threshold comes from: a publication, or {@code common practice, no source}
 * @param remedy what to change
 */
public record Finding(
        String code,
        Severity severity,
        List<String> sizes,
        Subject subject,
        Quantity quantity,
        OptionalDouble value,
        Expected expected,
        String message,
        String source,
        String remedy) {

    /** What is said of the source of a threshold that no publication gives. */
    public static final String PRACTICE = "common practice, no source";

    /**
     * Copies the list of sizes.
     *
     * @param code which check, in kebab-case; the page of the check in the documentation has this name
     * @param severity how grave it is
     * @param sizes one size, or two: a jump from the first to the second
     * @param subject what it is about, most often a {@link CheckedMeasure}
     * @param quantity what kind of number {@code value} and {@code expected} are
     * @param value what was found; absent where a figure is missing
     * @param expected what would pass
     * @param message what is the matter, in plain words
     * @param source where the threshold comes from: a publication, or {@code common practice, no source}
     * @param remedy what to change
     */
    public Finding {
        sizes = List.copyOf(sizes);
    }

    /**
     * The finding as one line for people.
     *
     * @param unit the unit lengths are written in
     * @return for example {@code STOP 40-42 bicep: 3 cm, expected 1.2 to 1.6 cm: the jump ...}
     */
    public String text(Unit unit) {
        StringBuilder text = new StringBuilder(severity.name())
                .append(' ')
                .append(String.join("-", sizes))
                .append(' ')
                .append(subject.code())
                .append(": ");
        if (value.isPresent()) {
            text.append(number(value.getAsDouble(), unit));
            expected.text(bound -> number(bound, unit))
                    .ifPresent(range -> text.append(", expected ").append(range));
            text.append(quantity == Quantity.LENGTH ? " " + unit.symbol() : "").append(": ");
        }
        return text.append(message).append(' ').append(remedy).toString();
    }

    private String number(double number, Unit unit) {
        return switch (quantity) {
            case LENGTH -> unit.format(number);
            case COUNT -> Long.toString(Math.round(number));
            default -> Decimals.text(number, 3);
        };
    }

    /**
     * The message as a sentence of its own.
     *
     * @return with a capital letter at its start and a full stop at its end
     */
    public String sentence() {
        int first = message.offsetByCodePoints(0, 1);
        return message.substring(0, first).toUpperCase(java.util.Locale.ROOT)
                + message.substring(first)
                + (message.endsWith(".") ? "" : ".");
    }
}
