package org.capwright.json.problem;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.capwright.quantity.Quantity;
import org.capwright.quantity.Unit;
import org.capwright.quantity.Violation;
import org.capwright.words.Text;

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
    public void add(String field, Text reason) {
        add(FieldViolation.of(field, reason, Optional.empty()));
    }

    /**
     * Adds something wrong that no range mends.
     *
     * @param field where, as a JSON pointer
     * @param reason what is wrong and what would work
     */
    public void add(String field, String reason) {
        add(field, Text.of(reason));
    }

    /**
     * Adds something wrong with a value that can be shown.
     *
     * @param field where, as a JSON pointer
     * @param reason what is wrong and what would work
     * @param value the value given
     */
    public void add(String field, Text reason, Object value) {
        add(FieldViolation.of(field, reason, Optional.of(value)));
    }

    /**
     * Adds something wrong with a value that can be shown.
     *
     * @param field where, as a JSON pointer
     * @param reason what is wrong and what would work
     * @param value the value given
     */
    public void add(String field, String reason, Object value) {
        add(field, Text.of(reason), value);
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
        Optional<Text> works = works(minimum, maximum, length);
        Text reason = Text.of(
                        value.isPresent() && works.isPresent()
                                ? "{reason}: {value}; {works}"
                                : value.isPresent()
                                        ? "{reason}: {value}"
                                        : works.isPresent() ? "{reason}: {works}" : "{reason}")
                .with("reason", violation.sentence())
                .with("value", value.map(v -> plain(v, length)).orElse(Text.name("")))
                .with("works", works.orElse(Text.name("")));
        add(new FieldViolation(
                field,
                reason,
                violation.given().<Object>map(given -> given).or(() -> value),
                length && (value.isPresent() || minimum.isPresent() || maximum.isPresent())
                        ? Optional.of(unit.symbol())
                        : Optional.empty(),
                minimum,
                maximum));
    }

    private Optional<Text> works(Optional<Double> minimum, Optional<Double> maximum, boolean length) {
        if (minimum.isEmpty() && maximum.isEmpty()) {
            return Optional.empty();
        }
        return Optional.of(Text.of(
                        maximum.isEmpty()
                                ? "{least} or more would work"
                                : minimum.isEmpty()
                                        ? "{greatest} or less would work"
                                        : minimum.equals(maximum)
                                                ? "only {greatest} would work"
                                                : "{number} to {greatest} would work")
                .with("number", minimum.map(v -> plain(v, false)).orElse(Text.name("")))
                .with("least", minimum.map(v -> plain(v, length)).orElse(Text.name("")))
                .with("greatest", maximum.map(v -> plain(v, length)).orElse(Text.name(""))));
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

    private Text plain(double value, boolean length) {
        BigDecimal text = BigDecimal.valueOf(value).stripTrailingZeros();
        String number = text.signum() == 0 ? "0" : text.toPlainString();
        return Text.figures(length ? number + " " + unit.symbol() : number);
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
     * @throws RefusedRequestException with everything found
     */
    public void refuse() {
        if (!list.isEmpty()) {
            throw new RefusedRequestException(list);
        }
    }
}
