package org.capwright.draft;

import java.util.Optional;
import org.capwright.draft.pleat.FullnessTarget;
import org.capwright.draft.pleat.PleatPlan;

/**
 * What is settled about an overlay apart from its dimensions.
 *
 * @param hem shape of the lower edge
 * @param join where the raised line joins the cap line, as a share of the guide line from the apex: below the turn of the cap line, at most 1; 0.75 is the
 *     third division
 * @param pleats how the top edge is pleated; nothing where it is left to be gathered or eased
 * @param target what the rise must give, where the rise is not a given dimension but follows
 */
public record OverlayStyle(HemShape hem, double join, Optional<PleatPlan> pleats, Optional<FullnessTarget> target) {

    /** The place where the raised line joins the cap line unless another is asked for: the third division. */
    public static final double THIRD_DIVISION = 0.75;

    /**
     * An overlay of given rise, without pleats.
     *
     * @param hem shape of the lower edge
     * @param join where the raised line joins the cap line
     */
    public OverlayStyle(HemShape hem, double join) {
        this(hem, join, Optional.empty(), Optional.empty());
    }

    /**
     * The same overlay with its top edge pleated.
     *
     * @param plan the pleats
     * @return the style
     */
    public OverlayStyle pleated(PleatPlan plan) {
        return new OverlayStyle(hem, join, Optional.of(plan), target);
    }
}
