package org.capwright.geometry;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.GeometryFactory;

/** What is proved is compared with the JTS Topology Suite, which reckons exactly. */
class SimplicityTest {

    private static final GeometryFactory PLANE = new GeometryFactory();

    private static Coordinate[] coordinates(List<Point> points) {
        return points.stream().map(p -> new Coordinate(p.x(), p.y())).toArray(Coordinate[]::new);
    }

    /** Of a curve no two neighbouring points are equal. */
    private static boolean simpleLine(List<Point> points) {
        return PLANE.createLineString(coordinates(Curve.polyline(points).flattened(1)))
                .isSimple();
    }

    private static boolean validRing(List<Point> points) {
        List<Point> closed = new ArrayList<>(points);
        closed.add(points.get(0));
        return PLANE.createPolygon(coordinates(closed)).isValid();
    }

    /** Places on a coarse grid touch, repeat and overlap as often as they cross. */
    private static List<Point> drawn(Random random, int count, int grid) {
        List<Point> points = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            points.add(
                    grid > 0
                            ? new Point(random.nextInt(grid), random.nextInt(grid))
                            : new Point(random.nextDouble(), random.nextDouble()));
        }
        return points;
    }

    private static boolean provedLine(List<Point> points) {
        return Simplicity.ofCurve(Curve.polyline(points), 1);
    }

    @Test
    void provesNothingThatTheLibraryDenies() {
        int proved = 0;
        for (int seed = 0; seed < 20_000; seed++) {
            Random random = new Random(seed);
            List<Point> points = drawn(random, 3 + random.nextInt(5), seed % 3 == 0 ? 0 : 6);
            String which = "seed " + seed + " " + points;
            if (provedLine(points)) {
                assertTrue(simpleLine(points), which);
                proved++;
            }
            if (Simplicity.ofRing(points)) {
                assertTrue(validRing(points), which);
                proved++;
            }
        }
        assertTrue(proved > 3000, proved + " proved");
    }

    @Test
    void provesWhatIsPlainlySimple() {
        List<Point> circle = new ArrayList<>();
        List<Point> comb = new ArrayList<>();
        for (int i = 0; i < 300; i++) {
            double angle = 2 * Math.PI * i / 300;
            circle.add(new Point(200 * Math.cos(angle), 200 * Math.sin(angle)));
            comb.add(new Point(i, i % 2 == 0 ? 0 : 50));
        }
        assertTrue(Simplicity.ofRing(circle));
        assertTrue(provedLine(comb));
    }

    @Test
    void provesNothingOfALineThatTouchesItself() {
        List<Point> spike = List.of(new Point(0, 0), new Point(10, 0), new Point(5, 0), new Point(5, 5));
        List<Point> touching =
                List.of(new Point(0, 0), new Point(10, 0), new Point(10, 10), new Point(5, 0), new Point(0, 10));
        List<Point> repeated = List.of(new Point(0, 0), new Point(10, 0), new Point(10, 0), new Point(10, 10));
        assertFalse(provedLine(spike));
        assertFalse(Simplicity.ofRing(touching));
        assertFalse(Simplicity.ofRing(repeated));
    }
}
