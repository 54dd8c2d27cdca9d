package org.capwright.geometry;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.stream.LongStream;

/** Seeded curves of the size a sleeve draft has. The seed is the test's argument, so a failure names it. */
final class RandomCurves {

    private RandomCurves() {}

    static LongStream seeds() {
        return LongStream.range(1, 201);
    }

    static Point point(Random random) {
        return new Point(random.nextDouble(-400, 400), random.nextDouble(-400, 400));
    }

    /** Any four points: loops, near cusps and S-shapes among them. */
    static Cubic cubic(Random random) {
        return new Cubic(point(random), point(random), point(random), point(random));
    }

    /** One to six wild segments end to end. */
    static Curve curve(Random random) {
        List<Cubic> segments = new ArrayList<>();
        Point start = point(random);
        int count = random.nextInt(1, 7);
        for (int i = 0; i < count; i++) {
            Point end = point(random);
            segments.add(
                    random.nextInt(4) == 0
                            ? Cubic.line(start, end)
                            : new Cubic(start, point(random), point(random), end));
            start = end;
        }
        return Curve.of(segments);
    }

    /** The parabola y = a x² between two abscissas: a quadratic Bézier segment raised to degree three, which is exact. */
    static Cubic parabola(double a, double from, double to) {
        Point start = new Point(from, a * from * from);
        Point end = new Point(to, a * to * to);
        // The quadratic's control point is where the end tangents meet.
        Point control = new Point((from + to) / 2, a * from * to);
        return new Cubic(start, start.towards(control, 2.0 / 3), end.towards(control, 2.0 / 3), end);
    }

    /** The semicubical parabola (s t², s t³), t from 0 to 1: an exact cubic with a cusp at its start. */
    static Cubic semicubical(double scale) {
        return new Cubic(Point.ORIGIN, Point.ORIGIN, new Point(scale / 3, 0), new Point(scale, scale));
    }
}
