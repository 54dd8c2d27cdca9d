package org.capwright.json.style;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.capwright.draft.pleat.FullnessTarget;
import org.capwright.draft.pleat.PleatDirection;
import org.capwright.draft.pleat.PleatKind;
import org.capwright.draft.pleat.PleatPlan;
import org.capwright.draft.pleat.PleatSizing;
import org.capwright.json.schema.RequestObject;
import org.capwright.words.Text;

/** Reads the pleats. A depth, be it greatest or not, stands among the dimensions as well, so that it can be graded. */
final class PleatReader {

    private static final List<String> SIZINGS = List.of("count", "depth", "greatestDepth");
    static final Map<String, PleatKind> KINDS =
            Map.of("knife", PleatKind.KNIFE, "box", PleatKind.BOX, "inverted", PleatKind.INVERTED);
    static final Map<String, PleatDirection> DIRECTIONS = Map.of(
            "front", PleatDirection.TOWARD_FRONT,
            "back", PleatDirection.TOWARD_BACK,
            "apex", PleatDirection.TOWARD_APEX,
            "away", PleatDirection.AWAY_FROM_APEX);

    private PleatReader() {}

    /** Whether count and depth are both given, so that an overlay without rise or fullness follows from its pleats. */
    static boolean full(RequestObject pleats) {
        return pleats.has("count") && pleats.has("depth");
    }

    /**
     * What was read.
     *
     * @param plan the pleats, if they are right
     * @param target what the edge is to be long enough for, where count and depth are both given and right
     */
    record Pleated(Optional<PleatPlan> plan, Optional<FullnessTarget> target) {}

    /** Pleats whose number and depth are both settled, as the rise follows from them. */
    static Pleated readFull(RequestObject pleats, Optional<Double> depth) {
        if (pleats.has("greatestDepth")) {
            pleats.refuse("greatestDepth", "contradicts depth; leave it out");
        }
        Optional<Integer> count = pleats.whole("count");
        Optional<PleatPlan> plan = read(pleats, count.map(PleatSizing.ByCount::new));
        return new Pleated(
                plan,
                plan.flatMap(read ->
                        depth.map(given -> new FullnessTarget.Pleats(read.kind(), count.orElseThrow(), given))));
    }

    static Pleated readOne(RequestObject pleats, Optional<Double> depth) {
        return new Pleated(read(pleats, sizing(pleats, depth)), Optional.empty());
    }

    private static Optional<PleatPlan> read(RequestObject pleats, Optional<? extends PleatSizing> sizing) {
        Optional<String> word = pleats.choice("kind");
        PleatKind kind = word.map(KINDS::get).orElse(PleatKind.KNIFE);
        Optional<String> direction = pleats.choice("direction");
        if (kind != PleatKind.KNIFE && pleats.has("direction")) {
            pleats.refuse(
                    "direction",
                    Text.of("has no use for {kind} pleats; leave it out").with("kind", word.orElse("")));
        }
        Optional<RequestObject> zones = pleats.object("flatZone");
        OptionalDouble both = zones.isPresent() ? OptionalDouble.empty() : pleats.length("flatZone");
        double front = both.orElse(zones.map(z -> z.length("front").orElse(0)).orElse(0.0));
        double back = both.orElse(zones.map(z -> z.length("back").orElse(0)).orElse(0.0));
        return sizing.map(given -> new PleatPlan(
                kind, direction.map(DIRECTIONS::get).orElse(PleatDirection.AWAY_FROM_APEX), given, front, back));
    }

    private static Optional<PleatSizing> sizing(RequestObject pleats, Optional<Double> depth) {
        List<String> given = new ArrayList<>(SIZINGS);
        given.removeIf(field -> !pleats.has(field));
        if (given.isEmpty()) {
            pleats.refuse(
                    "count", Text.of("is missing; give exactly one of {words}").with("words", Text.names(SIZINGS)));
        }
        for (String surplus : given.subList(Math.min(1, given.size()), given.size())) {
            pleats.refuse(
                    surplus,
                    Text.of("contradicts {other}; give exactly one of {words}")
                            .with("other", given.get(0))
                            .with("words", Text.names(SIZINGS)));
        }
        Optional<PleatSizing> byCount = pleats.whole("count").map(PleatSizing.ByCount::new);
        if (given.size() != 1) {
            return Optional.empty();
        }
        return switch (given.get(0)) {
            case "count" -> byCount;
            case "depth" -> depth.map(PleatSizing.ByDepth::new);
            default -> depth.map(PleatSizing.ByGreatestDepth::new);
        };
    }
}
