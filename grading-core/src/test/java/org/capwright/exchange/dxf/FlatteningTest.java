package org.capwright.exchange.dxf;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.capwright.geometry.Curve;
import org.capwright.geometry.Point;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class FlatteningTest {

    private static final double RADIUS = 100;

    /** The length of an arc is radius times angle, whichever way it runs over its highest point. Elementary geometry. */
    @ParameterizedTest
    @CsvSource({"1.2, 2.0", "2.0, 1.2"})
    void anArcRunsOverItsHighestPointEitherWay(double from, double to) {
        List<Point> flat = flattened(from, to);
        assertEquals(RADIUS * 0.8, Curve.polyline(flat).length(), 0.1);
    }

    @Test
    void theHighestPointBecomesAVertex() {
        double highest =
                flattened(2.0, 1.2).stream().mapToDouble(Point::y).max().orElseThrow();
        assertEquals(RADIUS, highest, 1e-6);
    }

    private static List<Point> flattened(double from, double to) {
        return Flattening.of(
                t -> new Point(RADIUS * Math.cos(t), RADIUS * Math.sin(t)),
                new double[] {from, to},
                new Flattening.Budget(10_000));
    }
}
