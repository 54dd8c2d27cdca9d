package org.capwright.geometry;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LineString;

class CurveTest {

    private static final String SEEDS = "org.capwright.geometry.RandomCurves#seeds";
    private static final GeometryFactory JTS = new GeometryFactory();

    private static LineString lineString(List<Point> points) {
        return JTS.createLineString(
                points.stream().map(p -> new Coordinate(p.x(), p.y())).toArray(Coordinate[]::new));
    }

    @Test
    void gapsAndEmptyListsAreRefused() {
        Cubic first = Cubic.line(Point.ORIGIN, new Point(1, 0));
        Cubic apart = Cubic.line(new Point(1, 1e-9), new Point(2, 0));
        List<Cubic> gap = List.of(first, apart);
        assertThrows(IllegalArgumentException.class, () -> Curve.of(gap));
        assertThrows(IllegalArgumentException.class, () -> Curve.of(List.of()));
        assertThrows(IllegalArgumentException.class, () -> Curve.of(gap, new double[] {1, 1}));
        assertThrows(IllegalArgumentException.class, () -> Curve.of(List.of(first), new double[0]));
        Curve curve = Curve.of(List.of(first));
        assertThrows(IllegalArgumentException.class, () -> curve.part(0.5, 0.5));
        assertThrows(IllegalArgumentException.class, () -> curve.part(0.7, 0.5));
        assertThrows(IllegalArgumentException.class, () -> curve.part(2, 3));
        assertThrows(IllegalArgumentException.class, () -> curve.part(-3, -2));
    }

    /** A mirrored curve as its segments alone make it. */
    @ParameterizedTest
    @MethodSource(SEEDS)
    void unfoldedCurvesAreTheirHalvesAndTheImages(long seed) {
        Curve drawn = RandomCurves.curve(new Random(seed));
        Curve half = drawn.translated(new Point(-drawn.end().x(), 0));
        Curve whole = half.unfolded();
        assertEquals(Curve.of(half.mirrored().reversed().segments()), half.mirroredBack());
        assertEquals(half.joinedTo(half.mirroredBack()), whole);
        Curve measured = Curve.of(whole.segments());
        assertEquals(measured.length(), whole.length(), 1e-7);
        assertEquals(
                measured.lengthTo(half.segments().size(), 0.3),
                whole.lengthTo(half.segments().size(), 0.3),
                1e-7);
    }

    @Test
    void aCurveRemembersItsSegmentsAndNothingOfTheCallersList() {
        List<Cubic> segments = new ArrayList<>(List.of(Cubic.line(Point.ORIGIN, new Point(3, 4))));
        Curve curve = Curve.of(segments);
        segments.clear();
        assertEquals(5, curve.length(), 1e-12);
        assertThrows(UnsupportedOperationException.class, () -> curve.segments().clear());
    }

    @ParameterizedTest
    @MethodSource(SEEDS)
    void aPolylineMeasuresAsInJts(long seed) {
        Random random = new Random(seed);
        List<Point> points = new ArrayList<>();
        int count = random.nextInt(2, 30);
        for (int i = 0; i < count; i++) {
            points.add(RandomCurves.point(random));
        }
        Curve curve = Curve.polyline(points);
        LineString independent = lineString(points);
        assertEquals(independent.getLength(), curve.length(), 1e-9);
        Point far = RandomCurves.point(random);
        double nearest = independent.distance(JTS.createPoint(new Coordinate(far.x(), far.y())));
        assertEquals(nearest, curve.pointAtLength(curve.closestLength(far)).distanceTo(far), 1e-9);
        assertEquals(0, curve.inflections());
    }

    @ParameterizedTest
    @MethodSource(SEEDS)
    void aDensePolylineApproachesTheLengthFromBelow(long seed) {
        Curve curve = RandomCurves.curve(new Random(seed));
        double coarse = lineString(sampled(curve, 2000)).getLength();
        double fine = lineString(sampled(curve, 4000)).getLength();
        assertTrue(fine <= curve.length() + 1e-8);
        // A chord of step h falls short by O(h²): a quarter of the error is left after halving the step.
        double extrapolated = fine + (fine - coarse) / 3;
        assertEquals(extrapolated, curve.length(), 0.3 * (fine - coarse) + 1e-6);
    }

    private static List<Point> sampled(Curve curve, int steps) {
        List<Point> points = new ArrayList<>();
        points.add(curve.start());
        for (Cubic segment : curve.segments()) {
            for (int i = 1; i <= steps; i++) {
                points.add(segment.pointAt((double) i / steps));
            }
        }
        return points;
    }

