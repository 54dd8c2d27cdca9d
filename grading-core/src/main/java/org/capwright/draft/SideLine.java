package org.capwright.draft;

import java.util.List;
import org.capwright.geometry.Cubic;
import org.capwright.geometry.Curve;
import org.capwright.geometry.Point;

/** The line of an underarm seam through underarm point, elbow and wrist. */
final class SideLine {

    private SideLine() {}

    /**
     * The natural cubic spline through three points, parameter by chord length: twice differentiable, without curvature at its ends. With chord slopes c₁ and c₂
     * over chords h₁ and h₂ the second derivative at the middle point is M = 3 (c₂ - c₁) / (h₁ + h₂) and falls to zero linearly on both sides (de Boor, A
     * Practical Guide to Splines, chapter IV, free end conditions). It keeps one direction all along, so that the line turns one way only.
     */
    static Curve through(Point underarm, Point elbow, Point wrist) {
        double above = underarm.distanceTo(elbow);
        double below = elbow.distanceTo(wrist);
        Point slopeAbove = elbow.minus(underarm).times(1 / above);
        Point slopeBelow = wrist.minus(elbow).times(1 / below);
        if (Math.abs(slopeAbove.cross(slopeBelow)) < 1e-9) {
            return Curve.polyline(List.of(underarm, elbow, wrist));
        }
        Point bend = slopeBelow.minus(slopeAbove).times(3 / (above + below));
        Point start = slopeAbove.minus(bend.times(above / 6));
        Point middle = slopeAbove.plus(bend.times(above / 3));
        Point end = slopeBelow.plus(bend.times(below / 6));
        return Curve.of(List.of(
                Cubic.hermite(underarm, start.times(above), middle.times(above), elbow),
                Cubic.hermite(elbow, middle.times(below), end.times(below), wrist)));
    }

    /**
     * A line that runs all but straight to the elbow and on from it, and turns smoothly close to it: with a dart closed the seam below swings back by more than the sleeve
     * is turned, and a fair line through the three points alone would hollow the whole arm. The tangent at the elbow halves the angle between the chords; each end
     * runs straight towards the tangent's control point, so that the line has no curvature there and turns one way only.
     *
     * @param reach length of the tangent's handles, mm
     */
    static Curve turningNear(Point underarm, Point elbow, Point wrist, double reach) {
        Point along = elbow.minus(underarm)
                .unit()
                .plus(wrist.minus(elbow).unit())
                .unit()
                .times(reach);
        Point above = elbow.minus(along);
        Point below = elbow.plus(along);
        return Curve.of(List.of(
                new Cubic(underarm, underarm.towards(above, 2.0 / 3), above, elbow),
                new Cubic(elbow, below, wrist.towards(below, 2.0 / 3), wrist)));
    }
}
