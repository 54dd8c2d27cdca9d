package org.capwright.pattern;

import java.util.ArrayList;
import java.util.List;
import org.capwright.draft.Overlay;
import org.capwright.draft.OverlayHalf;
import org.capwright.draft.SleeveDraft;
import org.capwright.geometry.Cubic;
import org.capwright.geometry.Curve;
import org.capwright.geometry.Point;
import org.capwright.measure.SleeveSubject.Option;
import org.capwright.quantity.InvalidMeasuresException;
import org.capwright.quantity.Violation;

/** Main, lining and interfacing of an overlay. */
final class OverlayPieces {

    static final String TOP_EDGE = "top edge";

    private OverlayPieces() {}

    /** The three pieces of one size, on the fold or whole. */
    static List<PieceDraft> of(String size, SleeveDraft draft, PatternOptions options, CutInstruction cut) {
        Allowances overlap = Allowances.all(options.interfacingOverlap());
        PleatedEdge top = PleatedEdge.of(draft.overlay().orElseThrow(), cut.laying() == CutInstruction.Laying.ON_FOLD);
        PieceDraft main = piece(PieceKind.OVERLAY_MAIN, size, draft, top, options, 0, cut);
        return List.of(
                main,
                piece(PieceKind.OVERLAY_LINING, size, draft, top, options, options.turnOfCloth(), cut),
                main.as(PieceKind.OVERLAY_INTERFACING, overlap));
    }

    private static PieceDraft piece(
            PieceKind kind,
            String size,
            SleeveDraft draft,
            PleatedEdge top,
            PatternOptions options,
            double turnOfCloth,
            CutInstruction cut) {
        Overlay overlay = draft.overlay().orElseThrow();
        boolean fold = cut.laying() == CutInstruction.Laying.ON_FOLD;
        OverlayHalf front = raised(overlay.front(), turnOfCloth);
        OverlayHalf back = fold ? front : raised(overlay.back(), turnOfCloth);
        Edges edges = new Edges(options.allowances());
        if (fold) {
            edges.add("hem", EdgeKind.HEM, back.hem().reversed());
            back.side().ifPresent(side -> edges.add("side", EdgeKind.HEM, side.reversed()));
            edges.add(TOP_EDGE, EdgeKind.ATTACHED_EDGE, top.edge());
            edges.add("fold", EdgeKind.FOLD, Curve.line(top.edge().end(), back.hemPoint()));
        } else {
            edges.add("front hem", EdgeKind.HEM, front.hem().mirrored());
            edges.add("back hem", EdgeKind.HEM, back.hem().reversed());
            back.side().ifPresent(side -> edges.add("back side", EdgeKind.HEM, side.reversed()));
            edges.add(TOP_EDGE, EdgeKind.ATTACHED_EDGE, top.edge());
            front.side().ifPresent(side -> edges.add("front side", EdgeKind.HEM, side.mirrored()));
        }
        List<NotchPlace> notches = new ArrayList<>();
        notches.add(new NotchPlace(NotchKind.APEX, TOP_EDGE, top.apex()));
        if (pointed(back) || pointed(front)) {
            notches.add(new NotchPlace(NotchKind.CLIP, fold ? "hem" : "back hem", 0));
        }
        if (!fold) {
            notches.addAll(OverlayNotches.of(draft).along(TOP_EDGE, top, overlay));
        }
        if (kind != PieceKind.OVERLAY_INTERFACING) {
            // Half way along each hem, so that the ease of the turn of cloth is spread evenly.
            for (PieceEdge edge : edges.list()) {
                if (edge.name().endsWith("hem")) {
                    notches.add(new NotchPlace(
                            NotchKind.BALANCE, edge.name(), edge.curve().length() / 2));
                }
            }
        }
        if (options.marking().pleatNotches() == PleatNotches.CUT_EDGE) {
            notches.addAll(top.notches(TOP_EDGE));
        }
        Point left = fold ? Point.ORIGIN : front.underarm().mirrored();
        List<MarkLine> marks = new ArrayList<>();
        marks.add(new MarkLine(MarkKind.BICEP_LINE, "bicep line", Curve.line(left, back.underarm())));
        if (fold) {
            marks.add(new MarkLine(MarkKind.FOLD_LINE, "fold line", Curve.line(back.hemPoint(), back.apex())));
        } else if (overlay.front() == overlay.back()
                && overlay.pleats().map(PleatedEdge::symmetrical).orElse(true)) {
            marks.add(new MarkLine(MarkKind.CENTRE_LINE, "centre line", Curve.line(back.hemPoint(), back.apex())));
        }
        marks.addAll(top.lines());
        double width = front.underarm().x() + back.underarm().x();
        double depth = back.apex().y() - back.hemPoint().y();
        return new PieceDraft(kind, size, edges.list(), notches, marks, cut, Math.min(width, depth));
    }

