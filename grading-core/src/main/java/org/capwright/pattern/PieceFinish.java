package org.capwright.pattern;

import java.util.ArrayList;
import java.util.List;
import org.capwright.geometry.Curve;
import org.capwright.geometry.Point;
import org.capwright.geometry.Points;
import org.capwright.measure.Dimension;
import org.capwright.measure.SleeveSubject.Option;
import org.capwright.quantity.InvalidMeasuresException;
import org.capwright.quantity.Subject;
import org.capwright.quantity.Violation;
import org.capwright.words.Text;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.operation.overlayng.OverlayNG;
import org.locationtech.jts.operation.overlayng.OverlayNGRobust;

/** Adds to a drafted piece what depends on its outlines: notches on the cut line, the label. */
final class PieceFinish {

    /** A line that is cut short ends this far from the seam line, mm. */
    private static final double CLEAR = 1;

    private PieceFinish() {}

    /** The finished piece. */
    static Piece of(PieceDraft draft, PieceInside inside, CutLine cutLine, PieceLabel label) {
        return new Piece(
                draft.kind(),
                draft.size(),
                draft.edges(),
                cutLine.points(),
                cutLine.corners(),
                CutNotches.of(draft, cutLine.ring()),
                inside.marks(),
                draft.cut(),
                label);
    }

    /** The longest part of a line across that lies on the piece: the cut of a pleat near the underarm point may reach below it. */
    static MarkLine inside(MarkLine mark, Ring net) {
        if (liesInside(mark.line().start(), mark.line().end(), net)) {
            return mark;
        }
        List<Point> within = onlyPart(mark.line().start(), mark.line().end(), net);
        if (within.isEmpty()) {
            within = longestPart(mark.line().start(), mark.line().end(), net.points());
        }
        if (within.isEmpty() || within.get(0).distanceTo(within.get(1)) < 4 * CLEAR) {
            return mark;
        }
        Point from = within.get(0);
        Point to = within.get(1);
        Point clear = to.minus(from).unit().times(CLEAR);
        Point start = from.distanceTo(mark.line().start()) < Piece.FLATTENING ? from : from.plus(clear);
        Point end = to.distanceTo(mark.line().end()) < Piece.FLATTENING ? to : to.minus(clear);
        return new MarkLine(mark.kind(), mark.name(), Curve.line(start, end));
    }

    /** Where a line comes in and where it leaves, if it does each but once and an end of it lies outside for certain; else nothing. */
    private static List<Point> onlyPart(Point from, Point to, Ring net) {
        boolean outside = isOutside(from, net) || isOutside(to, net);
        if (!outside) {
            return List.of();
        }
        Point way = to.minus(from).unit();
        double length = from.distanceTo(to);
        List<Point> met = new ArrayList<>(2);
        for (int i = net.nextOn(0, from, way); i < net.chords(); i = net.nextOn(i + 1, from, way)) {
            double besideStart = net.startBeside(i, from, way);
            double besideEnd = net.endBeside(i, from, way);
            if (Math.abs(besideEnd) <= Ring.NEAR) {
                return List.of(); // through a point: not certain
            }
            if ((besideStart < 0) != (besideEnd < 0)) {
                Point at = net.at(i, besideStart / (besideStart - besideEnd));
                double along = way.dot(at.minus(from));
                if (along >= -Ring.NEAR && along <= length + Ring.NEAR) {
                    met.add(at);
                }
            }
        }
        if (met.size() != 2 || !net.contains(met.get(0).towards(met.get(1), 0.5))) {
            return List.of();
        }
        boolean forwards = way.dot(met.get(1).minus(met.get(0))) > 0;
        return forwards ? met : List.of(met.get(1), met.get(0));
    }

    private static boolean isOutside(Point point, Ring net) {
        return !net.contains(point) && !net.passes(point, 2 * Piece.FLATTENING);
    }

