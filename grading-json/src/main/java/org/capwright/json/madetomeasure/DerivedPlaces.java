package org.capwright.json.madetomeasure;

import java.util.HashMap;
import java.util.HashSet;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.UnaryOperator;
import org.capwright.json.problem.FieldViolation;
import org.capwright.json.problem.FoundViolations;
import org.capwright.json.problem.RefusedRequestException;
import org.capwright.json.problem.RequestField;
import org.capwright.quantity.Quantity;
import org.capwright.quantity.Unit;
import org.capwright.quantity.Violation;
import org.capwright.words.Text;

/** Where in the order the fields of the drafted run come from, so that what is wrong is named where the caller can mend it. */
public final class DerivedPlaces {

    private final Map<String, String> origins = new HashMap<>();
    private final Map<String, Sum> sums = new HashMap<>();
    private final Set<String> standIns = new HashSet<>();

    private record Sum(String measurement, double measured) {}

    DerivedPlaces() {
        origins.put("/sleeve/capEase", "/ease/capEase");
        origins.put("/sizes", "/order");
        origins.put("/sizes/0", "/order");
        origins.put("/baseSize", "/order");
    }

    /** A field that is the sum of an ease and a measurement, which is given in mm as well. */
    void derived(String field, String ease, String measurement, double measured) {
        origins.put(field, ease);
        sums.put(field, new Sum(measurement, measured));
    }

    /** A field whose value stands for one that could not be had: what is wrong with it is no fault of the caller's. */
    void standIn(String field) {
        standIns.add(field);
    }

    /**
     * Adds what is wrong with the run, at the fields of the order.
     *
     * @param refused what is wrong
     * @param found gathers it
     */
    public void add(RefusedRequestException refused, FoundViolations found) {
        for (FieldViolation violation : refused.violations()) {
            String origin = origins.getOrDefault(violation.field(), violation.field());
            if (!standIns.contains(violation.field()) && !found.names(origin)) {
                Optional.ofNullable(sums.get(violation.field()))
                        .ifPresentOrElse(
                                sum -> add(violation, origin, sum, found), () -> found.add(violation.at(origin)));
            }
        }
    }

    /** What is said of a sum is said of its ease: value and bounds less the measurement. */
    private static void add(FieldViolation violation, String origin, Sum sum, FoundViolations found) {
        Text why = violation.reason() instanceof Text.Sentence sentence
                ? sentence.parts().getOrDefault("reason", violation.reason())
                : violation.reason();
        Text reason = Text.of("{dimension}, which is {measurement} and this ease, {reason}")
                .with(
                        "dimension",
                        Text.of(violation.field().substring(violation.field().lastIndexOf('/') + 1)))
                .with("measurement", Text.of(sum.measurement));
        Optional<Unit> unit = violation.unit().flatMap(Unit::find);
        if (unit.isEmpty()) {
            found.add(violation.at(origin, reason.with("reason", violation.reason())));
            return;
        }
        UnaryOperator<Optional<Double>> less =
                number -> number.map(n -> unit.get().toMillimetres(n) - sum.measured);
        found.add(new Violation(
                new RequestField(origin),
                reason.with("reason", why),
                Quantity.LENGTH,
                some(less.apply(violation
                        .value()
                        .filter(Number.class::isInstance)
                        .map(value -> ((Number) value).doubleValue()))),
                some(less.apply(violation.minimum())),
                some(less.apply(violation.maximum()))));
    }

    private static OptionalDouble some(Optional<Double> number) {
        return number.isPresent() ? OptionalDouble.of(number.get()) : OptionalDouble.empty();
    }

    /**
     * Refuses what cannot be drafted.
     *
     * @param refused what is wrong
     * @param unit of the order
     * @throws RefusedRequestException with the same at the fields of the order
     */
    public void refuse(RefusedRequestException refused, Unit unit) {
        FoundViolations found = new FoundViolations(unit);
        add(refused, found);
        found.refuse();
    }
}
