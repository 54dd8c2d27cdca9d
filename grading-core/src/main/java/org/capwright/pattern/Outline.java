package org.capwright.pattern;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.capwright.geometry.Point;
import org.capwright.geometry.Simplicity;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LinearRing;
import org.locationtech.jts.geom.Polygon;

/** Turns closed lines of points into polygons of the geometry library and back. */
final class Outline {

    /** Geometries of double coordinates; the factory is immutable. */
    static final GeometryFactory PLANE = new GeometryFactory();

    /** Points nearer than this are one, mm: a fifth of the tolerance of flattening. */
    static final double ONE_POINT = Piece.FLATTENING / 5;

    private Outline() {}

    /** Seam lines as points, the first not repeated; unmodifiable. Points that a knife could not tell apart are one; ends of edges stay. */
    static List<Point> flattened(List<PieceEdge> edges) {
        int most = 0;
        for (PieceEdge edge : edges) {
            most += edge.curve().flattened(Piece.FLATTENING).size();
        }
        Point[] points = new Point[most];
        int count = 0;
        for (PieceEdge edge : edges) {
            List<Point> flat = edge.curve().flattened(Piece.FLATTENING);
            Point end = flat.get(flat.size() - 1);
            Point last = flat.get(0);
            points[count++] = last;
            for (int i = 1; i < flat.size() - 1; i++) {
                Point point = flat.get(i);
                if (point.distanceTo(last) >= ONE_POINT && point.distanceTo(end) >= ONE_POINT) {
                    points[count++] = point;
                    last = point;
                }
            }
        }
        return List.of(Arrays.copyOf(points, count));
    }

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

    /** Whether a closed line of three or more points, the first not repeated, meets itself nowhere. */
    static boolean isSimple(List<Point> points) {
        return Simplicity.ofRing(points) || polygon(points).isValid();
    }

    /** Whether a point lies within a closed line: the ray to the right crosses it an odd number of times. Right but for rounding on the line itself. */
    static boolean contains(List<Point> ring, Point point) {
        boolean inside = false;
        Point last = ring.get(ring.size() - 1);
        for (int i = 0; i < ring.size(); i++) {
            Point next = ring.get(i);
            inside ^= isCrossed(last, next, point);
            last = next;
        }
        return inside;
    }

    /** Whether the ray to the right of a point crosses a straight line, whose lower end belongs to it and whose upper end does not. */
    static boolean isCrossed(Point from, Point to, Point point) {
        return (from.y() <= point.y()) != (to.y() <= point.y())
                && from.x() + (to.x() - from.x()) * (point.y() - from.y()) / (to.y() - from.y()) > point.x();
    }

    /** Whether a straight line comes within a distance of a point, mm. */
    static boolean near(Point from, Point to, Point point, double within) {
        double dx = to.x() - from.x();
        double dy = to.y() - from.y();
        double x = point.x() - from.x();
        double y = point.y() - from.y();
        if (x < Math.min(0, dx) - within
                || x > Math.max(0, dx) + within
                || y < Math.min(0, dy) - within
                || y > Math.max(0, dy) + within) {
            return false; // outside the box about the line
        }
        double square = dx * dx + dy * dy;
        double share = square == 0 ? 0 : Math.max(0, Math.min(1, (x * dx + y * dy) / square));
        x -= share * dx;
        y -= share * dy;
        return x * x + y * y <= within * within;
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