    @ParameterizedTest
    @MethodSource(SEEDS)
    void theNearestPointIsNoFartherThanJtsFinds(long seed) {
        Random random = new Random(seed);
        Curve curve = RandomCurves.curve(random);
        LineString dense = lineString(curve.flattened(1e-4));
        for (int i = 0; i < 5; i++) {
            Point far = RandomCurves.point(random);
            double independent = dense.distance(JTS.createPoint(new Coordinate(far.x(), far.y())));
            double along = curve.closestLength(far);
            assertEquals(independent, curve.pointAtLength(along).distanceTo(far), 1e-4);
        }
    }

    @ParameterizedTest
    @MethodSource(SEEDS)
    void aPointOfTheCurveIsFoundAgain(long seed) {
        Random random = new Random(seed);
        Curve curve = RandomCurves.curve(random);
        double distance = random.nextDouble() * curve.length();
        Point on = curve.pointAtLength(distance);
        Point found = curve.pointAtLength(curve.closestLength(on));
        assertEquals(0, found.distanceTo(on), 1e-6);
    }

    @ParameterizedTest
    @MethodSource(SEEDS)
    void partsAddUpAndLieOnTheCurve(long seed) {
        Random random = new Random(seed);
        Curve curve = RandomCurves.curve(random);
        double length = curve.length();
        double cut = random.nextDouble(0.01, 0.99) * length;
        Curve first = curve.part(0, cut);
        Curve second = curve.part(cut, length);
        assertEquals(cut, first.length(), 1e-7);
        assertEquals(length - cut, second.length(), 1e-7);
        assertEquals(first.end(), second.start());
        assertEquals(curve.start(), first.start());
        assertEquals(curve.end(), second.end());
        double within = random.nextDouble() * (length - cut);
        assertEquals(0, second.pointAtLength(within).distanceTo(curve.pointAtLength(cut + within)), 1e-6);
    }

    @ParameterizedTest
    @MethodSource(SEEDS)
    void arcLengthAndItsInverseAgreeToAMillionthOfAMillimetre(long seed) {
        Random random = new Random(seed);
        Curve curve = RandomCurves.curve(random);
        double distance = random.nextDouble() * curve.length();
        Point at = curve.pointAtLength(distance);
        // Independent of placeAt: add up whole segments, then integrate to the point's own parameter.
        double sum = 0;
        double off = Double.POSITIVE_INFINITY;
        for (Cubic segment : curve.segments()) {
            double whole = segment.length();
            if (distance <= sum + whole) {
                double low = 0;
                double high = 1;
                for (int i = 0; i < 60; i++) {
                    double middle = (low + high) / 2;
                    if (sum + segment.length(0, middle) < distance) {
                        low = middle;
                    } else {
                        high = middle;
                    }
                }
                off = segment.pointAt(low).distanceTo(at);
                break;
            }
            sum += whole;
        }
        assertEquals(0, off, 1e-6);
    }

    @Test
    void segmentBoundariesBelongToOnePlace() {
        Curve corner = Curve.polyline(List.of(Point.ORIGIN, new Point(10, 0), new Point(10, 10)));
        assertEquals(new Point(10, 0), corner.pointAtLength(10));
        assertEquals(1, corner.part(10, 15).segments().size());
        assertEquals(1, corner.part(2, 10).segments().size());
        assertEquals(2, corner.part(2, 15).segments().size());
        assertEquals(corner, corner.part(0, 20));
        assertEquals(corner.hashCode(), corner.part(0, 20).hashCode());
    }

    @ParameterizedTest
    @CsvSource({"0, 0", "1, 1", "2, 2", "3, 3", "7, 7"})
    void aSineHasOneInflectionPerZeroInside(int halfWaves, int expected) {
        // Hermite cubics of sin x over half-waves after an eighth of a turn: y'' = -y changes sign at every multiple of
        // π.
        List<Cubic> segments = new ArrayList<>();
        int steps = 8 * (halfWaves + 1);
        double span = Math.PI * (halfWaves + 0.6);
        double first = 0.2 * Math.PI;
        for (int i = 0; i < steps; i++) {
            double a = first + span * i / steps;
            double b = first + span * (i + 1) / steps;
            segments.add(Cubic.hermite(
                    new Point(a, Math.sin(a)),
                    new Point(1, Math.cos(a)).times(b - a),
                    new Point(1, Math.cos(b)).times(b - a),
                    new Point(b, Math.sin(b))));
        }
        assertEquals(expected, Curve.of(segments).inflections());
    }

    @Test
    void aGraphOfACubicPolynomialTurnsOnce() {
        // y = x³ over [-1, 2]: y'' = 6x has its one zero inside.
        Cubic graph = Cubic.hermite(new Point(-1, -1), new Point(3, 9), new Point(3, 36), new Point(2, 8));
        assertEquals(1, Curve.of(List.of(graph)).inflections());
        assertEquals(0, Curve.of(List.of(graph.part(0.4, 1))).inflections());
    }

