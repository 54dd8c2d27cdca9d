package org.capwright.pattern;

import java.util.List;
import java.util.stream.Stream;
import org.capwright.geometry.Point;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.geom.util.AffineTransformation;
import org.locationtech.jts.operation.distance.IndexedFacetDistance;

/** Outlines as geometries of JTS, made without the code under test. */
final class Check {

    static final GeometryFactory PLANE = new GeometryFactory();

    private Check() {}

    static Polygon polygon(List<Point> points) {
        return PLANE.createPolygon(Stream.concat(points.stream(), Stream.of(points.get(0)))
                .map(p -> new Coordinate(p.x(), p.y()))
                .toArray(Coordinate[]::new));
    }

    static Geometry line(List<Point> points) {
        return PLANE.createLineString(
                points.stream().map(p -> new Coordinate(p.x(), p.y())).toArray(Coordinate[]::new));
    }

    static Geometry point(Point point) {
        return PLANE.createPoint(new Coordinate(point.x(), point.y()));
    }

    /** The outline as it lies unfolded. */
    static Geometry unfolded(Piece piece, List<Point> outline) {
        Geometry half = polygon(outline);
        return piece.onFold()
                ? half.union(AffineTransformation.scaleInstance(-1, 1).transform(half))
                : half;
    }

    /** The greatest distance of a vertex of either line from the other line. */
    static double farthest(Geometry one, Geometry other) {
        return Math.max(farthestVertex(one, other), farthestVertex(other, one));
    }

    private static double farthestVertex(Geometry from, Geometry to) {
        IndexedFacetDistance distance = new IndexedFacetDistance(to);
        double farthest = 0;
        for (Coordinate vertex : from.getCoordinates()) {
            farthest = Math.max(farthest, distance.distance(PLANE.createPoint(vertex)));
        }
        return farthest;
    }
}
