package org.capwright.pattern;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.DoubleUnaryOperator;
import org.apache.commons.math3.analysis.solvers.BrentSolver;
import org.capwright.draft.Overlay;
import org.capwright.draft.OverlayHalf;
import org.capwright.geometry.Cubic;
import org.capwright.geometry.Curve;
import org.capwright.geometry.Point;
import org.capwright.measure.SleeveSubject.Option;
import org.capwright.quantity.InvalidMeasuresException;
import org.capwright.quantity.Violation;

/**
 * The lining of an overlay faces its hem and its sides, and is smaller than the main cloth by the turn of cloth along both, so that the seam rolls to the inside. Its hem lies higher and its sides lie further in,
 * and its top edge ends where they meet it. Common practice, no source.
 *
 * <p>Where the first pleat lies so near to the end that the top edge cannot end earlier, the lining is as wide there as the main cloth, and is reduced more and more towards the hem.
 */
final class Lining {

    /** Marks keep this far from the end of the top edge, mm. */
    static final double CLEAR = 1;

    /** So much of a side is left at least, mm. */
    private static final double LEAST_SIDE = 0.5;

    /** The top edge ends no further in than this many turns of cloth, however flat the hem runs up to it. */
    private static final double FURTHEST = 4;

    /** How exactly the end of the top edge is found, mm. */
    private static final double ACCURACY = 1e-12;

    private static final int MOST_STEPS = 100;

    private Lining() {}

    /** The top edge of the lining: that of the main cloth, shorter at its ends. */
    static PleatedEdge topEdge(Overlay overlay, PleatedEdge main, double turn, boolean half) {
        double back = inset(overlay.back(), turn, PleatedEdge.endBack(overlay) - CLEAR);
        double front = half ? 0 : inset(overlay.front(), turn, PleatedEdge.endFront(overlay) - CLEAR);
        return back == 0 && front == 0 ? main : main.shorter(back, front);
    }

    /** How much shorter the top edge is at the end of a half, mm. */
    private static double inset(OverlayHalf half, double turn, double room) {
        double most = Math.min(Math.min(room, FURTHEST * turn), half.topEdge().length() / 4);
        if (most <= 0 || overhangs(half)) {
            return 0;
        }
        Curve top = half.topEdge();
        Point hem = half.hem().segments().get(0).tangentAt(0);
        Point raised = half.underarm().plus(new Point(0, turn));
        DoubleUnaryOperator beyond = half.side().isPresent()
                ? in -> half.underarm().x()
                        - turn
                        - top.pointAtLength(top.length() - in).x()
                : in -> top.pointAtLength(top.length() - in).minus(raised).cross(hem);
        if (beyond.applyAsDouble(most) <= 0) {
            return most;
        }
        return beyond.applyAsDouble(0) >= 0
                ? 0
                : new BrentSolver(ACCURACY).solve(MOST_STEPS, beyond::applyAsDouble, 0, most);
    }

    /**
     * A half reduced by the turn of cloth, whose top edge ends at a point. Moving the points of a cubic by a linear function of the parameter moves its control points at thirds.
     *
     * <p>A hem bowed so far that it overhangs its end would come out of the main cloth if moved up there: it is moved less and less, and bowed less as well, by half the turn of
     * cloth, which is more than moving up brings out.
     */
    static OverlayHalf half(OverlayHalf half, Point end, double turn) {
        if (turn == 0) {
            return half;
        }
        require(half, turn);
        if (overhangs(half)) {
            Point flatter =
                    half.hemPoint().minus(half.sidePoint()).unit().left().times(-2.0 / 3 * turn);
            return new OverlayHalf(
                    half.topEdge(), half.side(), moved(half.hem(), half.sidePoint(), turn, flatter), half.join());
        }
        Optional<Point> corner = half.side()
                .map(side ->
                        new Point(half.sidePoint().x() - turn, half.sidePoint().y() + turn));
        return new OverlayHalf(
                half.topEdge(),
                corner.map(point -> Curve.line(end, point)),
                moved(half.hem(), corner.orElse(end), turn, Point.ORIGIN),
                half.join());
    }

    private static boolean overhangs(OverlayHalf half) {
        return half.hem().segments().get(0).tangentAt(0).x() > 0;
    }

    private static void require(OverlayHalf half, double turn) {
        double depth = half.underarm().y() - half.sidePoint().y();
        double drop = half.sidePoint().y() - half.hemPoint().y();
        boolean sided = half.side().isPresent() && !overhangs(half);
        double most = sided ? Math.max(0, depth - LEAST_SIDE) : Math.max(0, drop);
        if (turn > most) {
            throw new InvalidMeasuresException(Violation.lengthAbove(
                    Option.TURN_OF_CLOTH,
                    sided
                            ? "the lining would be left without its side"
                            : "the lining's hem would be moved up beyond the end of its top edge",
                    turn,
                    most));
        }
    }

    /** The hem with its start at a point and its end on the fold moved up, between them in proportion to the parameter. */
    private static Curve moved(Curve hem, Point start, double turn, Point flatter) {
        List<Cubic> segments = hem.segments();
        List<Cubic> moved = new ArrayList<>(segments.size());
        Point from = start.minus(hem.start());
        Point to = new Point(0, turn);
        int count = segments.size();
        for (int i = 0; i < count; i++) {
            Cubic segment = segments.get(i);
            moved.add(new Cubic(
                    i == 0 ? start : moved.get(i - 1).end(),
                    segment.control1()
                            .plus(from.towards(to, (i + 1.0 / 3) / count))
                            .plus(flatter),
                    segment.control2()
                            .plus(from.towards(to, (i + 2.0 / 3) / count))
                            .plus(flatter),
                    segment.end().plus(from.towards(to, (i + 1.0) / count))));
        }
        return Curve.of(moved);
    }
}
