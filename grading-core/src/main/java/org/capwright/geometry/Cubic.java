package org.capwright.geometry;

/**
 * One cubic Bézier segment, parameter t from 0 to 1. Guaranteed to be immutable.
 *
 * @param start where the segment begins, t = 0
 * @param control1 first control point: the tangent at the start points at it
 * @param control2 second control point: the tangent at the end comes from it
 * @param end where the segment ends, t = 1
 */
public record Cubic(Point start, Point control1, Point control2, Point end) {

    /**
     * Nodes and weights of Kronrod's rule of fifteen points on [-1, 1], positive half, and the weights of Gauss's rule of seven, which uses every other of these points (R. Piessens and others,
     * QUADPACK, 1983, routine QK15).
     */
    private static final double[] NODES = {
        0.2077849550078984676006894,
        0.4058451513773971669066064,
        0.5860872354676911302941447,
        0.7415311855993944398638648,
        0.8648644233597690727897128,
        0.9491079123427585245261897,
        0.9914553711208126392068547
    };

    private static final double[] FIFTEEN = {
        0.2044329400752988924141620,
        0.1903505780647854099132564,
        0.1690047266392679028265834,
        0.1406532597155259187451896,
        0.1047900103222501838398763,
        0.0630920926299785532907007,
        0.0229353220105292249637320
    };

    private static final double FIFTEEN_AT_CENTRE = 0.2094821410847278280129992;

    private static final double[] SEVEN = {
        0, 0.3818300505051189449503698, 0, 0.2797053914892766679014678, 0, 0.1294849661688696932706114, 0
    };

    private static final double SEVEN_AT_CENTRE = 0.4179591836734693877551020;

    /** Two estimates of a length that agree to this, in mm, are taken as right; the finer one is then far closer. */
    private static final double LENGTH_TOLERANCE = 1e-9;

    /** Seven points are exact to 2.5e-12 of half the length at the middle's speed where the derivative has no root within this many halves of the middle. */
    private static final double CLEAR = 4;

    /** Of such a half, mm: the error stays below 1e-9 mm. */
    private static final double LONGEST_HALF = 400;

    private static final int DEEPEST = 24;

    /** A control point this near to a chord lies on it, mm. */
    private static final double ON_CHORD = 1e-9;

    /** Outer node of Gauss's rule of three points. */
    private static final double THREE = Math.sqrt(0.6);

    /** Half of the longest step over which that rule will do: on it, the speed of a smooth segment is a polynomial but for less than the rounding. */
    private static final double SHORT = 0x1p-8;

    /** Slopes of a monotone cubic through two points are at most this, in units of its chord's (F. N. Fritsch and R. E. Carlson, Monotone Piecewise Cubic Interpolation, 1980). */
    private static final double STEEPEST = 3;

    /**
     * The straight segment between two points, run through at constant speed.
     *
     * @param from start
     * @param to end
     * @return a cubic whose control points lie on the line at one and two thirds
     */
    public static Cubic line(Point from, Point to) {
        return new Cubic(from, from.towards(to, 1.0 / 3), from.towards(to, 2.0 / 3), to);
    }

    /**
     * The segment with given ends and derivatives (Hermite form).
     *
     * @param from start
     * @param derivativeAtStart dB/dt at t = 0
     * @param derivativeAtEnd dB/dt at t = 1
     * @param to end
     * @return the only cubic with these data
     */
    public static Cubic hermite(Point from, Point derivativeAtStart, Point derivativeAtEnd, Point to) {
        return new Cubic(
                from,
                new Point(from.x() + derivativeAtStart.x() / 3, from.y() + derivativeAtStart.y() / 3),
                new Point(to.x() - derivativeAtEnd.x() / 3, to.y() - derivativeAtEnd.y() / 3),
                to);
    }

    /**
     * The point at a parameter.
     *
     * @param t 0 at the start, 1 at the end
     * @return the point
     */
    public Point pointAt(double t) {
        if (t == 0) {
            return start;
        }
        if (t == 1) {
            return end;
        }
        return new Point(x(t), y(t));
    }

    /**
     * How far to the right the segment lies at a parameter.
     *
     * @param t 0 at the start, 1 at the end
     * @return mm
     */
    public double x(double t) {
        return t == 0 ? start.x() : t == 1 ? end.x() : at(t, start.x(), control1.x(), control2.x(), end.x());
    }

