package org.capwright.lay;

import java.util.Map;

/**
 * Trimming to buy for the overlays.
 *
 * @param pairs pairs of sleeves per size, in the order of the run
 * @param hem length along the finished hems of all overlays and the finished sides above them, mm
 * @param attachedEdge length along the seam lines of all attached edges, flat, before pleating, mm
 * @param wasteFactor 1 + share of waste
 * @param step the shop's step, mm
 * @param length what to buy: (hem + attached edge) x waste factor, rounded up to the step, mm
 */
public record TrimmingNeed(
        Map<String, Integer> pairs, double hem, double attachedEdge, double wasteFactor, double step, double length) {}
