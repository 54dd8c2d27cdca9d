package org.capwright.geometry;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import org.apache.commons.math3.analysis.differentiation.DerivativeStructure;
import org.apache.commons.math3.analysis.integration.IterativeLegendreGaussIntegrator;
import org.apache.commons.math3.util.FastMath;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

class CubicTest {

    private static final String SEEDS = "org.capwright.geometry.RandomCurves#seeds";

    /** Arc of y = a x² from the vertex (Bronshtein and Semendyayev, Handbook of Mathematics, 'Parabola'). */
    private static double parabolaArc(double a, double x) {
        return x / 2 * Math.sqrt(1 + 4 * a * a * x * x) + FastMath.asinh(2 * a * x) / (4 * a);
    }

    @Test
    void aStraightSegmentHasItsChordLengthAndNoCurvature() {
        Cubic line = Cubic.line(new Point(10, 20), new Point(40, 60));
        assertTrue(line.isStraight());
        assertEquals(50, line.length(), 1e-12);
        assertEquals(50, line.length(0, 1), 1e-9);
        assertEquals(0, line.curvatureAt(0.3), 1e-15);
        assertEquals(0.25, line.parameterAtLength(12.5), 1e-10);
        assertEquals(0, line.pointAt(0.25).distanceTo(new Point(17.5, 30)), 1e-12);
        assertEquals(1, line.chordsWithin(0.01));
    }

    @Test
    void aSegmentThatDoublesBackOnItsLineIsNotStraight() {
        Cubic back = new Cubic(Point.ORIGIN, new Point(30, 0), new Point(-20, 0), new Point(10, 0));
        assertFalse(back.isStraight());
        // x' / 3 = 30 u² - 100 u t + 30 t² = 160 t² - 160 t + 30 vanishes at t = 1/4 and 3/4, where x = 11.875 and
        // -1.875.
        assertEquals(10 + 10 + 10, back.length(), 1e-7);
    }

    @ParameterizedTest
    @MethodSource(SEEDS)
    void theParabolaHasItsClosedFormLengthAndCurvature(long seed) {
        Random random = new Random(seed);
        double a = random.nextDouble(1e-4, 0.05);
        double from = random.nextDouble(-200, 100);
        double to = from + random.nextDouble(1, 300);
        Cubic parabola = RandomCurves.parabola(a, from, to);
        assertEquals(parabolaArc(a, to) - parabolaArc(a, from), parabola.length(), 1e-8);
        double x = random.nextDouble(from, to);
        double t = (x - from) / (to - from);
        assertEquals(2 * a / Math.pow(1 + 4 * a * a * x * x, 1.5), parabola.curvatureAt(t), 1e-9);
        double arc = parabolaArc(a, x) - parabolaArc(a, from);
        assertEquals(0, parabola.pointAt(parabola.parameterAtLength(arc)).distanceTo(new Point(x, a * x * x)), 1e-8);
        Point tangent = new Point(1, 2 * a * x).unit();
        assertEquals(0, parabola.tangentAt(t).distanceTo(tangent), 1e-10);
    }

    @ParameterizedTest
    @ValueSource(doubles = {1, 27, 300})
    void theSemicubicalParabolaHasNeilsLength(double scale) {
        // William Neile, 1657: s = ((4 + 9 t²)^(3/2) - 8) / 27 for (t², t³).
        Cubic curve = RandomCurves.semicubical(scale);
        assertEquals(scale * (Math.pow(13, 1.5) - 8) / 27, curve.length(), 1e-8);
        for (double t = 0.05; t < 1; t += 0.05) {
            double arc = scale * (Math.pow(4 + 9 * t * t, 1.5) - 8) / 27;
            assertEquals(arc, curve.length(0, t), 1e-8);
            Point expected = new Point(scale * t * t, scale * t * t * t);
            assertEquals(0, curve.pointAt(curve.parameterAtLength(arc)).distanceTo(expected), 1e-8);
            assertEquals(6 / (t * Math.pow(4 + 9 * t * t, 1.5)) / scale, curve.curvatureAt(t), 1e-9 / t);
        }
        assertEquals(
                0, curve.tangentAt(0).distanceTo(new Point(1, 0)), 1e-12, "at the cusp the next control point leads");
    }

    /** The primitive of the speed of y = a x² in closed form, about the bend up to which seven points are taken to do, and beyond it. */
    @ParameterizedTest
    @ValueSource(doubles = {1, 30, 300, 799, 2000})
    void lengthsOfBentPartsAreRightToABillionth(double width) {
        for (double bend = 0.05; bend < 3; bend *= 1.1) {
            double a = bend / width;
            assertEquals(
                    2 * parabolaArc(a, width / 2),
                    RandomCurves.parabola(a, -width / 2, width / 2).length(),
                    1e-9,
                    "bend " + bend);
            assertEquals(
                    parabolaArc(a, width), RandomCurves.parabola(a, 0, width).length(), 1e-9, "bend " + bend);
        }
    }

