package org.capwright.draft.pleat;

import org.capwright.geometry.Cubic;
import org.capwright.geometry.Isometry;
import org.capwright.geometry.Point;

/**
 * One side of a crease in the folded plane.
 *
 * @param on a point of the crease
 * @param outward unit vector square to the crease, away from the side that is meant
 */
record HalfPlane(Point on, Point outward) {

    private static final int DEEPEST = 48;

    /** As fine as {@link #DEEPEST} halvings of a segment. */
    private static final double LEAST_STEP = 0x1p-48;

    /**
     * The side of a crease on which a point lies.
     *
     * @param on a point of the crease
     * @param along unit vector along the crease
     * @param inside a point beside the crease
     */
    static HalfPlane from(Point on, Point along, Point inside) {
        Point square = along.left();
        return new HalfPlane(on, square.dot(inside.minus(on)) > 0 ? square.times(-1) : square);
    }

    /** How far a point lies beyond the crease, mm; negative inside. */
    double outside(Point point) {
        return (point.x() - on.x()) * outward.x() + (point.y() - on.y()) * outward.y();
    }

    /** What comes to lie on this side by a motion. */
    HalfPlane before(Isometry motion) {
        Isometry back = motion.inverse();
        return new HalfPlane(back.of(on), back.turned(outward));
    }

    /** How far a point lies from the crease, mm. */
    double depth(Point point) {
        return Math.abs(outside(point));
    }

    /** Whether a segment comes further beyond the crease than this, mm. Where its control points do not, it does not. */
    boolean reaches(Cubic segment, double beyond) {
        double half = beyond / 2;
        if (outside(segment.start()) <= half
                && outside(segment.control1()) <= half
                && outside(segment.control2()) <= half
                && outside(segment.end()) <= half) {
            return false;
        }
        if (outside(segment.start()) > beyond || outside(segment.end()) > beyond) {
            return true;
        }
        for (int i = 1; i < 16; i++) {
            if (outside(segment.pointAt(i / 16.0)) > beyond) {
                return true;
            }
        }
        return false;
    }

    /** The first parameter at which a segment that starts inside comes out, 1 if it stays inside. The distances of the control points are the Bernstein form of the distance. */
    double firstOutside(Cubic segment) {
        double found = first(
                outside(segment.start()),
                outside(segment.control1()),
                outside(segment.control2()),
                outside(segment.end()),
                0,
                1,
                0);
        return Double.isNaN(found) ? 1 : found;
    }

    private static double first(double a, double b, double c, double d, double from, double to, int halvings) {
        if (Math.max(Math.max(a, b), Math.max(c, d)) <= 0) {
            return Double.NaN;
        }
        if (a <= 0 && a <= b && b <= c && c <= d) {
            return from + (to - from) * root(a, b, c, d);
        }
        if (halvings == DEEPEST) {
            return from;
        }
        double ab = (a + b) / 2;
        double bc = (b + c) / 2;
        double cd = (c + d) / 2;
        double abc = (ab + bc) / 2;
        double bcd = (bc + cd) / 2;
        double middle = (abc + bcd) / 2;
        double half = (from + to) / 2;
        double early = first(a, ab, abc, middle, from, half, halvings + 1);
        return Double.isNaN(early) ? first(middle, bcd, cd, d, half, to, halvings + 1) : early;
    }

    /** The only root in [0, 1] of a cubic in Bernstein form whose coefficients rise, from 0 or below to above 0: Newton steps kept inside a shrinking bracket. */
    private static double root(double a, double b, double c, double d) {
        double low = 0;
        double high = 1;
        double t = a / (a - d);
        for (int i = 0; i < DEEPEST && high - low > 0; i++) {
            double u = 1 - t;
            double value = u * u * (u * a + 3 * t * b) + t * t * (3 * u * c + t * d);
            if (value > 0) {
                high = t;
            } else {
                low = t;
            }
            double slope = 3 * (u * u * (b - a) + 2 * u * t * (c - b) + t * t * (d - c));
            double next = t - value / slope;
            if (Math.abs(next - t) <= LEAST_STEP) {
                return next > low && next < high ? next : t;
            }
            t = next > low && next < high ? next : (low + high) / 2;
        }
        return t;
    }
}
