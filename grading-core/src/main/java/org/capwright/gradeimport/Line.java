package org.capwright.gradeimport;

import java.util.List;
import org.capwright.geometry.Point;

/** A line of the drawing in millimetres, curves flattened; closed lines do not repeat their first point. */
record Line(String layer, Instance instance, int line, boolean closed, List<Point> points) {

    Point start() {
        return points.get(0);
    }

    Point end() {
        return points.get(points.size() - 1);
    }
}
