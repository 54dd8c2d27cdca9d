package org.capwright.gradeimport;

import java.util.List;
import org.capwright.exchange.dxf.Insertion;
import org.capwright.geometry.Box;
import org.capwright.geometry.Point;

/** A closed line of a drawing that may be a piece. */
record Outline(
        String layer,
        int colour,
        LineRole role,
        Insertion instance,
        int line,
        List<Point> points,
        Box box,
        double area) {

    static Outline of(String layer, int colour, Insertion instance, int line, List<Point> points) {
        return new Outline(
                layer,
                colour,
                LineRole.of(layer),
                instance,
                line,
                points,
                Box.of(points),
                Math.abs(SleeveShape.area(points)));
    }

    /** The same line along other points. */
    Outline along(List<Point> other) {
        return new Outline(
                layer, colour, role, instance, line, other, Box.of(other), Math.abs(SleeveShape.area(other)));
    }

    /** The same line with another role. */
    Outline as(LineRole other) {
        return new Outline(layer, colour, other, instance, line, points, box, area);
    }

    /** The same line as that of another insertion. */
    Outline in(Insertion other) {
        return new Outline(layer, colour, role, other, line, points, box, area);
    }
}
