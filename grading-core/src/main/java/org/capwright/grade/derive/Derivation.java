package org.capwright.grade.derive;

import java.util.List;
import org.capwright.measure.Dimension;

/**
 * How the rule of one dimension came about.
 *
 * @param dimension which
 * @param exact growth from the base size before rounding, mm, one per size, 0 at the base size
 * @param rounded the same on the grid; each within half a grid step of the exact growth
 * @param estimated sizes whose body figure comes from a survey's fit
 * @param source where the growth comes from
 */
public record Derivation(
        Dimension dimension, List<Double> exact, List<Double> rounded, List<String> estimated, String source) {}
