package org.capwright.pattern;

import java.util.ArrayList;
import java.util.List;
import org.capwright.draft.Overlay;
import org.capwright.draft.SleeveDraft;
import org.capwright.geometry.Curve;
import org.capwright.geometry.Point;
import org.capwright.measure.Dimension;

/**
 * The strips that a sleeve is finished with, each drawn lying, its shoulder point at x = 0 and its front end at the left: a stay on the straight grain that holds the closed top edge of an overlay to its length, a
 * bias stay that rounds the head of the sleeve between its notches, and a bias strip for the armhole seam. Their widths are common practice, no source.
 */
final class StripPieces {

    static final String SEAM_EDGE = "seam edge";

    /** Width of the stay of a top edge, mm: a tape of half an inch. */
    private static final double STAY = 12;

    /** Width of the stay of a sleeve head, mm. */
    private static final double HEAD = 50;

    /** A strip that binds a seam of 10 mm: twice the seam and two turnings, mm. */
    static final double ARMHOLE = 40;

    /** What both ends of the strip of the armhole need to be joined, mm. */
    static final double ENDS = 20;

    private StripPieces() {}

    /** The strips of one size; the stay of the head belongs to a sleeve. */
    static List<PieceDraft> of(String size, SleeveDraft draft) {
        List<PieceDraft> strips = new ArrayList<>(3);
        draft.overlay().ifPresent(overlay -> strips.add(stay(size, draft, overlay)));
        CapNotches front = CapNotches.of(draft, draft.base().front(), Dimension.FRONT_GAP);
        CapNotches back = CapNotches.of(draft, draft.base().back(), Dimension.BACK_GAP);
        if (draft.underSleeve().isPresent() || draft.overlay().isEmpty()) {
            strips.add(strip(
                    PieceKind.SLEEVE_HEAD,
                    size,
                    HEAD,
                    new double[] {
                        draft.base().front().length() - front.balance(),
                        draft.base().back().length() - back.balance()
                    },
                    List.of(),
                    0));
        }
        if (draft.dimensions().has(Dimension.ARMHOLE)) {
            double inFront = Overlay.frontArmhole(draft.dimensions());
            double behind = draft.dimensions().get(Dimension.ARMHOLE) - inFront;
            strips.add(strip(
                    PieceKind.ARMHOLE_STRIP,
                    size,
                    ARMHOLE,
                    new double[] {inFront, behind},
                    List.of(
                            new NotchPlace(NotchKind.DOUBLE, SEAM_EDGE, back.balance()),
                            new NotchPlace(NotchKind.SINGLE, SEAM_EDGE, inFront + behind - front.balance())),
                    ENDS / 2));
        }
        return strips;
    }

    private static PieceDraft stay(String size, SleeveDraft draft, Overlay overlay) {
        OverlayNotches notches = OverlayNotches.of(draft);
        double front = overlay.attached().front();
        double back = overlay.attached().back();
        return strip(
                PieceKind.OVERLAY_STAY,
                size,
                STAY,
                new double[] {front, back},
                List.of(
                        new NotchPlace(NotchKind.DOUBLE, SEAM_EDGE, notches.back()),
                        new NotchPlace(NotchKind.SINGLE, SEAM_EDGE, front + back - notches.front())),
                0);
    }

    private static PieceDraft strip(
            PieceKind kind, String size, double width, double[] halves, List<NotchPlace> others, double ends) {
        double low = -width / 2;
        double high = width / 2;
        Point frontLow = new Point(-halves[0], low);
        Point backLow = new Point(halves[1], low);
        Point backHigh = new Point(halves[1], high);
        Point frontHigh = new Point(-halves[0], high);
        EdgeKind along = kind == PieceKind.OVERLAY_STAY ? EdgeKind.ATTACHED_EDGE : EdgeKind.ARMHOLE;
        List<PieceEdge> edges = List.of(
                new PieceEdge("free edge", along, Curve.line(frontLow, backLow), 0),
                new PieceEdge("back end", EdgeKind.SIDE_SEAM, Curve.line(backLow, backHigh), ends),
                new PieceEdge(SEAM_EDGE, along, Curve.line(backHigh, frontHigh), 0),
                new PieceEdge("front end", EdgeKind.SIDE_SEAM, Curve.line(frontHigh, frontLow), ends));
        List<NotchPlace> notches = new ArrayList<>(others);
        notches.add(new NotchPlace(NotchKind.APEX, SEAM_EDGE, halves[1]));
        double rise = kind == PieceKind.OVERLAY_STAY ? 0 : 0.7 * width;
        double at = -0.9 * halves[0];
        Point from = new Point(at, -rise / 2);
        Point to = kind == PieceKind.OVERLAY_STAY ? new Point(at + halves[0] / 3, 0) : new Point(at + rise, rise / 2);
        List<MarkLine> marks = List.of(new MarkLine(MarkKind.GRAIN, "grain line", Curve.line(from, to)));
        return new PieceDraft(
                kind, size, edges, notches, marks, new CutInstruction(2, CutInstruction.Laying.FLAT), width);
    }
}
