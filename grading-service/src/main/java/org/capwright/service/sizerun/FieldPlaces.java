package org.capwright.service.sizerun;

import java.util.ArrayList;
import java.util.List;
import org.capwright.draft.CapFit;
import org.capwright.draft.OverlayStyle;
import org.capwright.draft.pleat.PleatSizing;
import org.capwright.measure.Violation;

/** Puts what the engine found wrong at the fields that the request has for it. */
final class FieldPlaces {

    private FieldPlaces() {}

    static List<Violation> placed(List<Violation> violations, SizeRunRequest order) {
        List<Violation> placed = new ArrayList<>(violations.size());
        for (Violation violation : violations) {
            placed.add(new Violation(
                    pointer(violation.pointer(), order),
                    violation.reason(),
                    violation.quantity(),
                    violation.value(),
                    violation.minimum(),
                    violation.maximum()));
        }
        return placed;
    }

    private static String pointer(String engine, SizeRunRequest order) {
        return switch (engine) {
            case "/overlay/pleats/flatZoneFront" -> "/overlay/pleats/flatZone";
            case "/overlay/pleats/flatZoneBack" -> "/overlay/pleats/flatZone";
            case "/overlay/pleats/depth" -> depth(order);
            case "/sleeve/capEase" ->
                order.style().fit() instanceof CapFit.HalvesFor ? "/sleeve/front/capEase" : engine;
            default -> engine;
        };
    }

    private static String depth(SizeRunRequest order) {
        return order.style()
                .overlay()
                .flatMap(OverlayStyle::pleats)
                .map(plan -> plan.sizing() instanceof PleatSizing.ByGreatestDepth ? "greatestDepth" : "depth")
                .map("/overlay/pleats/"::concat)
                .orElse("/overlay/pleats/depth");
    }
}
