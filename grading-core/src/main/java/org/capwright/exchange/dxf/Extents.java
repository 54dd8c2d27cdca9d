package org.capwright.exchange.dxf;

import org.capwright.geometry.Point;

/** The box around everything drawn so far. */
final class Extents {

    private double left = Double.POSITIVE_INFINITY;
    private double bottom = Double.POSITIVE_INFINITY;
    private double right = Double.NEGATIVE_INFINITY;
    private double top = Double.NEGATIVE_INFINITY;

    void add(double x, double y) {
        left = Math.min(left, x);
        bottom = Math.min(bottom, y);
        right = Math.max(right, x);
        top = Math.max(top, y);
    }

    void add(Point point) {
        add(point.x(), point.y());
    }

    void add(Iterable<Point> points) {
        for (Point point : points) {
            add(point.x(), point.y());
        }
    }

    void add(Extents other, double dx, double dy) {
        if (!other.isEmpty()) {
            add(other.left + dx, other.bottom + dy);
            add(other.right + dx, other.top + dy);
        }
    }

    boolean isEmpty() {
        return left > right;
    }

    double left() {
        return left;
    }

    double bottom() {
        return bottom;
    }

    double right() {
        return right;
    }

    double top() {
        return top;
    }

    double width() {
        return right - left;
    }

    double height() {
        return top - bottom;
    }
}
