package org.capwright.json.schema;

import java.util.Optional;
import java.util.OptionalDouble;
import org.capwright.json.problem.RequestField;
import org.capwright.quantity.Quantity;
import org.capwright.quantity.Violation;
import org.capwright.words.Text;
import tools.jackson.databind.JsonNode;

/** Reads plain numbers. */
final class Numbers {

    static final double GREATEST = 1e9;

    private Numbers() {}

    static OptionalDouble ratio(Given given, FieldType.Ratio kind) {
        if (!isNumber(given.node())) {
            given.refuse(Text.of("must be a number from {least} to {greatest}")
                    .with("least", Text.figures(String.valueOf(kind.least())))
                    .with("greatest", Text.figures(String.valueOf(kind.greatest()))));
            return OptionalDouble.empty();
        }
        return within(given, Quantity.RATIO, kind.least(), kind.greatest());
    }

    static Optional<Integer> whole(Given given, FieldType.Whole kind) {
        if (!isNumber(given.node())
                || given.node().asDouble() != Math.rint(given.node().asDouble())) {
            given.refuse(Text.of("must be a whole number from {least} to {greatest}")
                    .with("least", kind.least())
                    .with("greatest", kind.greatest()));
            return Optional.empty();
        }
        OptionalDouble number = within(given, Quantity.COUNT, kind.least(), kind.greatest());
        return number.isPresent() ? Optional.of((int) number.getAsDouble()) : Optional.empty();
    }

    private static boolean isNumber(JsonNode value) {
        return value.isNumber() && Math.abs(value.asDouble()) <= GREATEST;
    }

    private static OptionalDouble within(Given given, Quantity quantity, double least, double greatest) {
        double value = given.node().asDouble();
        if (value >= least && value <= greatest) {
            return OptionalDouble.of(value);
        }
        given.found()
                .add(Violation.outside(
                        new RequestField(given.where()), "out of range", quantity, value, least, greatest));
        return OptionalDouble.empty();
    }
}
