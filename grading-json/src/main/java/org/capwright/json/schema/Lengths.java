package org.capwright.json.schema;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.regex.Pattern;
import org.capwright.json.problem.RequestField;
import org.capwright.quantity.Unit;
import org.capwright.quantity.Violation;
import org.capwright.words.Text;
import tools.jackson.databind.JsonNode;

/** Reads lengths: numbers, or text with fractions. */
final class Lengths {

    static final Pattern DECIMAL = Pattern.compile("[+-]?\\d{1,9}(?:\\.\\d{1,12})?");

    private static final int LONGEST = 40;

    private Lengths() {}

    /** Millimetres, if the value is a length in its range. */
    static OptionalDouble within(Given given, Unit unit, FieldType.Length range) {
        OptionalDouble length = read(given, unit);
        return length.isPresent() ? within(given, length.getAsDouble(), range.least(), range.greatest()) : length;
    }

    private static OptionalDouble within(Given given, double length, double least, double greatest) {
        if (length >= least && length <= greatest) {
            return OptionalDouble.of(length);
        }
        given.found()
                .add(Violation.lengthOutside(new RequestField(given.where()), "out of range", length, least, greatest));
        return OptionalDouble.empty();
    }

    private static OptionalDouble read(Given given, Unit unit) {
        JsonNode value = given.node();
        if (value.isNumber() && Math.abs(value.asDouble()) <= Numbers.GREATEST) {
            return OptionalDouble.of(unit.toMillimetres(value.asDouble()));
        }
        if (value.isString() && value.stringValue().length() <= LONGEST) {
            try {
                return OptionalDouble.of(unit.parse(value.stringValue()));
            } catch (NumberFormatException e) {
                // said below
            }
        }
        given.refuse(Text.of("must be a length in {unit}: a number, or text such as \"3.5\" or \"3 1/2\"")
                .with("unit", unit.symbol()));
        return OptionalDouble.empty();
    }

    /** Millimetres, if the value is a length that names its own unit. */
    static OptionalDouble step(Given given, FieldType.Step range) {
        String text = given.node().isString() ? given.node().stringValue().strip() : "";
        for (Unit unit : Unit.values()) {
            if (text.endsWith(unit.symbol())) {
                try {
                    double step = unit.parse(
                            text.substring(0, text.length() - unit.symbol().length()));
                    return within(given, step, range.least(), range.greatest());
                } catch (NumberFormatException e) {
                    break;
                }
            }
        }
        given.refuse("must be a text of a number and a unit, such as \"1 mm\", \"0.5 cm\" or \"1/8 in\"");
        return OptionalDouble.empty();
    }

    /** Lengths in the unit of the request, empty where one is null or wrong. */
    static List<OptionalDouble> gapped(Given given, Unit unit, FieldType.Gapped kind) {
        JsonNode value = given.node();
        if (!value.isArray() || value.size() > kind.most()) {
            given.refuse(Text.of("must be a list of no more than {most} lengths, null where one is not known")
                    .with("most", kind.most()));
            return List.of();
        }
        List<OptionalDouble> lengths = new ArrayList<>();
        for (int i = 0; i < value.size(); i++) {
            lengths.add(asGiven(given.item(i), unit));
        }
        return lengths;
    }

    /** A number is kept as it is, off the noise of a conversion to millimetres and back. */
    private static OptionalDouble asGiven(Given given, Unit unit) {
        if (given.node().isNull()) {
            return OptionalDouble.empty();
        }
        OptionalDouble length = read(given, unit);
        if (length.isEmpty()) {
            return length;
        }
        return OptionalDouble.of(
                given.node().isNumber() ? given.node().asDouble() : unit.fromMillimetres(length.getAsDouble()));
    }
}
