package org.capwright.draft.pleat;

import java.util.ArrayList;
import java.util.List;
import org.capwright.geometry.Cubic;
import org.capwright.geometry.Curve;
import org.capwright.geometry.Point;
import org.capwright.measure.InvalidMeasuresException;
import org.capwright.measure.Violation;

/** Trues one edge: closes it, and unfolds what lies on top of each fold's under-layers. */
final class EdgeTruing {

    /** Visible pieces shorter than this are none: neighbouring folds share a placement line. */
    private static final double NOTHING = 1e-9;

    private static final double SAME_LENGTH = 1e-6;

    private final Curve flat;
    private final PleatLayout layout;
    private final double drawn;
    private final boolean pieceOnRight;

    /** The visible pieces in order, as they lie on the flat edge: one more than folds, empty where two folds share a placement line. */
    private final List<List<Cubic>> visible;

    /** The same pieces closed: moved until each abuts on the one before. */
    private final List<List<Cubic>> closed;

    EdgeTruing(Curve flat, PleatLayout layout, double drawn) {
        if (!(Math.abs(flat.length() - layout.edge()) <= SAME_LENGTH)) {
            throw new IllegalArgumentException(
                    "the edge is " + flat.length() + " mm long, the layout's is " + layout.edge());
        }
        if (!(drawn > 0)) {
            throw new IllegalArgumentException("pleat lines need a length above 0, not " + drawn);
        }
        this.flat = flat;
        this.layout = layout;
        this.drawn = drawn;
        Point apex = flat.pointAtLength(layout.front().edge());
        pieceOnRight = flat.end().minus(flat.start()).cross(apex.minus(flat.start())) >= 0;
        visible = new ArrayList<>(layout.folds().size() + 1);
        closed = new ArrayList<>(layout.folds().size() + 1);
        close();
    }

    private void close() {
        double from = 0;
        Point moved = Point.ORIGIN;
        for (PleatFold fold : layout.folds()) {
            addVisible(from, fold.firstMark(), moved);
            from = fold.lastMark();
            moved = moved.plus(flat.pointAtLength(fold.firstMark()).minus(flat.pointAtLength(from)));
        }
        addVisible(from, flat.length(), moved);
    }

    private void addVisible(double from, double to, Point moved) {
        if (to - from <= NOTHING) {
            visible.add(List.of());
            closed.add(List.of());
            return;
        }
        Curve piece = flat.part(from, to);
        visible.add(piece.segments());
        closed.add(piece.translated(moved).segments());
    }

    TruedEdge truedEdge() {
        Chain chain = new Chain();
        List<FoldLines> lines = new ArrayList<>(layout.folds().size());
        visible.get(0).forEach(chain::add);
        for (int i = 0; i < layout.folds().size(); i++) {
            lines.add(unfold(i, chain));
            visible.get(i + 1).forEach(chain::add);
        }
        return new TruedEdge(chain.curve(), lines);
    }

    /** Adds the two under-layers of a fold to the chain. */
    private FoldLines unfold(int index, Chain chain) {
        PleatFold fold = layout.folds().get(index);
        Point foldPoint = flat.pointAtLength(fold.foldMark());
        Point placementPoint = flat.pointAtLength(fold.placementMark());
        Point chord = placementPoint.minus(foldPoint);
        Point along = chord.unit();
        List<Cubic> top = topLayer(index, fold, foldPoint, along, chord.norm() / 2);

        List<Cubic> nextToFold = new ArrayList<>(top.size());
        List<Cubic> nextToPlacement = new ArrayList<>(top.size());
        for (Cubic segment : top) {
            nextToFold.add(reflected(segment, foldPoint, along));
            nextToPlacement.add(segment.translated(chord));
        }
        Point middle = nextToPlacement.get(top.size() - 1).end();
        boolean foldFirst = fold.lie() == Lie.TO_BACK;
        addAwayFrom(chain, foldFirst ? nextToFold : nextToPlacement);
        addTowards(chain, foldFirst ? nextToPlacement : nextToFold, foldFirst ? placementPoint : foldPoint);

        Point left = foldFirst ? along.left() : along.left().times(-1);
        Point into = left.times(pieceOnRight ? -drawn : drawn);
        return new FoldLines(
                fold,
                new PleatLine(PleatLine.Kind.FOLD, foldPoint, foldPoint.plus(into)),
                new PleatLine(PleatLine.Kind.MIDDLE, middle, middle.plus(into)),
                new PleatLine(PleatLine.Kind.PLACEMENT, placementPoint, placementPoint.plus(into)));
    }

    private static void addAwayFrom(Chain chain, List<Cubic> layer) {
        layer.forEach(chain::add);
    }

