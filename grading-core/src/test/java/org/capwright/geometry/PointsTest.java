package org.capwright.geometry;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class PointsTest {

    private static List<Point> polygon(int corners, double radius) {
        List<Point> points = new ArrayList<>();
        for (int i = 0; i < corners; i++) {
            double angle = 2 * Math.PI * i / corners;
            points.add(new Point(radius * Math.cos(angle), radius * Math.sin(angle)));
        }
        return points;
    }

    /** Regular polygons: n / 2 r² sin(2 pi / n) (I. N. Bronshtein and others, Handbook of Mathematics, regular polygons; from memory). */
    @Test
    void areaIsThatOfThePolygon() {
        for (int corners = 3; corners < 40; corners++) {
            List<Point> points = polygon(corners, 50);
            double area = corners / 2.0 * 2500 * Math.sin(2 * Math.PI / corners);
            assertEquals(area, Points.of(points).area(), 1e-9);
            java.util.Collections.reverse(points);
            assertEquals(-area, Points.of(points).area(), 1e-9);
        }
    }

    @Test
    void pointsAreAListOfThem() {
        List<Point> list = polygon(7, 10);
        Points points = Points.of(list);
        assertEquals(list, points);
        assertEquals(points, list);
        assertEquals(list.hashCode(), points.hashCode());
        assertSame(points, Points.of(points));
        assertEquals(list.get(0).x(), points.x(7));
        assertEquals(list.get(0).y(), points.y(7));
        assertThrows(IndexOutOfBoundsException.class, () -> points.get(7));
        assertThrows(UnsupportedOperationException.class, () -> points.set(0, Point.ORIGIN));
    }

    /** What is handed over stays as it was, whatever is drawn afterwards, and however much or little room there was. */
    @Test
    void aTraceHandsItsPointsOver() {
        for (int room : new int[] {0, 7, 100}) {
            PointsBuilder trace = new PointsBuilder(room);
            List<Point> list = polygon(7, 10);
            list.forEach(trace::add);
            trace.add(1, 1);
            trace.cutBack(7);
            Points points = trace.points();
            assertEquals(0, trace.size());
            trace.add(5, 5);
            trace.set(0, 6, 6);
            assertEquals(list, points);
            assertEquals(List.of(new Point(6, 6)), trace.points());
        }
    }

    @Test
    void aLineGoesOnToOtherPointsAndAlongOtherLines() {
        PointsBuilder line = new PointsBuilder(0);
        line.add(1, 2);
        line.goOn(1, 2);
        line.goOn(1, 3);
        line.goOn(4, 3);
        line.addAll(line, 1, 3);
        PointsBuilder other = new PointsBuilder(2);
        other.add(7, 8);
        other.addAll(line, 0, 1);
        other.addAll(line, 0, 0);
        assertEquals(
                List.of(new Point(1, 2), new Point(1, 3), new Point(4, 3), new Point(1, 3), new Point(4, 3)),
                line.points());
        assertEquals(List.of(new Point(7, 8), new Point(1, 2)), other.points());
    }

    @Test
    void noPointsAreNoPoints() {
        assertEquals(List.of(), new PointsBuilder(0).points());
        assertEquals(List.of(), Points.of(List.of()));
    }
}