    @ParameterizedTest
    @MethodSource(SEEDS)
    void anyLengthAgreesWithCommonsMath(long seed) {
        Random random = new Random(seed);
        Cubic cubic = RandomCurves.cubic(random);
        double from = random.nextDouble(0, 0.5);
        double to = random.nextDouble(from, 1);
        var integrator = new IterativeLegendreGaussIntegrator(12, 1e-13, 1e-10, 2, 40);
        double expected =
                integrator.integrate(20_000_000, t -> cubic.derivativeAt(t).norm(), from, to);
        assertEquals(expected, cubic.length(from, to), 1e-7);
    }

    @ParameterizedTest
    @MethodSource(SEEDS)
    void derivativesAgreeWithAutomaticDifferentiation(long seed) {
        Random random = new Random(seed);
        Cubic cubic = RandomCurves.cubic(random);
        double at = random.nextDouble();
        DerivativeStructure t = new DerivativeStructure(1, 2, 0, at);
        DerivativeStructure x = bernstein(
                t,
                cubic.start().x(),
                cubic.control1().x(),
                cubic.control2().x(),
                cubic.end().x());
        DerivativeStructure y = bernstein(
                t,
                cubic.start().y(),
                cubic.control1().y(),
                cubic.control2().y(),
                cubic.end().y());
        assertEquals(0, cubic.pointAt(at).distanceTo(new Point(x.getValue(), y.getValue())), 1e-10);
        assertEquals(
                0,
                cubic.derivativeAt(at).distanceTo(new Point(x.getPartialDerivative(1), y.getPartialDerivative(1))),
                1e-9);
        assertEquals(
                0,
                cubic.secondDerivativeAt(at)
                        .distanceTo(new Point(x.getPartialDerivative(2), y.getPartialDerivative(2))),
                1e-9);
    }

    private static DerivativeStructure bernstein(DerivativeStructure t, double p, double q, double r, double s) {
        DerivativeStructure u = t.negate().add(1);
        return u.pow(3)
                .multiply(p)
                .add(u.pow(2).multiply(t).multiply(3 * q))
                .add(u.multiply(t.pow(2)).multiply(3 * r))
                .add(t.pow(3).multiply(s));
    }

    @ParameterizedTest
    @MethodSource(SEEDS)
    void arcLengthAndItsInverseAgree(long seed) {
        Random random = new Random(seed);
        Cubic cubic = RandomCurves.cubic(random);
        double distance = random.nextDouble() * cubic.length();
        double t = cubic.parameterAtLength(distance);
        assertEquals(distance, cubic.length(0, t), 1e-8);
        assertEquals(0, cubic.parameterAtLength(-1));
        assertEquals(1, cubic.parameterAtLength(cubic.length() + 1));
    }

    @ParameterizedTest
    @MethodSource(SEEDS)
    void aPartRunsOverJustThatPart(long seed) {
        Random random = new Random(seed);
        Cubic cubic = RandomCurves.cubic(random);
        double from = random.nextDouble(0, 0.6);
        double to = random.nextDouble(from + 0.01, 1);
        Cubic part = cubic.part(from, to);
        for (int i = 0; i <= 8; i++) {
            Point expected = cubic.pointAt(from + (to - from) * i / 8);
            assertEquals(0, part.pointAt(i / 8.0).distanceTo(expected), 1e-9);
            assertEquals(0, part.reversed().pointAt(1 - i / 8.0).distanceTo(expected), 1e-9);
        }
    }

    @ParameterizedTest
    @MethodSource(SEEDS)
    void chordsKeepWithinTheTolerance(long seed) {
        Random random = new Random(seed);
        Cubic cubic = RandomCurves.cubic(random);
        double tolerance = Math.pow(10, random.nextDouble(-3, 1));
        int chords = cubic.chordsWithin(tolerance);
        double worst = 0;
        for (int i = 0; i < chords; i++) {
            Point a = cubic.pointAt((double) i / chords);
            Point b = cubic.pointAt((double) (i + 1) / chords);
            for (int k = 1; k < 8; k++) {
                Point on = cubic.pointAt((i + k / 8.0) / chords);
                worst = Math.max(worst, on.distanceTo(a.towards(b, k / 8.0)));
            }
        }
        assertTrue(worst <= tolerance * (1 + 1e-9), () -> "tolerance " + tolerance + " with " + chords + " chords");
    }
}
