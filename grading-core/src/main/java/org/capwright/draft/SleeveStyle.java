package org.capwright.draft;

import java.util.Optional;

/**
 * What is settled about a style apart from its dimensions, the same in every size. Guaranteed to be immutable.
 *
 * @param fit which of bicep, cap height and ease follows
 * @param overlay the overlay, if the style has one
 * @param underSleeve the long under-sleeve, if the style has one
 */
public record SleeveStyle(CapFit fit, Optional<OverlayStyle> overlay, Optional<UnderSleeveStyle> underSleeve) {}
