package org.capwright.geometry;

/**
 * A rigid motion of the plane, mirrored or not: (x, y) becomes (xx x + xy y + dx, yx x + yy y + dy).
 *
 * @param xx first row of an orthogonal matrix
 * @param xy first row
 * @param yx second row
 * @param yy second row
 * @param dx shift to the right, mm
 * @param dy shift up, mm
 */
public record Isometry(double xx, double xy, double yx, double yy, double dx, double dy) {

    /** Everything stays where it is. */
    public static final Isometry NONE = new Isometry(1, 0, 0, 1, 0, 0);

    /**
     * The reflection about a straight line.
     *
     * @param through a point of the line
     * @param along unit vector along the line
     * @return the reflection
     */
    public static Isometry reflection(Point through, Point along) {
        double cosine = along.x() * along.x() - along.y() * along.y();
        double sine = 2 * along.x() * along.y();
        return new Isometry(
                cosine,
                sine,
                sine,
                -cosine,
                through.x() - (cosine * through.x() + sine * through.y()),
                through.y() - (sine * through.x() - cosine * through.y()));
    }

    /**
     * This motion after another.
     *
     * @param first the motion that comes first
     * @return both as one
     */
    public Isometry after(Isometry first) {
        return new Isometry(
                xx * first.xx + xy * first.yx,
                xx * first.xy + xy * first.yy,
                yx * first.xx + yy * first.yx,
                yx * first.xy + yy * first.yy,
                xx * first.dx + xy * first.dy + dx,
                yx * first.dx + yy * first.dy + dy);
    }

    /**
     * The motion back; for an orthogonal matrix its transpose.
     *
     * @return the inverse
     */
    public Isometry inverse() {
        return new Isometry(xx, yx, xy, yy, -(xx * dx + yx * dy), -(xy * dx + yy * dy));
    }

    /**
     * The image of a point.
     *
     * @param point any point
     * @return where it comes to lie
     */
    public Point of(Point point) {
        return new Point(x(point), y(point));
    }

    /**
     * How far to the right the image of a point lies.
     *
     * @param point any point
     * @return mm
     */
    public double x(Point point) {
        return xx * point.x() + xy * point.y() + dx;
    }

    /**
     * How far up the image of a point lies.
     *
     * @param point any point
     * @return mm
     */
    public double y(Point point) {
        return yx * point.x() + yy * point.y() + dy;
    }

    /**
     * The image of a vector.
     *
     * @param vector any vector
     * @return the vector turned and mirrored, not shifted
     */
    public Point turned(Point vector) {
        return new Point(xx * vector.x() + xy * vector.y(), yx * vector.x() + yy * vector.y());
    }

    /**
     * The image of a segment.
     *
     * @param segment any segment
     * @return the segment moved, run through in the same sense
     */
    public Cubic of(Cubic segment) {
        return new Cubic(of(segment.start()), of(segment.control1()), of(segment.control2()), of(segment.end()));
    }
}
