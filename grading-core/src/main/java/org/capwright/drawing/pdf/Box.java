package org.capwright.drawing.pdf;

import org.capwright.geometry.Point;

/** An upright rectangle, mm, y up. */
record Box(double left, double bottom, double right, double top) {

    static final Box EMPTY = new Box(
            Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY, Double.NEGATIVE_INFINITY);

    double width() {
        return right - left;
    }

    double height() {
        return top - bottom;
    }

    Box including(Point p) {
        return new Box(Math.min(left, p.x()), Math.min(bottom, p.y()), Math.max(right, p.x()), Math.max(top, p.y()));
    }

    Box including(Box other) {
        return new Box(
                Math.min(left, other.left),
                Math.min(bottom, other.bottom),
                Math.max(right, other.right),
                Math.max(top, other.top));
    }

    Box grown(double by) {
        return new Box(left - by, bottom - by, right + by, top + by);
    }

    Box moved(Point by) {
        return new Box(left + by.x(), bottom + by.y(), right + by.x(), top + by.y());
    }

    boolean meets(Box other) {
        return left < other.right && other.left < right && bottom < other.top && other.bottom < top;
    }
}
