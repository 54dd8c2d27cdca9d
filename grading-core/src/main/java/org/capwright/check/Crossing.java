package org.capwright.check;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.capwright.geometry.Point;
import org.capwright.geometry.Points;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.operation.overlayng.OverlayNG;
import org.locationtech.jts.operation.overlayng.OverlayNGRobust;

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
                if (smaller.isPresent() && larger.isPresent() && !nested(smaller.get(), larger.get())) {
                    add(found, kind, i, smaller.get(), larger.get());
                }
            }
        }
        return List.copyOf(found);
    }

    /**
     * Whether the smaller line lies under the larger one throughout, which most do and which is quickly seen: both run from left to right along the bicep line, and at every corner of either the
     * larger one is no lower. False where it is not so plain.
     */
    private static boolean nested(NestLine smaller, NestLine larger) {
        Points in = Points.of(smaller.points());
        Points out = Points.of(larger.points());
        if (!runsRight(in) || !runsRight(out)) {
            return false;
        }
        int inmost = in.size() - 1;
        int outmost = out.size() - 1;
        for (double end : new double[] {in.y(inmost), out.y(0), out.y(outmost)}) {
            if (Math.abs(end - in.y(0)) > 1e-9) {
                return false;
            }
        }
        return in.x(0) >= out.x(0) && in.x(inmost) <= out.x(outmost) && under(in, out, 1) && under(out, in, -1);
    }

    private static boolean runsRight(Points line) {
        for (int i = 1; i < line.size(); i++) {
            if (line.x(i) <= line.x(i - 1)) {
                return false;
            }
        }
        return line.size() > 2;
    }

    /** Whether the corners of one line lie under another, or above it, as far as that other reaches. */
    private static boolean under(Points corners, Points line, int sign) {
        int right = 1;
        for (int i = 0; i < corners.size(); i++) {
            double x = corners.x(i);
            if (x < line.x(0) || x > line.x(line.size() - 1)) {
                continue;
            }
            while (line.x(right) < x) {
                right++;
            }
            double fromY = line.y(right - 1);
            double fromX = line.x(right - 1);
            double y = fromY + (line.y(right) - fromY) * (x - fromX) / (line.x(right) - fromX);
            if (sign * (y - corners.y(i)) < 0) {
                return false;
            }
        }
        return true;
    }

    private static void add(List<Crossing> found, NestLine.Kind kind, int interval, NestLine smaller, NestLine larger) {
        Geometry outer = area(larger);
        Geometry outside = OverlayNGRobust.overlay(area(smaller), outer, OverlayNG.DIFFERENCE);
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
        Geometry both = OverlayNGRobust.overlay(
                FACTORY.createLineString(coordinates(smaller)),
                FACTORY.createLineString(coordinates(larger)),
                OverlayNG.INTERSECTION);
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
