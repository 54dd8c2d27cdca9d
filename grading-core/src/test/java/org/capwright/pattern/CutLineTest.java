package org.capwright.pattern;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.capwright.geometry.Cubic;
import org.capwright.geometry.Curve;
import org.capwright.geometry.Point;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.algorithm.distance.DiscreteHausdorffDistance;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.operation.buffer.BufferOp;
import org.locationtech.jts.operation.buffer.BufferParameters;

/** Corners against coordinates worked out by hand, and hollows against JTS. */
class CutLineTest {

    private static final double ROOT = Math.sqrt(2);

    /** Straight edges between points, each with its allowance. */
    private static List<PieceEdge> edges(double[] allowances, double... coordinates) {
        List<PieceEdge> edges = new ArrayList<>();
        int count = coordinates.length / 2;
        for (int i = 0; i < count; i++) {
            int k = (i + 1) % count;
            Point from = new Point(coordinates[2 * i], coordinates[2 * i + 1]);
            Point to = new Point(coordinates[2 * k], coordinates[2 * k + 1]);
            edges.add(new PieceEdge("edge " + i, EdgeKind.HEM, Curve.line(from, to), allowances[i]));
        }
        return edges;
    }

    private static void assertLine(Optional<CutLine> line, double... coordinates) {
        List<Point> points = line.orElseThrow().points();
        assertEquals(coordinates.length / 2, points.size(), points.toString());
        List<Integer> all = new ArrayList<>();
        int shift = -1;
        for (int i = 0; i < points.size(); i++) {
            all.add(i);
            if (points.get(i).distanceTo(new Point(coordinates[0], coordinates[1])) < 1e-9) {
                shift = i;
            }
        }
        assertTrue(shift >= 0, points.toString());
        for (int i = 0; i < points.size(); i++) {
            Point point = points.get((i + shift) % points.size());
            assertEquals(coordinates[2 * i], point.x(), 1e-9, points.toString());
            assertEquals(coordinates[2 * i + 1], point.y(), 1e-9, points.toString());
        }
        assertEquals(all, line.orElseThrow().corners());
    }

    @Test
    void rectangleWithDifferentAllowancesIsMitredAtTheCrossings() {
        List<PieceEdge> rectangle = edges(new double[] {20, 10, 5, 10}, 0, 0, 100, 0, 100, 50, 0, 50);
        assertLine(
                CutLine.around(rectangle, CornerKind.MITRED, new EdgeOffset()), -10, -20, 110, -20, 110, 55, -10, 55);
        assertLine(
                CutLine.around(rectangle, CornerKind.SQUARED, new EdgeOffset()), -10, -20, 110, -20, 110, 55, -10, 55);
    }

    @Test
    void bevelledRectangleLosesItsCorners() {
        List<PieceEdge> rectangle = edges(new double[] {10, 10, 10, 10}, 0, 0, 100, 0, 100, 50, 0, 50);
        assertLine(
                CutLine.around(rectangle, CornerKind.BEVELLED, new EdgeOffset()),
                0,
                -10,
                100,
                -10,
                110,
                0,
                110,
                50,
                100,
                60,
                0,
                60,
                -10,
                50,
                -10,
                0);
    }

    /**
     * Right-angled triangle (0,0) (100,0) (0,100): the slanted edge stands off by 10. A mitre at its ends would be 1 / sin(22.5 degrees) = 2.6 allowances long; it is cut off square
     * at 2. Seen along the bisector the lines lie 20 from the corner where they have run on by (2 - sin 22.5) / cos 22.5 allowances.
     */
    @Test
    void triangleCornersByKind() {
        List<PieceEdge> triangle = edges(new double[] {10, 10, 10}, 0, 0, 100, 0, 0, 100);
        double out = 10 / ROOT;
        double on = 10 * (2 - Math.sin(Math.PI / 8)) / Math.cos(Math.PI / 8);
        double slant = 100 + out + on / ROOT;
        double rest = out - on / ROOT;
        assertLine(
                CutLine.around(triangle, CornerKind.MITRED, new EdgeOffset()),
                -10,
                -10,
                100 + on,
                -10,
                slant,
                rest,
                rest,
                slant,
                -10,
                100 + on);
        // Squared: the edge along y = -10 runs 10 mm on to x = 110; the slanted one starts 10 mm early, at (100 + 7.07
        // + 7.07, 7.07 - 7.07).
        assertLine(
                CutLine.around(triangle, CornerKind.SQUARED, new EdgeOffset()),
                -10,
                -10,
                110,
                -10,
                100 + 2 * out,
                0,
                0,
                100 + 2 * out,
                -10,
                110);
        // Bevelled, a line from end to end of the allowances would pass 10 sin 22.5 degrees = 3.8 from the corners of
        // 45
        // degrees; they are cut off square at 5, where the lines have run on by (5 - 10 sin 22.5) / cos 22.5.
        double past = (5 - 10 * Math.sin(Math.PI / 8)) / Math.cos(Math.PI / 8);
        assertLine(
                CutLine.around(triangle, CornerKind.BEVELLED, new EdgeOffset()),
                0,
                -10,
                100 + past,
                -10,
                100 + out + past / ROOT,
                out - past / ROOT,
                out - past / ROOT,
                100 + out + past / ROOT,
                -10,
                100 + past,
                -10,
                0);
    }

