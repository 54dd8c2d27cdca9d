package org.capwright.geometry;

import java.util.Arrays;
import java.util.List;

/**
 * A quick proof that a line of straight pieces neither crosses nor touches itself. What is proved is certain: orientations count only beyond the rounding of their determinants
 * (J. R. Shewchuk, Adaptive Precision Floating-Point Arithmetic and Fast Robust Geometric Predicates, 1997). What is not proved may be simple all the same: a library with exact
 * arithmetic decides then.
 *
 * <p>The line is parted into chains that run one way both across and up. None of them meets itself; of two, only the parts are compared whose boxes meet.
 */
public final class Simplicity {

    /** Three roundings of a determinant of differences, with room to spare, as a share of its two products. */
    private static final double ROUNDING = 1e-15;

    /** Far above the rounding of a place on a curve, mm. */
    private static final double STEP = 1e-6;

    /** Most lines have fewer chains. */
    private static final int CHAINS = 48;

    private final Points points;
    private final int segments;
    private final boolean closed;

    private Simplicity(Points points, boolean closed) {
        this.points = points;
        this.segments = closed ? points.size() : points.size() - 1;
        this.closed = closed;
    }

    /**
     * Whether a curve, as chords that keep within a distance of it, certainly meets itself nowhere.
     *
     * @param curve an open curve
     * @param tolerance greatest distance of the chords, mm, above 0
     * @return false where that is not certain
     */
    public static boolean ofCurve(Curve curve, double tolerance) {
        if (runsAcross(curve)) {
            return true;
        }
        Simplicity line = new Simplicity(curve.flattened(tolerance), false);
        return line.segments > 0 && line.proved();
    }

    /**
     * Whether all control points lie one behind the other, from left to right: then all points of a curve do, and it comes back to none of them.
     *
     * @param curve any curve
     * @return true where they certainly do
     */
    public static boolean runsAcross(Curve curve) {
        List<Cubic> cubics = curve.segments();
        for (int i = 0; i < cubics.size(); i++) {
            Cubic cubic = cubics.get(i);
            if (!(cubic.control1().x() - cubic.start().x() > STEP
                    && cubic.control2().x() - cubic.control1().x() > STEP
                    && cubic.end().x() - cubic.control2().x() > STEP)) {
                return false;
            }
        }
        return true;
    }

    /**
     * Whether a closed line certainly meets itself nowhere.
     *
     * @param points three or more, the first not repeated
     * @return false where that is not certain
     */
    public static boolean ofRing(List<Point> points) {
        return points.size() > 2 && new Simplicity(Points.of(points), true).proved();
    }

    private boolean proved() {
        int[] starts = new int[CHAINS];
        int chains = 0;
        int way = -1;
        for (int i = 0; i < segments; i++) {
            double dx = x(i + 1) - x(i);
            double dy = y(i + 1) - y(i);
            if (dx == 0 && dy == 0) {
                return false;
            }
            int quadrant = (dx >= 0 ? 1 : 0) + (dy >= 0 ? 2 : 0);
            if (quadrant != way) {
                starts = chains + 1 < starts.length ? starts : Arrays.copyOf(starts, 2 * starts.length);
                starts[chains++] = i;
                way = quadrant;
            }
        }
        starts[chains] = segments;
        for (int one = 0; one < chains; one++) {
            for (int other = one + 1; other < chains; other++) {
                if (!apart(starts[one], starts[one + 1], starts[other], starts[other + 1])) {
                    return false;
                }
            }
        }
        return true;
    }

    /** Whether two parts of chains, each from point to point, certainly have nothing in common but the point where one goes on into the other. */
    private boolean apart(int from, int to, int start, int end) {
        if (isBefore(x(from), x(to), x(start), x(end))
                || isBefore(x(start), x(end), x(from), x(to))
                || isBefore(y(from), y(to), y(start), y(end))
                || isBefore(y(start), y(end), y(from), y(to))) {
            return true;
        }
        if (to - from == 1 && end - start == 1) {
            return segmentsApart(from, start);
        }
        if (to - from >= end - start) {
            int middle = (from + to) >>> 1;
            return apart(from, middle, start, end) && apart(middle, to, start, end);
        }
        int middle = (start + end) >>> 1;
        return apart(from, to, start, middle) && apart(from, to, middle, end);
    }

    /** Whether both ends of a stretch come before both of another. */
    private static boolean isBefore(double from, double to, double start, double end) {
        return from < start && from < end && to < start && to < end;
    }

    private boolean segmentsApart(int one, int other) {
        if (other == one + 1) {
            return goesOn(one, other);
        }
        if (closed && one == 0 && other == segments - 1) {
            return goesOn(other, one);
        }
        return side(one, other) * side(one, other + 1) > 0 || side(other, one) * side(other, one + 1) > 0;
    }

    /** Whether the next segment certainly does not run back over the one before. */
    private boolean goesOn(int one, int next) {
        return side(one, next + 1) != 0
                || (x(one + 1) - x(one)) * (x(next + 1) - x(next)) + (y(one + 1) - y(one)) * (y(next + 1) - y(next))
                        > 0;
    }

    /** On which side of a segment a point lies: 1 or -1 where that is certain, else 0. */
    private int side(int segment, int point) {
        double left = (x(segment) - x(point)) * (y(segment + 1) - y(point));
        double right = (y(segment) - y(point)) * (x(segment + 1) - x(point));
        double determinant = left - right;
        if (Math.abs(determinant) <= ROUNDING * (Math.abs(left) + Math.abs(right))) {
            return 0;
        }
        return determinant > 0 ? 1 : -1;
    }

    private double x(int place) {
        return points.x(place);
    }

    private double y(int place) {
        return points.y(place);
    }
}
