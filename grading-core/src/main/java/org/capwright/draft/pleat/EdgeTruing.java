package org.capwright.draft.pleat;

import java.util.ArrayList;
import java.util.List;
import org.capwright.geometry.Cubic;
import org.capwright.geometry.Curve;
import org.capwright.geometry.Point;

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

    /** The mark of each fold that comes first along the edge, and the one that comes last. */
    private final Point[] firstMarks;

    private final Point[] lastMarks;

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
        firstMarks = new Point[layout.folds().size()];
        lastMarks = new Point[layout.folds().size()];
        close();
    }

    /** Cuts the visible pieces out and moves each to the one before. Their ends are the marks; these are not looked for twice. */
    private void close() {
        int folds = layout.folds().size();
        double from = 0;
        Point start = flat.start();
        Point moved = Point.ORIGIN;
        for (int i = 0; i <= folds; i++) {
            double to = i < folds ? layout.folds().get(i).firstMark() : flat.length();
            List<Cubic> piece = to - from > NOTHING ? flat.part(from, to).segments() : List.of();
            if (i > 0) {
                start = piece.isEmpty() ? at(from) : piece.get(0).start();
                lastMarks[i - 1] = start;
                moved = moved.plus(firstMarks[i - 1].minus(start));
            }
            visible.add(piece);
            closed.add(translated(piece, moved));
            if (i < folds) {
                firstMarks[i] =
                        piece.isEmpty() ? start : piece.get(piece.size() - 1).end();
                from = layout.folds().get(i).lastMark();
            }
        }
    }

    /** A mark within rounding of the end is the end. */
    private Point at(double mark) {
        return mark >= flat.length() - NOTHING ? flat.end() : flat.pointAtLength(mark);
    }

    private static List<Cubic> translated(List<Cubic> piece, Point moved) {
        List<Cubic> images = new ArrayList<>(piece.size());
        for (Cubic segment : piece) {
            images.add(segment.translated(moved));
        }
        return images;
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
        boolean foldFirst = fold.lie() == Lie.TO_BACK;
        Point foldPoint = foldFirst ? firstMarks[index] : lastMarks[index];
        Point placementPoint = foldFirst ? lastMarks[index] : firstMarks[index];
        Point chord = placementPoint.minus(foldPoint);
        Point along = chord.unit();
        TopLayer topLayer = topLayer(index, fold, foldPoint, along, chord.norm() / 2);
        List<Cubic> top = topLayer.segments();

        List<Cubic> nextToFold = new ArrayList<>(top.size());
        List<Cubic> nextToPlacement = new ArrayList<>(top.size());
        for (Cubic segment : top) {
            nextToFold.add(reflected(segment, foldPoint, along));
            nextToPlacement.add(segment.translated(chord));
        }
        Point middle = nextToPlacement.get(top.size() - 1).end();
        (foldFirst ? nextToFold : nextToPlacement).forEach(chain::add);
        addTowards(chain, foldFirst ? nextToPlacement : nextToFold, foldFirst ? placementPoint : foldPoint);

        Point left = foldFirst ? along.left() : along.left().times(-1);
        Point into = left.times(pieceOnRight ? -drawn : drawn);
        return new FoldLines(
                fold,
                new PleatLine(PleatLine.Kind.FOLD, foldPoint, foldPoint.plus(into)),
                new PleatLine(PleatLine.Kind.MIDDLE, middle, middle.plus(into)),
                new PleatLine(PleatLine.Kind.PLACEMENT, placementPoint, placementPoint.plus(into)),
                topLayer.uncovered());
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

    /** An edge run away from a fold: what lies on top of its under-layers, as far as the inner crease. */
    private record TopLayer(List<Cubic> segments, double uncovered) {}

    /**
     * The closed edge on top of a fold's under-layers, run through from the fold mark away from it to the depth of the inner crease, in the place where the
     * flat edge has the fold mark. Where it ends or turns back before that depth it is prolonged.
     */
    private TopLayer topLayer(int index, PleatFold fold, Point foldPoint, Point along, double depth) {
        int step = fold.lie() == Lie.TO_BACK ? -1 : 1;
        List<Cubic> top = new ArrayList<>();
        Point shift = Point.ORIGIN;
        for (int piece = step < 0 ? index : index + 1; piece >= 0 && piece < closed.size(); piece += step) {
            List<Cubic> segments = closed.get(piece);
            for (int i = 0; i < segments.size(); i++) {
                Cubic segment = step < 0 ? segments.get(segments.size() - 1 - i).reversed() : segments.get(i);
                if (top.isEmpty()) {
                    shift = foldPoint.minus(segment.start());
                }
                segment = segment.translated(shift);
                double turning = turningBack(segment, along);
                Cubic advancing = turning < 1 ? segment.part(0, turning) : segment;
                boolean deepEnough = turning > 0 && depthOf(advancing.end(), foldPoint, along) >= depth - NOTHING;
                if (deepEnough) {
                    top.add(advancing.part(0, parameterAtDepth(advancing, foldPoint, along, depth)));
                    return new TopLayer(top, 0);
                }
                if (turning > 0) {
                    top.add(advancing);
                }
                if (turning < 1) {
                    return prolonged(top, foldPoint, along, depth, step);
                }
            }
        }
        return prolonged(top, foldPoint, along, depth, step);
    }

    private static double depthOf(Point point, Point foldPoint, Point along) {
        return foldPoint.minus(point).dot(along);
    }

    /** Prolongs along the end tangent, or square to the crease where the tangent would take too long to get there. */
    private TopLayer prolonged(List<Cubic> top, Point foldPoint, Point along, double depth, int step) {
        Point from = top.isEmpty() ? foldPoint : top.get(top.size() - 1).end();
        Point endTangent = step < 0 ? flat.tangentAtLength(0).times(-1) : flat.tangentAtLength(flat.length());
        Point tangent = top.isEmpty() ? endTangent : top.get(top.size() - 1).tangentAt(1);
        Point direction = -tangent.dot(along) >= LEAST_ADVANCE ? tangent : along.times(-1);
        double uncovered = depth - depthOf(from, foldPoint, along);
        top.add(Cubic.line(from, from.plus(direction.times(uncovered / -direction.dot(along)))));
        return new TopLayer(top, uncovered);
    }

    /** Depth gained per length of a prolongation: it may slant by 60° from the square. */
    private static final double LEAST_ADVANCE = 0.5;

    /** Depth gained per length of the edge on top, below which it counts as turning back: there it runs along the crease, and the cut would be a sliver. */
    private static final double STANDSTILL = 0.02;

    /** Depth along an advancing segment is a cubic polynomial that rises all the way, so halving finds the only place. */
    private static double parameterAtDepth(Cubic segment, Point foldPoint, Point along, double depth) {
        double low = 0;
        double high = 1;
        for (int i = 0; i < 60; i++) {
            double middle = (low + high) / 2;
            if (depthOf(segment.pointAt(middle), foldPoint, along) < depth) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return high;
    }

    /**
     * The first parameter at which a segment gains depth no faster than {@link #STANDSTILL}, 1 if it advances all the way. The rate is a quadratic in Bernstein
     * form, a at the start and c at the end.
     */
    private static double turningBack(Cubic segment, Point along) {
        double floor = STANDSTILL * segment.start().distanceTo(segment.end()) / 3;
        double a = segment.start().minus(segment.control1()).dot(along) - floor;
        double b = segment.control1().minus(segment.control2()).dot(along) - floor;
        double c = segment.control2().minus(segment.end()).dot(along) - floor;
        if (a <= 0) {
            return 0;
        }
        // (a - 2b + c) t² - 2 (a - b) t + a = 0; with a > 0 the smaller positive root is a / ((a - b) + √(b² - ac)).
        double discriminant = b * b - a * c;
        if (discriminant < 0) {
            return 1;
        }
        double root = a / (a - b + Math.sqrt(discriminant));
        return root > 0 && root < 1 ? root : 1;
    }
}
