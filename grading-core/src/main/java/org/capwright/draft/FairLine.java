package org.capwright.draft;

import java.util.Optional;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.CholeskyDecomposition;
import org.apache.commons.math3.linear.LUDecomposition;
import org.apache.commons.math3.linear.MatrixUtils;
import org.apache.commons.math3.linear.RealMatrix;
import org.apache.commons.math3.linear.SingularValueDecomposition;

/**
 * The fairest twice differentiable line through the five points of half a cap, in the frame of the slanted guide line from apex to underarm point.
 *
 * <p>One unit of x is a quarter of the guide line, y is the distance from it in the same unit. The line passes through (0, 0), (1, outward), (2, 0),
 * (3, -inward), (4, 0); at both ends its slope is {@code slope} (in the sleeve: horizontal). Its second derivative g is piecewise linear between the knots.
 * An ordinary clamped spline through these points often hollows the cap at the apex or at the underarm; so g is required to be at most 0 before
 * the middle division and at least 0 after it, and of all lines that meet this the one with the least ∫ (y''')² dx is taken. That is a small quadratic
 * program with a single solution, which varies continuously with the measures. A cubic of a graph turns the way of its g, so the line has
 * exactly one inflection, within half a division of the middle.
 *
 * <p>With the equality conditions solved beforehand the program asks for the shortest vector z with N z ≥ h, the problem that C. L. Lawson and R. J. Hanson,
 * Solving Least Squares Problems (1974), chapter 23, call LDP. All matrices but h are constant.
 */
final class FairLine {

    /** Where the pieces of the line meet; finer towards the ends, where a shallow displacement needs a tight turn. */
    static final double[] KNOTS = {0, 0.25, 1, 1.25, 1.5, 2, 2.5, 2.75, 3, 3.75, 4};

    private static final int COUNT = KNOTS.length;
    private static final int MIDDLE = 5;
    private static final int CONDITIONS = 5;

    /** Maps the five conditions to the g of the fairest line without the conditions on its sign. */
    private static final double[][] FAIREST;

    /** Changes of g that keep the five conditions, scaled so that their lengths are their costs. */
    private static final double[][] FREE;

    static {
        RealMatrix conditions = new Array2DRowRealMatrix(CONDITIONS, COUNT);
        for (int i = 0; i < CONDITIONS; i++) {
            for (int k = 0; k < COUNT; k++) {
                conditions.setEntry(i, k, i < 4 ? hatMoment(k, i + 1) : hatArea(k));
            }
        }
        RealMatrix cost = new Array2DRowRealMatrix(COUNT, COUNT);
        for (int k = 0; k + 1 < COUNT; k++) {
            double inverse = 1 / (KNOTS[k + 1] - KNOTS[k]);
            cost.addToEntry(k, k, inverse);
            cost.addToEntry(k + 1, k + 1, inverse);
            cost.addToEntry(k, k + 1, -inverse);
            cost.addToEntry(k + 1, k, -inverse);
        }
        RealMatrix system = new Array2DRowRealMatrix(COUNT + CONDITIONS, COUNT + CONDITIONS);
        system.setSubMatrix(cost.getData(), 0, 0);
        system.setSubMatrix(conditions.getData(), COUNT, 0);
        system.setSubMatrix(conditions.transpose().getData(), 0, COUNT);
        FAIREST = new LUDecomposition(system)
                .getSolver()
                .getInverse()
                .getSubMatrix(0, COUNT - 1, COUNT, COUNT + CONDITIONS - 1)
                .getData();
        RealMatrix directions = new SingularValueDecomposition(
                        conditions.transpose().multiply(conditions))
                .getV()
                .getSubMatrix(0, COUNT - 1, CONDITIONS, COUNT - 1);
        RealMatrix lower =
                new CholeskyDecomposition(directions.transpose().multiply(cost).multiply(directions), 1e-9, 0).getL();
        FREE = directions.multiply(MatrixUtils.inverse(lower.transpose())).getData();
    }

    private final double[] values;
    private final double[] slopes;
    private final double turn;
    private final double leastSlope;

    private FairLine(double[] values, double[] slopes, double turn, double leastSlope) {
        this.values = values;
        this.slopes = slopes;
        this.turn = turn;
        this.leastSlope = leastSlope;
    }

    /** ∫ max(0, X - s) hat_k(s) ds: what g = hat_k adds to y at X. Each side of the hat is a line, so the cubic antiderivative is exact. */
    private static double hatMoment(int k, double x) {
        double sum = 0;
        if (k > 0) {
            sum += rampMoment(KNOTS[k - 1], KNOTS[k], 0, 1, x);
        }
        if (k + 1 < COUNT) {
            sum += rampMoment(KNOTS[k], KNOTS[k + 1], 1, 0, x);
        }
        return sum;
    }

