package org.capwright.pattern;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.capwright.geometry.Cubic;
import org.capwright.geometry.Curve;
import org.capwright.geometry.Point;
import org.capwright.geometry.Points;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;

/**
 * Interfacing that is cut away between the folds: between the fold line and the placement line of each pleat a gap runs down from the top edge as far as the lines are drawn, so that only what is seen of the
 * closed overlay is stiffened. What would be left between two gaps is cut away too where it is too narrow to be fused.
 */
final class CutAway {

    /** What is left between two gaps is this wide at least, mm. Common practice, no source. */
    static final double NARROWEST = 5;

    /** What is left between a gap and another edge, which holds all that lies beyond the gap, is this wide at least, mm. Common practice, no source. */
    static final double HOLD = 12;

    /** Gaps become shallower by this share until enough is left between them. */
    private static final double SHALLOWER = 0.85;

    private static final int TRIES = 16;

    private static final double SAME = 1e-6;

    private CutAway() {}

    /** A gap between two places of the top edge, down to the points beneath them. */
    private record Gap(double from, Point underFrom, double to, Point underTo) {

        Geometry line(Curve edge) {
            return Outline.PLANE.createLineString(new Coordinate[] {
                Outline.coordinate(edge.pointAtLength(from)),
                Outline.coordinate(underFrom),
                Outline.coordinate(underTo),
                Outline.coordinate(edge.pointAtLength(to))
            });
        }

        double width() {
            return Math.min(to - from, underFrom.distanceTo(underTo));
        }

        Gap shallower(Curve edge) {
            return new Gap(
                    from,
                    edge.pointAtLength(from).towards(underFrom, SHALLOWER),
                    to,
                    edge.pointAtLength(to).towards(underTo, SHALLOWER));
        }
    }

    /** The interfacing of an overlay; as it was where it has no pleats. */
    static PieceDraft of(PieceDraft interfacing) {
        PieceEdge top = interfacing.edge(OverlayPieces.TOP_EDGE);
        List<MarkLine> marks = PleatedEdge.shortened(interfacing.marks(), new Ring(PieceFinish.netLine(interfacing)));
        List<Gap> gaps = gaps(top.curve(), marks);
        // A gap at an end of the seam, or one that the allowance would fill again, is none.
        double end =
                interfacing.onFold() ? Double.POSITIVE_INFINITY : top.curve().length() - HOLD;
        gaps.removeIf(gap -> gap.from < HOLD || gap.to > end || gap.width() < 2 * top.allowance() + NARROWEST);
        if (gaps.isEmpty()) {
            return interfacing;
        }
        Geometry others = others(interfacing);
        List<Gap> shallow = gaps;
        for (int i = 0; i < TRIES; i++) {
            shallow = apart(shallow, top.curve(), others);
        }
        PieceEdge open = new PieceEdge(top.name(), top.kind(), edge(top.curve(), shallow), top.allowance());
        List<PieceEdge> edges = edges(interfacing, open);
        Points net = Outline.flattened(edges);
        boolean within = Outline.isSimple(net)
                && Outline.polygon(PieceFinish.netLine(interfacing))
                        .buffer(2 * Piece.FLATTENING)
                        .covers(Outline.polygon(net));
        return within ? with(interfacing, open, edges, net) : interfacing;
    }

    /** The other edges of the piece; beyond the fold of a half its other half begins. */
    private static Geometry others(PieceDraft piece) {
        return Outline.PLANE.buildGeometry(piece.edges().stream()
                .filter(edge -> !edge.name().equals(OverlayPieces.TOP_EDGE))
                .map(edge -> Outline.PLANE.createLineString(edge.curve().flattened(Piece.FLATTENING).stream()
                        .map(Outline::coordinate)
                        .toArray(Coordinate[]::new)))
                .toList());
    }

    /** Gaps that come too near to one another or to another edge are made shallower; those that begin there are not. */
    private static List<Gap> apart(List<Gap> gaps, Curve edge, Geometry others) {
        List<Geometry> lines = gaps.stream().map(gap -> gap.line(edge)).toList();
        boolean[] near = new boolean[gaps.size()];
        for (int i = 0; i < near.length; i++) {
            boolean onFold = edge.length() - gaps.get(i).to < NARROWEST;
            near[i] |= !onFold && lines.get(i).isWithinDistance(others, HOLD);
            for (int k = i + 1; k < near.length; k++) {
                boolean one = k == i + 1 && gaps.get(k).from - gaps.get(i).to < NARROWEST;
                if (!one && lines.get(i).isWithinDistance(lines.get(k), NARROWEST)) {
                    near[i] = true;
                    near[k] = true;
                }
            }
        }
        List<Gap> moved = new ArrayList<>(gaps.size());
        for (int i = 0; i < near.length; i++) {
            moved.add(near[i] ? gaps.get(i).shallower(edge) : gaps.get(i));
        }
        return moved;
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

    private static Curve edge(Curve edge, List<Gap> gaps) {
        List<Curve> parts = new ArrayList<>();
        double reached = 0;
        Point at = edge.start();
        boolean under = false;
        for (Gap gap : gaps) {
            boolean seen = gap.from - reached >= (under ? NARROWEST : SAME);
            if (under && seen) {
                at = line(parts, at, edge.pointAtLength(reached));
            }
            if (seen) {
                parts.add(startingAt(at, edge.part(reached, gap.from)));
                at = parts.get(parts.size() - 1).end();
            }
            at = line(parts, at, gap.underFrom);
            at = line(parts, at, gap.underTo);
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

    private static List<PieceEdge> edges(PieceDraft interfacing, PieceEdge top) {
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
        return List.copyOf(edges);
    }

    private static PieceDraft with(PieceDraft interfacing, PieceEdge top, List<PieceEdge> edges, Points net) {
        Point end = top.curve().end();
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
        List<MarkLine> marks = interfacing.marks().stream()
                .filter(mark -> mark.kind() != MarkKind.PLEAT_FOLD && mark.kind() != MarkKind.PLEAT_PLACEMENT)
                .map(mark -> switch (mark.kind()) {
                    case FOLD_LINE ->
                        new MarkLine(
                                mark.kind(), mark.name(), Curve.line(mark.line().start(), end));
                    case CENTRE_LINE -> PieceFinish.inside(mark, new Ring(net));
                    default -> mark;
                })
                .toList();
        return new PieceDraft(
                interfacing.kind(), interfacing.size(), edges, notches, marks, interfacing.cut(), interfacing.neck());
    }
}
