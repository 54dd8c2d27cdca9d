package org.capwright.draft;

import java.util.ArrayList;
import java.util.List;
import org.capwright.geometry.Curve;
import org.capwright.geometry.Point;
import org.capwright.geometry.Spline;
import org.capwright.measure.Dimension;
import org.capwright.measure.Dimensions;
import org.capwright.measure.InvalidMeasuresException;
import org.capwright.measure.Violation;

/**
 * The long under-sleeve that is set into the whole armhole. Both halves taper by the same amount, so that the two edges of the underarm seam are equal.
 * Each half is drawn to the right of the centre line. Guaranteed to be immutable.
 *
 * @param base cap and bicep line
 * @param frontSide from the front underarm point down to the wrist
 * @param backSide from the back underarm point down to the wrist; the same object where the halves are equal
 * @param elbowLevel depth of the elbow line below the bicep line, mm
 * @param wristLevel depth of the wrist line below the bicep line, mm
 */
public record UnderSleeve(BaseSleeve base, Curve frontSide, Curve backSide, double elbowLevel, double wristLevel) {

    /**
     * Drafts the under-sleeve below a base sleeve.
     *
     * @param base the base sleeve of the same dimensions
     * @param dimensions with length and wrist; elbow and its level where given (else the sides run straight, the elbow half way down: Santa Rosa Junior
     *     College, Sleeve Fundamentals)
     * @return the under-sleeve
     * @throws InvalidMeasuresException if the widths or levels contradict each other
     */
    public static UnderSleeve draft(BaseSleeve base, Dimensions dimensions) {
        double wristLevel = dimensions.get(Dimension.LENGTH) - base.capHeight();
        double wrist = dimensions.get(Dimension.WRIST);
        List<Violation> found = new ArrayList<>();
        if (wristLevel < 2 * Dimension.ELBOW_LEVEL.least()) {
            found.add(Violation.lengthBelow(
                    Dimension.LENGTH.pointer(),
                    "the wrist must lie below the bicep line",
                    dimensions.get(Dimension.LENGTH),
                    base.capHeight() + 2 * Dimension.ELBOW_LEVEL.least()));
            throw new InvalidMeasuresException(found);
        }
        double elbowLevel = dimensions.getOr(Dimension.ELBOW_LEVEL, wristLevel / 2);
        if (elbowLevel >= wristLevel) {
            found.add(Violation.lengthAbove(
                    Dimension.ELBOW_LEVEL.pointer(),
                    "the elbow line must lie above the wrist line",
                    elbowLevel,
                    wristLevel - Dimension.ELBOW_LEVEL.least()));
            throw new InvalidMeasuresException(found);
        }
        double straight = base.bicep() + (wrist - base.bicep()) * elbowLevel / wristLevel;
        double elbow = dimensions.getOr(Dimension.ELBOW, straight);
        if (wrist > elbow) {
            found.add(Violation.lengthAbove(
                    Dimension.WRIST.pointer(), "the wrist cannot be wider than the elbow", wrist, elbow));
        }
        double narrow = Math.abs(base.front().width() - base.back().width());
        if (wrist <= narrow) {
            found.add(Violation.lengthBelow(
                    Dimension.WRIST.pointer(), "one half would have no width at the wrist", wrist, narrow + 1));
        }
        if (!found.isEmpty()) {
            throw new InvalidMeasuresException(found);
        }
        double skew = (base.front().width() - base.back().width()) / 2;
        Curve front = side(base.front().width(), elbow / 2 + skew, wrist / 2 + skew, elbowLevel, wristLevel);
        Curve back = base.symmetrical()
                ? front
                : side(base.back().width(), elbow / 2 - skew, wrist / 2 - skew, elbowLevel, wristLevel);
        return new UnderSleeve(base, front, back, elbowLevel, wristLevel);
    }

    private static Curve side(double bicep, double elbow, double wrist, double elbowLevel, double wristLevel) {
        Point underarm = new Point(bicep, 0);
        Point atElbow = new Point(elbow, -elbowLevel);
        Point atWrist = new Point(wrist, -wristLevel);
        Point upper = atElbow.minus(underarm);
        Point lower = atWrist.minus(atElbow);
        return Math.abs(upper.unit().cross(lower.unit())) < 1e-9
                ? Curve.polyline(List.of(underarm, atElbow, atWrist))
                : Spline.through(List.of(underarm, atElbow, atWrist), upper, lower);
    }

    /**
     * Width at the elbow line.
     *
     * @return millimetres
     */
    public double elbow() {
        return frontSide.segments().get(0).end().x()
                + backSide.segments().get(0).end().x();
    }

    /**
     * Width at the wrist line.
     *
     * @return millimetres
     */
    public double wrist() {
        return frontSide.end().x() + backSide.end().x();
    }

    /**
     * Length from the apex down the centre line.
     *
     * @return millimetres
     */
    public double length() {
        return base.capHeight() + wristLevel;
    }
}
