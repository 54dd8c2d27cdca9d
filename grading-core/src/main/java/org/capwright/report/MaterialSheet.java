package org.capwright.report;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.capwright.lay.Fabric;
import org.capwright.lay.MaterialNeed;
import org.capwright.lay.Materials;
import org.capwright.lay.TrimmingNeed;
import org.capwright.quantity.Unit;

/** What to buy, as bands: a line per cloth with the length for each size, and how the pieces of the base size, or of the order, lie on it. */
final class MaterialSheet {

    private static final double[] COLUMNS = {0, 0.45};

    private final Materials materials;
    private final String base;
    private final Unit unit;
    private final double width;

    private MaterialSheet(Materials materials, String base, Unit unit, double width) {
        this.materials = materials;
        this.base = base;
        this.unit = unit;
        this.width = width;
    }

    static List<Band> bands(Materials materials, String base, Unit unit, double width) {
        return new MaterialSheet(materials, base, unit, width).bands();
    }

    private List<Band> bands() {
        List<Band> bands = new ArrayList<>();
        if (materials.cloths().isEmpty() && materials.trimmings().isEmpty()) {
            return bands;
        }
        boolean order = materials.cloths().stream().anyMatch(need -> whole(need.pairs()))
                || materials.trimmings().stream().anyMatch(need -> whole(need.pairs()));
        bands.add(TextBands.heading(
                order
                        ? "To buy for the whole order, " + unit.symbol()
                        : "To buy for one pair of sleeves in each size, " + unit.symbol()));
        Map<Fabric, List<String>> cloths = new LinkedHashMap<>();
        for (MaterialNeed need : materials.cloths()) {
            cloths.computeIfAbsent(need.lay().fabric(), fabric -> new ArrayList<>())
                    .add(bought(need.pairs(), need.lay().purchase().length()));
        }
        cloths.forEach((fabric, lengths) -> bands.add(row(fabric.words(unit), lengths)));
        if (!materials.trimmings().isEmpty()) {
            List<String> lengths = new ArrayList<>();
            for (TrimmingNeed need : materials.trimmings()) {
                lengths.add(bought(need.pairs(), need.length()));
            }
            bands.add(row("Trimming along hem and attached edge", lengths));
        }
        for (MaterialNeed need : materials.cloths()) {
            if (whole(need.pairs()) || need.pairs().containsKey(base)) {
                bands.add(LayPicture.band(need.lay(), unit, width));
            }
        }
        bands.add(TextBands.space());
        return bands;
    }

    /** Needs of one size are for a single pair; all else is an order. */
    private static boolean whole(Map<String, Integer> pairs) {
        return pairs.size() != 1 || !pairs.containsValue(1);
    }

    private String bought(Map<String, Integer> pairs, double length) {
        List<String> sizes = new ArrayList<>();
        pairs.forEach((size, count) -> sizes.add(whole(pairs) ? count + " × " + size : size));
        return String.join(", ", sizes) + ":\u00a0" + unit.format(length);
    }

    private Band row(String words, List<String> lengths) {
        return TextBands.row(TextBands.BODY, width, COLUMNS, words, String.join(" · ", lengths));
    }
}
