package org.capwright.pattern;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.capwright.geometry.Cubic;
import org.capwright.geometry.Curve;
import org.capwright.geometry.Point;

/**
 * Interfacing that is cut away between the folds: between the fold line and the placement line of each pleat a gap runs down from the top edge as far as the lines are drawn, so that only what is seen of the
 * closed overlay is stiffened. What would be left between two gaps is cut away too where it is too narrow to be fused.
 */
final class CutAway {

    /** What is left between two gaps is this wide at least, mm. Common practice, no source. */
    private static final double NARROWEST = 5;

    /** Gaps become shallower by this share until the piece is whole. */
    private static final double SHALLOWER = 0.7;

    private static final int TRIES = 8;

    private static final double SAME = 1e-6;

    private CutAway() {}

    /** A gap between two places of the top edge, down to the points beneath them. */
    private record Gap(double from, Point underFrom, double to, Point underTo) {}

    /** The interfacing of an overlay; as it was where it has no pleats. */
    static PieceDraft of(PieceDraft interfacing) {
        PieceEdge top = interfacing.edge(OverlayPieces.TOP_EDGE);
        List<MarkLine> marks = PleatedEdge.shortened(interfacing.marks(), PieceFinish.netLine(interfacing));
        List<Gap> gaps = gaps(top.curve(), marks);
        if (gaps.isEmpty()) {
            return interfacing;
        }
        double share = 1;
        for (int i = 0; i < TRIES; i++) {
            PieceDraft cut = with(
                    interfacing,
                    new PieceEdge(top.name(), top.kind(), edge(top.curve(), gaps, share), top.allowance()));
            if (Outline.isSimple(PieceFinish.netLine(cut))) {
                return cut;
            }
            share *= SHALLOWER;
        }
        return interfacing;
    }

    private static List<Gap> gaps(Curve edge, List<MarkLine> marks) {
        List<Gap> gaps = new ArrayList<>();
        for (int i = 0; i + 1 < marks.size(); i++) {
            if (marks.get(i).kind() == MarkKind.PLEAT_FOLD) {
                Curve fold = marks.get(i).line();
                Curve placement = marks.get(i + 1).line();
                double one = edge.closestLength(fold.start());
                double other = edge.closestLength(placement.start());
                gaps.add(
                        one < other
                                ? new Gap(one, fold.end(), other, placement.end())
                                : new Gap(other, placement.end(), one, fold.end()));
            }
        }
        gaps.sort(Comparator.comparingDouble(Gap::from));
        return gaps;
    }

    private static Curve edge(Curve edge, List<Gap> gaps, double share) {
        List<Curve> parts = new ArrayList<>();
        double reached = 0;
        Point at = edge.start();
        boolean under = false;
        for (Gap gap : gaps) {
            Point from = edge.pointAtLength(gap.from);
            boolean seen = gap.from - reached >= (under ? NARROWEST : SAME);
            if (under && seen) {
                at = line(parts, at, edge.pointAtLength(reached));
            }
            if (seen) {
                parts.add(startingAt(at, edge.part(reached, gap.from)));
                at = parts.get(parts.size() - 1).end();
            }
            at = line(parts, at, from.towards(gap.underFrom, share));
            at = line(parts, at, edge.pointAtLength(gap.to).towards(gap.underTo, share));
            reached = Math.max(reached, gap.to);
            under = true;
        }
        if (edge.length() - reached >= SAME) {
            at = line(parts, at, edge.pointAtLength(reached));
            parts.add(startingAt(at, edge.part(reached, edge.length())));
        }
        return joined(parts, edge);
    }

    private static Point line(List<Curve> parts, Point from, Point to) {
        if (from.distanceTo(to) < SAME) {
            return from;
        }
        parts.add(Curve.line(from, to));
        return to;
    }

    private static Curve startingAt(Point start, Curve part) {
        List<Cubic> segments = new ArrayList<>(part.segments());
        Cubic first = segments.get(0);
        segments.set(0, new Cubic(start, first.control1(), first.control2(), first.end()));
        return Curve.of(segments);
    }

    /** One curve; on the fold of a half it ends exactly on the fold. */
    private static Curve joined(List<Curve> parts, Curve edge) {
        List<Cubic> segments = new ArrayList<>();
        parts.forEach(part -> segments.addAll(part.segments()));
        Cubic last = segments.get(segments.size() - 1);
        boolean whole = last.end().distanceTo(edge.end()) < SAME;
        Point end = whole
                ? edge.end()
                : edge.end().x() == 0 ? new Point(0, last.end().y()) : last.end();
        segments.set(segments.size() - 1, new Cubic(last.start(), last.control1(), last.control2(), end));
        return Curve.of(segments);
    }

    private static PieceDraft with(PieceDraft interfacing, PieceEdge top) {
        List<PieceEdge> edges = new ArrayList<>(interfacing.edges().size());
        Point end = top.curve().end();
        for (PieceEdge edge : interfacing.edges()) {
            boolean fold = edge.kind() == EdgeKind.FOLD;
            edges.add(
                    edge.name().equals(top.name())
                            ? top
                            : fold
                                    ? new PieceEdge(
                                            edge.name(),
                                            edge.kind(),
                                            Curve.line(end, edge.curve().end()),
                                            0)
                                    : edge);
        }
        Curve before = interfacing.edge(top.name()).curve();
        List<NotchPlace> notches = new ArrayList<>();
        for (NotchPlace place : interfacing.notches()) {
            if (place.kind() != NotchKind.PLEAT) {
                notches.add(
                        place.edge().equals(top.name())
                                ? new NotchPlace(
                                        place.kind(),
                                        place.edge(),
                                        top.curve().closestLength(before.pointAtLength(place.distance())))
                                : place);
            }
        }
        List<Point> net = Outline.flattened(edges);
        List<MarkLine> marks = interfacing.marks().stream()
                .filter(mark -> mark.kind() != MarkKind.PLEAT_FOLD && mark.kind() != MarkKind.PLEAT_PLACEMENT)
                .map(mark -> switch (mark.kind()) {
                    case FOLD_LINE ->
                        new MarkLine(
                                mark.kind(), mark.name(), Curve.line(mark.line().start(), end));
                    case CENTRE_LINE -> PieceFinish.inside(mark, net);
                    default -> mark;
                })
                .toList();
        return new PieceDraft(
                interfacing.kind(),
                interfacing.size(),
                List.copyOf(edges),
                notches,
                marks,
                interfacing.cut(),
                interfacing.neck());
    }
}
