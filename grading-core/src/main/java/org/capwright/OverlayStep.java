package org.capwright;

import java.util.Optional;
import java.util.function.UnaryOperator;
import org.capwright.draft.HemShape;
import org.capwright.draft.OverlayStyle;
import org.capwright.draft.pleat.FullnessTarget;
import org.capwright.measure.Dimension;

/**
 * The overlay of a style, in the unit of the style. Immutable: every call returns a new step. {@link Dimension} defines each dimension and its range; what lies outside is
 * refused when the style is graded. The rise is given, or follows from a fullness or from pleats of a given number and depth.
 *
 * <p>Every call throws {@link org.capwright.quantity.InvalidMeasuresException} for what is no finite number.
 */
public final class OverlayStep {

    private final Given given;
    private final OverlayStyle style;

    OverlayStep(Given given) {
        this(given, new OverlayStyle(HemShape.VEE, OverlayStyle.THIRD_DIVISION));
    }

    private OverlayStep(Given given, OverlayStyle style) {
        this.given = given;
        this.style = style;
    }

    private OverlayStep with(Dimension dimension, double value) {
        return new OverlayStep(given.with(dimension, value), style);
    }

    private OverlayStep hem(HemShape hem) {
        return new OverlayStep(given, new OverlayStyle(hem, style.join(), style.pleats(), style.target()));
    }

    /**
     * How far the apex is raised above that of the cap.
     *
     * @param value in the unit of the style, 0 to 800 mm
     * @return the next step
     */
    public OverlayStep rise(double value) {
        return with(Dimension.RISE, value);
    }

    /**
     * Flat top edge to the span it is sewn to, instead of a rise.
     *
     * @param ratio 1 or more
     * @return the next step
     */
    public OverlayStep fullness(double ratio) {
        return new OverlayStep(
                given,
                new OverlayStyle(
                        style.hem(), style.join(), style.pleats(), Optional.of(new FullnessTarget.Ratio(ratio))));
    }

    /**
     * Length from the apex of the cap, before the rise, down the fold to the hem.
     *
     * @param value in the unit of the style, 20 mm to 2000 mm
     * @return the next step
     */
    public OverlayStep length(double value) {
        return with(Dimension.OVERLAY_LENGTH, value);
    }

    /**
     * Armhole left free above the underarm point in front.
     *
     * @param value in the unit of the style, 0 to 700 mm
     * @return the next step
     */
    public OverlayStep frontGap(double value) {
        return with(Dimension.FRONT_GAP, value);
    }

    /**
     * Armhole left free above the underarm point behind.
     *
     * @param value in the unit of the style, 0 to 700 mm
     * @return the next step
     */
    public OverlayStep backGap(double value) {
        return with(Dimension.BACK_GAP, value);
    }

    /**
     * Width added to each half on the bicep line.
     *
     * @param value in the unit of the style, 0 to 600 mm
     * @return the next step
     */
    public OverlayStep extraWidth(double value) {
        return with(Dimension.EXTRA_WIDTH, value);
    }

    /**
     * How far the hem lies below the bicep line at the side.
     *
     * @param value in the unit of the style, 0 to 1500 mm
     * @return the next step
     */
    public OverlayStep sideDepth(double value) {
        return with(Dimension.SIDE_DEPTH, value);
    }

    /**
     * Where the raised line joins the cap line.
     *
     * @param share of the guide line from the apex; at most 1, {@value OverlayStyle#THIRD_DIVISION} if left out
     * @return the next step
     */
    public OverlayStep join(double share) {
        return new OverlayStep(given, new OverlayStyle(style.hem(), share, style.pleats(), style.target()));
    }

    /**
     * A hem straight from the hem point on the fold up to the side; so it is unless another is asked for.
     *
     * @return the next step
     */
    public OverlayStep veeHem() {
        return hem(HemShape.VEE);
    }

    /**
     * A hem bowed out from the straight line.
     *
     * @param sagitta how far in the middle, in the unit of the style, -400 mm to 400 mm; negative is hollow
     * @return the next step
     */
    public OverlayStep bowedHem(double sagitta) {
        return with(Dimension.HEM_SAGITTA, sagitta).hem(HemShape.BOWED);
    }

    /**
     * A hem square to the fold all along.
     *
     * @return the next step
     */
    public OverlayStep levelHem() {
        return hem(HemShape.LEVEL);
    }

    /**
     * Pleats along the top edge.
     *
     * @param pleats their number or depth, and how they lie
     * @return the next step
     */
    public OverlayStep pleats(UnaryOperator<PleatStep> pleats) {
        PleatStep last = pleats.apply(new PleatStep(given));
        Optional<FullnessTarget> target = style.target()
                .or(() -> last.given().dimensions().has(Dimension.RISE) ? Optional.empty() : last.target());
        return new OverlayStep(
                last.given(), new OverlayStyle(style.hem(), style.join(), Optional.of(last.plan()), target));
    }

    Given given() {
        return given;
    }

    OverlayStyle style() {
        return style;
    }
}
