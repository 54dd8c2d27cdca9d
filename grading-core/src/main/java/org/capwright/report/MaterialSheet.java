package org.capwright.report;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.capwright.lay.Fabric;
import org.capwright.lay.MaterialNeed;
import org.capwright.lay.Materials;
import org.capwright.lay.TrimmingNeed;
import org.capwright.pattern.PatternSet;
import org.capwright.quantity.Unit;
import org.capwright.words.Language;
import org.capwright.words.Text;

/** What to buy, as bands: a line per cloth with the length for each size, and how the pieces of the base size, or of the order, lie on it. */
final class MaterialSheet {

    private static final double[] COLUMNS = {0, 0.45};

    private final Materials materials;
    private final String base;
    private final Unit unit;
    private final Language language;
    private final double width;

    private MaterialSheet(Materials materials, String base, PatternSet.Title title, double width) {
        this.materials = materials;
        this.base = base;
        unit = title.unit();
        language = title.language();
        this.width = width;
    }

    static List<Band> bands(Materials materials, String base, PatternSet.Title title, double width) {
        return new MaterialSheet(materials, base, title, width).bands();
    }

    private List<Band> bands() {
        List<Band> bands = new ArrayList<>();
        if (materials.cloths().isEmpty() && materials.trimmings().isEmpty()) {
            return bands;
        }
        boolean order = materials.cloths().stream().anyMatch(need -> whole(need.pairs()))
                || materials.trimmings().stream().anyMatch(need -> whole(need.pairs()));
        bands.add(TextBands.heading(Text.of(
                        order
                                ? "To buy for the whole order, {unit}"
                                : "To buy for one pair of sleeves in each size, {unit}")
                .with("unit", unit.symbol())
                .in(language)));
        Map<Fabric, List<String>> cloths = new LinkedHashMap<>();
        for (MaterialNeed need : materials.cloths()) {
            cloths.computeIfAbsent(need.lay().fabric(), fabric -> new ArrayList<>())
                    .add(bought(need.pairs(), need.lay().purchase().length()));
        }
        cloths.forEach((fabric, lengths) -> bands.add(row(fabric.words(unit).in(language), lengths)));
        if (!materials.trimmings().isEmpty()) {
            List<String> lengths = new ArrayList<>();
            for (TrimmingNeed need : materials.trimmings()) {
                lengths.add(bought(need.pairs(), need.length()));
            }
            bands.add(row(language.say("Trimming along hem and attached edge"), lengths));
        }
        for (MaterialNeed need : materials.cloths()) {
            if (whole(need.pairs()) || need.pairs().containsKey(base)) {
                bands.add(LayPicture.band(need.lay(), unit, language, width));
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
        return Text.of("{sizes}:\u00a0{length}")
                .with("sizes", Text.names(sizes))
                .with("length", Text.figures(unit.format(length)))
                .in(language);
    }

    private Band row(String words, List<String> lengths) {
        return TextBands.row(TextBands.BODY, width, COLUMNS, words, String.join(" · ", lengths));
    }
}
