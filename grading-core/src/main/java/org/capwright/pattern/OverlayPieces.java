package org.capwright.pattern;

import java.util.ArrayList;
import java.util.List;
import org.capwright.draft.Overlay;
import org.capwright.draft.OverlayHalf;
import org.capwright.draft.SleeveDraft;
import org.capwright.geometry.Cubic;
import org.capwright.geometry.Curve;
import org.capwright.geometry.Point;

/** Main, lining and interfacing of an overlay. */
final class OverlayPieces {

    static final String TOP_EDGE = "top edge";

    private OverlayPieces() {}

    /** The three pieces of one size, on the fold or whole. */
    static List<PieceDraft> of(String size, SleeveDraft draft, PatternOptions options, CutInstruction cut) {
        Allowances overlap = Allowances.all(options.interfacingOverlap());
        Overlay overlay = draft.overlay().orElseThrow();
        boolean fold = cut.laying() == CutInstruction.Laying.ON_FOLD;
        PleatedEdge top = PleatedEdge.of(overlay, fold);
        List<NotchPlace> sides = fold ? List.of() : OverlayNotches.of(draft).along(TOP_EDGE, top, overlay);
        PieceDraft main = piece(PieceKind.OVERLAY_MAIN, size, overlay, top, sides, options, 0, cut);
        PieceDraft interfacing = main.as(PieceKind.OVERLAY_INTERFACING, overlap);
        return List.of(
                main,
                piece(PieceKind.OVERLAY_LINING, size, overlay, top, sides, options, options.turnOfCloth(), cut),
                options.finishing().interfacing() == PleatInterfacing.CUT_AWAY ? CutAway.of(interfacing) : interfacing);
    }

    private static PieceDraft piece(
            PieceKind kind,
            String size,
            Overlay overlay,
            PleatedEdge whole,
            List<NotchPlace> sides,
            PatternOptions options,
            double turnOfCloth,
            CutInstruction cut) {
        boolean fold = cut.laying() == CutInstruction.Laying.ON_FOLD;
        PleatedEdge top = turnOfCloth == 0 ? whole : Lining.topEdge(overlay, whole, turnOfCloth, fold);
        OverlayHalf back = Lining.half(overlay.back(), top.edge().start(), turnOfCloth);
        OverlayHalf front =
                fold ? back : Lining.half(overlay.front(), top.edge().end().mirrored(), turnOfCloth);
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
        double shorter = whole.apex() - top.apex();
        for (NotchPlace notch : sides) {
            double at = Math.max(Lining.CLEAR, notch.distance() - shorter);
            notches.add(new NotchPlace(
                    notch.kind(), TOP_EDGE, Math.min(at, top.edge().length() - Lining.CLEAR)));
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
