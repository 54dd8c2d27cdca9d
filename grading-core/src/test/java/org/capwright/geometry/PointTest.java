package org.capwright.geometry;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Random;
import org.apache.commons.math3.geometry.euclidean.twod.Vector2D;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class PointTest {

    @ParameterizedTest
    @MethodSource("org.capwright.geometry.RandomCurves#seeds")
    void vectorsReckonAsInCommonsMath(long seed) {
        Random random = new Random(seed);
        Point p = RandomCurves.point(random);
        Point q = RandomCurves.point(random);
        Vector2D v = new Vector2D(p.x(), p.y());
        Vector2D w = new Vector2D(q.x(), q.y());
        assertEquals(v.getNorm(), p.norm(), 1e-12);
        assertEquals(Vector2D.distance(v, w), p.distanceTo(q), 1e-12);
        assertEquals(v.dotProduct(w), p.dot(q), 1e-9);
        assertEquals(w.crossProduct(Vector2D.ZERO, v), p.cross(q), 1e-9);
        assertSame(v.add(w), p.plus(q));
        assertSame(v.subtract(w), p.minus(q));
        assertSame(v.scalarMultiply(-2.5), p.times(-2.5));
        assertSame(v.normalize(), p.unit());
        assertSame(new Vector2D(0.7, v, 0.3, w), p.towards(q, 0.3));
        assertEquals(p.norm() * p.norm(), p.cross(p.left()), 1e-9, "left is a quarter turn counter-clockwise");
    }

    private static void assertSame(Vector2D expected, Point actual) {
        assertEquals(expected.getX(), actual.x(), 1e-12);
        assertEquals(expected.getY(), actual.y(), 1e-12);
    }

    @Test
    void theMirrorNeverGivesNegativeZero() {
        assertEquals(Point.ORIGIN, Point.ORIGIN.mirrored());
        assertEquals(new Point(-2, 3), new Point(2, 3).mirrored());
        assertEquals(Point.ORIGIN, Point.ORIGIN.unit());
    }
}
