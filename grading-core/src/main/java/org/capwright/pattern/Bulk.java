package org.capwright.pattern;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.capwright.draft.pleat.PleatLayout;
import org.capwright.grade.GradedSize;

/**
 * How many layers lie on one another where the closed top edge of an overlay is thickest.
 *
 * @param size label of the size
 * @param main layers of main cloth
 * @param lining layers of lining
 * @param interfacing layers of interfacing: as many, or one where it is cut away between the folds
 * @param thickness all layers pressed on one another, mm; empty where a thickness is not known
 */
public record Bulk(String size, int main, int lining, int interfacing, OptionalDouble thickness) {

    /**
     * The bulk of every size with an overlay.
     *
     * @param set the pieces
     * @return one entry per size, none without an overlay
     */
    public static List<Bulk> of(PatternSet set) {
        Finishing finishing = set.finishing();
        List<Bulk> all = new ArrayList<>();
        for (GradedSize size : set.run().sizes()) {
            size.draft().overlay().ifPresent(overlay -> {
                int layers = overlay.pleats().map(PleatLayout::greatestLayers).orElse(1);
                int stiff = finishing.interfacing() == PleatInterfacing.CUT_AWAY ? 1 : layers;
                LayerThickness thick = finishing.thickness();
                boolean known = thick.main().isPresent()
                        && thick.lining().isPresent()
                        && thick.interfacing().isPresent();
                OptionalDouble sum = known
                        ? OptionalDouble.of(layers
                                        * (thick.main().getAsDouble()
                                                + thick.lining().getAsDouble())
                                + stiff * thick.interfacing().getAsDouble())
                        : OptionalDouble.empty();
                all.add(new Bulk(size.label(), layers, layers, stiff, sum));
            });
        }
        return List.copyOf(all);
    }
}
