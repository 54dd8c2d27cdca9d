package org.capwright.json.style;

import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.capwright.json.problem.FoundViolations;
import org.capwright.json.problem.RequestField;
import org.capwright.json.schema.RequestObject;
import org.capwright.measure.Dimension;
import org.capwright.quantity.Violation;

/** Reads how the armhole is divided: the engine knows the whole and the front, the request may give any two of whole, front and back. */
final class ArmholeReader {

    /** What whole, front and back may be off against each other when all three are given, mm. */
    private static final double AGREEMENT = 0.05;

    private final RequestObject sleeve;
    private final Optional<RequestObject> front;
    private final Optional<RequestObject> back;
    private final Map<Dimension, Double> values;
    private final FoundViolations found;

    ArmholeReader(
            RequestObject sleeve,
            Optional<RequestObject> front,
            Optional<RequestObject> back,
            Map<Dimension, Double> values,
            FoundViolations found) {
        this.sleeve = sleeve;
        this.front = front;
        this.back = back;
        this.values = values;
        this.found = found;
    }

    void read() {
        OptionalDouble behind = back.isPresent() ? back.get().length("armhole") : OptionalDouble.empty();
        if (behind.isEmpty()) {
            checkFront();
            return;
        }
        Optional<Double> whole = Optional.ofNullable(values.get(Dimension.ARMHOLE));
        Optional<Double> before = Optional.ofNullable(values.get(Dimension.FRONT_ARMHOLE));
        double length = behind.getAsDouble();
        if (whole.isPresent() && before.isPresent()) {
            double rest = whole.get() - before.get();
            if (Math.abs(rest - length) > AGREEMENT) {
                found.add(Violation.lengthOutside(
                        new RequestField("/sleeve/back/armhole"),
                        "is not what the front leaves of the armhole",
                        length,
                        rest,
                        rest));
            }
        } else if (before.isPresent() && !sleeve.has("armhole")) {
            values.put(Dimension.ARMHOLE, before.get() + length);
        } else if (whole.isPresent() && !frontHasArmhole()) {
            putFront(whole.get() - length, whole.get());
        } else if (!sleeve.has("armhole") && !frontHasArmhole()) {
            sleeve.refuse("armhole", "is missing; the back armhole alone does not tell the whole");
        }
    }

    private boolean frontHasArmhole() {
        return front.map(half -> half.has("armhole")).orElse(false);
    }

    private void putFront(double rest, double whole) {
        if (rest < Dimension.FRONT_ARMHOLE.least()) {
            found.add(Violation.lengthAbove(
                    new RequestField("/sleeve/back/armhole"),
                    "leaves too little of the armhole for the front",
                    whole - rest,
                    whole - Dimension.FRONT_ARMHOLE.least()));
        } else {
            values.put(Dimension.FRONT_ARMHOLE, rest);
        }
    }

    private void checkFront() {
        Optional<Double> before = Optional.ofNullable(values.get(Dimension.FRONT_ARMHOLE));
        if (before.isEmpty()) {
            return;
        }
        Optional<Double> whole = Optional.ofNullable(values.get(Dimension.ARMHOLE));
        if (whole.isPresent() && before.get() > whole.get() - Dimension.FRONT_ARMHOLE.least()) {
            found.add(Violation.lengthAbove(
                    Dimension.FRONT_ARMHOLE,
                    "leaves too little of the armhole for the back",
                    before.get(),
                    whole.get() - Dimension.FRONT_ARMHOLE.least()));
        } else if (!sleeve.has("armhole")) {
            sleeve.refuse("armhole", "is missing; the front armhole alone does not tell the whole");
        }
    }
}
