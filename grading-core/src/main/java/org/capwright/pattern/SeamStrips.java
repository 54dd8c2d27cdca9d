package org.capwright.pattern;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import org.capwright.geometry.Cubic;
import org.capwright.geometry.Point;
import org.capwright.geometry.Points;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.geom.PrecisionModel;
import org.locationtech.jts.geom.util.GeometryFixer;
import org.locationtech.jts.operation.overlayng.OverlayNG;
import org.locationtech.jts.operation.overlayng.UnaryUnionNG;

/**
 * What the allowances add to a piece, as areas: a strip beside every chord of the seam lines, and the corners between them. Their union with the piece is the cloth to cut, however deep
 * the hollows are: its outline is nowhere nearer to a seam line than the allowance beside it.
 */
final class SeamStrips {

    /** Points nearer than this are one, mm. */
    private static final double SAME = 1e-9;

    private static final double FAR = 1e5;

    /** Areas are united on a grid of a millionth of a millimetre, on which the library never loses its way. */
    private static final PrecisionModel GRID = new PrecisionModel(1e6);

    /** Crumbs that rounding may leave beside the piece, as a share of it. */
    private static final double CRUMBS = 1e-6;

    /** Most lines need ten areas, and a thousand are united in a blink; twenty thousand, where hundreds of tiny pleats each hide in the next one's allowance, would take minutes. Such a line is taken to be none. */
    private static final int MOST = 2_000;

    private final List<Polygon> areas = new ArrayList<>();
    private final List<Point> net = new ArrayList<>();

    /** Adds a part of the outline that lies on the fold. */
    void onFold(List<Cubic> fold) {
        fold.forEach(segment -> net.add(segment.start()));
    }

    /** Adds the strip between a smooth part of a seam line and its parallel: in one piece where it crosses itself nowhere, else beside each segment or each chord. */
    void beside(List<Cubic> seam, double allowance) {
        if (areas.size() > MOST) {
            return;
        }
        List<List<Point>> along = new ArrayList<>(seam.size());
        List<List<Point>> beside = new ArrayList<>(seam.size());
        for (Cubic segment : seam) {
            int spans = 2 * segment.chordsWithin(Piece.FLATTENING);
            List<Point> on = new ArrayList<>(spans + 1);
            List<Point> off = new ArrayList<>(spans + 1);
            for (int i = 0; i <= spans; i++) {
                double t = (double) i / spans;
                on.add(segment.pointAt(t));
                off.add(EdgeOffset.beside(on.get(i), segment.tangentAt(t), allowance));
            }
            net.addAll(on.subList(0, spans)); // so that piece and strips share their points
            along.add(on);
            beside.add(off);
        }
        if (added(joined(along), joined(beside))) {
            return;
        }
        for (int i = 0; i < seam.size(); i++) {
            List<Point> on = along.get(i);
            List<Point> off = beside.get(i);
            if (!added(on, off)) {
                for (int k = 1; k < on.size(); k++) {
                    add(List.of(on.get(k - 1), off.get(k - 1), off.get(k), on.get(k)));
                }
            }
        }
    }

    private static List<Point> joined(List<List<Point>> parts) {
        List<Point> points = new ArrayList<>();
        for (List<Point> part : parts) {
            boolean same = !points.isEmpty() && points.get(points.size() - 1).distanceTo(part.get(0)) < SAME;
            points.addAll(same ? part.subList(1, part.size()) : part);
        }
        return points;
    }

    /** Adds the area between two lines in one piece, if it is one. */
    private boolean added(List<Point> on, List<Point> off) {
        List<Point> around = new ArrayList<>(off);
        for (int i = on.size() - 1; i >= 0; i--) {
            around.add(on.get(i));
        }
        if (Points.of(around).area() <= 0 || !Outline.isSimple(around)) {
            return false;
        }
        areas.add(Outline.polygon(around));
        return true;
    }

    /** Adds the area of a corner. */
    void corner(List<Point> around) {
        add(around);
    }

    private void add(List<Point> around) {
        if (around.size() > 2) {
            Geometry area = Outline.polygon(around);
            if (!area.isValid()) {
                area = GeometryFixer.fix(area);
            }
            for (int i = 0; i < area.getNumGeometries(); i++) {
                if (area.getGeometryN(i) instanceof Polygon polygon && polygon.getArea() > 0) {
                    areas.add(polygon);
                }
            }
        }
    }

    /** The outer line of the piece with all strips, or nothing where these fall apart or are too many. */
    Optional<List<Point>> outline(boolean onFold) {
        if (areas.size() > MOST) {
            return Optional.empty();
        }
        add(net);
        Geometry union = UnaryUnionNG.union(Outline.PLANE.buildGeometry(areas), GRID);
        if (onFold) {
            Geometry half = Outline.PLANE.toGeometry(new Envelope(0, FAR, -FAR, FAR));
            union = OverlayNG.overlay(union, half, OverlayNG.INTERSECTION, GRID);
        }
        Polygon whole = Outline.PLANE.createPolygon();
        for (int i = 0; i < union.getNumGeometries(); i++) {
            if (union.getGeometryN(i) instanceof Polygon part && part.getArea() > whole.getArea()) {
                whole = part;
            }
        }
        if (whole.getArea() < (1 - CRUMBS) * union.getArea()) {
            return Optional.empty();
        }
        List<Point> points = Outline.points(whole.getExteriorRing().getCoordinates());
        if (Points.of(points).area() < 0) {
            Collections.reverse(points);
        }
        return Optional.of(points);
    }
}
