package org.capwright.draft;

import java.util.Optional;
import org.capwright.draft.pleat.PleatPlan;
import org.capwright.draft.pleat.PleatSizing;

/**
 * What is settled about a style apart from its dimensions, the same in every size. Guaranteed to be immutable.
 *
 * @param fit which of bicep, cap height and ease follows
 * @param overlay the overlay, if the style has one
 * @param underSleeve the long under-sleeve, if the style has one
 */
public record SleeveStyle(CapFit fit, Optional<OverlayStyle> overlay, Optional<UnderSleeveStyle> underSleeve) {

    /**
     * The same style with its pleats given by their number.
     *
     * @param number how many over both halves; without use where there are none
     * @return a style whose pleats have the depth that follows
     */
    public SleeveStyle counted(int number) {
        return new SleeveStyle(
                fit,
                overlay.map(given -> given.pleats()
                        .map(plan -> given.pleated(new PleatPlan(
                                plan.kind(),
                                plan.direction(),
                                new PleatSizing.ByCount(number),
                                plan.flatZoneFront(),
                                plan.flatZoneBack())))
                        .orElse(given)),
                underSleeve);
    }
}
