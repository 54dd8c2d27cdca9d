package org.capwright;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.capwright.draft.CapEase;
import org.capwright.draft.CapFit;
import org.capwright.measure.Dimension;
import org.capwright.measure.SleeveSubject.Option;
import org.capwright.quantity.InvalidMeasuresException;
import org.capwright.quantity.Subject;
import org.capwright.quantity.Violation;
import org.capwright.words.Text;

/**
 * The sleeve of a style, dimension by dimension, in the unit of the style. Immutable: every call returns a new step. {@link Dimension} defines each dimension and its
 * range; what lies outside is refused when the style is graded. Two of bicep, cap height and cap ease are given, the third follows.
 *
 * <p>Every call throws {@link InvalidMeasuresException} for what is no finite number.
 */
public final class SleeveStep {

    private final Given given;
    private final Optional<CapEase> whole;
    private final Optional<CapEase> front;
    private final Optional<CapEase> back;

    SleeveStep(Given given) {
        this(given, Optional.empty(), Optional.empty(), Optional.empty());
    }

    private SleeveStep(Given given, Optional<CapEase> whole, Optional<CapEase> front, Optional<CapEase> back) {
        this.given = given;
        this.whole = whole;
        this.front = front;
        this.back = back;
    }

    /**
     * Any dimension of the sleeve, its front or its back half.
     *
     * @param dimension which
     * @param value in the unit of the style
     * @return the next step
     */
    public SleeveStep with(Dimension dimension, double value) {
        return new SleeveStep(given.with(dimension, value), whole, front, back);
    }

    /**
     * Width on the bicep line, both halves.
     *
     * @param value in the unit of the style, 60 mm to 1500 mm
     * @return the next step
     */
    public SleeveStep bicep(double value) {
        return with(Dimension.BICEP, value);
    }

    /**
     * Length of the under-sleeve from the apex to the wrist.
     *
     * @param value in the unit of the style, 20 mm to 2000 mm
     * @return the next step
     */
    public SleeveStep length(double value) {
        return with(Dimension.LENGTH, value);
    }

    /**
     * Height of the cap above the bicep line.
     *
     * @param value in the unit of the style, 10 mm to 500 mm
     * @return the next step
     */
    public SleeveStep capHeight(double value) {
        return with(Dimension.CAP_HEIGHT, value);
    }

    /**
     * How far the cap line stands outward at the first quarter of the slanted line; left out, half of what the cap can take.
     *
     * @param value in the unit of the style, 0.5 mm to 200 mm
     * @return the next step
     */
    public SleeveStep capOutward(double value) {
        return with(Dimension.CAP_OUTWARD, value);
    }

    /**
     * How far the cap line is scooped inward at the third quarter of the slanted line; left out, about a third of what the cap can take.
     *
     * @param value in the unit of the style, 0.5 mm to 200 mm
     * @return the next step
     */
    public SleeveStep capInward(double value) {
        return with(Dimension.CAP_INWARD, value);
    }

    /**
     * Length of the whole armhole seam of the body.
     *
     * @param value in the unit of the style, 80 mm to 1500 mm
     * @return the next step
     */
    public SleeveStep armhole(double value) {
        return with(Dimension.ARMHOLE, value);
    }

    /**
     * Ease of the cap line over the whole armhole, instead of bicep or cap height.
     *
     * @param value in the unit of the style; negative where the cap is stretched into the armhole
     * @return the next step
     */
    public SleeveStep capEase(double value) {
        return new SleeveStep(
                given, Optional.of(new CapEase.Length(given.length(Option.CAP_EASE, value))), front, back);
    }

    /**
     * Ease of the cap line as a share of the whole armhole, instead of bicep or cap height.
     *
     * @param share for example 0.04 for four percent; -0.3 to 0.5
     * @return the next step
     */
    public SleeveStep capEaseShare(double share) {
        return new SleeveStep(given, Optional.of(share(Option.CAP_EASE, share)), front, back);
    }

    /**
     * Ease of front and back as shares of their armholes. Cap height and front width follow.
     *
     * @param ofFront share of the front armhole, -0.3 to 0.5
     * @param ofBack share of the back armhole, -0.3 to 0.5
     * @return the next step
     */
    public SleeveStep capEaseShares(double ofFront, double ofBack) {
        return new SleeveStep(
                given,
                whole,
                Optional.of(share(Option.FRONT_CAP_EASE, ofFront)),
                Optional.of(share(Option.BACK_CAP_EASE, ofBack)));
    }

    private static CapEase share(Subject subject, double share) {
        if (!(share >= CapEase.LEAST_SHARE && share <= CapEase.GREATEST_SHARE)) {
            throw new InvalidMeasuresException(Violation.of(
                    subject,
                    Text.of("is {share}; a share of the armhole lies between {least} and {greatest}")
                            .with("share", Text.figures(String.valueOf(share)))
                            .with("least", Text.figures(String.valueOf(CapEase.LEAST_SHARE)))
                            .with("greatest", Text.figures(String.valueOf(CapEase.GREATEST_SHARE)))));
        }
        return new CapEase.Share(share);
    }

    Given given() {
        return given;
    }

    /** What follows from what. */
    CapFit fit() {
        List<Violation> found = new ArrayList<>();
        boolean bicep = given.dimensions().has(Dimension.BICEP);
        boolean height = given.dimensions().has(Dimension.CAP_HEIGHT);
        if (whole.isPresent() && front.isPresent()) {
            found.add(Violation.of(
                    Option.CAP_EASE, "contradicts the eases of front and back; give either one or the other"));
        }
        if (front.isPresent() && height) {
            found.add(Violation.of(Dimension.CAP_HEIGHT, "follows from the eases of front and back; leave it out"));
        }
        if (front.isPresent() && given.dimensions().has(Dimension.FRONT_WIDTH)) {
            found.add(Violation.of(Dimension.FRONT_WIDTH, "follows from the eases of front and back; leave it out"));
        }
        if (whole.isPresent() && bicep && height) {
            found.add(Violation.of(Option.CAP_EASE, "follows from bicep and capHeight; leave out one of the three"));
        }
        if (!found.isEmpty()) {
            throw new InvalidMeasuresException(found);
        }
        if (front.isPresent()) {
            return new CapFit.HalvesFor(front.get(), back.orElseThrow());
        }
        return whole.<CapFit>map(ease -> height ? new CapFit.BicepFor(ease) : new CapFit.CapHeightFor(ease))
                .orElse(new CapFit.Given());
    }
}
