package org.capwright.report;

import java.util.ArrayList;
import java.util.List;
import org.capwright.draft.Overlay;
import org.capwright.draft.OverlayHalf;
import org.capwright.draft.SleeveDraft;
import org.capwright.draft.UnderSleeve;
import org.capwright.geometry.Curve;
import org.capwright.geometry.Point;
import org.capwright.geometry.Points;
import org.capwright.grade.GradeRule;
import org.capwright.grade.SizeRun;
import org.capwright.measure.Dimension;
import org.capwright.measure.Dimensions;
import org.capwright.pattern.CutInstruction;
import org.capwright.pattern.EdgeKind;
import org.capwright.pattern.MarkKind;
import org.capwright.pattern.MarkLine;
import org.capwright.pattern.Notch;
import org.capwright.pattern.NotchKind;
import org.capwright.pattern.PatternSet;
import org.capwright.pattern.Piece;
import org.capwright.pattern.PieceEdge;
import org.capwright.pattern.PieceKind;
import org.capwright.pattern.PieceLabel;
import org.capwright.quantity.Unit;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.operation.buffer.BufferOp;
import org.locationtech.jts.operation.buffer.BufferParameters;

/** A small costume workshop's choir gown with shoulder overlays, its pieces built by hand: this test does not lean on the piece builder. */
final class ChoirGown {

    private static final GeometryFactory FACTORY = new GeometryFactory();
    private static final double ALLOWANCE = 10;

    private ChoirGown() {}

    static PatternSet inSizes(String style, String... labels) {
        return inSizes(style, 140, 600, labels);
    }

    static PatternSet inSizes(String style, double rise, double length, String... labels) {
        Dimensions base = org.capwright.check.ChoirGown.BASE
                .with(Dimension.LENGTH, length)
                .with(Dimension.RISE, rise);
        List<GradeRule> rules = List.of(
                GradeRule.uniform(Dimension.BICEP, 12, labels.length),
                GradeRule.uniform(Dimension.CAP_HEIGHT, 4, labels.length),
                GradeRule.uniform(Dimension.LENGTH, 5, labels.length),
                GradeRule.uniform(Dimension.ELBOW, 9, labels.length),
                GradeRule.uniform(Dimension.WRIST, 5, labels.length),
                GradeRule.uniform(Dimension.ARMHOLE, 16, labels.length));
        SizeRun run =
                SizeRun.grade(org.capwright.check.ChoirGown.UNPLEATED, base, List.of(labels), labels.length / 2, rules);
        List<List<Piece>> sizes = new ArrayList<>();
        run.sizes().forEach(size -> sizes.add(pieces(style, size.label(), size.draft())));
        return new PatternSet(new PatternSet.Title(style, "3", Unit.CENTIMETRE), run, List.copyOf(sizes));
    }

    private static List<Piece> pieces(String style, String size, SleeveDraft draft) {
        Overlay overlay = draft.overlay().orElseThrow();
        UnderSleeve under = draft.underSleeve().orElseThrow();
        return List.of(
                overlay(style, size, PieceKind.OVERLAY_MAIN, overlay, ALLOWANCE),
                overlay(style, size, PieceKind.OVERLAY_LINING, overlay, ALLOWANCE),
                overlay(style, size, PieceKind.OVERLAY_INTERFACING, overlay, 0),
                underSleeve(style, size, under));
    }

    private static Piece overlay(String style, String size, PieceKind kind, Overlay overlay, double allowance) {
        OverlayHalf half = overlay.back();
        // Counter-clockwise: down the fold, along the hem to the side, back up along the top edge.
        List<PieceEdge> edges = new ArrayList<>();
        edges.add(new PieceEdge("fold", EdgeKind.FOLD, Curve.line(half.apex(), half.hemPoint()), 0));
        edges.add(new PieceEdge("hem", EdgeKind.HEM, half.hem().reversed(), allowance));
        half.side().ifPresent(side -> edges.add(new PieceEdge("side", EdgeKind.SIDE_SEAM, side.reversed(), allowance)));
        Curve top = half.topEdge().reversed();
        edges.add(new PieceEdge("top edge", EdgeKind.ATTACHED_EDGE, top, allowance));
        List<MarkLine> marks = new ArrayList<>();
        double bottom = half.hemPoint().y();
        marks.add(new MarkLine(
                MarkKind.GRAIN, "grain line", Curve.line(new Point(40, bottom * 0.75), new Point(40, 60))));
        marks.add(new MarkLine(MarkKind.FOLD_LINE, "fold", Curve.line(half.hemPoint(), half.apex())));
        marks.add(new MarkLine(
                MarkKind.BICEP_LINE,
                "bicep line",
                Curve.line(Point.ORIGIN, new Point(half.underarm().x(), 0))));
        for (int i = 0; i < 4 && kind == PieceKind.OVERLAY_MAIN; i++) {
            double at = 40 + 50 * i;
            marks.add(pleat(MarkKind.PLEAT_FOLD, "pleat " + (i + 1) + " fold", half.topEdge(), at));
            marks.add(pleat(MarkKind.PLEAT_PLACEMENT, "pleat " + (i + 1) + " placement", half.topEdge(), at + 20));
        }
        List<Notch> notches = List.of(
                notch(NotchKind.APEX, "top edge", top, top.length() - 0.001, allowance),
                notch(NotchKind.DOUBLE, "top edge", top, 90, allowance),
                notch(NotchKind.OVERLAY_END, "top edge", top, 40, allowance));
        return piece(
                style,
                kind,
                size,
                edges,
                allowance,
                notches,
                marks,
                new CutInstruction(2, CutInstruction.Laying.ON_FOLD),
                new Point(55, bottom * 0.15));
    }

