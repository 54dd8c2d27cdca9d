package org.capwright.json.madetomeasure;

import java.util.HashMap;
import java.util.HashSet;
import java.util.Map;
import java.util.Set;
import org.capwright.json.problem.FieldViolation;
import org.capwright.json.problem.FoundViolations;
import org.capwright.json.problem.RefusedRequestException;
import org.capwright.quantity.Unit;
import org.capwright.words.Text;

/** Where in the order the fields of the drafted run come from, so that what is wrong is named where the caller can mend it. */
public final class DerivedPlaces {

    private final Map<String, String> origins = new HashMap<>();
    private final Map<String, String> sums = new HashMap<>();
    private final Set<String> standIns = new HashSet<>();

    DerivedPlaces() {
        origins.put("/sleeve/capEase", "/ease/capEase");
        origins.put("/sizes", "/order");
        origins.put("/sizes/0", "/order");
        origins.put("/baseSize", "/order");
    }

    /** A field that is the sum of a measurement and an ease. */
    void derived(String field, String ease, String measurement) {
        origins.put(field, ease);
        sums.put(field, measurement);
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
                found.add(violation.at(origin, reason(violation)));
            }
        }
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

    private Text reason(FieldViolation violation) {
        String measurement = sums.get(violation.field());
        if (measurement == null) {
            return violation.reason();
        }
        String dimension = violation.field().substring(violation.field().lastIndexOf('/') + 1);
        return Text.of("{dimension}, which is {measurement} and this ease, {reason}")
                .with("dimension", Text.of(dimension))
                .with("measurement", Text.of(measurement))
                .with("reason", violation.reason());
    }
}