    /** Whether the hem comes to a point on the fold, so that a snip lets it turn: however blunt, for a nest has it in all sizes. */
    private static boolean pointed(OverlayHalf half) {
        List<Cubic> hem = half.hem().segments();
        return Math.abs(hem.get(hem.size() - 1).tangentAt(1).y()) > Math.sin(Math.toRadians(0.05));
    }

    /**
     * The half with its hem moved up by the turn of cloth. A side at least twice as long is shortened by as much; else the hem is moved less and less towards the end of the
     * top edge, which stays where it is. Moving the points of a cubic by a linear function of the parameter moves its control points at thirds.
     *
     * <p>A hem bowed so far that it overhangs its end would come out of the main cloth if moved up there: it is moved less and less, and bowed less as well, by half the turn of
     * cloth, which is more than moving up brings out.
     */
    static OverlayHalf raised(OverlayHalf half, double turnOfCloth) {
        if (turnOfCloth == 0) {
            return half;
        }
        double depth = half.underarm().y() - half.sidePoint().y();
        double drop = half.sidePoint().y() - half.hemPoint().y();
        boolean overhangs = half.hem().segments().get(0).tangentAt(0).x() > 0;
        double most = overhangs ? drop : Math.max(depth / 2, drop);
        if (turnOfCloth > most) {
            throw new InvalidMeasuresException(Violation.lengthAbove(
                    Option.TURN_OF_CLOTH,
                    "the lining's hem would be moved up beyond the end of its top edge",
                    turnOfCloth,
                    most));
        }
        double atSide = turnOfCloth <= depth / 2 && !overhangs ? turnOfCloth : 0;
        Point flatter = overhangs
                ? half.hemPoint().minus(half.sidePoint()).unit().left().times(-2.0 / 3 * turnOfCloth)
                : Point.ORIGIN;
        List<Cubic> hem = half.hem().segments();
        List<Cubic> moved = new ArrayList<>(hem.size());
        double step = (turnOfCloth - atSide) / hem.size();
        for (int i = 0; i < hem.size(); i++) {
            Cubic segment = hem.get(i);
            double from = atSide + step * i;
            moved.add(new Cubic(
                    i == 0 ? up(segment.start(), from) : moved.get(i - 1).end(),
                    up(segment.control1(), from + step / 3).plus(flatter),
                    up(segment.control2(), from + step * 2 / 3).plus(flatter),
                    up(segment.end(), from + step)));
        }
        Curve raised = Curve.of(moved);
        return new OverlayHalf(
                half.topEdge(),
                half.side().map(side -> atSide == 0 ? side : Curve.line(half.underarm(), raised.start())),
                raised,
                half.join());
    }

    private static Point up(Point point, double by) {
        return by == 0 ? point : new Point(point.x(), point.y() + by);
    }

    /** Collects edges with their allowances. */
    static final class Edges {
        private final Allowances allowances;
        private final List<PieceEdge> list = new ArrayList<>();

        Edges(Allowances allowances) {
            this.allowances = allowances;
        }

        void add(String name, EdgeKind kind, Curve curve) {
            list.add(new PieceEdge(name, kind, curve, allowances.along(kind)));
        }

        List<PieceEdge> list() {
            return List.copyOf(list);
        }
    }
}