    /** The layer was built from its mark to the inner crease; it is run through the other way and ends exactly on the mark. */
    private static void addTowards(Chain chain, List<Cubic> layer, Point mark) {
        for (int i = layer.size() - 1; i >= 0; i--) {
            Cubic back = layer.get(i).reversed();
            chain.add(i == 0 ? new Cubic(back.start(), back.control1(), back.control2(), mark) : back);
        }
    }

    private static Cubic reflected(Cubic segment, Point through, Point normal) {
        return new Cubic(
                reflected(segment.start(), through, normal),
                reflected(segment.control1(), through, normal),
                reflected(segment.control2(), through, normal),
                reflected(segment.end(), through, normal));
    }

    private static Point reflected(Point point, Point through, Point normal) {
        return point.plus(normal.times(-2 * point.minus(through).dot(normal)));
    }

    /**
     * The closed edge on top of a fold's under-layers, run through from the fold mark away from it to the depth of the inner crease, in the place where the
     * flat edge has the fold mark.
     */
    private List<Cubic> topLayer(int index, PleatFold fold, Point foldPoint, Point along, double depth) {
        int step = fold.lie() == Lie.TO_BACK ? -1 : 1;
        List<Cubic> top = new ArrayList<>();
        Point shift = Point.ORIGIN;
        Point reached = foldPoint;
        for (int piece = step < 0 ? index : index + 1; piece >= 0 && piece < closed.size(); piece += step) {
            List<Cubic> segments = closed.get(piece);
            for (int i = 0; i < segments.size(); i++) {
                Cubic segment = step < 0 ? segments.get(segments.size() - 1 - i).reversed() : segments.get(i);
                if (top.isEmpty()) {
                    shift = foldPoint.minus(segment.start());
                }
                segment = segment.translated(shift);
                boolean deepEnough = foldPoint.minus(segment.end()).dot(along) >= depth - NOTHING;
                double to = deepEnough ? parameterAtDepth(segment, foldPoint, along, depth) : 1;
                Cubic covered = segment.part(0, to);
                requireAdvance(covered, fold, foldPoint, along);
                top.add(covered);
                reached = covered.end();
                if (deepEnough) {
                    return top;
                }
            }
        }
        top.add(beyondTheEnd(step, fold, foldPoint, along, depth, reached));
        return top;
    }

    private Cubic beyondTheEnd(int step, PleatFold fold, Point foldPoint, Point along, double depth, Point reached) {
        Point direction = step < 0 ? flat.tangentAtLength(0).times(-1) : flat.tangentAtLength(flat.length());
        double rate = -direction.dot(along);
        double covered = foldPoint.minus(reached).dot(along);
        if (!(rate > SLOWEST)) {
            throw tooDeep(fold, covered);
        }
        return Cubic.line(reached, reached.plus(direction.times((depth - covered) / rate)));
    }

    /** An edge on top that goes away from the fold slower than this runs along the crease rather than away from it; the cut would be a sliver. */
    private static final double SLOWEST = 0.02;

    /** Depth along the segment is a cubic polynomial that rises all the way, so halving finds the only place. */
    private static double parameterAtDepth(Cubic segment, Point foldPoint, Point along, double depth) {
        double low = 0;
        double high = 1;
        for (int i = 0; i < 60; i++) {
            double middle = (low + high) / 2;
            if (foldPoint.minus(segment.pointAt(middle)).dot(along) < depth) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return high;
    }

    /** The rate of depth is a quadratic in Bernstein form; its least value is at an end or at its vertex. */
    private static void requireAdvance(Cubic segment, PleatFold fold, Point foldPoint, Point along) {
        double a = segment.start().minus(segment.control1()).dot(along);
        double b = segment.control1().minus(segment.control2()).dot(along);
        double c = segment.control2().minus(segment.end()).dot(along);
        double vertex = (a - b) / (a - 2 * b + c);
        double least = Math.min(a, c);
        if (vertex > 0 && vertex < 1) {
            double u = 1 - vertex;
            least = Math.min(least, u * u * a + 2 * u * vertex * b + vertex * vertex * c);
        }
        double speed = segment.start().distanceTo(segment.end()) / 3;
        if (!(least > SLOWEST * speed)) {
            throw tooDeep(fold, foldPoint.minus(segment.start()).dot(along));
        }
    }

    private static InvalidMeasuresException tooDeep(PleatFold fold, double covered) {
        return new InvalidMeasuresException(Violation.lengthAbove(
                "/overlay/pleats/depth",
                "a pleat is too deep for the bend of the top edge, which turns back before it covers the under-layers:"
                        + " take more pleats or less fullness",
                fold.depth(),
                Math.max(0, covered)));
    }
}
