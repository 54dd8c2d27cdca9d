package org.capwright.draft.pleat;

import java.util.ArrayList;
import java.util.List;
import org.capwright.geometry.Cubic;
import org.capwright.geometry.Curve;
import org.capwright.geometry.Point;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.util.AffineTransformation;

/**
 * A trued piece folded as cloth is: every crease reflects whatever lies beyond it. Knows nothing of closed edges or translations; it takes the cut edge, the
 * drawn crease lines, and JTS's reflections.
 *
 * @param top the edges of the visible pieces, folded
 * @param under the edges of the under-layers, folded: two for each fold
 * @param creases the visible crease of each fold, folded
 */
record FoldedCloth(List<List<Cubic>> top, List<List<Cubic>> under, List<Crease> creases) {

    /** A visible crease, folded: where it starts on the edge, and its direction into the piece. */
    record Crease(Point from, Point direction) {

        double depthOf(Point point) {
            return Math.abs(direction.cross(point.minus(from)));
        }
    }

    static FoldedCloth fold(TruedEdge edge) {
        List<List<Cubic>> top = new ArrayList<>();
        List<List<Cubic>> under = new ArrayList<>();
        List<Crease> creases = new ArrayList<>();
        AffineTransformation state = new AffineTransformation();
        List<Cubic> rest = new ArrayList<>(edge.curve().segments());
        for (FoldLines lines : edge.lines()) {
            boolean creaseFirst = lines.of().lie() == Lie.TO_BACK;
            PleatLine first = creaseFirst ? lines.fold() : lines.placement();
            PleatLine last = creaseFirst ? lines.placement() : lines.fold();
            top.add(folded(cutOff(rest, first.from()), state));
            if (creaseFirst) {
                state = crease(state, first);
                creases.add(visible(first, state));
            }
            under.add(folded(cutOff(rest, lines.middle().from()), state));
            state = crease(state, lines.middle());
            under.add(folded(cutOff(rest, last.from()), state));
            if (!creaseFirst) {
                state = crease(state, last);
                creases.add(visible(last, state));
            }
        }
        top.add(folded(rest, state));
        return new FoldedCloth(top, under, creases);
    }

    private static Crease visible(PleatLine line, AffineTransformation state) {
        Point from = moved(line.from(), state);
        return new Crease(from, moved(line.to(), state).minus(from).unit());
    }

    /** Beyond a crease the flat cloth is first reflected about it, then moved as the cloth before it. */
    private static AffineTransformation crease(AffineTransformation state, PleatLine line) {
        AffineTransformation next = AffineTransformation.reflectionInstance(
                line.from().x(), line.from().y(), line.to().x(), line.to().y());
        return next.compose(state);
    }

    /** Takes the segments up to a joint. */
    private static List<Cubic> cutOff(List<Cubic> rest, Point joint) {
        List<Cubic> piece = new ArrayList<>();
        while ((piece.isEmpty()
                                ? rest.get(0).start()
                                : piece.get(piece.size() - 1).end())
                        .distanceTo(joint)
                > 1e-6) {
            piece.add(rest.remove(0));
        }
        return piece;
    }

    private static List<Cubic> folded(List<Cubic> piece, AffineTransformation state) {
        return piece.stream()
                .map(cubic -> new Cubic(
                        moved(cubic.start(), state),
                        moved(cubic.control1(), state),
                        moved(cubic.control2(), state),
                        moved(cubic.end(), state)))
                .toList();
    }

    private static Point moved(Point point, AffineTransformation state) {
        Coordinate image = state.transform(new Coordinate(point.x(), point.y()), new Coordinate());
        return new Point(image.x, image.y);
    }

    /** The closed top edge. Its pieces abut but for rounding, which is checked. */
    Curve closed() {
        List<Cubic> all = new ArrayList<>();
        for (List<Cubic> piece : top) {
            for (Cubic cubic : piece) {
                if (!all.isEmpty()) {
                    Point end = all.get(all.size() - 1).end();
                    if (end.distanceTo(cubic.start()) > 1e-7) {
                        throw new AssertionError("the closed edge gapes between " + end + " and " + cubic.start());
                    }
                    cubic = new Cubic(end, cubic.control1(), cubic.control2(), cubic.end());
                }
                all.add(cubic);
            }
        }
        return Curve.of(all);
    }
}
