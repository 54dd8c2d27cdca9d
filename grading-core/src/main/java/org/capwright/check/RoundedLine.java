package org.capwright.check;

import java.util.ArrayList;
import java.util.List;
import org.apache.commons.math3.optim.MaxIter;
import org.apache.commons.math3.optim.linear.LinearConstraint;
import org.apache.commons.math3.optim.linear.LinearConstraintSet;
import org.apache.commons.math3.optim.linear.LinearObjectiveFunction;
import org.apache.commons.math3.optim.linear.NoFeasibleSolutionException;
import org.apache.commons.math3.optim.linear.NonNegativeConstraint;
import org.apache.commons.math3.optim.linear.Relationship;
import org.apache.commons.math3.optim.linear.SimplexSolver;
import org.apache.commons.math3.optim.nonlinear.scalar.GoalType;

/**
 * Whether rounding explains a row: whether some straight line, or two that meet at a size, passes every figure within its leeway. A small linear program; the figure that is in doubt may lie off by as
 * much more as it must.
 */
final class RoundedLine {

    /** No run has more sizes; a longer row is looked at by least squares alone. */
    private static final int MOST_SIZES = 60;

    private static final double NOTHING = 1e-6;

    private RoundedLine() {}

    /**
     * How far beyond its leeway a figure must lie off every line that passes the others within theirs.
     *
     * @param breaks how often the rule may break, 0 or 1
     * @return 0 where rounding explains the row with this figure; infinite where it does not even explain the others, or nothing is rounded
     */
    static double beyond(
            double[] values, double[] places, double[] leeways, int from, int to, int doubtful, int breaks) {
        boolean rounded = false;
        for (int i = from; i < to; i++) {
            rounded |= leeways[i] > 0;
        }
        double least = Double.POSITIVE_INFINITY;
        if (!rounded || values.length > MOST_SIZES) {
            return least;
        }
        least = beyond(values, places, leeways, from, to, doubtful, Double.POSITIVE_INFINITY);
        int last = breaks == 0 || to - from < 5 ? -1 : Math.min(values.length - 3, to - 2);
        for (int knot = Math.max(2, from + 1); knot <= last; knot++) {
            least = Math.min(least, beyond(values, places, leeways, from, to, doubtful, places[knot]));
        }
        return least < NOTHING ? 0 : least;
    }

    private static double beyond(
            double[] values, double[] places, double[] leeways, int from, int to, int doubtful, double knot) {
        List<LinearConstraint> constraints = new ArrayList<>();
        for (int i = from; i < to; i++) {
            double bend = Math.max(0, places[i] - knot);
            double slack = i == doubtful ? 1 : 0;
            constraints.add(new LinearConstraint(
                    new double[] {1, places[i] - places[from], bend, slack},
                    Relationship.GEQ,
                    values[i] - leeways[i] - NOTHING / 10));
            constraints.add(new LinearConstraint(
                    new double[] {1, places[i] - places[from], bend, -slack},
                    Relationship.LEQ,
                    values[i] + leeways[i] + NOTHING / 10));
        }
        constraints.add(new LinearConstraint(new double[] {0, 0, 0, 1}, Relationship.GEQ, 0));
        try {
            return new SimplexSolver()
                    .optimize(
                            new MaxIter(500),
                            new LinearObjectiveFunction(new double[] {0, 0, 0, 1}, 0),
                            new LinearConstraintSet(constraints),
                            GoalType.MINIMIZE,
                            new NonNegativeConstraint(false))
                    .getPoint()[3];
        } catch (NoFeasibleSolutionException e) {
            return Double.POSITIVE_INFINITY;
        }
    }
}
