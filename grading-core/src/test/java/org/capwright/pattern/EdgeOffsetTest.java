package org.capwright.pattern;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Random;
import org.capwright.geometry.Cubic;
import org.capwright.geometry.Curve;
import org.capwright.geometry.Point;
import org.capwright.geometry.Points;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LineString;

/** Parallels against their definition: places square off the seam line, whose distance from the chords JTS measures. */
class EdgeOffsetTest {

    private static final GeometryFactory PLANE = new GeometryFactory();

    private static Points parallel(Cubic segment, double allowance) {
        Curve curve = Curve.of(List.of(segment));
        EdgeOffset offset = new EdgeOffset();
        drawn(offset, new PieceEdge("edge", EdgeKind.SIDE_SEAM, curve, allowance));
        return offset.parallels().points();
    }

    /** Whether no hollow is nearly as tight as the allowance: there the parallel turns back at cusps, and is cut off. */
    private static boolean runsOn(Cubic segment, double allowance) {
        for (int i = 0; i <= 500; i++) {
            if (1 + allowance * segment.curvatureAt(i / 500.0) < 0.1) {
                return false;
            }
        }
        return true;
    }

    private static void requireNear(Cubic segment, double allowance, String which) {
        Points points = parallel(segment, allowance);
        LineString chords = PLANE.createLineString(
                points.stream().map(p -> new Coordinate(p.x(), p.y())).toArray(Coordinate[]::new));
        for (int i = 0; i <= 500; i++) {
            Point at = segment.pointAt(i / 500.0);
            Point tangent = segment.tangentAt(i / 500.0);
            Point place = at.minus(tangent.left().times(allowance));
            double off = chords.distance(PLANE.createPoint(new Coordinate(place.x(), place.y())));
            assertTrue(off <= Piece.FLATTENING, which + ": off by " + off + " at " + i + " of 500");
        }
    }

    /** Bends of every strength to either side, S-shapes among them. */
    @ParameterizedTest
    @ValueSource(doubles = {6, 10, 25, 60})
    void chordsKeepNearToTheTrueParallel(double allowance) {
        int tried = 0;
        for (int seed = 0; seed < 60; seed++) {
            Random random = new Random(seed);
            double length = random.nextDouble(5, 300);
            double leaving = random.nextDouble(-1.2, 1.2);
            double arriving = random.nextDouble(-1.2, 1.2);
            double first = length * random.nextDouble(0.15, 0.7);
            double second = length * random.nextDouble(0.15, 0.7);
            Cubic segment = new Cubic(
                    new Point(0, 0),
                    new Point(first * Math.cos(leaving), first * Math.sin(leaving)),
                    new Point(length - second * Math.cos(arriving), -second * Math.sin(arriving)),
                    new Point(length, 0));
            if (runsOn(segment, allowance)) {
                requireNear(segment, allowance, "seed " + seed + ", " + allowance + " mm");
                tried++;
            }
        }
        assertTrue(tried > 30, "only " + tried + " tried");
    }

    /** A quarter circle by a cubic strays from it by up to 2.7e-4 of its radius (M. Goldapp, Approximation of circular arcs by cubic polynomials, 1991); from memory. */
    @Test
    void parallelOfAnArcIsAnArc() {
        double radius = 100;
        double k = radius * 0.5522847498;
        Cubic arc = new Cubic(new Point(radius, 0), new Point(radius, k), new Point(k, radius), new Point(0, radius));
        Points points = parallel(arc, 15);
        for (Point point : points) {
            assertEquals(radius + 15, point.norm(), 2.8e-4 * radius);
        }
        // A quarter of 115 mm needs pi / 4 / acos(1 - 0.01 / 115) = 59.5 chords; halving may double them.
        assertTrue(points.size() > 60 && points.size() <= 121, points.size() + " points");
    }

    @Test
    void straightLinesHaveTwoPoints() {
        assertEquals(
                List.of(new Point(0, -10), new Point(80, -10)),
                parallel(Cubic.line(new Point(0, 0), new Point(80, 0)), 10));
    }

    /** An edge that has its inner segments from another, as the lining has from the main cloth, has the parallel it has alone; so has one with another allowance. */
    @Test
    void edgesThatShareSegmentsHaveTheParallelsTheyHaveAlone() {
        Curve main = Curve.of(List.of(
                new Cubic(new Point(0, 0), new Point(10, 5), new Point(20, 9), new Point(30, 10)),
                new Cubic(new Point(30, 10), new Point(40, 11), new Point(52, 8), new Point(60, 2)),
                new Cubic(new Point(60, 2), new Point(68, -4), new Point(80, -6), new Point(90, -6))));
        Curve lining = main.part(4, main.length() - 3);
        for (double allowance : new double[] {10, 15}) {
            EdgeOffset both = new EdgeOffset();
            drawn(both, new PieceEdge("top edge", EdgeKind.SIDE_SEAM, main, 10));
            int from = both.parallels().size();
            PieceEdge edge = new PieceEdge("top edge", EdgeKind.SIDE_SEAM, lining, allowance);
            drawn(both, edge);
            EdgeOffset alone = new EdgeOffset();
            drawn(alone, edge);
            Points all = both.parallels().points();
            assertEquals(alone.parallels().points(), all.subList(from, all.size()));
        }
    }

    private static void drawn(EdgeOffset offset, PieceEdge edge) {
        offset.follow(edge);
        offset.begin(edge.curve().segments().get(0));
        for (int i = 0; i < edge.curve().segments().size(); i++) {
            offset.goOn(edge.curve(), i);
        }
    }
}
