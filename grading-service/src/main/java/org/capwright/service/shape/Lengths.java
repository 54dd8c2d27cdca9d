package org.capwright.service.shape;

import java.util.OptionalDouble;
import java.util.regex.Pattern;
import org.capwright.measure.Unit;
import org.capwright.service.problem.FoundViolations;
import tools.jackson.databind.JsonNode;

/** Reads lengths: numbers, or text with fractions. */
final class Lengths {

    static final Pattern DECIMAL = Pattern.compile("[+-]?\\d{1,9}(?:\\.\\d{1,12})?");

    private static final int LONGEST = 40;
    private static final double GREATEST_NUMBER = 1e9;

    private Lengths() {}

    static OptionalDouble read(JsonNode value, String where, Unit unit, FoundViolations found) {
        if (value.isNumber() && Math.abs(value.asDouble()) <= GREATEST_NUMBER) {
            return OptionalDouble.of(unit.toMillimetres(value.asDouble()));
        }
        if (value.isString() && value.stringValue().length() <= LONGEST) {
            try {
                return OptionalDouble.of(unit.parse(value.stringValue()));
            } catch (NumberFormatException e) {
                // said below
            }
        }
        String reason = "must be a length in " + unit.symbol() + ": a number, or text such as \"3.5\" or \"3 1/2\"";
        Texts.shown(value).ifPresentOrElse(shown -> found.add(where, reason, shown), () -> found.add(where, reason));
        return OptionalDouble.empty();
    }
}
