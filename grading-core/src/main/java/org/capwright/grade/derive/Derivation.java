package org.capwright.grade.derive;

import java.util.List;
import java.util.Optional;
import org.capwright.measure.Dimension;
import org.capwright.tables.BodyDimension;

/**
 * How the rule of one dimension came about.
 *
 * @param dimension which
 * @param body the body dimension whose growth it follows; empty where it follows from other rules or from what was stated
 * @param exact growth from the base size before rounding, mm, one per size, 0 at the base size
 * @param rounded the same on the grid; each within half a grid step of the exact growth
 * @param estimated sizes whose body figure comes from a survey's fit
 * @param source where the growth comes from
 */
public record Derivation(
        Dimension dimension,
        Optional<BodyDimension> body,
        List<Double> exact,
        List<Double> rounded,
        List<String> estimated,
        String source) {}
