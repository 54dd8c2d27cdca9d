package org.capwright.geometry;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.apache.commons.math3.analysis.interpolation.SplineInterpolator;
import org.apache.commons.math3.analysis.polynomials.PolynomialSplineFunction;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

class SplineTest {

    private static final String SEEDS = "org.capwright.geometry.RandomCurves#seeds";

    private static List<Point> points(Random random) {
        List<Point> points = new ArrayList<>();
        int count = random.nextInt(2, 12);
        for (int i = 0; i < count; i++) {
            points.add(new Point(40 * i + random.nextDouble(-15, 15), random.nextDouble(-80, 80)));
        }
        return points;
    }

    private static Point direction(Random random) {
        double angle = random.nextDouble(-3, 3);
        return new Point(Math.cos(angle), Math.sin(angle));
    }

    @Test
    void tooFewAndEqualPointsAreRefused() {
        Point right = new Point(1, 0);
        assertThrows(IllegalArgumentException.class, () -> Spline.through(List.of(right), right, right));
        assertThrows(IllegalArgumentException.class, () -> Spline.through(List.of(right, right), right, right));
    }

    /**
     * A clamped spline reproduces any cubic polynomial (de Boor, A Practical Guide to Splines, chapter IV). The parametric cubic x = a u + b u³, y = c u² has
     * chords equal to its parameter steps at -1, 0, 1, and speed 1 at the ends, when (a + b)² + c² = 1 and (a + 3b)² + 4c² = 1.
     */
    @ParameterizedTest
    @ValueSource(doubles = {-0.45, -0.2, 0.05, 0.3, 0.49})
    void aCubicIsReproduced(double c) {
        double scale = 120;
        double inner = Math.sqrt(1 - c * c);
        double outer = Math.sqrt(1 - 4 * c * c);
        double b = (outer - inner) / 2;
        double a = inner - b;
        List<Point> points = new ArrayList<>();
        for (int u = -1; u <= 1; u++) {
            points.add(new Point(a * u + b * u * u * u, c * u * u).times(scale));
        }
        Curve curve = Spline.through(points, new Point(outer, -2 * c), new Point(outer, 2 * c));
        for (int segment = 0; segment < 2; segment++) {
            for (double t = 0; t <= 1; t += 0.125) {
                double u = segment - 1 + t;
                Point expected = new Point(a * u + b * u * u * u, c * u * u).times(scale);
                assertEquals(0, curve.segments().get(segment).pointAt(t).distanceTo(expected), 1e-10);
            }
        }
    }

    /** Interpolating, clamped and twice continuously differentiable by the chord parameter: there is only one such spline. */
    @ParameterizedTest
    @MethodSource(SEEDS)
    void theSplineIsTwiceContinuouslyDifferentiable(long seed) {
        Random random = new Random(seed);
        List<Point> points = points(random);
        Point first = direction(random);
        Point last = direction(random);
        Curve curve = Spline.through(points, first.times(7), last.times(0.1));
        assertEquals(0, curve.tangentAtLength(0).distanceTo(first), 1e-9);
        assertEquals(0, curve.tangentAtLength(curve.length()).distanceTo(last), 1e-9);
        for (int i = 0; i < points.size(); i++) {
            assertEquals(
                    points.get(i),
                    i == 0 ? curve.start() : curve.segments().get(i - 1).end());
        }
        for (int i = 1; i < points.size() - 1; i++) {
            Cubic before = curve.segments().get(i - 1);
            Cubic after = curve.segments().get(i);
            double h1 = points.get(i - 1).distanceTo(points.get(i));
            double h2 = points.get(i).distanceTo(points.get(i + 1));
            Point slope1 = before.derivativeAt(1).times(1 / h1);
            Point slope2 = after.derivativeAt(0).times(1 / h2);
            assertEquals(0, slope1.distanceTo(slope2), 1e-10);
            Point bend1 = before.secondDerivativeAt(1).times(1 / (h1 * h1));
            Point bend2 = after.secondDerivativeAt(0).times(1 / (h2 * h2));
            assertEquals(0, bend1.distanceTo(bend2), 1e-10);
        }
    }

    /**
     * Commons Math's natural spline, clamped by two more knots a step e outside the ends: its slope there differs from the asked one by e/3 times the second
     * derivative, so the error goes with e.
     */
    @ParameterizedTest
    @MethodSource(SEEDS)
    void theSplineAgreesWithCommonsMath(long seed) {
        Random random = new Random(seed);
        List<Point> points = points(random);
        Point first = direction(random);
        Point last = direction(random);
        double step = 1e-5;
        int n = points.size();
        double[] knots = new double[n + 2];
        double[] x = new double[n + 2];
        double[] y = new double[n + 2];
        for (int i = 0; i < n; i++) {
            knots[i + 1] = i == 0 ? 0 : knots[i] + points.get(i - 1).distanceTo(points.get(i));
            x[i + 1] = points.get(i).x();
            y[i + 1] = points.get(i).y();
        }
        knots[0] = -step;
        x[0] = x[1] - step * first.x();
        y[0] = y[1] - step * first.y();
        knots[n + 1] = knots[n] + step;
        x[n + 1] = x[n] + step * last.x();
        y[n + 1] = y[n] + step * last.y();
        PolynomialSplineFunction independentX = new SplineInterpolator().interpolate(knots, x);
        PolynomialSplineFunction independentY = new SplineInterpolator().interpolate(knots, y);
        Curve curve = Spline.through(points, first, last);
        for (int i = 0; i < n - 1; i++) {
            for (double t = 0; t < 1; t += 0.25) {
                double u = knots[i + 1] + t * (knots[i + 2] - knots[i + 1]);
                Point expected = new Point(independentX.value(u), independentY.value(u));
                assertEquals(0, curve.segments().get(i).pointAt(t).distanceTo(expected), 2e-5);
            }
        }
    }

    @Test
    void pointsOnALineGiveTheLine() {
        Point right = new Point(3, 4);
        Curve curve = Spline.through(
                List.of(Point.ORIGIN, new Point(3, 4), new Point(12, 16), new Point(15, 20)), right, right);
        assertEquals(25, curve.length(), 1e-12);
        assertEquals(0, curve.inflections());
        assertEquals(0, curve.curvatureAtLength(7), 1e-12);
    }
}
