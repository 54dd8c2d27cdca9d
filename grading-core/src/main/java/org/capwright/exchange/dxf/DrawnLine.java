package org.capwright.exchange.dxf;

import java.util.List;
import org.capwright.geometry.Point;

/**
 * A line of a drawing, curves flattened to {@link DxfContent#TOLERANCE}.
 *
 * @param layer its layer
 * @param colour its colour number, 1 to 255; 0 where it has none of its own
 * @param instance the insertion that it is part of
 * @param line line of the file, the first is 1
 * @param closed whether its end is joined to its start; closed lines do not repeat their first point
 * @param points two or more, mm
 */
public record DrawnLine(String layer, int colour, Insertion instance, int line, boolean closed, List<Point> points) {

    /**
     * Where it begins.
     *
     * @return its first point
     */
    public Point start() {
        return points.get(0);
    }

    /**
     * Where it ends.
     *
     * @return its last point
     */
    public Point end() {
        return points.get(points.size() - 1);
    }
}
