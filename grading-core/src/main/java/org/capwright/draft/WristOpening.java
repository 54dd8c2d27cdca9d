package org.capwright.draft;

import java.util.Optional;
import java.util.OptionalDouble;
import org.capwright.measure.Dimension;
import org.capwright.measure.Dimensions;

/**
 * An opening of the underarm seam from the lower edge up, without which the hand does not pass the wrist of an under-sleeve. Guaranteed to be immutable.
 *
 * @param basis where the girth of the hand comes from
 * @param handGirth girth that must pass, mm
 * @param wrist width of the lower edge all round, mm, below the girth of the hand
 * @param length least length of the opening along the seam, mm: its two edges make up for what the wrist lacks, and {@link #EASE} more
 */
public record WristOpening(Basis basis, double handGirth, double wrist, double length) {

    /** What an opening is longer than the bare sum asks, mm, for its upper end does not open. Common practice, no source. */
    public static final double EASE = 10;

    /** A wrist narrower than this is said to need an opening where the girth of the hand is not known, mm. Common practice, no source. */
    public static final double USUAL_HAND = 200;

    /** Where the girth of the hand comes from. */
    public enum Basis {
        /** It is given: the opening is marked on the piece. */
        GIVEN,
        /** It is taken as {@link WristOpening#USUAL_HAND}: a warning alone, nothing is marked. */
        USUAL
    }

    static Optional<WristOpening> of(Dimensions dimensions) {
        OptionalDouble given = dimensions.find(Dimension.HAND_GIRTH);
        double hand = given.orElse(USUAL_HAND);
        double wrist = dimensions.get(Dimension.WRIST);
        return wrist < hand
                ? Optional.of(new WristOpening(
                        given.isPresent() ? Basis.GIVEN : Basis.USUAL, hand, wrist, (hand - wrist) / 2 + EASE))
                : Optional.empty();
    }
}
