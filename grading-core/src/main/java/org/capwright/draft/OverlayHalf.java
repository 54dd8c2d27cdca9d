package org.capwright.draft;

import java.util.Optional;
import org.capwright.geometry.Cubic;
import org.capwright.geometry.Curve;
import org.capwright.geometry.Point;

/**
 * One half of an overlay, drawn to the right of the fold line. Guaranteed to be immutable.
 *
 * @param topEdge from the raised apex on the fold to the underarm point of the overlay
 * @param side from the underarm point straight down to the hem; absent where the hem ends at the underarm point
 * @param hem from the lower end of the side to the hem point on the fold
 * @param join where the raised line meets the cap line
 */
public record OverlayHalf(Curve topEdge, Optional<Curve> side, Curve hem, Point join) {

    /**
     * The raised apex on the fold.
     *
     * @return a point with x = 0
     */
    public Point apex() {
        return topEdge.start();
    }

    /**
     * The underarm point of the overlay, where its top edge ends.
     *
     * @return a point with y = 0
     */
    public Point underarm() {
        return topEdge.end();
    }

    /**
     * Where side and hem meet; the underarm point where there is no side.
     *
     * @return the point
     */
    public Point sidePoint() {
        return hem.start();
    }

    /**
     * The lowest point of the fold.
     *
     * @return a point with x = 0
     */
    public Point hemPoint() {
        return hem.end();
    }

    static OverlayHalf draft(
            CapLine cap, double rise, double join, HemShape shape, double hemPointY, double sideDepth, double sagitta) {
        Curve top = RaisedLine.over(cap, rise, join);
        Point underarm = cap.curve().end();
        Point sidePoint = sideDepth == 0 ? underarm : new Point(underarm.x(), -sideDepth);
        Point hemPoint = new Point(0, hemPointY);
        Curve hem = shape == HemShape.BOWED && sagitta != 0
                ? bowed(sidePoint, hemPoint, sagitta)
                : Curve.line(sidePoint, hemPoint);
        Point joinPoint = cap.pointAt(join);
        return new OverlayHalf(
                top, sideDepth == 0 ? Optional.empty() : Optional.of(Curve.line(underarm, sidePoint)), hem, joinPoint);
    }

    /**
     * A parabola over the chord whose middle stands off it by the sagitta, outward (down and to the right) where that is positive. For the control points of a
     * cubic that is 4/3 of the sagitta over the thirds of the chord.
     */
    private static Curve bowed(Point side, Point hemPoint, double sagitta) {
        Point out = hemPoint.minus(side).unit().left().times(4.0 / 3 * sagitta);
        return Curve.of(java.util.List.of(new Cubic(
                side,
                side.towards(hemPoint, 1.0 / 3).plus(out),
                side.towards(hemPoint, 2.0 / 3).plus(out),
                hemPoint)));
    }
}
