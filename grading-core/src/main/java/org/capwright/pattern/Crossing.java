package org.capwright.pattern;

import java.util.Optional;
import org.capwright.geometry.Point;

/** Where two straight lines between points cross. */
final class Crossing {

    private Crossing() {}

    /** The common point of two lines, ends included; nothing if they are parallel or pass each other. */
    static Optional<Point> of(Point from, Point to, Point start, Point end) {
        Point first = to.minus(from);
        Point second = end.minus(start);
        double area = first.cross(second);
        if (area == 0) {
            return Optional.empty();
        }
        Point between = start.minus(from);
        double along = between.cross(second) / area;
        double across = between.cross(first) / area;
        return along >= 0 && along <= 1 && across >= 0 && across <= 1
                ? Optional.of(from.plus(first.times(along)))
                : Optional.empty();
    }
}