    /** Two lines that leave a tip in one direction, as cap and bicep line do at the underarm point: bevelled, 5 mm of 10 stay around the tip; cut on the seam line, the tip stays, however thin. */
    @Test
    void tipsWithoutAnAngleKeepTheirAllowance() {
        Point tip = new Point(200, 0);
        Curve below = Curve.line(new Point(0, 0), tip);
        Curve over = Curve.of(List.of(new Cubic(tip, new Point(150, 0), new Point(50, 100), new Point(0, 100))));
        for (double allowance : new double[] {10, 0}) {
            List<PieceEdge> edges = List.of(
                    new PieceEdge("below", EdgeKind.HEM, below, allowance),
                    new PieceEdge("over", EdgeKind.HEM, over, allowance),
                    new PieceEdge("left", EdgeKind.HEM, Curve.line(new Point(0, 100), new Point(0, 0)), allowance));
            List<Point> cut = CutLine.around(edges, CornerKind.BEVELLED, new EdgeOffset())
                    .orElseThrow()
                    .points();
            double reached = cut.stream().mapToDouble(Point::x).max().orElseThrow();
            assertEquals(200 + allowance / 2, reached, 1e-9);
            assertEquals(
                    allowance == 0 ? 0 : 5, Check.polygon(cut).getExteriorRing().distance(Check.point(tip)), 1e-9);
        }
    }

    /** A point of 2 atan(1/10) = 11.4 degrees would have a mitre of 1 / sin(5.7 degrees) = 10 allowances; it is cut off square at 2. */
    @Test
    void sharpPointIsCutOffAtTheMitreLimit() {
        List<PieceEdge> spike = edges(new double[] {10, 10, 10}, 0, -10, 100, 0, 0, 10);
        List<Point> points = CutLine.around(spike, CornerKind.MITRED, new EdgeOffset())
                .orElseThrow()
                .points();
        List<Point> end = points.stream().filter(p -> p.x() > 110).toList();
        assertEquals(2, end.size());
        assertEquals(120, end.get(0).x(), 1e-9);
        assertEquals(120, end.get(1).x(), 1e-9);
        // The cut line runs beside y = (x - 100) / 10 at 10 mm: at x = 120, 2 - 10 * sqrt(1.01).
        assertEquals(2 - 10 * Math.sqrt(1.01), end.get(0).y(), 1e-9);
    }

    @Test
    void hollowCornerIsCutBackToTheCrossing() {
        List<PieceEdge> corner =
                edges(new double[] {10, 10, 10, 6, 10, 10}, 0, 0, 100, 0, 100, 40, 40, 40, 40, 100, 0, 100);
        assertLine(
                CutLine.around(corner, CornerKind.MITRED, new EdgeOffset()),
                -10,
                -10,
                110,
                -10,
                110,
                50,
                46,
                50,
                46,
                110,
                -10,
                110);
    }

    /** Half a V with its point on the fold: slopes 1, so the mirrored mitre stands 10 root 2 below the point. */
    @Test
    void pointOnTheFoldHasItsMitreOnTheFold() {
        Point hem = new Point(0, -50);
        Point side = new Point(50, 0);
        Point apex = new Point(0, 60);
        Point top = new Point(50, 60);
        List<PieceEdge> half = List.of(
                new PieceEdge("hem", EdgeKind.HEM, Curve.line(hem, side), 10),
                new PieceEdge("side", EdgeKind.SIDE_SEAM, Curve.line(side, top), 10),
                new PieceEdge("top", EdgeKind.ARMHOLE, Curve.line(top, apex), 8),
                new PieceEdge("fold", EdgeKind.FOLD, Curve.line(apex, hem), 0));
        double tan = Math.tan(Math.PI / 8);
        assertLine(
                CutLine.around(half, CornerKind.MITRED, new EdgeOffset()),
                0,
                -50 - 10 * ROOT,
                60,
                -10 * tan,
                60,
                68,
                0,
                68);
        // Bevelled, the unfolded point is cut off at the height of the two ends: (±7.07, -57.07).
        assertLine(
                CutLine.around(half, CornerKind.BEVELLED, new EdgeOffset()),
                0,
                -50 - 10 / ROOT,
                10 / ROOT,
                -50 - 10 / ROOT,
                50 + 10 / ROOT,
                -10 / ROOT,
                60,
                0,
                60,
                60,
                50,
                68,
                0,
                68);
    }

