package org.capwright.geometry;

import org.jspecify.annotations.Nullable;

/**
 * A point or a vector of the drafting plane. Guaranteed to be immutable.
 *
 * @param x millimetres to the right, finite
 * @param y millimetres up, finite
 */
public record Point(double x, double y) {

    /** The point (0, 0): where the fold line meets the bicep line in a sleeve draft. */
    public static final Point ORIGIN = new Point(0, 0);

    /**
     * The vector sum.
     *
     * @param other the vector to add
     * @return this + other
     */
    public Point plus(Point other) {
        return new Point(x + other.x, y + other.y);
    }

    /**
     * The vector from another point to this one.
     *
     * @param other the point to measure from
     * @return this - other
     */
    public Point minus(Point other) {
        return new Point(x - other.x, y - other.y);
    }

    /**
     * The scaled vector.
     *
     * @param factor a finite number
     * @return this vector, factor times as long
     */
    public Point times(double factor) {
        return new Point(x * factor, y * factor);
    }

    /**
     * The scalar product.
     *
     * @param other a vector
     * @return x x' + y y'
     */
    public double dot(Point other) {
        return x * other.x + y * other.y;
    }

    /**
     * The cross product's z component: positive where the other vector lies to the left of this one.
     *
     * @param other a vector
     * @return x y' - y x'
     */
    public double cross(Point other) {
        return x * other.y - y * other.x;
    }

    /**
     * How far another point lies to the left of a line through this one, times the length of the line's vector.
     *
     * @param way a vector along the line
     * @param other any point
     * @return the cross product of the vector and the way from here to there
     */
    public double beside(Point way, Point other) {
        return way.x * (other.y - y) - way.y * (other.x - x);
    }

    /**
     * How far another point lies ahead along a line through this one, times the length of the line's vector.
     *
     * @param way a vector along the line
     * @param other any point
     * @return the scalar product of the vector and the way from here to there
     */
    public double ahead(Point way, Point other) {
        return way.x * (other.x - x) + way.y * (other.y - y);
    }

    /**
     * The length of this vector.
     *
     * @return millimetres, 0 or more
     */
    public double norm() {
        return Math.sqrt(x * x + y * y);
    }

    /**
     * The straight distance to another point.
     *
     * @param other a point
     * @return millimetres, 0 or more
     */
    public double distanceTo(Point other) {
        double dx = x - other.x;
        double dy = y - other.y;
        return Math.sqrt(dx * dx + dy * dy);
    }

    /**
     * The distance to a straight piece of line.
     *
     * @param start one end
     * @param end the other end; the same point gives the distance to it
     * @return millimetres to the nearest point between the ends, 0 or more
     */
    public double distanceTo(Point start, Point end) {
        Point along = end.minus(start);
        double square = along.dot(along);
        double share = square == 0 ? 0 : Math.max(0, Math.min(1, minus(start).dot(along) / square));
        return start.towards(end, share).distanceTo(this);
    }

    /**
     * A point of the straight line to another point.
     *
     * @param other the far end
     * @param fraction 0 gives this point, 1 the other
     * @return the point at that fraction of the way
     */
    public Point towards(Point other, double fraction) {
        return new Point(x + (other.x - x) * fraction, y + (other.y - y) * fraction);
    }

    /**
     * The vector of length 1 in this direction.
     *
     * @return a unit vector; the zero vector stays zero
     */
    public Point unit() {
        double norm = norm();
        return norm == 0 ? this : new Point(x / norm, y / norm);
    }

    /**
     * This vector turned a quarter counter-clockwise: the left-hand normal.
     *
     * @return (-y, x)
     */
    public Point left() {
        return new Point(-y, x);
    }

    /**
     * The mirror image about the vertical line x = 0, the fold line of a draft.
     *
     * @return (-x, y)
     */
    public Point mirrored() {
        return new Point(0.0 - x, y);
    }

    // As a record does by itself, but without its detour over method handles: joints of curves are compared all the
    // time.
    @Override
    public boolean equals(@Nullable Object other) {
        return other == this
                || other instanceof Point point && Double.compare(x, point.x) == 0 && Double.compare(y, point.y) == 0;
    }

    @Override
    public int hashCode() {
        return 31 * Double.hashCode(x) + Double.hashCode(y);
    }
}