    private static double rampMoment(double from, double to, double atFrom, double atTo, double x) {
        if (from >= x) {
            return 0;
        }
        double width = to - from;
        double arm = x - from;
        return width * (atFrom * (arm / 2 - width / 6) + atTo * (arm / 2 - width / 3));
    }

    private static double hatArea(int k) {
        double left = k > 0 ? KNOTS[k] - KNOTS[k - 1] : 0;
        double right = k + 1 < COUNT ? KNOTS[k + 1] - KNOTS[k] : 0;
        return (left + right) / 2;
    }

    /**
     * The fairest line with one inflection.
     *
     * @param slope slope at both ends against the guide line, above 0
     * @param outward displacement at the first division, in divisions
     * @param inward displacement at the third division, in divisions
     * @return the line, or nothing if every line through these points turns more than once
     */
    static Optional<FairLine> through(double slope, double outward, double inward) {
        double[] conditions = {outward - slope, -2 * slope, -inward - 3 * slope, -4 * slope, 0};
        double[] g = new double[COUNT];
        boolean bent = false;
        for (int k = 0; k < COUNT; k++) {
            double sum = 0;
            for (int i = 0; i < CONDITIONS; i++) {
                sum += FAIREST[k][i] * conditions[i];
            }
            g[k] = sum;
            bent |= sum * sign(k) < 0;
        }
        if (bent) {
            // In units of the slope, so that the tolerance of the solver fits every sleeve.
            double[][] rows = new double[COUNT - 1][];
            double[] least = new double[COUNT - 1];
            for (int k = 0, row = 0; k < COUNT; k++) {
                if (k != MIDDLE) {
                    double[] direction = FREE[k].clone();
                    for (int j = 0; j < direction.length; j++) {
                        direction[j] *= sign(k);
                    }
                    rows[row] = direction;
                    least[row++] = -g[k] * sign(k) / slope;
                }
            }
            Optional<double[]> change = LeastDistance.solve(rows, least);
            if (change.isEmpty()) {
                return Optional.empty();
            }
            double[] z = change.get();
            for (int k = 0; k < COUNT; k++) {
                for (int j = 0; j < z.length; j++) {
                    g[k] += FREE[k][j] * z[j] * slope;
                }
                if (g[k] * sign(k) < 0) {
                    g[k] = 0; // rounding of a bound that is met with equality
                }
            }
        }
        return Optional.of(integrated(slope, outward, inward, g));
    }

    private static int sign(int knot) {
        return Integer.compare(knot, MIDDLE);
    }

    private static FairLine integrated(double slope, double outward, double inward, double[] g) {
        double[] values = new double[COUNT];
        double[] slopes = new double[COUNT];
        slopes[0] = slope;
        for (int k = 1; k < COUNT; k++) {
            double width = KNOTS[k] - KNOTS[k - 1];
            slopes[k] = slopes[k - 1] + width * (g[k - 1] + g[k]) / 2;
            values[k] = values[k - 1] + width * (slopes[k - 1] + width * (2 * g[k - 1] + g[k]) / 6);
        }
        values[2] = outward;
        values[MIDDLE] = 0;
        values[8] = -inward;
        values[COUNT - 1] = 0;
        slopes[COUNT - 1] = slope;
        int before = 0;
        int after = COUNT - 1;
        for (int k = 0; k < COUNT; k++) {
            before = g[k] < 0 ? k : before;
            after = g[COUNT - 1 - k] > 0 ? COUNT - 1 - k : after;
        }
        if (after > before + 1) {
            // g is nothing over a stretch: the turn is anywhere in it, the nearest to the middle is taken.
            double place = Math.min(Math.max(KNOTS[MIDDLE], KNOTS[before + 1]), KNOTS[after - 1]);
            return new FairLine(values, slopes, place, slopes[before + 1]);
        }
        double part = (KNOTS[after] - KNOTS[before]) * g[before] / (g[before] - g[after]);
        return new FairLine(values, slopes, KNOTS[before] + part, slopes[before] + part * g[before] / 2);
    }

    /** Where the line turns from convex to concave, x in divisions. */
    double turn() {
        return turn;
    }

    /** The slope at the turn, where the line falls fastest against the guide line. */
    double leastSlope() {
        return leastSlope;
    }

    /** Distance from the guide line at a knot, in divisions. */
    double value(int knot) {
        return values[knot];
    }

    /** Slope against the guide line at a knot. */
    double slope(int knot) {
        return slopes[knot];
    }
}
