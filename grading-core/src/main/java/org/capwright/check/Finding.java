package org.capwright.check;

import java.util.List;
import java.util.OptionalDouble;
import org.capwright.quantity.Decimals;
import org.capwright.quantity.Quantity;
import org.capwright.quantity.Subject;
import org.capwright.quantity.Unit;
import org.capwright.words.Language;
import org.capwright.words.Text;

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
        Text message,
        Text source,
        Text remedy) {

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
     * A finding whose words have no parts that change.
     *
     * @param code which check, in kebab-case
     * @param severity how grave it is
     * @param sizes one size, or two: a jump from the first to the second
     * @param subject what it is about
     * @param quantity what kind of number {@code value} and {@code expected} are
     * @param value what was found; absent where a figure is missing
     * @param expected what would pass
     * @param message what is the matter, in plain words
     * @param source where the threshold comes from
     * @param remedy what to change
     */
    public Finding(
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
        this(
                code,
                severity,
                sizes,
                subject,
                quantity,
                value,
                expected,
                Text.of(message),
                Text.of(source),
                Text.of(remedy));
    }

    /**
     * The finding as one line for people, in English.
     *
     * @param unit the unit lengths are written in
     * @return for example {@code STOP 40-42 bicep: 3 cm, expected 1.2 to 1.6 cm: the jump ...}
     */
    public String text(Unit unit) {
        return text(unit, Language.ENGLISH);
    }

    /**
     * The finding as one line for people.
     *
     * @param unit the unit lengths are written in
     * @param language what it is said in
     * @return for example {@code STOP 40-42 bicep: 3 cm, expected 1.2 to 1.6 cm: the jump ...}
     */
    public String text(Unit unit, Language language) {
        String symbol = quantity == Quantity.LENGTH ? " " + unit.symbol() : "";
        Text figures = value.isEmpty()
                ? Text.name("")
                : expected.text(bound -> figure(bound, unit))
                        .map(range ->
                                Text.of("{value}, expected {range}{unit}: ").with("range", range))
                        .orElse(Text.of("{value}{unit}: "))
                        .with("value", figure(value.getAsDouble(), unit))
                        .with("unit", symbol);
        return Text.of("{severity} {sizes} {subject}: {figures}{message} {remedy}")
                .with("severity", Text.of(severity.name()))
                .with("sizes", String.join("-", sizes))
                .with("subject", Text.of(subject.code()))
                .with("figures", figures)
                .with("message", message)
                .with("remedy", remedy)
                .in(language);
    }

    /**
     * A number of this finding for people.
     *
     * @param number the value, or a bound of what is expected
     * @param unit the unit lengths are written in
     * @return without the unit
     */
    public Text figure(double number, Unit unit) {
        return Text.figures(
                switch (quantity) {
                    case LENGTH -> unit.format(number);
                    case COUNT -> Long.toString(Math.round(number));
                    default -> Decimals.text(number, 3);
                });
    }

    /**
     * The message as a sentence of its own.
     *
     * @return with a capital letter at its start and a full stop at its end
     */
    public Text sentence() {
        return message.sentence();
    }
}
