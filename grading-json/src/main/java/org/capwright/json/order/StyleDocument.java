package org.capwright.json.order;

import java.util.Optional;
import org.capwright.json.madetomeasure.MeasureSchema;
import org.capwright.json.problem.FoundViolations;
import org.capwright.json.problem.RefusedRequestException;
import org.capwright.json.schema.RequestObject;
import org.capwright.json.style.SizeRunReader;
import org.capwright.json.style.SizeRunRequest;
import org.capwright.quantity.Unit;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ObjectNode;

/** The body of a style, taken apart: a size run, and the ease by which it is made to measure. */
public final class StyleDocument {

    /** The field beside those of a size run. */
    public static final String EASE = "ease";

    private final ObjectNode sizeRun;
    private final Optional<JsonNode> ease;

    private StyleDocument(ObjectNode sizeRun, Optional<JsonNode> ease) {
        this.sizeRun = sizeRun;
        this.ease = ease;
    }

    /**
     * Takes a body apart that was found right before.
     *
     * @param tree the body
     * @return the style
     */
    public static StyleDocument of(JsonNode tree) {
        ObjectNode run = ((ObjectNode) tree).deepCopy();
        JsonNode ease = run.remove(EASE);
        return new StyleDocument(run, Optional.ofNullable(ease).filter(node -> !node.isNull()));
    }

    /**
     * Reads a body. Nothing is drafted yet.
     *
     * @param tree the body
     * @return the size run
     * @throws RefusedRequestException with everything that is wrong
     */
    public static SizeRunRequest read(JsonNode tree) {
        if (!tree.isObject()) {
            return SizeRunReader.read(tree);
        }
        StyleDocument document = of(tree);
        FoundViolations found = new FoundViolations(
                tree.path("units").asStringOpt().flatMap(Unit::find).orElse(Unit.MILLIMETRE));
        document.ease.ifPresent(node -> checkEase(node, tree, found));
        Optional<SizeRunRequest> run = Optional.empty();
        try {
            run = Optional.of(SizeRunReader.read(document.sizeRun));
        } catch (RefusedRequestException e) {
            e.violations().forEach(found::add);
        }
        found.refuse();
        return run.orElseThrow();
    }

    private static void checkEase(JsonNode node, JsonNode tree, FoundViolations found) {
        tree.path("units").asStringOpt().flatMap(Unit::find).ifPresent(unit -> {
            RequestObject ease = new RequestObject(node, MeasureSchema.EASE_POLICY, "/ease", unit, found);
            MeasureSchema.EASE_POLICY.fields().keySet().forEach(field -> {
                ease.percentage(field);
                ease.easeLength(field);
            });
        });
    }

    /**
     * The size run as {@code POST /v1/size-runs} takes it.
     *
     * @param revision number of the revision, for files of a style that names none of its own
     * @return a body
     */
    public ObjectNode sizeRun(int revision) {
        ObjectNode run = sizeRun.deepCopy();
        if (!run.hasNonNull("revision")) {
            run.put("revision", Integer.toString(revision));
        }
        return run;
    }

    /**
     * What the sleeve is wider than the body where it is made to measure.
     *
     * @return as {@code POST /v1/made-to-measure} takes it
     */
    public Optional<JsonNode> ease() {
        return ease;
    }
}
