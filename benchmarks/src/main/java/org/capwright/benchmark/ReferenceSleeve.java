package org.capwright.benchmark;

import org.apache.commons.math3.analysis.integration.IterativeLegendreGaussIntegrator;
import org.apache.commons.math3.analysis.polynomials.PolynomialFunction;
import org.apache.commons.math3.analysis.polynomials.PolynomialSplineFunction;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.LUDecomposition;
import org.apache.commons.math3.linear.RealMatrix;
import org.apache.commons.math3.linear.RealVector;
import org.locationtech.jts.geom.Coordinate;

/**
 * The same half sleeve as a programmer would first write it with Commons Math and JTS: the quadratic program of the cap line solved with an active set and a
 * linear solver, its lengths by the library's integrator to the same accuracy, straight lines measured by JTS. Used as the named reference of the
 * benchmarks, and as an independent check of the engine's lengths.
 */
final class ReferenceSleeve {

    private static final double[] KNOTS = {0, 0.25, 1, 1.25, 1.5, 2, 2.5, 2.75, 3, 3.75, 4};
    private static final int COUNT = KNOTS.length;

    private final PolynomialSplineFunction line;
    private final double turn;
    private final double division;
    private final double sine;
    private final double cosine;

    private ReferenceSleeve(double width, double height, double outward, double inward) {
        double guide = Math.hypot(width, height);
        this.division = guide / 4;
        this.sine = height / guide;
        this.cosine = width / guide;
        double slope = height / width;
        double[] g = solve(slope, outward / division, inward / division);
        this.line = spline(slope, g);
        this.turn = turn(g);
    }

    static ReferenceSleeve half(double width, double height, double outward, double inward) {
        return new ReferenceSleeve(width, height, outward, inward);
    }

    /** The second derivatives at the knots with the least jerk, at most 0 before the middle and at least 0 after it. */
    private static double[] solve(double slope, double outward, double inward) {
        boolean[] fixed = new boolean[COUNT];
        double[] target = {outward - slope, -2 * slope, -inward - 3 * slope, -4 * slope, 0};
        while (true) {
            int held = 0;
            for (boolean f : fixed) {
                held += f ? 1 : 0;
            }
            RealMatrix system = new Array2DRowRealMatrix(COUNT + 5 + held, COUNT + 5 + held);
            RealVector right = new ArrayRealVector(COUNT + 5 + held);
            for (int k = 0; k + 1 < COUNT; k++) {
                double inverse = 1 / (KNOTS[k + 1] - KNOTS[k]);
                system.addToEntry(k, k, inverse);
                system.addToEntry(k + 1, k + 1, inverse);
                system.addToEntry(k, k + 1, -inverse);
                system.addToEntry(k + 1, k, -inverse);
            }
            for (int i = 0; i < 5; i++) {
                for (int k = 0; k < COUNT; k++) {
                    double entry = condition(i, k);
                    system.setEntry(COUNT + i, k, entry);
                    system.setEntry(k, COUNT + i, entry);
                }
                right.setEntry(COUNT + i, target[i]);
            }
            for (int k = 0, row = COUNT + 5; k < COUNT; k++) {
                if (fixed[k]) {
                    system.setEntry(row, k, 1);
                    system.setEntry(k, row, 1);
                    row++;
                }
            }
            RealVector solution = new LUDecomposition(system).getSolver().solve(right);
            int worst = -1;
            double by = 1e-12;
            for (int k = 0, row = COUNT + 5; k < COUNT; k++) {
                int sign = Integer.compare(k, 5);
                if (fixed[k]) {
                    // The multiplier of a bound that should be let go has the sign of the bound.
                    double pull = solution.getEntry(row++) * sign;
                    if (pull > by) {
                        by = pull;
                        worst = k;
                    }
                } else if (-solution.getEntry(k) * sign > by) {
                    by = -solution.getEntry(k) * sign;
                    worst = k;
                }
            }
            if (worst < 0) {
                return solution.getSubVector(0, COUNT).toArray();
            }
            fixed[worst] = !fixed[worst];
        }
    }