    /** The longest part of a line on a piece; nothing where all of it lies there but for the tolerance of flattening. */
    private static List<Point> longestPart(Point from, Point to, List<Point> net) {
        Geometry line =
                Outline.PLANE.createLineString(new Coordinate[] {Outline.coordinate(from), Outline.coordinate(to)});
        if (Outline.polygon(net).buffer(Piece.FLATTENING).covers(line)) {
            return List.of();
        }
        Geometry parts = OverlayNGRobust.overlay(line, Outline.polygon(net), OverlayNG.INTERSECTION);
        Geometry longest = parts.getGeometryN(0);
        for (int i = 1; i < parts.getNumGeometries(); i++) {
            if (parts.getGeometryN(i).getLength() > longest.getLength()) {
                longest = parts.getGeometryN(i);
            }
        }
        Coordinate[] ends = longest.getCoordinates();
        return ends.length < 2 ? List.of() : List.of(new Point(ends[0].x, ends[0].y), new Point(ends[1].x, ends[1].y));
    }

    /** Whether a line lies inside for certain, but for ends that may lie on the seam line: no part of that comes near the rest, and the middle is inside. */
    private static boolean liesInside(Point from, Point to, Ring net) {
        Point way = to.minus(from).unit();
        double start = Piece.FLATTENING / 2;
        double end = to.minus(from).dot(way) - start;
        boolean inside = false;
        for (int i = net.nextOn(0, from, way); i < net.chords(); i = net.nextOn(i + 1, from, way)) {
            double besideStart = net.startBeside(i, from, way);
            double besideEnd = net.endBeside(i, from, way);
            double steep = besideEnd - besideStart;
            double alongStart = from.ahead(way, net.at(i, 0));
            double alongEnd = from.ahead(way, net.at(i, 1));
            double one = steep == 0 ? 0 : Math.max(0, Math.min(1, (-Ring.NEAR - besideStart) / steep));
            double other = steep == 0 ? 1 : Math.max(0, Math.min(1, (Ring.NEAR - besideStart) / steep));
            double first = alongStart + one * (alongEnd - alongStart);
            double second = alongStart + other * (alongEnd - alongStart);
            if (Math.max(first, second) >= start && Math.min(first, second) <= end) {
                return false;
            }
            inside ^= (besideStart <= 0) != (besideEnd <= 0) && first > end;
        }
        return inside;
    }

    static void checkSimple(PieceDraft draft, Points net) {
        if (!isSimple(net)) {
            throw new InvalidMeasuresException(netTangled(draft));
        }
    }

    static Points netLine(PieceDraft draft) {
        return Outline.flattened(draft.edges());
    }

    /** Refuses a piece that has no net line. */
    static void checkNet(PieceDraft draft) {
        checkSimple(draft, netLine(draft));
    }

    /** Refuses a piece that has no net line or no cut line. */
    static void checkOutlines(PieceDraft draft, CutLines cutLines) {
        checkNet(draft);
        cutLines.of(draft);
    }

    /** Whether a piece has a net line and a cut line; no bound is looked for. */
    static boolean canBeCut(PieceDraft draft, CutLines cutLines) {
        return isSimple(netLine(draft)) && cutLines.canBeDrawn(draft);
    }

    private static boolean isSimple(Points net) {
        return net.area() > 0 && Outline.isSimple(net);
    }

    /** Only a bowed hem or deep pleats can tangle a drafted outline: looks for the part of the sagitta that would not. */
    private static Violation netTangled(PieceDraft draft) {
        Text reason = Text.of("bowed so far, the hem of the piece {piece} crosses its other edges")
                .with("piece", Text.of(draft.kind().words()));
        Subject subject = Dimension.HEM_SAGITTA;
        if (!isSimple(netLine(BowedHem.flatter(draft, 0)))) {
            return Violation.of(
                    Option.PLEATS,
                    Text.of("the under-layers of the pleats cross one another on the piece {piece}: take more and"
                                    + " shallower pleats, or lay them the other way")
                            .with("piece", Text.of(draft.kind().words())));
        }
        double works = 0;
        double fails = 1;
        for (int i = 0; i < 20; i++) {
            double middle = (works + fails) / 2;
            if (isSimple(netLine(BowedHem.flatter(draft, middle)))) {
                works = middle;
            } else {
                fails = middle;
            }
        }
        double sagitta = BowedHem.sagitta(draft);
        double limit = Math.floor(Math.abs(sagitta) * works * 10) / 10;
        return sagitta < 0
                ? Violation.lengthBelow(subject, reason, sagitta, 0.0 - limit)
                : Violation.lengthAbove(subject, reason, sagitta, limit);
    }
}
