package org.capwright.check;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.capwright.geometry.Point;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.Polygon;

/**
 * A stretch of the nest where the line of a larger size dips inside that of its smaller neighbour.
 *
 * @param kind which line
 * @param interval position of the smaller size
 * @param depth how deep it dips, mm
 * @param at where the lines cross, one or two points in most cases; the deepest point where the dip begins and ends on the bicep line and they do not
 */
public record Crossing(NestLine.Kind kind, int interval, double depth, List<Point> at) {

    private static final GeometryFactory FACTORY = new GeometryFactory();

    /** Below this the lines touch, as equal lines do, mm. */
    private static final double TOUCH = 0.1;

    /** How near a point of both lines must lie to a dip to be where it begins or ends, mm. */
    private static final double NEAR = 1e-3;

    /**
     * Copies the points.
     *
     * @param kind which line
     * @param interval position of the smaller size
     * @param depth how deep it dips, mm
     * @param at where the lines cross
     */
    public Crossing {
        at = List.copyOf(at);
    }

    /**
     * All crossings of a nest, on fold line and bicep line.
     *
     * @param grade a grade with lines; sizes without them are passed over
     * @return cap lines first, then top edges of the overlay, smallest sizes first
     */
    public static List<Crossing> of(CheckedGrade grade) {
        List<Crossing> found = new ArrayList<>();
        for (NestLine.Kind kind : List.of(NestLine.Kind.CAP_LINE, NestLine.Kind.OVERLAY_EDGE)) {
            for (int i = 0; i < grade.intervals(); i++) {
                Optional<NestLine> smaller = grade.sizes().get(i).line(kind);
                Optional<NestLine> larger = grade.sizes().get(i + 1).line(kind);
                if (smaller.isPresent() && larger.isPresent()) {
                    add(found, kind, i, smaller.get(), larger.get());
                }
            }
        }
        return List.copyOf(found);
    }

    private static void add(List<Crossing> found, NestLine.Kind kind, int interval, NestLine smaller, NestLine larger) {
        Geometry outer = area(larger);
        Geometry outside = area(smaller).difference(outer);
        Geometry boundary = outer.getBoundary();
        for (int i = 0; i < outside.getNumGeometries(); i++) {
            Geometry dip = outside.getGeometryN(i);
            double depth = 0;
            Coordinate deepest = new Coordinate();
            for (Coordinate corner : dip.getCoordinates()) {
                double distance = FACTORY.createPoint(corner).distance(boundary);
                if (distance > depth) {
                    depth = distance;
                    deepest = corner;
                }
            }
            if (depth > TOUCH) {
                found.add(new Crossing(kind, interval, depth, ends(dip, deepest, smaller, larger)));
            }
        }
    }

    private static List<Point> ends(Geometry dip, Coordinate deepest, NestLine smaller, NestLine larger) {
        List<Point> ends = new ArrayList<>();
        Geometry both = FACTORY.createLineString(coordinates(smaller))
                .intersection(FACTORY.createLineString(coordinates(larger)));
        for (int i = 0; i < both.getNumGeometries(); i++) {
            Coordinate crossed = both.getGeometryN(i).getCoordinate();
            if (crossed != null && FACTORY.createPoint(crossed).distance(dip) < NEAR) {
                ends.add(new Point(crossed.x, crossed.y));
            }
        }
        if (ends.isEmpty()) {
            ends.add(new Point(deepest.x, deepest.y));
        }
        return ends;
    }

    private static Coordinate[] coordinates(NestLine line) {
        return line.points().stream()
                .map(point -> new Coordinate(point.x(), point.y()))
                .toArray(Coordinate[]::new);
    }

    /** The area under a line, closed along the bicep line between its ends. */
    static Geometry area(NestLine line) {
        List<Point> points = line.points();
        Coordinate[] ring = new Coordinate[points.size() + 1];
        for (int i = 0; i < points.size(); i++) {
            ring[i] = new Coordinate(points.get(i).x(), points.get(i).y());
        }
        ring[points.size()] = ring[0];
        if (ring.length < 4) {
            return FACTORY.createPolygon();
        }
        Polygon polygon = FACTORY.createPolygon(ring);
        return polygon.isValid() ? polygon : polygon.buffer(0);
    }
}
