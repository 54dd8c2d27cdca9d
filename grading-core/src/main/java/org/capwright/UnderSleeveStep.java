package org.capwright;

import org.capwright.draft.ElbowShaping;
import org.capwright.draft.UnderSleeveStyle;
import org.capwright.measure.Dimension;

/**
 * The long under-sleeve of a style, in the unit of the style. Immutable: every call returns a new step. {@link Dimension} defines each dimension and its range; what
 * lies outside is refused when the style is graded.
 *
 * <p>Every call throws {@link org.capwright.quantity.InvalidMeasuresException} for what is no finite number.
 */
public final class UnderSleeveStep {

    private final Given given;
    private final ElbowShaping shaping;

    UnderSleeveStep(Given given, ElbowShaping shaping) {
        this.given = given;
        this.shaping = shaping;
    }

    private UnderSleeveStep with(Dimension dimension, double value) {
        return new UnderSleeveStep(given.with(dimension, value), shaping);
    }

    /**
     * Width at the elbow line; left out, the sides run straight to the wrist.
     *
     * @param value in the unit of the style, 40 mm to 1500 mm
     * @return the next step
     */
    public UnderSleeveStep elbow(double value) {
        return with(Dimension.ELBOW, value);
    }

    /**
     * Depth of the elbow line below the bicep line; left out, half way down.
     *
     * @param value in the unit of the style, 5 mm to 1500 mm
     * @return the next step
     */
    public UnderSleeveStep elbowLevel(double value) {
        return with(Dimension.ELBOW_LEVEL, value);
    }

    /**
     * Width at the lower edge.
     *
     * @param value in the unit of the style, 30 mm to 1500 mm
     * @return the next step
     */
    public UnderSleeveStep wrist(double value) {
        return with(Dimension.WRIST, value);
    }

    /**
     * Girth of the hand that the lower edge must let pass; an opening is marked where it does not.
     *
     * @param value in the unit of the style, 60 mm to 600 mm
     * @return the next step
     */
    public UnderSleeveStep handGirth(double value) {
        return with(Dimension.HAND_GIRTH, value);
    }

    /**
     * A dart at the elbow of usual size.
     *
     * @return the next step
     */
    public UnderSleeveStep elbowDart() {
        return new UnderSleeveStep(given, ElbowShaping.ELBOW_DART);
    }

    /**
     * A dart at the elbow.
     *
     * @param width across the open dart, in the unit of the style, 2 mm to 150 mm
     * @param length along a leg, in the unit of the style, 10 mm to 500 mm
     * @return the next step
     */
    public UnderSleeveStep elbowDart(double width, double length) {
        return with(Dimension.ELBOW_DART, width)
                .with(Dimension.ELBOW_DART_LENGTH, length)
                .elbowDart();
    }

    /**
     * A back seam eased to the front one at the elbow, by a usual length.
     *
     * @return the next step
     */
    public UnderSleeveStep easedSeam() {
        return new UnderSleeveStep(given, ElbowShaping.EASED_SEAM);
    }

    /**
     * A back seam eased to the front one at the elbow.
     *
     * @param ease by how much, in the unit of the style, 1 mm to 80 mm
     * @return the next step
     */
    public UnderSleeveStep easedSeam(double ease) {
        return with(Dimension.ELBOW_EASE, ease).easedSeam();
    }

    Given given() {
        return given;
    }

    UnderSleeveStyle style() {
        return new UnderSleeveStyle(shaping);
    }
}
