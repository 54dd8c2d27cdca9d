package org.capwright.draft;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.capwright.measure.Dimension;
import org.capwright.measure.Dimensions;
import org.capwright.quantity.InvalidMeasuresException;
import org.capwright.quantity.Violation;

/**
 * The draft of one size of a style. Guaranteed to be immutable.
 *
 * @param dimensions the dimensions it was drafted from, with those filled in that follow from the fit
 * @param base the base sleeve
 * @param overlay the overlay, if the style has one
 * @param underSleeve the under-sleeve, if the style has one
 */
public record SleeveDraft(
        Dimensions dimensions, BaseSleeve base, Optional<Overlay> overlay, Optional<UnderSleeve> underSleeve) {

    /**
     * Drafts one size.
     *
     * @param style what is the same in every size
     * @param given the dimensions of this size
     * @return the draft
     * @throws InvalidMeasuresException if no sleeve can be drafted, with everything found wrong and what would work
     */
    public static SleeveDraft of(SleeveStyle style, Dimensions given) {
        List<Violation> wrong = NeededDimensions.missing(style, given);
        wrong.addAll(BaseSleeve.outOfPlausibleRange(given));
        if (!wrong.isEmpty()) {
            throw new InvalidMeasuresException(wrong);
        }
        Dimensions fitted = CapFitting.fitted(given, style.fit());
        BaseSleeve base = BaseSleeve.draft(fitted);
        Dimensions dimensions = style.overlay().isPresent()
                ? Overlay.withRise(base, fitted, style.overlay().get())
                : fitted;
        return new SleeveDraft(
                dimensions,
                base,
                style.overlay().map(overlay -> Overlay.draft(base, dimensions, overlay)),
                style.underSleeve().map(under -> UnderSleeve.draft(base, dimensions, under)));
    }

    /**
     * Cap line length less armhole length.
     *
     * @return millimetres, or nothing where no armhole is given
     */
    public OptionalDouble capEase() {
        OptionalDouble armhole = dimensions.find(Dimension.ARMHOLE);
        return armhole.isPresent()
                ? OptionalDouble.of(base.capLength() - armhole.getAsDouble())
                : OptionalDouble.empty();
    }
}
