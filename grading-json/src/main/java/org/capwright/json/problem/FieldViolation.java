package org.capwright.json.problem;

import io.swagger.v3.oas.annotations.media.Schema;
import java.util.Optional;
import org.capwright.words.Language;
import org.capwright.words.Text;

/**
 * One thing that is wrong with a request.
 *
 * @param field where it stands, as a JSON pointer (RFC 6901); empty for the whole body
 * @param reason what is wrong and what would work, in words
 * @param value the value given, or that follows from what was given
 * @param unit unit of value, minimum and maximum, where they are lengths
 * @param minimum the least value that would work
 * @param maximum the greatest value that would work
 */
@Schema(description = "One thing that is wrong with a request, and what would work.")
public record FieldViolation(
        @Schema(
                description = "Where it stands, as a JSON pointer (RFC 6901); empty for the whole body.",
                example = "/sleeve/capHeight")
        String field,

        @Schema(
                description = "What is wrong and what would work, in words.",
                implementation = String.class,
                example = "outside what a sleeve can have: 0.5 cm given; 1 to 50 cm would work")
        Text reason,

        @Schema(
                description = "The value given, or that follows from what was given: a number, a text or true/false.",
                type = "object",
                example = "0.5")
        Optional<Object> value,

        @Schema(
                description = "Unit of value, minimum and maximum, where they are lengths.",
                allowableValues = {"mm", "cm", "in"},
                example = "cm")
        Optional<String> unit,

        @Schema(description = "The least value that would work.", example = "1")
        Optional<Double> minimum,

        @Schema(description = "The greatest value that would work.", example = "50")
        Optional<Double> maximum) {

    /**
     * Something wrong that no range mends.
     *
     * @param field where, as a JSON pointer
     * @param reason what is wrong and what would work
     * @param value the value given, where it can be shown
     * @return the violation
     */
    public static FieldViolation of(String field, Text reason, Optional<Object> value) {
        return new FieldViolation(field, reason, value, Optional.empty(), Optional.empty(), Optional.empty());
    }

    /**
     * A violation without bounds, whose reason has no parts that change.
     *
     * @param field where it stands
     * @param reason what is wrong and what would work
     * @param value the value given, if it is to be shown
     * @return a violation
     */
    public static FieldViolation of(String field, String reason, Optional<Object> value) {
        return of(field, Text.of(reason), value);
    }

    /**
     * The same violation at another field.
     *
     * @param other where it stands
     * @param why what is wrong and what would work
     * @return a violation
     */
    public FieldViolation at(String other, Text why) {
        return new FieldViolation(other, why, value, unit, minimum, maximum);
    }

    /**
     * The same violation, said in a language for good.
     *
     * @param language that of the reader
     * @return a violation
     */
    public FieldViolation in(Language language) {
        return at(field, Text.name(reason.in(language)));
    }

    /**
     * The same, said of another field.
     *
     * @param other where, as a JSON pointer
     * @return the violation there
     */
    public FieldViolation at(String other) {
        return at(other, reason);
    }
}
