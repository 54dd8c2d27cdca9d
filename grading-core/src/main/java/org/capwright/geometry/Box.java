package org.capwright.geometry;

/**
 * An upright rectangle, mm, y up. Immutable.
 *
 * @param left least x
 * @param bottom least y
 * @param right greatest x
 * @param top greatest y
 */
public record Box(double left, double bottom, double right, double top) {

    /** The box about nothing: {@link #including} makes it the box about whatever comes first. */
    public static final Box EMPTY = new Box(
            Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY, Double.NEGATIVE_INFINITY);

    /**
     * The box about points.
     *
     * @param points none gives {@link #EMPTY}
     * @return the least box that holds them
     */
    public static Box of(Iterable<Point> points) {
        if (points instanceof Points line) {
            return line.box();
        }
        double left = EMPTY.left;
        double bottom = EMPTY.bottom;
        double right = EMPTY.right;
        double top = EMPTY.top;
        for (Point point : points) {
            left = Math.min(left, point.x());
            bottom = Math.min(bottom, point.y());
            right = Math.max(right, point.x());
            top = Math.max(top, point.y());
        }
        return new Box(left, bottom, right, top);
    }

    /**
     * Whether nothing is in it.
     *
     * @return true for {@link #EMPTY}
     */
    public boolean isEmpty() {
        return left > right;
    }

    /**
     * Its width.
     *
     * @return mm
     */
    public double width() {
        return right - left;
    }

    /**
     * Its height.
     *
     * @return mm
     */
    public double height() {
        return top - bottom;
    }

    /**
     * Its area.
     *
     * @return mm²
     */
    public double area() {
        return width() * height();
    }

    /**
     * Its middle.
     *
     * @return the point halfway between its corners
     */
    public Point middle() {
        return new Point((left + right) / 2, (bottom + top) / 2);
    }

    /**
     * The box about this one and a point.
     *
     * @param p the point
     * @return the least box that holds both
     */
    public Box including(Point p) {
        return including(new Box(p.x(), p.y(), p.x(), p.y()));
    }

    /**
     * The box about two boxes.
     *
     * @param other the other
     * @return the least box that holds both
     */
    public Box including(Box other) {
        return new Box(
                Math.min(left, other.left),
                Math.min(bottom, other.bottom),
                Math.max(right, other.right),
                Math.max(top, other.top));
    }

    /**
     * A larger box about the same middle.
     *
     * @param by how far every side moves outward, mm
     * @return the larger box
     */
    public Box grown(double by) {
        return new Box(left - by, bottom - by, right + by, top + by);
    }

    /**
     * The box at another place.
     *
     * @param by how far it moves
     * @return a box of the same size
     */
    public Box moved(Point by) {
        return new Box(left + by.x(), bottom + by.y(), right + by.x(), top + by.y());
    }

    /**
     * Whether two boxes have an area in common.
     *
     * @param other the other
     * @return false if they only touch
     */
    public boolean meets(Box other) {
        return left < other.right && other.left < right && bottom < other.top && other.bottom < top;
    }

    /**
     * Whether a straight piece of line comes into the box.
     *
     * @param from one end
     * @param to the other end
     * @return true also where it only touches; a line parts the box from itself if all corners lie on one side of it
     */
    public boolean meets(Point from, Point to) {
        return meets(from.x(), from.y(), to.x(), to.y());
    }

    /**
     * Whether a straight piece of line comes into the box.
     *
     * @param fromX one end, mm to the right
     * @param fromY one end, mm up
     * @param toX the other end, mm to the right
     * @param toY the other end, mm up
     * @return true also where it only touches; a line parts the box from itself if all corners lie on one side of it
     */
    public boolean meets(double fromX, double fromY, double toX, double toY) {
        if (Math.max(fromX, toX) < left
                || Math.min(fromX, toX) > right
                || Math.max(fromY, toY) < bottom
                || Math.min(fromY, toY) > top) {
            return false;
        }
        double dx = toX - fromX;
        double dy = toY - fromY;
        double lowerLeft = dx * (bottom - fromY) - dy * (left - fromX);
        double lowerRight = dx * (bottom - fromY) - dy * (right - fromX);
        double upperLeft = dx * (top - fromY) - dy * (left - fromX);
        double upperRight = dx * (top - fromY) - dy * (right - fromX);
        return Math.min(Math.min(lowerLeft, lowerRight), Math.min(upperLeft, upperRight)) <= 0
                && Math.max(Math.max(lowerLeft, lowerRight), Math.max(upperLeft, upperRight)) >= 0;
    }

    /**
     * What two boxes have in common.
     *
     * @param other the other
     * @return the common box; its width or height is negative where they lie apart
     */
    public Box shared(Box other) {
        return new Box(
                Math.max(left, other.left),
                Math.max(bottom, other.bottom),
                Math.min(right, other.right),
                Math.min(top, other.top));
    }

    /**
     * How far a point lies outside.
     *
     * @param point the point
     * @return mm, 0 inside
     */
    public double distanceTo(Point point) {
        double dx = Math.max(0, Math.max(left - point.x(), point.x() - right));
        double dy = Math.max(0, Math.max(bottom - point.y(), point.y() - top));
        return Math.hypot(dx, dy);
    }
}
