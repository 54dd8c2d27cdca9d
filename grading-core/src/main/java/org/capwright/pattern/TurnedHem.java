package org.capwright.pattern;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.capwright.geometry.Point;

/**
 * A hem that is turned up: its allowance is the mirror image of the cloth above the hem line, so that the raw edge is as wide as the sleeve where it comes to lie, however the sleeve tapers. Common
 * practice, no source.
 */
final class TurnedHem {

    /** Points this near to the hem line lie on it, mm. */
    private static final double ON_LINE = 1e-6;

    private final Point start;
    private final Point along;
    private final double depth;

    private TurnedHem(PieceEdge hem) {
        this.start = hem.curve().start();
        this.along = hem.curve().end().minus(start).unit();
        this.depth = hem.allowance();
    }

    /** The hem of a piece that is turned up, if it has one with an allowance. */
    static Optional<PieceEdge> of(PieceDraft draft) {
        return draft.kind() == PieceKind.UNDER_SLEEVE
                ? draft.edges().stream()
                        .filter(edge -> edge.kind() == EdgeKind.HEM && edge.allowance() > 0)
                        .findFirst()
                : Optional.empty();
    }

    /** The edges with the hem cut net. */
    static List<PieceEdge> cutNet(List<PieceEdge> edges) {
        return edges.stream()
                .map(edge ->
                        edge.kind() == EdgeKind.HEM ? new PieceEdge(edge.name(), edge.kind(), edge.curve(), 0) : edge)
                .toList();
    }

    /** The cut line of a piece whose hem is cut net, with the allowance of the hem added; nothing where the piece is not as high as the allowance. */
    static Optional<CutLine> added(CutLine net, PieceEdge hem) {
        return new TurnedHem(hem).added(net);
    }

    private double height(Point point) {
        return start.beside(along, point);
    }

    private Point mirrored(Point point) {
        return point.minus(along.left().times(2 * height(point)));
    }

    private Optional<CutLine> added(CutLine net) {
        List<Point> points = net.points();
        int count = points.size();
        int first = -1;
        int last = -1;
        for (int i = 0; i < count; i++) {
            if (Math.abs(height(points.get(i))) < ON_LINE) {
                double at = points.get(i).minus(start).dot(along);
                first = first < 0 || at < points.get(first).minus(start).dot(along) ? i : first;
                last = last < 0 || at > points.get(last).minus(start).dot(along) ? i : last;
            }
        }
        if (first < 0 || first == last) {
            return Optional.empty();
        }
        Optional<List<Point>> left = reflected(points, first, count - 1);
        Optional<List<Point>> right = reflected(points, last, 1);
        if (left.isEmpty() || right.isEmpty()) {
            return Optional.empty();
        }
        Set<Point> turns = new HashSet<>();
        net.corners().forEach(corner -> turns.add(points.get(corner)));
        List<Point> line = new ArrayList<>();
        for (int i = last; ; i = (i + 1) % count) {
            line.add(points.get(i));
            if (i == first) {
                break;
            }
        }
        line.addAll(left.get());
        List<Point> back = right.get();
        for (int i = back.size() - 1; i >= 0; i--) {
            line.add(back.get(i));
        }
        passOnFold(line, points.get(first), left.get());
        passOnFold(line, points.get(last), back);
        turns.add(left.get().get(left.get().size() - 1));
        turns.add(back.get(back.size() - 1));
        return Outline.isSimple(line) ? Optional.of(indexed(line, turns)) : Optional.empty();
    }

    /** On the fold of the cloth the line runs straight on. */
    private static void passOnFold(List<Point> line, Point end, List<Point> flap) {
        if (end.x() == 0 && flap.size() == 1 && flap.get(0).x() == 0) {
            line.remove(end);
        }
    }

    /** The mirror image of the line on the way up from an end of the hem to the depth of the allowance. */
    private Optional<List<Point>> reflected(List<Point> points, int from, int step) {
        List<Point> way = new ArrayList<>();
        Point before = points.get(from);
        for (int i = 1; i < points.size(); i++) {
            Point next = points.get((from + i * step) % points.size());
            double low = height(before);
            double high = height(next);
            if (high <= low) {
                return Optional.empty();
            }
            if (high >= depth) {
                way.add(mirrored(before.towards(next, (depth - low) / (high - low))));
                return Optional.of(way);
            }
            way.add(mirrored(next));
            before = next;
        }
        return Optional.empty();
    }

    private static CutLine indexed(List<Point> line, Set<Point> turns) {
        List<Integer> corners = new ArrayList<>();
        for (int i = 0; i < line.size(); i++) {
            if (turns.contains(line.get(i))) {
                corners.add(i);
            }
        }
        return new CutLine(List.copyOf(line), List.copyOf(corners)).withoutRepeats();
    }
}