    /**
     * How far up the segment lies at a parameter.
     *
     * @param t 0 at the start, 1 at the end
     * @return mm
     */
    public double y(double t) {
        return t == 0 ? start.y() : t == 1 ? end.y() : at(t, start.y(), control1.y(), control2.y(), end.y());
    }

    private static double at(double t, double p, double q, double r, double s) {
        double u = 1 - t;
        return u * u * u * p + 3 * u * u * t * q + 3 * u * t * t * r + t * t * t * s;
    }

    /**
     * The first derivative by the parameter.
     *
     * @param t 0 to 1
     * @return dB/dt
     */
    public Point derivativeAt(double t) {
        return new Point(derivativeX(t), derivativeY(t));
    }

    /**
     * The second derivative by the parameter.
     *
     * @param t 0 to 1
     * @return d²B/dt²
     */
    public Point secondDerivativeAt(double t) {
        double u = 1 - t;
        return new Point(
                6
                        * (u * (control2.x() - 2 * control1.x() + start.x())
                                + t * (end.x() - 2 * control2.x() + control1.x())),
                6
                        * (u * (control2.y() - 2 * control1.y() + start.y())
                                + t * (end.y() - 2 * control2.y() + control1.y())));
    }

    /**
     * The unit tangent, in the direction of travel. Where a control point falls on its end, the next control point gives the direction.
     *
     * @param t 0 to 1
     * @return a vector of length 1; zero for a segment that is a single point
     */
    public Point tangentAt(double t) {
        Point derivative = derivativeAt(t);
        if (derivative.norm() > 1e-12) {
            return derivative.unit();
        }
        Point second = secondDerivativeAt(t);
        if (second.norm() > 1e-12) {
            return (t > 0.5 ? second.times(-1) : second).unit();
        }
        return end.minus(start).unit();
    }

    /**
     * The signed curvature, 1/mm: positive where the segment turns left. κ = (B' × B'') / |B'|³.
     *
     * @param t 0 to 1
     * @return the curvature, 0 on a straight line
     */
    public double curvatureAt(double t) {
        Point first = derivativeAt(t);
        double speed = first.norm();
        return speed == 0 ? 0 : first.cross(secondDerivativeAt(t)) / (speed * speed * speed);
    }

    /**
     * Whether the segment is a straight line run through forwards.
     *
     * @return true when the control points lie on the chord, between its ends and in order, to 1e-9 mm
     */
    public boolean isStraight() {
        double x = end.x() - start.x();
        double y = end.y() - start.y();
        double square = x * x + y * y;
        if (square == 0) {
            return control1.equals(start) && control2.equals(start);
        }
        double x1 = control1.x() - start.x();
        double y1 = control1.y() - start.y();
        double x2 = control2.x() - start.x();
        double y2 = control2.y() - start.y();
        double beside1 = x * y1 - y * x1;
        double beside2 = x * y2 - y * x2;
        double along1 = x1 * x + y1 * y;
        double along2 = x2 * x + y2 * y;
        return beside1 * beside1 < ON_CHORD * ON_CHORD * square
                && beside2 * beside2 < ON_CHORD * ON_CHORD * square
                && along1 >= 0
                && along1 <= along2
                && along2 <= square;
    }

    /**
     * The arc length.
     *
     * @return millimetres, right to better than 1e-9 mm
     */
    public double length() {
        return isStraight() ? start.distanceTo(end) : length(0, 1);
    }

    /**
     * The arc length of a part of the segment, by adaptive Gauss-Kronrod integration of the speed.
     *
     * @param from parameter where the part begins, 0 to 1
     * @param to parameter where it ends, 0 to 1, not below {@code from}
     * @return millimetres, right to better than 1e-9 mm
     */
    public double length(double from, double to) {
        return length(from, to, 0);
    }

