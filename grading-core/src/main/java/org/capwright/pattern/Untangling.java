package org.capwright.pattern;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.capwright.geometry.Point;
import org.capwright.geometry.Points;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.geom.TopologyException;
import org.locationtech.jts.operation.overlayng.CoverageUnion;
import org.locationtech.jts.operation.polygonize.Polygonizer;
import org.locationtech.jts.operation.union.UnaryUnionOp;

/**
 * Cleans a parallel that crosses itself, as it does in a hollow tighter than the allowance. Of the areas that the raw line encloses those are kept around
 * which it runs counter-clockwise at least once; their outline is the line that a wheel of that width would leave.
 */
final class Untangling {

    private Untangling() {}

    /** The cut line, or nothing if the kept areas are not one piece without holes. */
    static Optional<CutLine> untangled(CutLine line) {
        Points raw = line.points();
        if (raw.size() < 3) {
            return Optional.empty();
        }
        if (raw.area() > 0 && Outline.isSimple(raw)) {
            return Optional.of(line);
        }
        try {
            return cleaned(line);
        } catch (TopologyException e) {
            // The library may lose its way where lines all but lie on one another: strips are united on a grid instead.
            return Optional.empty();
        }
    }

    private static Optional<CutLine> cleaned(CutLine line) {
        List<Point> raw = line.points();
        Geometry noded = UnaryUnionOp.union(Outline.ring(raw));
        Polygonizer polygonizer = new Polygonizer();
        polygonizer.add(noded);
        List<Geometry> kept = new ArrayList<>();
        for (Object face : polygonizer.getPolygons()) {
            Polygon area = (Polygon) face;
            if (winding(raw, area.getInteriorPoint().getCoordinate()) >= 1) {
                kept.add(area);
            }
        }
        Geometry union = CoverageUnion.union(Outline.PLANE.buildGeometry(kept)); // faces share their edges
        if (!(union instanceof Polygon whole) || whole.getNumInteriorRing() > 0 || whole.isEmpty()) {
            return Optional.empty();
        }
        List<Point> points = Outline.points(whole.getExteriorRing().getCoordinates());
        if (Points.of(points).area() < 0) {
            Collections.reverse(points);
        }
        startAsDrawn(points, raw);
        Set<Point> known = new HashSet<>(raw);
        Set<Point> turns = new HashSet<>();
        line.corners().forEach(corner -> turns.add(raw.get(corner)));
        for (Point point : points) {
            if (!known.contains(point)) {
                turns.add(point); // where the raw line crossed itself
            }
        }
        return Optional.of(indexed(points, turns));
    }

    /** Turns the line so that it begins at the first raw point that it kept: the library begins where the addresses of its objects happen to lead it. */
    private static void startAsDrawn(List<Point> points, List<Point> raw) {
        Map<Point, Integer> places = new HashMap<>();
        for (int i = 0; i < points.size(); i++) {
            places.putIfAbsent(points.get(i), i);
        }
        for (Point point : raw) {
            Integer place = places.get(point);
            if (place != null) {
                Collections.rotate(points, -place);
                return;
            }
        }
    }

    private static CutLine indexed(List<Point> points, Set<Point> corners) {
        List<Integer> indices = new ArrayList<>(corners.size());
        for (int i = 0; i < points.size(); i++) {
            if (corners.contains(points.get(i))) {
                indices.add(i);
            }
        }
        return new CutLine(Points.of(points), List.copyOf(indices));
    }

    /** How often a closed line runs counter-clockwise around a point (crossings of the ray to the right). */
    private static int winding(List<Point> line, Coordinate place) {
        int turns = 0;
        for (int i = 0; i < line.size(); i++) {
            Point from = line.get(i);
            Point to = line.get((i + 1) % line.size());
            boolean up = from.y() <= place.y && to.y() > place.y;
            boolean down = from.y() > place.y && to.y() <= place.y;
            if (up || down) {
                double side = (to.x() - from.x()) * (place.y - from.y()) - (place.x - from.x()) * (to.y() - from.y());
                if (up && side > 0) {
                    turns++;
                } else if (down && side < 0) {
                    turns--;
                }
            }
        }
        return turns;
    }
}