    /** What a unit second derivative at a knot, falling linearly to the neighbours, does to the four values and the last slope. */
    private static double condition(int i, int k) {
        double reach = i < 4 ? i + 1 : 4;
        PolynomialFunction weight =
                i < 4 ? new PolynomialFunction(new double[] {reach, -1}) : new PolynomialFunction(new double[] {1});
        double sum = 0;
        if (k > 0 && KNOTS[k - 1] < reach) {
            double width = KNOTS[k] - KNOTS[k - 1];
            sum += integral(
                    weight.multiply(new PolynomialFunction(new double[] {-KNOTS[k - 1] / width, 1 / width})),
                    KNOTS[k - 1],
                    KNOTS[k]);
        }
        if (k + 1 < COUNT && KNOTS[k] < reach) {
            double width = KNOTS[k + 1] - KNOTS[k];
            sum += integral(
                    weight.multiply(new PolynomialFunction(new double[] {KNOTS[k + 1] / width, -1 / width})),
                    KNOTS[k],
                    KNOTS[k + 1]);
        }
        return sum;
    }

    private static double integral(PolynomialFunction function, double from, double to) {
        double[] c = function.getCoefficients();
        double sum = 0;
        for (int i = 0; i < c.length; i++) {
            sum += c[i] * (Math.pow(to, i + 1) - Math.pow(from, i + 1)) / (i + 1);
        }
        return sum;
    }

    private static PolynomialSplineFunction spline(double slope, double[] g) {
        PolynomialFunction[] pieces = new PolynomialFunction[COUNT - 1];
        double value = 0;
        double rise = slope;
        for (int k = 0; k + 1 < COUNT; k++) {
            double width = KNOTS[k + 1] - KNOTS[k];
            double change = (g[k + 1] - g[k]) / width;
            pieces[k] = new PolynomialFunction(new double[] {value, rise, g[k] / 2, change / 6});
            value = pieces[k].value(width);
            rise = pieces[k].polynomialDerivative().value(width);
        }
        return new PolynomialSplineFunction(KNOTS, pieces);
    }

    private static double turn(double[] g) {
        int before = 0;
        int after = COUNT - 1;
        for (int k = 0; k < COUNT; k++) {
            before = g[k] < -1e-12 ? k : before;
            after = g[COUNT - 1 - k] > 1e-12 ? COUNT - 1 - k : after;
        }
        if (after > before + 1) {
            return Math.min(Math.max(2, KNOTS[before + 1]), KNOTS[after - 1]);
        }
        return KNOTS[before] + (KNOTS[after] - KNOTS[before]) * g[before] / (g[before] - g[after]);
    }

    /** Length of the cap line of this half, mm. */
    double capLength() {
        PolynomialSplineFunction slope = line.polynomialSplineDerivative();
        double sum = 0;
        for (int k = 0; k + 1 < COUNT; k++) {
            sum += new IterativeLegendreGaussIntegrator(8, 1e-12, 1e-12)
                    .integrate(
                            100_000,
                            x -> division * Math.sqrt(1 + slope.value(x) * slope.value(x)),
                            KNOTS[k],
                            KNOTS[k + 1]);
        }
        return sum;
    }

    /** Length of the raised edge of this half, mm. */
    double raisedLength(double rise, double join) {
        double reach = 4 * join;
        double c = turn / reach;
        double e = (1 + c) / 2;
        double fall = 3 / (1 + e);
        double[] breaks = {0, turn, e * reach, reach};
        PolynomialSplineFunction second = new org.apache.commons.math3.analysis.interpolation.LinearInterpolator()
                .interpolate(breaks, new double[] {-2 * fall / c, 0, 2 * fall / (1 - c), 0});
        PolynomialSplineFunction slope = line.polynomialSplineDerivative();
        java.util.TreeSet<Double> all = new java.util.TreeSet<>();
        for (double knot : KNOTS) {
            all.add(knot);
        }
        for (double knot : breaks) {
            all.add(knot);
        }
        double sum = 0;
        double from = 0;
        double liftAtFrom = 0;
        for (double to : all.tailSet(1e-12)) {
            double start = from;
            double startLift = liftAtFrom;
            java.util.function.DoubleUnaryOperator lift =
                    x -> x >= reach ? 0 : startLift + (second.value(start) + second.value(x)) / 2 * (x - start) / reach;
            sum += new IterativeLegendreGaussIntegrator(8, 1e-12, 1e-12)
                    .integrate(
                            100_000,
                            x -> {
                                double y = slope.value(Math.min(x, 4));
                                double dx = division * (cosine + y * sine);
                                double dy = division * (-sine + y * cosine) + rise / reach * lift.applyAsDouble(x);
                                return Math.hypot(dx, dy);
                            },
                            from,
                            to);
            liftAtFrom = to >= reach ? 0 : lift.applyAsDouble(to);
            from = to;
        }
        return sum;
    }

    /** Length of a straight hem, by JTS. */
    static double hemLength(double width, double depth) {
        return new Coordinate(width, 0).distance(new Coordinate(0, -depth));
    }
}
