package org.capwright.pattern;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import java.util.Optional;
import org.capwright.geometry.Point;
import org.capwright.geometry.Points;
import org.capwright.geometry.PointsBuilder;

/**
 * A hem that is turned up: its allowance is the mirror image of the cloth above the hem line, so that the raw edge is as wide as the sleeve where it comes to lie, however the sleeve tapers. Common
 * practice, no source.
 */
final class TurnedHem {

    /** Points this near to the hem line lie on it, mm. */
    private static final double ON_LINE = 1e-6;

    /** As many points are expected on the sides of an allowance. */
    private static final int ROOM = 8;

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
        if (draft.kind() == PieceKind.UNDER_SLEEVE) {
            for (PieceEdge edge : draft.edges()) {
                if (edge.kind() == EdgeKind.HEM && edge.allowance() > 0) {
                    return Optional.of(edge);
                }
            }
        }
        return Optional.empty();
    }

    /** The edges with the hem cut net. */
    static List<PieceEdge> cutNet(List<PieceEdge> edges) {
        List<PieceEdge> net = new ArrayList<>(edges.size());
        for (PieceEdge edge : edges) {
            net.add(edge.kind() == EdgeKind.HEM ? new PieceEdge(edge.name(), edge.kind(), edge.curve(), 0) : edge);
        }
        return net;
    }

    /** The cut line of a piece whose hem is cut net, with the allowance of the hem added; nothing where the piece is not as high as the allowance. */
    static Optional<CutLine> added(CutLine net, PieceEdge hem) {
        return new TurnedHem(hem).added(net);
    }

    private double height(double x, double y) {
        return along.x() * (y - start.y()) - along.y() * (x - start.x());
    }

    private double along(Points points, int place) {
        return (points.x(place) - start.x()) * along.x() + (points.y(place) - start.y()) * along.y();
    }

    private Optional<CutLine> added(CutLine net) {
        Points points = net.points();
        int count = points.size();
        int first = -1;
        int last = -1;
        for (int i = 0; i < count; i++) {
            if (Math.abs(height(points.x(i), points.y(i))) < ON_LINE) {
                double at = along(points, i);
                first = first < 0 || at < along(points, first) ? i : first;
                last = last < 0 || at > along(points, last) ? i : last;
            }
        }
        if (first < 0 || first == last) {
            return Optional.empty();
        }
        Points left = reflected(points, first, count - 1);
        Points right = reflected(points, last, 1);
        if (left.isEmpty() || right.isEmpty()) {
            return Optional.empty();
        }
        int from = onFold(points, last, right) ? last + 1 : last;
        int kept = Math.floorMod(first - last, count) + 1 - (from - last) - (onFold(points, first, left) ? 1 : 0);
        BitSet turns = new BitSet(count);
        for (int corner : net.corners()) {
            turns.set(Math.floorMod(corner - from, count));
        }
        List<Integer> corners = new ArrayList<>(net.corners().size() + 2);
        for (int i = turns.nextSetBit(0); i >= 0 && i < kept; i = turns.nextSetBit(i + 1)) {
            corners.add(i);
        }
        PointsBuilder line = new PointsBuilder(count + left.size() + right.size());
        line.addAll(points, from, Math.min(count, from + kept));
        line.addAll(points, 0, Math.max(0, from + kept - count));
        line.addAll(left, 0, left.size());
        corners.add(line.size() - 1);
        corners.add(line.size());
        for (int i = right.size() - 1; i >= 0; i--) {
            line.add(right.x(i), right.y(i));
        }
        CutLine turned = new CutLine(line.points(), List.copyOf(corners));
        return Outline.isSimple(turned.points()) ? Optional.of(turned.withoutRepeats()) : Optional.empty();
    }

    /** Whether an end of the hem lies on the fold of the cloth: there the line runs straight on. */
    private static boolean onFold(Points points, int end, Points flap) {
        return points.x(end) == 0 && flap.size() == 1 && flap.x(0) == 0;
    }

    /** The mirror image of the line on the way up from an end of the hem to the depth of the allowance; without points where the line does not lead up there. */
    private Points reflected(Points points, int from, int step) {
        PointsBuilder way = new PointsBuilder(ROOM);
        double x = points.x(from);
        double y = points.y(from);
        double low = height(x, y);
        for (int i = 1; i < points.size(); i++) {
            int place = (from + i * step) % points.size();
            double high = height(points.x(place), points.y(place));
            if (high <= low) {
                break;
            }
            if (high >= depth) {
                double share = (depth - low) / (high - low);
                addMirrored(way, x + (points.x(place) - x) * share, y + (points.y(place) - y) * share);
                return way.points();
            }
            x = points.x(place);
            y = points.y(place);
            low = high;
            addMirrored(way, x, y);
        }
        way.cutBack(0);
        return way.points();
    }

    private void addMirrored(PointsBuilder way, double x, double y) {
        double twice = 2 * height(x, y);
        way.add(x + along.y() * twice, y - along.x() * twice);
    }
}
