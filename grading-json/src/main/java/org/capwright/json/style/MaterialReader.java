package org.capwright.json.style;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.capwright.json.problem.FoundViolations;
import org.capwright.json.problem.RequestField;
import org.capwright.json.schema.RequestObject;
import org.capwright.lay.Fabric;
import org.capwright.lay.LayEffort;
import org.capwright.lay.Trimming;
import org.capwright.pattern.Material;
import org.capwright.quantity.InvalidMeasuresException;
import org.capwright.quantity.Quantity;
import org.capwright.quantity.Violation;

/** Reads the field {@code materials}. */
public final class MaterialReader {

    private MaterialReader() {}

    /**
     * Reads what is to be reckoned.
     *
     * @param materials the field
     * @param sizes names of the sizes of the run
     * @param found gathers what is wrong
     * @return what is to be reckoned, of what is right
     */
    public static MaterialRequest read(RequestObject materials, List<String> sizes, FoundViolations found) {
        List<Fabric> fabrics = new ArrayList<>();
        for (RequestObject fabric : materials.objects("fabrics")) {
            fabric(fabric, found).ifPresent(fabrics::add);
        }
        Map<String, Integer> pairs = materials.perSize("order", sizes);
        int together = pairs.values().stream().mapToInt(count -> count).sum();
        if (!pairs.isEmpty() && (together == 0 || together > MaterialSchema.MOST_PAIRS)) {
            found.add(Violation.outside(
                    new RequestField(materials.at("order")),
                    "pairs of sleeves in all; more are cut in several layers or orders",
                    Quantity.COUNT,
                    together,
                    1,
                    MaterialSchema.MOST_PAIRS));
        }
        Trimming trimming = materials
                .object("trimming")
                .map(given -> new Trimming(
                        given.ratio("waste").orElse(Trimming.USUAL.waste()),
                        given.length("step").orElse(Trimming.USUAL.step())))
                .orElse(Trimming.USUAL);
        LayEffort effort = materials
                .choice("effort")
                .map(word -> LayEffort.valueOf(word.toUpperCase(Locale.ROOT)))
                .orElse(LayEffort.USUAL);
        return new MaterialRequest(List.copyOf(fabrics), trimming, pairs, effort);
    }

    private static Optional<Fabric> fabric(RequestObject fabric, FoundViolations found) {
        Optional<Material> material =
                fabric.choice("material").map(word -> Material.valueOf(word.toUpperCase(Locale.ROOT)));
        double width = fabric.length("width").orElse(Double.NaN);
        Fabric.Laying laying =
                fabric.choice("laying").filter("open"::equals).isPresent() ? Fabric.Laying.OPEN : Fabric.Laying.FOLDED;
        Fabric.Nap nap = fabric.choice("nap").filter("with"::equals).isPresent() ? Fabric.Nap.WITH : Fabric.Nap.WITHOUT;
        double lengthwise = fabric.ratio("shrinkageLengthwise").orElse(0);
        double crosswise = fabric.ratio("shrinkageCrosswise").orElse(0);
        double waste = fabric.ratio("waste").orElse(0);
        double selvedge = fabric.length("selvedge").orElse(Fabric.USUAL_SELVEDGE);
        double gap = fabric.length("gap").orElse(Fabric.USUAL_GAP);
        double step = fabric.length("step").orElse(Fabric.USUAL_STEP);
        if (material.isEmpty() || Double.isNaN(width)) {
            return Optional.empty();
        }
        try {
            return Optional.of(
                    new Fabric(material.get(), width, laying, nap, lengthwise, crosswise, waste, selvedge, gap, step));
        } catch (InvalidMeasuresException e) {
            e.violations()
                    .forEach(violation ->
                            found.add(violation, fabric.at(violation.subject().code())));
            return Optional.empty();
        }
    }
}
