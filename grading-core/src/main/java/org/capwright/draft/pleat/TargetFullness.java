package org.capwright.draft.pleat;

import java.util.function.DoubleUnaryOperator;
import org.apache.commons.math3.analysis.solvers.BrentSolver;
import org.capwright.measure.Dimension;
import org.capwright.measure.SleeveSubject.Option;
import org.capwright.quantity.InvalidMeasuresException;
import org.capwright.quantity.Quantity;
import org.capwright.quantity.Subject;
import org.capwright.quantity.Violation;

/** Finds the rise of an apex that makes the top edge as long as a target asks. */
public final class TargetFullness {

    /** Brent's method stops when the rise is known to this, mm. */
    private static final double RISE_TOLERANCE = 1e-10;

    private static final int MOST_STEPS = 200;

    private TargetFullness() {}

    /**
     * Solves for the rise.
     *
     * @param target fullness ratio, or pleats
     * @param span finished seam, mm, above 0
     * @param edgeOfRise length of the flat edge for a rise; continuous and increasing over the bracket
     * @param least least rise to be tried, mm
     * @param greatest greatest rise to be tried, mm, not below {@code least}
     * @return the rise between the bounds, in mm, whose edge has the asked length to 1e-6 mm
     * @throws InvalidMeasuresException if the target is out of its range or no rise between the bounds meets it; the reason says which bound stops it, the
     *     violation's minimum and maximum are the targets that the bounds reach
     */
    public static double rise(
            FullnessTarget target, double span, DoubleUnaryOperator edgeOfRise, double least, double greatest) {
        if (!(greatest >= least)) {
            throw new IllegalArgumentException("no rise lies between " + least + " and " + greatest);
        }
        double shortest = edgeOfRise.applyAsDouble(least);
        double longest = edgeOfRise.applyAsDouble(greatest);
        double wanted = target.edge(span);
        if (!(wanted > span) && !(wanted == span && target instanceof FullnessTarget.Ratio)) {
            throw outside(target, span, "the target must not be less than the span itself", shortest, longest);
        }
        if (wanted < shortest) {
            throw outside(target, span, "even the least rise gives more than this", shortest, longest);
        }
        if (!(wanted <= longest)) {
            throw outside(target, span, "even the greatest rise gives less than this", shortest, longest);
        }
        if (wanted == shortest) {
            return least;
        }
        if (wanted == longest) {
            return greatest;
        }
        return new BrentSolver(RISE_TOLERANCE)
                .solve(MOST_STEPS, rise -> edgeOfRise.applyAsDouble(rise) - wanted, least, greatest);
    }

    private static InvalidMeasuresException outside(
            FullnessTarget target, double span, String reason, double shortest, double longest) {
        if (target instanceof FullnessTarget.Pleats pleats) {
            double edgePerDepth = pleats.count() * pleats.kind().takeUp(1);
            return violation(
                    Dimension.PLEAT_DEPTH,
                    reason,
                    Quantity.LENGTH,
                    pleats.depth(),
                    Math.max(0, (shortest - span) / edgePerDepth),
                    (longest - span) / edgePerDepth);
        }
        FullnessTarget.Ratio ratio = (FullnessTarget.Ratio) target;
        return violation(
                Option.FULLNESS, reason, Quantity.RATIO, ratio.ratio(), Math.max(1, shortest / span), longest / span);
    }

    private static InvalidMeasuresException violation(
            Subject subject, String reason, Quantity quantity, double value, double minimum, double maximum) {
        return new InvalidMeasuresException(Violation.outside(subject, reason, quantity, value, minimum, maximum));
    }
}
