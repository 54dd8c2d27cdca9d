package org.capwright.service.http.problem;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.capwright.quantity.Quantity;
import org.capwright.quantity.Unit;
import org.capwright.quantity.Violation;

/** Gathers everything that is wrong with a request, ranges in the caller's unit. */
public final class FoundViolations {

    /** More than these help nobody. */
    private static final int MOST = 100;

    private final List<FieldViolation> list = new ArrayList<>();
    private final Unit unit;

    /**
     * An empty gathering.
     *
     * @param unit unit in which lengths are shown
     */
    public FoundViolations(Unit unit) {
        this.unit = unit;
    }

    /**
     * Adds one.
     *
     * @param violation what is wrong
     */
    public void add(FieldViolation violation) {
        if (list.size() < MOST) {
            list.add(violation);
        }
    }

    /**
     * Adds something wrong that no range mends.
     *
     * @param field where, as a JSON pointer
     * @param reason what is wrong and what would work
     */
    public void add(String field, String reason) {
        add(FieldViolation.of(field, reason, Optional.empty()));
    }

    /**
     * Adds something wrong with a value that can be shown.
     *
     * @param field where, as a JSON pointer
     * @param reason what is wrong and what would work
     * @param value the value given
     */
    public void add(String field, String reason, Object value) {
        add(FieldViolation.of(field, reason, Optional.of(value)));
    }

    /**
     * Adds what the engine found wrong.
     *
     * @param violations lengths in millimetres
     * @param places where their subjects stand
     */
    public void addAll(List<Violation> violations, RequestPlaces places) {
        violations.forEach(violation -> add(violation, places.of(violation.subject())));
    }

    /**
     * Adds what was found wrong with a field of the request or a measurement of the wearer.
     *
     * @param violation lengths in millimetres
     */
    public void add(Violation violation) {
        add(violation, RequestPlaces.USUAL.of(violation.subject()));
    }

    /**
     * Adds what was found wrong; bounds are rounded to the side that still works.
     *
     * @param violation lengths in millimetres
     * @param field where its subject stands, as a JSON pointer
     */
    public void add(Violation violation, String field) {
        boolean length = violation.quantity() == Quantity.LENGTH;
        Optional<Double> value = shown(violation.value(), length, RoundingMode.HALF_EVEN);
        Optional<Double> minimum = shown(violation.least(), length, RoundingMode.CEILING);
        Optional<Double> maximum = shown(violation.greatest(), length, RoundingMode.FLOOR);
        if (minimum.isPresent() && maximum.isPresent() && minimum.get() > maximum.get()) {
            minimum = shown(violation.least(), length, RoundingMode.HALF_EVEN);
            maximum = shown(violation.greatest(), length, RoundingMode.HALF_EVEN);
        }
        String symbol = length ? " " + unit.symbol() : "";
        StringBuilder reason = new StringBuilder(violation.sentence());
        value.ifPresent(v -> reason.append(": ").append(plain(v)).append(symbol));
        if (minimum.isPresent() || maximum.isPresent()) {
            reason.append(value.isPresent() ? "; " : ": ");
        }
        if (minimum.isPresent() && minimum.equals(maximum)) {
            reason.append("only ").append(plain(minimum.get())).append(symbol);
        } else if (minimum.isPresent() && maximum.isPresent()) {
            reason.append(plain(minimum.get()))
                    .append(" to ")
                    .append(plain(maximum.get()))
                    .append(symbol);
        } else {
            minimum.ifPresent(v -> reason.append(plain(v)).append(symbol).append(" or more"));
            maximum.ifPresent(v -> reason.append(plain(v)).append(symbol).append(" or less"));
        }
        if (minimum.isPresent() || maximum.isPresent()) {
            reason.append(" would work");
        }
        add(new FieldViolation(
                field,
                reason.toString(),
                violation.given().<Object>map(given -> given).or(() -> value),
                length && (value.isPresent() || minimum.isPresent() || maximum.isPresent())
                        ? Optional.of(unit.symbol())
                        : Optional.empty(),
                minimum,
                maximum));
    }

    private Optional<Double> shown(OptionalDouble value, boolean length, RoundingMode rounding) {
        if (value.isEmpty() || !Double.isFinite(value.getAsDouble())) {
            return Optional.empty();
        }
        double raw = length ? unit.fromMillimetres(value.getAsDouble()) : value.getAsDouble();
        // First off the noise of binary fractions, so that a bound of 1 is not rounded up from 1.0000000000000002.
        BigDecimal clean = BigDecimal.valueOf(raw).setScale(9, RoundingMode.HALF_EVEN);
        return Optional.of(clean.setScale(rounding == RoundingMode.HALF_EVEN ? 6 : 4, rounding)
                .doubleValue());
    }

    private static String plain(double value) {
        BigDecimal text = BigDecimal.valueOf(value).stripTrailingZeros();
        return text.signum() == 0 ? "0" : text.toPlainString();
    }

    /**
     * Whether a field, or an object that it lies in, was already found wrong.
     *
     * @param field a JSON pointer
     * @return true if a complaint that follows from it would only be noise
     */
    public boolean names(String field) {
        for (FieldViolation violation : list) {
            String named = violation.field();
            if (field.startsWith(named) && (field.length() == named.length() || field.charAt(named.length()) == '/')) {
                return true;
            }
        }
        return false;
    }

    /**
     * Whether nothing is wrong so far.
     *
     * @return true if nothing was added
     */
    public boolean isEmpty() {
        return list.isEmpty();
    }

    /**
     * What was found.
     *
     * @return in the order in which it was found, no more than a hundred
     */
    public List<FieldViolation> list() {
        return List.copyOf(list);
    }

    /**
     * Refuses the request if anything is wrong.
     *
     * @throws ProblemException with everything found
     */
    public void refuse() {
        if (!list.isEmpty()) {
            String detail = (list.size() == 1 ? "One field is wrong: " : list.size() + " fields are wrong, the first: ")
                    + (list.get(0).field().isEmpty() ? "the body" : list.get(0).field()) + ": "
                    + list.get(0).reason() + ".";
            throw new ProblemException(Problem.of(ProblemKind.INVALID_REQUEST, detail, list));
        }
    }
}
