package org.capwright.check;

import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import org.capwright.quantity.InvalidMeasuresException;
import org.capwright.quantity.Violation;
import org.capwright.words.Text;

/**
 * The limits of one label: the usual ones, but for those it has set itself.
 *
 * @param own limits set by the label; may be empty
 */
public record Thresholds(Map<Threshold, Double> own) {

    private static final Thresholds USUAL = new Thresholds(Map.of());

    /**
     * Checks the limits.
     *
     * @param own limits set by the label; may be empty
     * @throws InvalidMeasuresException naming every limit that is out of its range
     */
    public Thresholds {
        List<Violation> found = new ArrayList<>();
        EnumMap<Threshold, Double> copy = new EnumMap<>(Threshold.class);
        copy.putAll(own);
        copy.forEach((threshold, limit) -> {
            if (!(limit >= threshold.least() && limit <= threshold.greatest())) {
                found.add(new Violation(
                        threshold,
                        "outside what the limit can be set to",
                        threshold.quantity(),
                        Double.isFinite(limit) ? OptionalDouble.of(limit) : OptionalDouble.empty(),
                        OptionalDouble.of(threshold.least()),
                        OptionalDouble.of(threshold.greatest())));
            }
        });
        if (!found.isEmpty()) {
            throw new InvalidMeasuresException(found);
        }
        own = Collections.unmodifiableMap(copy);
    }

    /**
     * The usual limits.
     *
     * @return limits of a label that sets none
     */
    public static Thresholds usual() {
        return USUAL;
    }

    /**
     * The same limits with one set.
     *
     * @param threshold which
     * @param limit millimetres, a count or a ratio, within the range of the threshold
     * @return new limits
     * @throws InvalidMeasuresException if the limit is out of range
     */
    public Thresholds with(Threshold threshold, double limit) {
        Map<Threshold, Double> copy = new EnumMap<>(Threshold.class);
        copy.putAll(own);
        copy.put(threshold, limit);
        return new Thresholds(copy);
    }

    /**
     * One limit.
     *
     * @param threshold which
     * @return millimetres, a count or a ratio
     */
    public double get(Threshold threshold) {
        Double limit = own.get(threshold);
        return limit == null ? threshold.usual() : limit;
    }

    /**
     * Where a limit comes from.
     *
     * @param threshold which
     * @return the source of the usual limit, or that the label has set it
     */
    public String source(Threshold threshold) {
        return own.containsKey(threshold) ? "set by the label" : threshold.source();
    }

    /** Where a limit comes from, and the figure of the body that it is counted from. */
    Text source(Threshold threshold, BodyFigure body) {
        return Text.of("{limit}; body: {figure}")
                .with("limit", Text.of(source(threshold)))
                .with("figure", body.source());
    }
}