    /**
     * The integral of the speed |a t² + b t + c|, all three vectors, c the derivative at the start. Mostly seven points will do: with d and a h² what b h and a are about the middle m,
     * the speed is analytic and at most 2 |m| in the disc of {@link #CLEAR} halves h where {@code CLEAR} |d| + {@code CLEAR}² |a h²| is at most |m|, and so in the ellipse about the
     * part whose half axes add up to ρ = 7.87; the error of Gauss's rule is then at most 64/15 · 2 |m| h ρ⁻¹⁴ / (1 - ρ⁻²) (L. N. Trefethen, Approximation Theory and Approximation Practice,
     * theorem 19.3).
     */
    private double length(double from, double to, int depth) {
        double cx = 3 * (control1.x() - start.x());
        double cy = 3 * (control1.y() - start.y());
        double bx = 6 * (control2.x() - control1.x()) - 2 * cx;
        double by = 6 * (control2.y() - control1.y()) - 2 * cy;
        double ax = 3 * (end.x() - control2.x()) - bx - cx;
        double ay = 3 * (end.y() - control2.y()) - by - cy;
        double half = (to - from) / 2;
        double centre = (to + from) / 2;
        double middle = norm((ax * centre + bx) * centre + cx, (ay * centre + by) * centre + cy);
        double first = half * norm(2 * ax * centre + bx, 2 * ay * centre + by);
        double second = half * half * norm(ax, ay);
        double coarse = SEVEN_AT_CENTRE * middle;
        double fine = FIFTEEN_AT_CENTRE * middle;
        for (int i = 1; i < NODES.length; i += 2) {
            double both = speeds(ax, bx, cx, ay, by, cy, centre, half * NODES[i]);
            coarse += SEVEN[i] * both;
            fine += FIFTEEN[i] * both;
        }
        if (CLEAR * (first + CLEAR * second) <= middle && half * middle <= LONGEST_HALF) {
            return coarse * half;
        }
        for (int i = 0; i < NODES.length; i += 2) {
            fine += FIFTEEN[i] * speeds(ax, bx, cx, ay, by, cy, centre, half * NODES[i]);
        }
        return depth == DEEPEST || Math.abs(fine - coarse) * half <= LENGTH_TOLERANCE
                ? fine * half
                : length(from, centre, depth + 1) + length(centre, to, depth + 1);
    }

    /** The speeds at two places equally far from the middle, added up. */
    private static double speeds(
            double ax, double bx, double cx, double ay, double by, double cy, double centre, double away) {
        double early = centre - away;
        double late = centre + away;
        return norm((ax * early + bx) * early + cx, (ay * early + by) * early + cy)
                + norm((ax * late + bx) * late + cx, (ay * late + by) * late + cy);
    }

    private static double norm(double x, double y) {
        return Math.sqrt(x * x + y * y);
    }

    private double speed(double t) {
        return norm(derivativeX(t), derivativeY(t));
    }

    /**
     * How fast the segment runs to the right at a parameter.
     *
     * @param t 0 to 1
     * @return dx/dt
     */
    public double derivativeX(double t) {
        double u = 1 - t;
        return 3
                * (u * u * (control1.x() - start.x())
                        + 2 * u * t * (control2.x() - control1.x())
                        + t * t * (end.x() - control2.x()));
    }

    /**
     * How fast the segment runs up at a parameter.
     *
     * @param t 0 to 1
     * @return dy/dt
     */
    public double derivativeY(double t) {
        double u = 1 - t;
        return 3
                * (u * u * (control1.y() - start.y())
                        + 2 * u * t * (control2.y() - control1.y())
                        + t * t * (end.y() - control2.y()));
    }

    /**
     * The parameter at an arc length from the start, by steps of the third order kept inside a shrinking bracket.
     *
     * @param distance millimetres along the segment, from 0 to its length; values outside give the nearer end
     * @return t such that the arc from 0 to t has that length to 1e-9 mm
     */
    public double parameterAtLength(double distance) {
        return parameterAtLength(distance, length());
    }

    /** The same for a caller that knows the segment's length already. */
    double parameterAtLength(double distance, double total) {
        if (distance <= 0 || total == 0) {
            return 0;
        }
        if (distance >= total) {
            return 1;
        }
        double low = 0;
        double high = 1;
        double t = guess(distance / total, total);
        double reached = length(0, t);
        for (int i = 0; i < 60; i++) {
            double error = reached - distance;
            if (Math.abs(error) < 1e-10) {
                return t;
            }
            if (error > 0) {
                high = t;
            } else {
                low = t;
            }
            double near = t + before(t, error);
            double next = near > low && near < high ? near : (low + high) / 2;
            reached += step(t, next);
            t = next;
        }
        return t;
    }

    /** The parameter's change over an arc back from a place, by the first two terms of the inverse's series: -e/s - e² s' / 2 s³, with s the speed and s' how it grows. */
    private double before(double t, double arc) {
        Point first = derivativeAt(t);
        double square = first.dot(first);
        double steps = arc / Math.sqrt(square);
        return -steps - steps * steps * first.dot(secondDerivativeAt(t)) / (2 * square);
    }

