package org.capwright.pattern;

import java.util.ArrayList;
import java.util.List;
import org.capwright.geometry.Point;
import org.capwright.geometry.Points;
import org.capwright.geometry.PointsBuilder;
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

    /** Seam lines as points, the first not repeated. Points that a knife could not tell apart are one; ends of edges stay. */
    static Points flattened(List<PieceEdge> edges) {
        int most = 0;
        for (PieceEdge edge : edges) {
            most += edge.curve().flattened(Piece.FLATTENING).size() - 1;
        }
        PointsBuilder line = new PointsBuilder(most);
        for (PieceEdge edge : edges) {
            Points flat = edge.curve().flattened(Piece.FLATTENING);
            int end = flat.size() - 1;
            line.add(flat.x(0), flat.y(0));
            double endX = flat.x(end);
            double endY = flat.y(end);
            double lastX = flat.x(0);
            double lastY = flat.y(0);
            for (int i = 1; i < end; i++) {
                double x = flat.x(i);
                double y = flat.y(i);
                if (!areOne(lastX, lastY, x, y) && !areOne(x, y, endX, endY)) {
                    line.add(x, y);
                    lastX = x;
                    lastY = y;
                }
            }
        }
        return line.points();
    }

    /** Whether a knife could not tell two points apart. */
    static boolean areOne(double x, double y, double otherX, double otherY) {
        double dx = x - otherX;
        double dy = y - otherY;
        return dx * dx + dy * dy < ONE_POINT * ONE_POINT;
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

    /** Whether the ray to the right of a point crosses a straight line, whose lower end belongs to it and whose upper end does not. */
    static boolean isCrossed(double fromX, double fromY, double toX, double toY, Point point) {
        return (fromY <= point.y()) != (toY <= point.y())
                && fromX + (toX - fromX) * (point.y() - fromY) / (toY - fromY) > point.x();
    }

    /** Whether a straight line comes within a distance of a point, mm. */
    static boolean near(Point from, Point to, Point point, double within) {
        return near(from.x(), from.y(), to.x(), to.y(), point.x(), point.y(), within);
    }

    /** Whether a straight line comes within a distance of a point, mm. */
    static boolean near(
            double fromX, double fromY, double toX, double toY, double pointX, double pointY, double within) {
        double dx = toX - fromX;
        double dy = toY - fromY;
        double x = pointX - fromX;
        double y = pointY - fromY;
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
}
