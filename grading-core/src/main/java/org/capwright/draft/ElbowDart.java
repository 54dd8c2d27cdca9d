package org.capwright.draft;

import java.util.List;
import org.capwright.geometry.Cubic;
import org.capwright.geometry.Curve;
import org.capwright.geometry.Point;
import org.capwright.measure.Dimension;
import org.capwright.quantity.InvalidMeasuresException;
import org.capwright.quantity.Violation;

/**
 * A dart on the back underarm seam at the elbow line, in the frame of the piece: back at positive x. Its intake is folded downward, towards the wrist. Guaranteed to be
 * immutable.
 *
 * @param point where the legs meet, on the line that halves the dart
 * @param upperEnd end of the upper leg on the back seam
 * @param lowerEnd end of the lower leg on the back seam, as far from the point as the other
 * @param edge the trued edge between the legs, from the upper to the lower end: folded downward it lies on the seam line below the dart. Its middle joint is a corner on the line
 *     that halves the dart
 */
public record ElbowDart(Point point, Point upperEnd, Point lowerEnd, Curve edge) {

    /**
     * Trues the dart. With its intake folded down, the paper goes on from the upper leg beneath the part below the dart, so that it must be cut there as the seam below is
     * once the dart is closed; at the line that halves the dart it is folded back, so that its second half is the mirror image of the first about that line.
     *
     * @param point where the legs meet
     * @param upperEnd end of the upper leg
     * @param lowerEnd end of the lower leg
     * @param closedBelow the seam line below the dart when the dart is closed: it starts at the upper end
     */
    static ElbowDart trued(Point point, Point upperEnd, Point lowerEnd, Cubic closedBelow) {
        Point fold = upperEnd.towards(lowerEnd, 0.5).minus(point).unit();
        double low = 0;
        double high = 1;
        if (above(closedBelow.end(), point, fold) > 0) {
            throw new InvalidMeasuresException(Violation.lengthAbove(
                    Dimension.ELBOW_DART,
                    "the seam below the elbow is too short to cover the folded dart",
                    upperEnd.distanceTo(lowerEnd),
                    closedBelow.start().distanceTo(closedBelow.end())));
        }
        for (int i = 0; i < 60; i++) {
            double middle = (low + high) / 2;
            if (above(closedBelow.pointAt(middle), point, fold) > 0) {
                low = middle;
            } else {
                high = middle;
            }
        }
        Cubic under = closedBelow.part(0, high);
        Cubic back = new Cubic(
                under.end(),
                mirrored(under.control2(), point, fold),
                mirrored(under.control1(), point, fold),
                lowerEnd);
        return new ElbowDart(point, upperEnd, lowerEnd, Curve.of(List.of(under, back)));
    }

    private static double above(Point place, Point point, Point fold) {
        return fold.cross(place.minus(point));
    }

    private static Point mirrored(Point place, Point point, Point fold) {
        return place.minus(fold.left().times(2 * above(place, point, fold)));
    }

    /**
     * Width of the open dart on the seam.
     *
     * @return millimetres, leg end to leg end
     */
    public double width() {
        return upperEnd.distanceTo(lowerEnd);
    }

    /**
     * Length of a leg.
     *
     * @return millimetres
     */
    public double length() {
        return point.distanceTo(upperEnd);
    }

    /**
     * Angle between the legs.
     *
     * @return radians, above 0
     */
    public double angle() {
        return 2 * Math.asin(width() / (2 * length()));
    }

    /**
     * The corner of the trued edge, where the intake is folded.
     *
     * @return a point on the line that halves the dart
     */
    public Point foldEnd() {
        return edge.segments().get(0).end();
    }
}