    private static MarkLine pleat(MarkKind kind, String name, Curve top, double at) {
        Point start = top.pointAtLength(at);
        Point in = top.tangentAtLength(at).left().times(-1);
        return new MarkLine(kind, name, Curve.line(start, start.plus(in.times(45))));
    }

    private static Notch notch(NotchKind kind, String edge, Curve curve, double at, double allowance) {
        Point place = curve.pointAtLength(at);
        Point in = curve.tangentAtLength(at).left();
        return new Notch(kind, edge, at, place, place.minus(in.times(allowance)), in);
    }

    private static Piece underSleeve(String style, String size, UnderSleeve under) {
        Curve cap = under.base().capLine().reversed();
        Curve back = under.backSide().reversed();
        Curve front = under.frontSide().mirrored();
        Curve hem = Curve.line(front.end(), back.start());
        List<PieceEdge> edges = List.of(
                new PieceEdge("front side seam", EdgeKind.SIDE_SEAM, front, ALLOWANCE),
                new PieceEdge("hem", EdgeKind.HEM, hem, ALLOWANCE),
                new PieceEdge("back side seam", EdgeKind.SIDE_SEAM, back, ALLOWANCE),
                new PieceEdge("cap", EdgeKind.ARMHOLE, cap, ALLOWANCE));
        double half = cap.length() / 2;
        List<Notch> notches = List.of(
                notch(NotchKind.APEX, "cap", cap, half, ALLOWANCE),
                notch(NotchKind.DOUBLE, "cap", cap, half - 90, ALLOWANCE),
                notch(NotchKind.SINGLE, "cap", cap, half + 90, ALLOWANCE),
                notch(NotchKind.OVERLAY_END, "cap", cap, 60, ALLOWANCE),
                notch(NotchKind.OVERLAY_END, "cap", cap, cap.length() - 60, ALLOWANCE));
        double wrist = hem.start().y();
        List<MarkLine> marks = List.of(
                new MarkLine(MarkKind.GRAIN, "grain line", Curve.line(new Point(0, wrist + 60), new Point(0, 60))),
                new MarkLine(MarkKind.BICEP_LINE, "bicep line", Curve.line(front.start(), back.end())),
                new MarkLine(
                        MarkKind.ELBOW_LINE,
                        "elbow line",
                        Curve.line(
                                new Point(-under.elbow() / 2, -under.elbowLevel()),
                                new Point(under.elbow() / 2, -under.elbowLevel()))));
        return piece(
                style,
                PieceKind.UNDER_SLEEVE,
                size,
                edges,
                ALLOWANCE,
                notches,
                marks,
                new CutInstruction(2, CutInstruction.Laying.FLAT),
                new Point(12, -40));
    }

    private static Piece piece(
            String style,
            PieceKind kind,
            String size,
            List<PieceEdge> edges,
            double allowance,
            List<Notch> notches,
            List<MarkLine> marks,
            CutInstruction cut,
            Point labelAt) {
        List<Coordinate> ring = new ArrayList<>();
        for (PieceEdge edge : edges) {
            List<Point> flat = edge.curve().flattened(Piece.FLATTENING);
            flat.subList(0, flat.size() - 1).forEach(p -> ring.add(new Coordinate(p.x(), p.y())));
        }
        ring.add(ring.get(0));
        Geometry net = FACTORY.createPolygon(ring.toArray(Coordinate[]::new));
        Geometry out = net;
        if (allowance > 0) {
            BufferParameters parameters =
                    new BufferParameters(16, BufferParameters.CAP_FLAT, BufferParameters.JOIN_MITRE, 3);
            out = BufferOp.bufferOp(net, allowance, parameters);
        }
        if (cut.laying() == CutInstruction.Laying.ON_FOLD) {
            out = out.intersection(FACTORY.toGeometry(new org.locationtech.jts.geom.Envelope(0, 5000, -5000, 5000)));
        }
        Polygon polygon = (Polygon) out.norm();
        List<Point> cutLine = new ArrayList<>();
        Coordinate[] shell = polygon.getExteriorRing().getCoordinates();
        for (int i = shell.length - 1; i > 0; i--) { // JTS normal form is clockwise
            cutLine.add(new Point(shell[i].x, shell[i].y));
        }
        List<Integer> corners = new ArrayList<>();
        for (int i = 0; i < cutLine.size(); i++) {
            Point before = cutLine.get((i + cutLine.size() - 1) % cutLine.size());
            Point after = cutLine.get((i + 1) % cutLine.size());
            Point in = cutLine.get(i).minus(before).unit();
            Point on = after.minus(cutLine.get(i)).unit();
            if (Math.abs(in.cross(on)) > 0.3) {
                corners.add(i);
            }
        }
        List<String> lines = List.of(
                kind.words(),
                style + ", size " + size,
                cut.words().toString(),
                kind.material().name().toLowerCase(java.util.Locale.ROOT));
        return new Piece(
                kind,
                size,
                edges,
                Points.of(cutLine),
                corners,
                notches,
                marks,
                cut,
                new PieceLabel(lines, labelAt, 7, 75));
    }
}
