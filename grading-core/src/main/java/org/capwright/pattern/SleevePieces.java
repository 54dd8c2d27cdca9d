package org.capwright.pattern;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.capwright.draft.BaseSleeve;
import org.capwright.draft.ElbowDart;
import org.capwright.draft.SleeveDraft;
import org.capwright.draft.UnderSleeve;
import org.capwright.geometry.Curve;
import org.capwright.geometry.Point;
import org.capwright.measure.Dimension;
import org.capwright.quantity.InvalidMeasuresException;
import org.capwright.quantity.Violation;

/** The piece that is set round the whole armhole: the under-sleeve, or the plain sleeve down to the bicep line. */
final class SleevePieces {

    static final String CAP = "cap";

    /** The second snip of the back lies this far from the first, mm; common practice, no source. */
    private static final double BESIDE = 6;

    private SleevePieces() {}

    /** The under-sleeve of one size. */
    static PieceDraft underSleeve(
            String size, SleeveDraft draft, UnderSleeve under, Allowances allowances, CutInstruction cut) {
        boolean fold = cut.laying() == CutInstruction.Laying.ON_FOLD;
        OverlayPieces.Edges edges = new OverlayPieces.Edges(allowances);
        Point wristCentre = under.centreLine().end();
        Point backWrist = under.backSide().end();
        edges.add(
                "wrist",
                EdgeKind.HEM,
                Curve.line(fold ? wristCentre : under.frontSide().end().mirrored(), backWrist));
        UnderSleeveSeam.addBack(edges, under, fold);
        addCap(edges, draft.base(), fold);
        if (fold) {
            edges.add("fold", EdgeKind.FOLD, Curve.line(apex(draft.base()), wristCentre));
        } else {
            edges.add(
                    UnderSleeveSeam.FRONT, EdgeKind.SIDE_SEAM, under.frontSide().mirrored());
        }
        List<MarkLine> marks = new ArrayList<>();
        marks.add(across(
                MarkKind.BICEP_LINE,
                "bicep line",
                draft.base().front().curve().end().mirrored(),
                draft.base().back().curve().end(),
                fold));
        addElbow(marks, under, fold);
        if (under.symmetrical()) {
            addMiddle(marks, draft.base(), wristCentre.y(), fold);
        }
        List<NotchPlace> notches = new ArrayList<>(notches(draft, fold));
        notches.addAll(UnderSleeveSeam.notches(under, fold));
        double neck = Math.min(
                Math.min(under.wrist(), under.elbow()), Math.min(draft.base().bicep(), under.length()));
        return new PieceDraft(PieceKind.UNDER_SLEEVE, size, edges.list(), notches, marks, cut, neck);
    }

    /** The elbow line; with a dart it ends at the point where the legs begin. */
    private static void addElbow(List<MarkLine> marks, UnderSleeve under, boolean fold) {
        Point front = under.frontElbow().mirrored();
        if (under.dart().isEmpty()) {
            marks.add(across(MarkKind.ELBOW_LINE, "elbow line", front, under.backElbow(), fold));
            return;
        }
        ElbowDart dart = under.dart().get();
        marks.add(new MarkLine(MarkKind.ELBOW_LINE, "elbow line", Curve.line(front, dart.point())));
        marks.add(new MarkLine(MarkKind.DART_LEG, "upper dart leg", Curve.line(dart.point(), dart.upperEnd())));
        marks.add(new MarkLine(MarkKind.DART_LEG, "lower dart leg", Curve.line(dart.point(), dart.lowerEnd())));
    }

    /** The plain sleeve down to the bicep line. */
    static PieceDraft baseSleeve(String size, SleeveDraft draft, Allowances allowances, CutInstruction cut) {
        boolean fold = cut.laying() == CutInstruction.Laying.ON_FOLD;
        BaseSleeve base = draft.base();
        OverlayPieces.Edges edges = new OverlayPieces.Edges(allowances);
        Point left = fold ? Point.ORIGIN : base.front().curve().end().mirrored();
        edges.add(
                "bicep line", EdgeKind.HEM, Curve.line(left, base.back().curve().end()));
        addCap(edges, base, fold);
        if (fold) {
            edges.add("fold", EdgeKind.FOLD, Curve.line(apex(base), Point.ORIGIN));
        }
        List<MarkLine> marks = new ArrayList<>();
        addMiddle(marks, base, 0, fold);
        return new PieceDraft(
                PieceKind.BASE_SLEEVE,
                size,
                edges.list(),
                notches(draft, fold),
                marks,
                cut,
                Math.min(base.bicep(), base.capHeight()));
    }

    private static Point apex(BaseSleeve base) {
        return base.back().curve().start();
    }

    private static void addCap(OverlayPieces.Edges edges, BaseSleeve base, boolean fold) {
        edges.add(
                CAP,
                EdgeKind.ARMHOLE,
                fold ? base.back().curve().reversed() : base.capLine().reversed());
    }

    private static MarkLine across(MarkKind kind, String name, Point left, Point right, boolean fold) {
        return new MarkLine(kind, name, Curve.line(fold ? new Point(0, right.y()) : left, right));
    }

    private static void addMiddle(List<MarkLine> marks, BaseSleeve base, double bottom, boolean fold) {
        Curve middle = Curve.line(new Point(0, bottom), apex(base));
        if (fold) {
            marks.add(new MarkLine(MarkKind.FOLD_LINE, "fold line", middle));
        } else if (base.symmetrical()) {
            marks.add(new MarkLine(MarkKind.CENTRE_LINE, "centre line", middle));
        }
    }

    /** Along the cap from the back underarm point: the back notches, the apex, and on a whole piece the front ones. */
    private static List<NotchPlace> notches(SleeveDraft draft, boolean fold) {
        BaseSleeve base = draft.base();
        CapNotches back = CapNotches.of(draft, base.back(), Dimension.BACK_GAP);
        CapNotches front = CapNotches.of(draft, base.front(), Dimension.FRONT_GAP);
        Optional<Violation> tooLong = tooLong(back, base.back().length(), Dimension.BACK_GAP)
                .or(() -> tooLong(front, base.front().length(), Dimension.FRONT_GAP));
        if (tooLong.isPresent()) {
            throw new InvalidMeasuresException(tooLong.get());
        }
        double whole = base.capLength();
        List<NotchPlace> notches = new ArrayList<>();
        notches.addAll(back.along(CAP, fold ? NotchKind.SINGLE : NotchKind.DOUBLE, d -> d));
        if (fold) {
            notches.add(new NotchPlace(NotchKind.BACK_ONLY, CAP, back.balance() + BESIDE));
        }
        notches.add(new NotchPlace(NotchKind.APEX, CAP, base.back().length()));
        if (!fold) {
            notches.addAll(front.along(CAP, NotchKind.SINGLE, d -> whole - d));
        }
        notches.sort(java.util.Comparator.comparingDouble(NotchPlace::distance));
        return List.copyOf(notches);
    }

    private static Optional<Violation> tooLong(CapNotches notches, double half, Dimension gap) {
        double most = half - CapNotches.APART;
        return notches.overlayEnd() > most
                ? Optional.of(Violation.lengthAbove(
                        gap,
                        "the overlay would begin beyond the apex of the under-sleeve's cap",
                        notches.overlayEnd(),
                        most))
                : Optional.empty();
    }
}
