package org.capwright.exchange.dxf;

import java.util.Arrays;
import java.util.List;
import org.apache.commons.math3.analysis.UnivariateFunction;
import org.apache.commons.math3.analysis.interpolation.SplineInterpolator;
import org.capwright.exchange.ForeignInputException;
import org.capwright.geometry.Placing;
import org.capwright.geometry.Point;
import org.capwright.words.Text;

/** A SPLINE: a B-spline of any degree, with weights or without, evaluated by the algorithm of de Boor (On calculating with B-splines, J. Approx. Theory 6, 1972). */
final class SplineEntity {

    private static final int HIGHEST_DEGREE = 11;
    private static final int MOST_POINTS = 20_000;

    private final int degree;
    private final double[] knots;
    private final double[] x;
    private final double[] y;
    private final double[] weights;
    private final Placing placing;
    private final double[] px;
    private final double[] py;
    private final double[] pw;

    private SplineEntity(int degree, double[] knots, double[] x, double[] y, double[] weights, Placing placing) {
        this.degree = degree;
        this.knots = knots;
        this.x = x;
        this.y = y;
        this.weights = weights;
        this.placing = placing;
        this.px = new double[degree + 1];
        this.py = new double[degree + 1];
        this.pw = new double[degree + 1];
    }

    static List<Point> flattened(DxfEntity entity, Placing placing, Flattening.Budget budget)
            throws ForeignInputException {
        if (entity.find(10) < 0 && entity.find(11) >= 0) {
            return through(entity, placing, budget);
        }
        SplineEntity spline = of(entity, placing);
        return Flattening.of(spline::at, spline.breaks(), budget);
    }

    /** A spline given by the points it runs through alone: a natural cubic spline over the lengths of its chords. */
    private static List<Point> through(DxfEntity entity, Placing placing, Flattening.Budget budget)
            throws ForeignInputException {
        double[] x = values(entity, 11);
        double[] y = values(entity, 21);
        if (x.length != y.length || x.length < 3 || x.length > MOST_POINTS) {
            throw entity.error(
                    Text.of("without control points it needs between 3 and {most} fit points with x and y, not"
                                    + " {across} and {up}")
                            .with("most", MOST_POINTS)
                            .with("across", x.length)
                            .with("up", y.length));
        }
        double[] reached = new double[x.length];
        for (int i = 1; i < x.length; i++) {
            reached[i] = reached[i - 1] + Math.hypot(x[i] - x[i - 1], y[i] - y[i - 1]);
            if (!(reached[i] > reached[i - 1])) {
                throw entity.error(Text.of("two of its fit points are one"));
            }
        }
        UnivariateFunction across = new SplineInterpolator().interpolate(reached, x);
        UnivariateFunction up = new SplineInterpolator().interpolate(reached, y);
        double end = reached[reached.length - 1];
        return Flattening.of(
                t -> placing.at(across.value(Math.min(t, end)), up.value(Math.min(t, end))), reached, budget);
    }

    private static SplineEntity of(DxfEntity entity, Placing placing) throws ForeignInputException {
        double[] x = values(entity, 10);
        double[] y = values(entity, 20);
        double[] knots = values(entity, 40);
        double[] weights = values(entity, 41);
        int degree = entity.whole(71, 3);
        if (degree < 1 || degree > HIGHEST_DEGREE) {
            throw entity.error(Text.of("degree {degree} is not between 1 and {most}")
                    .with("degree", degree)
                    .with("most", HIGHEST_DEGREE));
        }
        if (x.length != y.length || x.length <= degree || x.length > MOST_POINTS) {
            throw entity.error(
                    Text.of("degree {degree} needs between {least} and {most} control points with x and y, not"
                                    + " {across} and {up}")
                            .with("degree", degree)
                            .with("least", degree + 1)
                            .with("most", MOST_POINTS)
                            .with("across", x.length)
                            .with("up", y.length));
        }
        if (knots.length != x.length + degree + 1) {
            throw entity.error(Text.of("{points} control points of degree {degree} need {knots} knots, not {given}")
                    .with("points", x.length)
                    .with("degree", degree)
                    .with("knots", x.length + degree + 1)
                    .with("given", knots.length));
        }
        for (int i = 1; i < knots.length; i++) {
            if (knots[i] < knots[i - 1]) {
                throw entity.error(Text.of("its knots do not ascend"));
            }
        }
        if (!(knots[x.length] > knots[degree])) {
            throw entity.error(Text.of("its knots are all the same"));
        }
        if (weights.length != 0 && weights.length != x.length
                || Arrays.stream(weights).anyMatch(w -> !(w > 1e-9))) {
            throw entity.error(Text.of("it needs one weight above 0 for each control point, or none"));
        }
        double[] ones = new double[x.length];
        Arrays.fill(ones, 1);
        return new SplineEntity(degree, knots, x, y, weights.length == 0 ? ones : weights, placing);
    }

    private static double[] values(DxfEntity entity, int code) throws ForeignInputException {
        double[] values = new double[16];
        int count = 0;
        for (int i = entity.from() + 1; i < entity.to(); i++) {
            if (entity.tags().code(i) == code) {
                if (count == values.length) {
                    values = Arrays.copyOf(values, 2 * count);
                }
                values[count++] = entity.tags().number(i);
            }
        }
        return Arrays.copyOf(values, count);
    }

    /** The distinct knots of the domain, each span cut once more. */
    private double[] breaks() {
        double[] breaks = new double[2 * knots.length];
        int count = 0;
        for (int i = degree; i <= x.length; i++) {
            if (count == 0) {
                breaks[count++] = knots[i];
            } else if (knots[i] > breaks[count - 1]) {
                double last = breaks[count - 1];
                breaks[count++] = (last + knots[i]) / 2;
                breaks[count++] = knots[i];
            }
        }
        return Arrays.copyOf(breaks, count);
    }

    private Point at(double u) {
        int span = Arrays.binarySearch(knots, degree, x.length + 1, u);
        span = span < 0 ? -span - 2 : span;
        while (span < x.length - 1 && knots[span + 1] <= u) {
            span++;
        }
        span = Math.max(degree, Math.min(x.length - 1, span));
        while (span > degree && knots[span] == knots[span + 1]) {
            span--;
        }
        for (int j = 0; j <= degree; j++) {
            double weight = weights[span - degree + j];
            px[j] = x[span - degree + j] * weight;
            py[j] = y[span - degree + j] * weight;
            pw[j] = weight;
        }
        for (int level = 1; level <= degree; level++) {
            for (int j = degree; j >= level; j--) {
                double left = knots[span - degree + j];
                double share = (u - left) / (knots[span + j - level + 1] - left);
                px[j] = (1 - share) * px[j - 1] + share * px[j];
                py[j] = (1 - share) * py[j - 1] + share * py[j];
                pw[j] = (1 - share) * pw[j - 1] + share * pw[j];
            }
        }
        return placing.at(px[degree] / pw[degree], py[degree] / pw[degree]);
    }
}
