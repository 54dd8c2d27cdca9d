package org.capwright.gradeimport;

import java.util.List;
import org.capwright.geometry.Point;

/** An upright box in the drawing, mm. */
record Box(double left, double bottom, double right, double top) {

    static Box of(List<Point> points) {
        double left = Double.POSITIVE_INFINITY;
        double bottom = Double.POSITIVE_INFINITY;
        double right = Double.NEGATIVE_INFINITY;
        double top = Double.NEGATIVE_INFINITY;
        for (Point point : points) {
            left = Math.min(left, point.x());
            bottom = Math.min(bottom, point.y());
            right = Math.max(right, point.x());
            top = Math.max(top, point.y());
        }
        return new Box(left, bottom, right, top);
    }

    Box with(Box other) {
        return new Box(
                Math.min(left, other.left),
                Math.min(bottom, other.bottom),
                Math.max(right, other.right),
                Math.max(top, other.top));
    }

    double area() {
        return (right - left) * (top - bottom);
    }

    /** Whether they share a third of the smaller one. */
    boolean overlaps(Box other) {
        double width = Math.min(right, other.right) - Math.max(left, other.left);
        double height = Math.min(top, other.top) - Math.max(bottom, other.bottom);
        return width > 0 && height > 0 && width * height >= Math.min(area(), other.area()) / 3;
    }

    /** How far a point lies outside, 0 inside. */
    double distance(Point point) {
        double dx = Math.max(0, Math.max(left - point.x(), point.x() - right));
        double dy = Math.max(0, Math.max(bottom - point.y(), point.y() - top));
        return Math.hypot(dx, dy);
    }
}
