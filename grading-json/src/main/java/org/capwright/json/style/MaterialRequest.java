package org.capwright.json.style;

import java.util.List;
import java.util.Map;
import org.capwright.lay.Fabric;
import org.capwright.lay.LayEffort;
import org.capwright.lay.LayWatch;
import org.capwright.lay.Materials;
import org.capwright.lay.Trimming;
import org.capwright.pattern.PatternSet;
import org.capwright.quantity.InvalidMeasuresException;

/**
 * What is to be reckoned.
 *
 * @param fabrics the cloths, in the order of the request
 * @param trimming how trimming is bought
 * @param pairs pairs of sleeves per size; empty for one pair of each size, laid by itself
 * @param effort how long good lays are looked for
 */
public record MaterialRequest(List<Fabric> fabrics, Trimming trimming, Map<String, Integer> pairs, LayEffort effort) {

    /** Where this stands in the request. */
    public static final String POINTER = "/materials";

    /**
     * Lays the pieces.
     *
     * @param patterns the pieces
     * @param watch is told how far the search is, and may give it up
     * @return what to buy
     * @throws InvalidMeasuresException if a cloth is too narrow
     * @throws java.util.concurrent.CancellationException if the search was given up
     */
    public Materials needs(PatternSet patterns, LayWatch watch) {
        return pairs.isEmpty()
                ? Materials.of(patterns, fabrics, trimming, effort, watch)
                : Materials.ofOrder(patterns, fabrics, trimming, pairs, effort, watch);
    }

    /**
     * Whether the pieces fit on the cloths, without laying them.
     *
     * @param patterns the pieces
     * @throws InvalidMeasuresException if a cloth is too narrow
     */
    public void check(PatternSet patterns) {
        Materials.check(patterns, fabrics, pairs);
    }
}
