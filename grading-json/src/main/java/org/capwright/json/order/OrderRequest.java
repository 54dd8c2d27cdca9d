package org.capwright.json.order;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.capwright.json.problem.FoundViolations;
import org.capwright.json.schema.RequestObject;
import org.capwright.quantity.Unit;
import org.capwright.words.Language;
import org.capwright.words.Text;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;

/**
 * The body of an order, as far as it does not speak of lengths.
 *
 * @param body the whole body
 * @param reference the shop's own name for it
 * @param revision the revision asked for
 * @param remakeOf the order that is made again
 */
public record OrderRequest(
        ObjectNode body, Optional<String> reference, Optional<Integer> revision, Optional<String> remakeOf) {

    /**
     * Reads a body. Lengths are read when the style has said its unit.
     *
     * @param tree the body
     * @return the order
     * @throws org.capwright.json.problem.RefusedRequestException with everything that is wrong
     */
    public static OrderRequest read(JsonNode tree) {
        FoundViolations found = new FoundViolations(Unit.MILLIMETRE);
        RequestObject order = new RequestObject(tree, OrderSchema.ORDER, "", Unit.MILLIMETRE, found);
        Optional<String> reference = order.text("reference");
        Optional<Integer> revision = order.whole("revision");
        Optional<String> remakeOf = order.text("remakeOf");
        order.choice("units");
        order.choice("language");
        order.words("files");
        if (order.raw("files").filter(JsonNode::isEmpty).isPresent()) {
            order.refuse(
                    "files", Text.of("must name at least one of {words}").with("words", Text.names(OrderSchema.FILES)));
        }
        if (order.has("size") && order.has("wearer")) {
            order.refuse("size", "has no use beside wearer; leave out one of them");
        } else if (tree.isObject() && !order.has("size") && !order.has("wearer") && !order.has("remakeOf")) {
            found.add("", "must have a size, or a wearer with measurements");
        }
        found.refuse();
        return new OrderRequest((ObjectNode) tree, reference, revision, remakeOf);
    }

    /**
     * The order with the language of who asks, where it names none: what is kept of it says which one its files are in.
     *
     * @param language of who asks
     * @param tree the body
     * @return the body
     */
    public static JsonNode in(Language language, JsonNode tree) {
        if (tree instanceof ObjectNode order && !order.has("language") && !language.equals(Language.ENGLISH)) {
            order.put("language", language.tag());
        }
        return tree;
    }

    /**
     * Refuses another unit than that of the style.
     *
     * @param ofStyle the style's
     */
    public void checkUnits(String ofStyle) {
        String given = body.path("units").asStringOpt().orElse(ofStyle);
        if (!given.equals(ofStyle)) {
            FoundViolations found = new FoundViolations(Unit.MILLIMETRE);
            found.add("/units", Text.of("must be {unit}, the unit of the style").with("unit", ofStyle), given);
            found.refuse();
        }
    }

    /** Refuses a remake, of which only the order itself knows what it leaves out. */
    public void refuseRemake() {
        if (remakeOf.isPresent()) {
            FoundViolations found = new FoundViolations(Unit.MILLIMETRE);
            found.add("/remakeOf", "has no use in a preview; give all measurements", remakeOf.get());
            found.refuse();
        }
    }

    /**
     * What to make: this order, with what it leaves out from the first one. A measurement that is altered is not confirmed any more.
     *
     * @param first the body of the first order
     * @return the body of this one
     */
    public ObjectNode over(JsonNode first) {
        ObjectNode made = body.deepCopy();
        for (String field : OrderSchema.OF_FILES) {
            if (!made.hasNonNull(field) && first.hasNonNull(field)) {
                made.set(field, first.get(field));
            }
        }
        if (made.hasNonNull("size")) {
            return made;
        }
        boolean altered = made.hasNonNull("wearer");
        if (!altered && first.hasNonNull("size")) {
            made.set("size", first.get("size"));
            return made;
        }
        for (String field : OrderSchema.OF_WEARER) {
            if (!made.hasNonNull(field) && first.hasNonNull(field)) {
                made.set(field, first.get(field));
            }
        }
        if (altered && first.path("wearer").isObject()) {
            ObjectNode wearer = ((ObjectNode) first.get("wearer")).deepCopy();
            for (Map.Entry<String, JsonNode> measure : body.get("wearer").properties()) {
                wearer.set(measure.getKey(), measure.getValue());
            }
            made.set("wearer", wearer);
            if (!body.hasNonNull("confirmed")) {
                made.set("confirmed", stillConfirmed(first.path("confirmed")));
            }
        }
        return made;
    }

    private ArrayNode stillConfirmed(JsonNode first) {
        ArrayNode still = JsonNodeFactory.instance.arrayNode();
        List<String> altered = List.copyOf(body.get("wearer").propertyNames());
        first.forEach(name -> {
            if (!altered.contains(name.asString(""))) {
                still.add(name);
            }
        });
        return still;
    }
}