    @ParameterizedTest
    @MethodSource(SEEDS)
    void inflectionsAreThoseSeenBySampling(long seed) {
        Curve curve = Curve.of(List.of(RandomCurves.cubic(new Random(seed))));
        Cubic cubic = curve.segments().get(0);
        int changes = 0;
        double last = 0;
        for (int i = 0; i <= 20_000; i++) {
            double t = i / 20_000.0;
            double turn = Math.signum(cubic.derivativeAt(t).cross(cubic.secondDerivativeAt(t)));
            if (turn != 0) {
                if (last != 0 && turn != last) {
                    changes++;
                }
                last = turn;
            }
        }
        assertEquals(changes, curve.inflections());
        assertEquals(changes, curve.reversed().inflections());
        assertEquals(changes, curve.mirrored().inflections());
    }

    @ParameterizedTest
    @MethodSource(SEEDS)
    void flatteningKeepsWithinItsTolerance(long seed) {
        Random random = new Random(seed);
        Curve curve = RandomCurves.curve(random);
        double tolerance = Math.pow(10, random.nextDouble(-3, 0));
        List<Point> points = curve.flattened(tolerance);
        LineString flat = lineString(points);
        assertEquals(curve.start(), points.get(0));
        assertEquals(curve.end(), points.get(points.size() - 1));
        for (int i = 0; i < 40; i++) {
            Point on = curve.pointAtLength(random.nextDouble() * curve.length());
            double off = flat.distance(JTS.createPoint(new Coordinate(on.x(), on.y())));
            assertTrue(off <= tolerance * (1 + 1e-9), "off by " + off + ", tolerance " + tolerance);
        }
    }

    /** Whether the whole was flattened before, with the same tolerance or another one, is not seen. */
    @ParameterizedTest
    @MethodSource(SEEDS)
    void aPartIsFlattenedAsIfItWereNone(long seed) {
        Random random = new Random(seed);
        Curve curve = RandomCurves.curve(random);
        double length = curve.length();
        double from = random.nextBoolean() ? 0 : length * random.nextDouble(0, 0.4);
        Curve part = curve.part(from, length * random.nextDouble(0.6, 1));
        Curve alone = Curve.of(part.segments());
        for (double tolerance : new double[] {0.01, 0.2}) {
            curve.flattened(random.nextBoolean() ? tolerance : 1);
            assertEquals(alone.flattened(tolerance), part.flattened(tolerance));
            for (int i = 0; i < part.segments().size(); i++) {
                assertEquals(alone.flattenedEnd(i, tolerance), part.flattenedEnd(i, tolerance));
            }
        }
    }

    @ParameterizedTest
    @MethodSource(SEEDS)
    void movedMirroredAndReversedCurvesKeepTheirShape(long seed) {
        Random random = new Random(seed);
        Curve curve = RandomCurves.curve(random);
        Point offset = RandomCurves.point(random);
        double distance = random.nextDouble() * curve.length();
        Point at = curve.pointAtLength(distance);
        assertEquals(0, curve.translated(offset).pointAtLength(distance).distanceTo(at.plus(offset)), 1e-6);
        assertEquals(0, curve.mirrored().pointAtLength(distance).distanceTo(at.mirrored()), 1e-6);
        assertEquals(
                0, curve.reversed().pointAtLength(curve.length() - distance).distanceTo(at), 1e-6);
        assertEquals(
                0,
                curve.reversed()
                        .tangentAtLength(curve.length() - distance)
                        .plus(curve.tangentAtLength(distance))
                        .norm(),
                1e-4);
        Curve joined = curve.joinedTo(Curve.line(curve.end(), curve.end().plus(new Point(3, 4))));
        assertEquals(curve.length() + 5, joined.length(), 1e-9);
    }

    @ParameterizedTest
    @ValueSource(doubles = {-3e-10, 0, 3e-10})
    void aPlaceAtACornerIsTheCornerOnWhicheverSideRoundingLeavesIt(double rounding) {
        Curve corner = Curve.polyline(List.of(Point.ORIGIN, new Point(30, 40), new Point(60, 0)));
        assertEquals(new Point(30, 40), corner.pointAtLength(50 + rounding));
        assertEquals(0, corner.tangentAtLength(50 + rounding).distanceTo(new Point(0.6, 0.8)), 1e-12);
        assertEquals(1, corner.part(0, 50 + rounding).segments().size());
        assertEquals(1, corner.part(50 + rounding, 100).segments().size());
    }
}