    /** Half a heart: the hem point is the hollow between two lobes. */
    @Test
    void hollowOnTheFoldIsCutBackToTheFold() {
        List<PieceEdge> half = List.of(
                new PieceEdge("hem", EdgeKind.HEM, Curve.line(new Point(0, 0), new Point(50, -50)), 10),
                new PieceEdge("side", EdgeKind.HEM, Curve.line(new Point(50, -50), new Point(50, 60)), 10),
                new PieceEdge("top", EdgeKind.HEM, Curve.line(new Point(50, 60), new Point(0, 60)), 10),
                new PieceEdge("fold", EdgeKind.FOLD, Curve.line(new Point(0, 60), new Point(0, 0)), 0));
        // The corner of 45 degrees at (50, -50) is squared off at two allowances, as in the triangle.
        double on = 10 * (2 - Math.sin(Math.PI / 8)) / Math.cos(Math.PI / 8);
        double along = (on - 10) / ROOT;
        assertLine(
                CutLine.around(half, CornerKind.MITRED, new EdgeOffset()),
                0,
                -10 * ROOT,
                50 + along,
                -50 - (on + 10) / ROOT,
                60,
                -50 - on,
                60,
                70,
                0,
                70);
    }

    /** Both lines of a bowed hem come down upright to its point, and lean over it by a hair: the square end stands 10 mm below, as wide as both allowances. */
    @Test
    void pointWhoseLinesLeanOverEachOtherByAHairIsAPoint() {
        for (double hair : new double[] {-0.05, 0, 0.05}) {
            Point tip = new Point(0, -100);
            Curve down =
                    Curve.of(List.of(new Cubic(new Point(-50, 0), new Point(-20, -20), new Point(hair, -60), tip)));
            Curve up = Curve.of(List.of(new Cubic(tip, new Point(-hair, -60), new Point(20, -20), new Point(50, 0))));
            List<PieceEdge> edges = List.of(
                    new PieceEdge("front hem", EdgeKind.HEM, down, 10),
                    new PieceEdge("back hem", EdgeKind.HEM, up, 10),
                    new PieceEdge("top", EdgeKind.HEM, Curve.line(new Point(50, 0), new Point(-50, 0)), 10));
            List<Point> low =
                    CutLine.around(edges, CornerKind.SQUARED, new EdgeOffset()).orElseThrow().points().stream()
                            .filter(point -> point.y() < -101)
                            .toList();
            assertEquals(2, low.size(), low::toString);
            assertEquals(0, low.get(0).distanceTo(new Point(-10, -110)), 0.05);
            assertEquals(0, low.get(1).distanceTo(new Point(10, -110)), 0.05);
        }
    }

    /** A slit narrower than twice the allowance closes: the raw parallel crosses itself and is cleaned. */
    @Test
    void tightHollowIsCleanedAsABufferWouldBe() {
        for (double radius : new double[] {2, 5, 8, 9.5, 12}) {
            double k = radius * 0.5522847498; // quarter circle by a cubic: 4/3 tan(22.5 degrees)
            Point left = new Point(60 - radius, 100);
            Point bottom = new Point(60, 100 - radius);
            Point right = new Point(60 + radius, 100);
            Curve hollow = Curve.of(List.of(
                    new Cubic(right, new Point(60 + radius, 100 - k), new Point(60 + k, 100 - radius), bottom),
                    new Cubic(bottom, new Point(60 - k, 100 - radius), new Point(60 - radius, 100 - k), left)));
            List<PieceEdge> edges = List.of(
                    new PieceEdge("bottom", EdgeKind.HEM, Curve.line(new Point(0, 0), new Point(120, 0)), 10),
                    new PieceEdge("right", EdgeKind.HEM, Curve.line(new Point(120, 0), new Point(120, 100)), 10),
                    new PieceEdge("top right", EdgeKind.HEM, Curve.line(new Point(120, 100), right), 10),
                    new PieceEdge("hollow", EdgeKind.HEM, hollow, 10),
                    new PieceEdge("top left", EdgeKind.HEM, Curve.line(left, new Point(0, 100)), 10),
                    new PieceEdge("left", EdgeKind.HEM, Curve.line(new Point(0, 100), new Point(0, 0)), 10));
            CutLine line =
                    CutLine.around(edges, CornerKind.MITRED, new EdgeOffset()).orElseThrow();
            List<Point> net = new ArrayList<>();
            for (PieceEdge edge : edges) {
                List<Point> flat = edge.curve().flattened(1e-4);
                net.addAll(flat.subList(0, flat.size() - 1));
            }
            BufferParameters mitre =
                    new BufferParameters(8, BufferParameters.CAP_FLAT, BufferParameters.JOIN_MITRE, Corner.MITRE_LIMIT);
            mitre.setSimplifyFactor(1e-6);
            Geometry buffer = BufferOp.bufferOp(Check.polygon(net), 10, mitre);
            double off = DiscreteHausdorffDistance.distance(Check.polygon(line.points()), buffer);
            assertTrue(off < 0.05, "radius " + radius + ": off by " + off);
        }
    }
}
