package org.capwright.json.schema;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.capwright.json.problem.RequestField;
import org.capwright.quantity.Quantity;
import org.capwright.quantity.Unit;
import org.capwright.quantity.Violation;
import org.capwright.words.Text;
import tools.jackson.databind.JsonNode;

/** Reads the growth of a dimension: one increment for all intervals, or one for each. */
final class Growths {

    private Growths() {}

    /** Millimetres per interval; with a negative number of intervals a list of any length is taken. */
    static Optional<List<Double>> read(Given given, Unit unit, FieldType.Growth kind, int intervals) {
        JsonNode value = given.node();
        FieldType.Length range = new FieldType.Length(-kind.greatest(), kind.greatest());
        List<Double> increments = new ArrayList<>();
        if (!value.isArray()) {
            OptionalDouble one = Lengths.within(given, unit, range);
            for (int i = 0; i < intervals && one.isPresent(); i++) {
                increments.add(one.getAsDouble());
            }
            return one.isPresent() ? Optional.of(increments) : Optional.empty();
        }
        if (intervals >= 0 && value.size() != intervals) {
            given.found()
                    .add(Violation.outside(
                            new RequestField(given.where()),
                            Text.of("a list needs one increment for each of the {count} intervals between neighbouring"
                                            + " sizes; number of increments")
                                    .with("count", intervals),
                            Quantity.COUNT,
                            value.size(),
                            intervals,
                            intervals));
            return Optional.empty();
        }
        for (int i = 0; i < value.size(); i++) {
            Lengths.within(given.item(i), unit, range).ifPresent(increments::add);
        }
        return increments.size() == value.size() ? Optional.of(increments) : Optional.empty();
    }
}