    /** The arc between two parameters, negative backwards: over a short step by Gauss's rule of three points, whose error is of the seventh order. */
    private double step(double from, double to) {
        double half = (to - from) / 2;
        if (Math.abs(half) > SHORT) {
            return half > 0 ? length(from, to) : -length(to, from);
        }
        double centre = (from + to) / 2;
        double node = half * THREE;
        return half * (5 * speed(centre - node) + 8 * speed(centre) + 5 * speed(centre + node)) / 9;
    }

    /** The parameter at a share of the length: of the cubic that has the inverse's values and slopes at both ends, as far as it rises. */
    private double guess(double share, double total) {
        double first = total / speed(0);
        double last = total / speed(1);
        if (!(first <= STEEPEST && last <= STEEPEST)) {
            return share;
        }
        double rest = 1 - share;
        return share * (share * (3 - 2 * share) + rest * (first * rest - last * share));
    }

    /**
     * The part between two parameters, by de Casteljau's construction (blossoming).
     *
     * @param from 0 to 1
     * @param to 0 to 1, greater than {@code from}
     * @return the segment that runs over just that part
     */
    public Cubic part(double from, double to) {
        if (from == 0 && to == 1) {
            return this;
        }
        return new Cubic(pointAt(from), blossom(from, from, to), blossom(from, to, to), pointAt(to));
    }

    private Point blossom(double a, double b, double c) {
        return new Point(
                blossom(a, b, c, start.x(), control1.x(), control2.x(), end.x()),
                blossom(a, b, c, start.y(), control1.y(), control2.y(), end.y()));
    }

    private static double blossom(double a, double b, double c, double p0, double p1, double p2, double p3) {
        double p01 = p0 + (p1 - p0) * a;
        double p12 = p1 + (p2 - p1) * a;
        double p23 = p2 + (p3 - p2) * a;
        double p012 = p01 + (p12 - p01) * b;
        double p123 = p12 + (p23 - p12) * b;
        return p012 + (p123 - p012) * c;
    }

    /**
     * The same segment run through from its end.
     *
     * @return the reversed segment
     */
    public Cubic reversed() {
        return new Cubic(end, control2, control1, start);
    }

    /**
     * The mirror image about x = 0, run through from its end.
     *
     * @param from the mirror image of the end, where the image before this one ended
     * @return the mirrored segment, from there to the mirrored start
     */
    public Cubic mirroredBack(Point from) {
        return new Cubic(from, control2.mirrored(), control1.mirrored(), start.mirrored());
    }

    /**
     * The segment moved by a vector.
     *
     * @param offset millimetres
     * @return the moved segment
     */
    public Cubic translated(Point offset) {
        return new Cubic(start.plus(offset), control1.plus(offset), control2.plus(offset), end.plus(offset));
    }

    /** The box about the control points: the segment lies within. */
    Box hull() {
        return new Box(
                Math.min(Math.min(start.x(), control1.x()), Math.min(control2.x(), end.x())),
                Math.min(Math.min(start.y(), control1.y()), Math.min(control2.y(), end.y())),
                Math.max(Math.max(start.x(), control1.x()), Math.max(control2.x(), end.x())),
                Math.max(Math.max(start.y(), control1.y()), Math.max(control2.y(), end.y())));
    }

    /**
     * How many straight chords of equal parameter step keep within a distance of the segment. A chord over a step h is off by at most h²/8 · max|B''|,
     * and |B''| is greatest at an end of a cubic.
     *
     * @param tolerance greatest distance in mm, above 0
     * @return 1 or more, at most 10 000
     */
    public int chordsWithin(double tolerance) {
        if (isStraight()) {
            return 1;
        }
        double startX = control2.x() - 2 * control1.x() + start.x();
        double startY = control2.y() - 2 * control1.y() + start.y();
        double endX = end.x() - 2 * control2.x() + control1.x();
        double endY = end.y() - 2 * control2.y() + control1.y();
        double greatest = 6 * Math.sqrt(Math.max(startX * startX + startY * startY, endX * endX + endY * endY));
        return (int) Math.min(10_000, Math.max(1, Math.ceil(Math.sqrt(greatest / (8 * tolerance)))));
    }

    /** Goes on from the start by chords of equal parameter step; no two neighbouring points are equal. */
    void chords(int count, PointsBuilder line) {
        for (int k = 1; k <= count; k++) {
            double t = (double) k / count;
            line.goOn(x(t), y(t));
        }
    }
}
