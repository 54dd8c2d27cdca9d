package org.capwright.pattern;

import java.util.ArrayList;
import java.util.List;
import org.capwright.geometry.Point;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LinearRing;
import org.locationtech.jts.geom.Polygon;

/** Turns closed lines of points into polygons of the geometry library and back. */
final class Outline {

    /** Geometries of double coordinates; the factory is immutable. */
    static final GeometryFactory PLANE = new GeometryFactory();

    private Outline() {}

    /** The polygon within a closed line of three or more points, the first not repeated. */
    static Polygon polygon(List<Point> points) {
        return PLANE.createPolygon(ring(points));
    }

    static LinearRing ring(List<Point> points) {
        Coordinate[] coordinates = new Coordinate[points.size() + 1];
        for (int i = 0; i < points.size(); i++) {
            coordinates[i] = coordinate(points.get(i));
        }
        coordinates[points.size()] = coordinates[0].copy();
        return PLANE.createLinearRing(coordinates);
    }

    static Coordinate coordinate(Point point) {
        return new Coordinate(point.x(), point.y());
    }

    /** The points of a closed coordinate list, the first not repeated. */
    static List<Point> points(Coordinate[] closed) {
        List<Point> points = new ArrayList<>(closed.length - 1);
        for (int i = 0; i + 1 < closed.length; i++) {
            points.add(new Point(closed[i].x, closed[i].y));
        }
        return points;
    }

    /** The whole outline of a half whose first point lies on the fold x = 0 and which is closed along the fold. */
    static List<Point> unfolded(List<Point> half) {
        List<Point> whole = new ArrayList<>(half);
        for (int i = half.size() - 1; i >= 0; i--) {
            if (half.get(i).x() != 0) {
                whole.add(half.get(i).mirrored());
            }
        }
        return whole;
    }
}
