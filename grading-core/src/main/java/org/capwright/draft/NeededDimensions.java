package org.capwright.draft;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import org.capwright.measure.Dimension;
import org.capwright.measure.Dimensions;
import org.capwright.quantity.Violation;

/** The dimensions without which a style cannot be drafted. */
final class NeededDimensions {

    private static final Set<Dimension> OF_OVERLAY =
            EnumSet.of(Dimension.ARMHOLE, Dimension.OVERLAY_LENGTH, Dimension.FRONT_GAP, Dimension.BACK_GAP);

    private static final Set<Dimension> OF_UNDER_SLEEVE = EnumSet.of(Dimension.LENGTH, Dimension.WRIST);

    private NeededDimensions() {}

    static List<Violation> missing(SleeveStyle style, Dimensions given) {
        Set<Dimension> needed = EnumSet.noneOf(Dimension.class);
        if (!(style.fit() instanceof CapFit.BicepFor)) {
            needed.add(Dimension.BICEP);
        }
        if (style.fit() instanceof CapFit.Given || style.fit() instanceof CapFit.BicepFor) {
            needed.add(Dimension.CAP_HEIGHT);
        }
        if (!(style.fit() instanceof CapFit.Given)) {
            needed.add(Dimension.ARMHOLE);
        }
        if (style.overlay().isPresent()) {
            needed.addAll(OF_OVERLAY);
            if (style.overlay().get().target().isEmpty()) {
                needed.add(Dimension.RISE);
            }
        }
        if (style.underSleeve().isPresent()) {
            needed.addAll(OF_UNDER_SLEEVE);
        }
        List<Violation> missing = new ArrayList<>();
        for (Dimension dimension : needed) {
            if (!given.has(dimension)) {
                missing.add(Violation.of(dimension, "is missing; the style cannot be drafted without it"));
            }
        }
        return missing;
    }
}
