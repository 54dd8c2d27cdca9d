package org.capwright.draft;

import java.util.Optional;
import org.capwright.geometry.Curve;
import org.capwright.geometry.Point;
import org.capwright.measure.Dimension;
import org.capwright.measure.Dimensions;
import org.capwright.quantity.InvalidMeasuresException;
import org.capwright.quantity.Violation;

/**
 * The long under-sleeve that is set into the whole armhole. Both halves taper by the same amount; below the elbow the sleeve runs straight on, or is turned forward, to the
 * front, so that it bends with the arm. The two edges of the underarm seam are equal but for the ease of {@link #easing()}; a dart is not counted. Front lines are drawn
 * to the right, mirrored: in the piece the front lies at negative x. Guaranteed to be immutable.
 *
 * @param base cap and bicep line
 * @param frontSide from the front underarm point down to the wrist, mirrored to the right; its first segment ends at the elbow
 * @param backSide from the back underarm point down to the wrist, with the trued edge of the dart between its legs; its first segment ends at the elbow line; the same
 *     object as {@code frontSide} where the halves are equal
 * @param centreLine from the apex down to the wrist line, with a joint at the elbow line where the sleeve is turned; its length is the sleeve's
 * @param elbowLevel depth of the elbow line below the bicep line, mm
 * @param wristLevel depth of the wrist line below the bicep line along the centre line, mm
 * @param dart the elbow dart, if there is one
 * @param easing the stretch over which the back seam is eased to the front one, if it is longer
 * @param opening the opening that the hand needs, if the wrist is too narrow for it
 */
public record UnderSleeve(
        BaseSleeve base,
        Curve frontSide,
        Curve backSide,
        Curve centreLine,
        double elbowLevel,
        double wristLevel,
        Optional<ElbowDart> dart,
        Optional<SeamEasing> easing,
        Optional<WristOpening> opening) {

    /**
     * Drafts the under-sleeve below a base sleeve.
     *
     * @param base the base sleeve of the same dimensions
     * @param dimensions with length and wrist; elbow and its level where given (else the sides run straight, the elbow half way down: Santa Rosa Junior
     *     College, Sleeve Fundamentals); width and length of the dart or ease of the seam where given; girth of the hand where given
     * @param style how it is shaped
     * @return the under-sleeve
     * @throws InvalidMeasuresException if the widths or levels contradict each other, a dart or ease is wider than the elbow can take, or an opening for the hand would
     *     reach above the elbow; with what would work
     */
    public static UnderSleeve draft(BaseSleeve base, Dimensions dimensions, UnderSleeveStyle style) {
        UnderSleeveMeasures measures = UnderSleeveMeasures.of(base, dimensions, style.shaping());
        Optional<WristOpening> opening = WristOpening.of(dimensions);
        UnderSleeve under = UnderSleeveLines.of(base, measures, style.shaping()).under(opening);
        opening.filter(o -> o.basis() == WristOpening.Basis.GIVEN && o.length() > under.seamBelowElbow())
                .ifPresent(o -> {
                    throw new InvalidMeasuresException(Violation.lengthAbove(
                            Dimension.HAND_GIRTH,
                            "the opening that the hand needs would reach up to the elbow: widen the wrist",
                            o.handGirth(),
                            Math.max(o.wrist(), o.wrist() + 2 * (under.seamBelowElbow() - WristOpening.EASE))));
                });
        return under;
    }

    /**
     * Whether front and back are the same, so that the piece can be cut on the fold.
     *
     * @return true for equal halves that are not turned at the elbow
     */
    public boolean symmetrical() {
        return frontSide == backSide;
    }

    /**
     * The front end of the elbow line.
     *
     * @return a point of {@link #frontSide()}, at positive x as that is
     */
    public Point frontElbow() {
        return frontSide.segments().get(0).end();
    }

    /**
     * The back end of the elbow line.
     *
     * @return a point of {@link #backSide()}; the end of the upper leg where there is a dart
     */
    public Point backElbow() {
        return backSide.segments().get(0).end();
    }

    /**
     * Width at the elbow line, straight across from seam to seam.
     *
     * @return millimetres
     */
    public double elbow() {
        return frontElbow().mirrored().distanceTo(backElbow());
    }

    /**
     * Width at the wrist line.
     *
     * @return millimetres
     */
    public double wrist() {
        return frontSide.end().mirrored().distanceTo(backSide.end());
    }

    /**
     * Length from the apex down the centre line.
     *
     * @return millimetres
     */
    public double length() {
        return base.capHeight() + wristLevel;
    }

    /**
     * Length of the front underarm seam.
     *
     * @return millimetres
     */
    public double frontSeam() {
        return frontSide.length();
    }

    /**
     * Length of the back underarm seam with the dart closed.
     *
     * @return millimetres
     */
    public double backSeam() {
        return backSide.length() - dart.map(d -> d.edge().length()).orElse(0.0);
    }

    /**
     * The back seam above the elbow line: down to the dart where there is one.
     *
     * @return from the underarm point down
     */
    public Curve backAboveElbow() {
        return Curve.of(backSide.segments().subList(0, 1));
    }

    /**
     * The back seam below the elbow line: from the dart down where there is one.
     *
     * @return down to the wrist
     */
    public Curve backBelowElbow() {
        int segments = backSide.segments().size();
        return Curve.of(backSide.segments().subList(segments - 1, segments));
    }

    /** The length of the seam below dart or easing, where an opening has room. */
    private double seamBelowElbow() {
        return frontSeam()
                - easing.map(SeamEasing::frontTo)
                        .orElseGet(() -> frontSide.segments().get(0).length());
    }
}
