package org.capwright.draft;

import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import org.capwright.measure.Dimension;
import org.capwright.measure.Dimensions;
import org.capwright.quantity.Violation;

/** The dimensions without which a style cannot be drafted. */
final class NeededDimensions {

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
        style.overlay().ifPresent(overlay -> {
            needed.addAll(
                    List.of(Dimension.ARMHOLE, Dimension.OVERLAY_LENGTH, Dimension.FRONT_GAP, Dimension.BACK_GAP));
            if (overlay.target().isEmpty()) {
                needed.add(Dimension.RISE);
            }
        });
        if (style.underSleeve().isPresent()) {
            needed.addAll(List.of(Dimension.LENGTH, Dimension.WRIST));
        }
        needed.removeAll(given.present());
        return needed.stream()
                .map(dimension -> Violation.of(dimension, "is missing; the style cannot be drafted without it"))
                .toList();
    }
}
