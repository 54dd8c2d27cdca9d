package org.capwright.service.sizerun;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.capwright.draft.Overlay;
import org.capwright.draft.SleeveDraft;
import org.capwright.draft.pleat.PleatLayout;

/** What is worth a look in a run before it is cut. */
final class Findings {

    private static final String PRACTICE = "common practice, no source";

    /** Less surplus than this is eased in without a word, mm. */
    private static final double NO_SURPLUS = 0.5;

    private Findings() {}

    static List<Finding> of(SizeRunResult result) {
        List<Finding> findings = new ArrayList<>();
        Shown shown = new Shown(result.order().unit());
        for (int i = 0; i < result.run().sizes().size(); i++) {
            String size = result.run().sizes().get(i).label();
            SleeveDraft draft = result.run().sizes().get(i).draft();
            draft.overlay().ifPresent(overlay -> addOverlay(findings, size, overlay, shown));
            double ease = draft.capEase().orElse(0);
            if (ease < 0) {
                findings.add(length(
                        "warning",
                        List.of(size),
                        "capEase",
                        shown.length(ease),
                        0,
                        shown,
                        "The cap line is shorter than the armhole: the sleeve cannot be set in without stretching it. Give a"
                                + " higher cap, a wider bicep, or a capEase to fit the cap to."));
            }
        }
        result.order().sizeTable().ifPresent(table -> findings.addAll(JumpFindings.of(result.run(), table, shown)));
        return List.copyOf(findings);
    }

    private static void addOverlay(List<Finding> findings, String size, Overlay overlay, Shown shown) {
        if (overlay.pleats().isPresent()) {
            addPleats(findings, size, overlay.pleats().get(), shown);
        } else if (overlay.takeUp() > NO_SURPLUS) {
            findings.add(length(
                    "warning",
                    List.of(size),
                    "takeUp",
                    shown.length(overlay.takeUp()),
                    0,
                    shown,
                    "The top edge of the overlay is longer than the armhole it is sewn to, and no pleats are asked for;"
                            + " give overlay/pleats, or gather it."));
        }
    }

    private static void addPleats(List<Finding> findings, String size, PleatLayout pleats, Shown shown) {
        if (pleats.overlaps()) {
            findings.add(new Finding(
                    "warning",
                    List.of(size),
                    "pleats",
                    Optional.of((double) pleats.greatestLayers()),
                    Optional.of(3.0),
                    Optional.empty(),
                    PRACTICE,
                    "Neighbouring pleats lie on one another, up to " + pleats.greatestLayers()
                            + " layers of cloth in the seam; take more pleats, or less rise."));
        }
        double overhang = Math.max(pleats.overhangFront(), pleats.overhangBack());
        if (overhang > NO_SURPLUS) {
            findings.add(length(
                    "warning",
                    List.of(size),
                    "pleats",
                    shown.length(overhang),
                    0,
                    shown,
                    "Under-layers of the outermost pleats reach beyond the end of the seam; a flat zone of that width more"
                            + " would hold them back."));
        }
    }

    private static Finding length(
            String severity,
            List<String> sizes,
            String dimension,
            double value,
            double expected,
            Shown shown,
            String message) {
        return new Finding(
                severity,
                sizes,
                dimension,
                Optional.of(value),
                Optional.of(expected),
                Optional.of(shown.unit().symbol()),
                PRACTICE,
                message);
    }
}
