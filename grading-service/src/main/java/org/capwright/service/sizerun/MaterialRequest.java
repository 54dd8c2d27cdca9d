package org.capwright.service.sizerun;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.capwright.lay.Fabric;
import org.capwright.lay.Materials;
import org.capwright.lay.Trimming;
import org.capwright.measure.InvalidMeasuresException;
import org.capwright.measure.Violation;
import org.capwright.pattern.PatternSet;

/**
 * What is to be reckoned.
 *
 * @param fabrics the cloths, in the order of the request
 * @param trimming how trimming is bought
 * @param pairs pairs of sleeves per size; empty for one pair of each size, laid by itself
 */
public record MaterialRequest(List<Fabric> fabrics, Trimming trimming, Map<String, Integer> pairs) {

    /** Where this stands in the request. */
    public static final String POINTER = "/materials";

    /**
     * Lays the pieces.
     *
     * @param patterns the pieces
     * @return what to buy
     * @throws InvalidMeasuresException if a cloth is too narrow, at the field of the request
     */
    public Materials needs(PatternSet patterns) {
        try {
            return pairs.isEmpty()
                    ? Materials.of(patterns, fabrics, trimming)
                    : Materials.ofOrder(patterns, fabrics, trimming, pairs);
        } catch (InvalidMeasuresException e) {
            throw placed(e);
        }
    }

    /**
     * Whether the pieces fit on the cloths, without laying them.
     *
     * @param patterns the pieces
     * @throws InvalidMeasuresException if a cloth is too narrow, at the field of the request
     */
    public void check(PatternSet patterns) {
        try {
            Materials.check(patterns, fabrics, pairs);
        } catch (InvalidMeasuresException e) {
            throw placed(e);
        }
    }

    private InvalidMeasuresException placed(InvalidMeasuresException e) {
        return new InvalidMeasuresException(
                e.violations().stream().map(this::placed).toList());
    }

    /** The engine names a cloth by its material and width; the request by its position. */
    private Violation placed(Violation violation) {
        List<String> pointers = new ArrayList<>();
        for (int i = 0; i < fabrics.size(); i++) {
            String material = fabrics.get(i).material().name().toLowerCase(Locale.ROOT);
            if (violation.pointer().equals("/fabric/" + material + "/width")
                    && violation.value().orElse(0) == fabrics.get(i).width()) {
                pointers.add(POINTER + "/fabrics/" + i + "/width");
            }
        }
        return new Violation(
                pointers.isEmpty() ? POINTER + violation.pointer() : pointers.get(0),
                violation.reason(),
                violation.quantity(),
                violation.value(),
                violation.minimum(),
                violation.maximum());
    }
}
