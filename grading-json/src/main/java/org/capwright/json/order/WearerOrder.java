package org.capwright.json.order;

import java.util.List;
import org.capwright.json.problem.FieldViolation;
import org.capwright.json.problem.RefusedRequestException;
import org.capwright.words.Text;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;

/** An order by measurements on a style, put together as an order made to measure. */
public final class WearerOrder {

    private static final List<String> SHARED = List.of(
            "name",
            "units",
            "revision",
            "overlay",
            "seamAllowance",
            "corners",
            "turnOfCloth",
            "interfacingOverlap",
            "align",
            "layout",
            "paper",
            "plotter",
            "rounding");
    private static final List<String> OF_UNDER_SLEEVE =
            List.of("elbowLevel", "shaping", "elbowDart", "elbowDartLength", "elbowEase", "handGirth");
    private static final List<String> OF_SLEEVE = List.of("capHeight", "capOutward", "capInward", "front", "back");

    private WearerOrder() {}

    /**
     * What is wrong, at the fields of the order.
     *
     * @param refused what is wrong with the order made to measure
     * @param order the order on the style
     * @return the same, said of the order
     */
    public static RefusedRequestException placed(RefusedRequestException refused, JsonNode order) {
        return new RefusedRequestException(refused.violations().stream()
                .map(violation -> placed(violation, order))
                .toList());
    }

    /** What the order does not say comes from the style, and must be mended there. */
    private static FieldViolation placed(FieldViolation violation, JsonNode order) {
        String first =
                violation.field().split("/", 3).length > 1 ? violation.field().split("/", 3)[1] : "";
        if (first.equals("order")) {
            return violation.at("/reference", violation.reason());
        }
        return order.hasNonNull(first) || first.equals("confirmed")
                ? violation
                : violation.at(
                        "",
                        Text.of("the style's {field}: {reason}")
                                .with("field", violation.field())
                                .with("reason", violation.reason()));
    }

    /**
     * The body of a made-to-measure order: the wearer's from the order, the sleeve from the style but for what follows from the wearer.
     *
     * @param style the style
     * @param run its size run, with a revision
     * @param order an order with a wearer
     * @return a body of {@code POST /v1/made-to-measure}
     */
    public static ObjectNode body(StyleDocument style, ObjectNode run, JsonNode order) {
        ObjectNode made = JsonNodeFactory.instance.objectNode();
        SHARED.forEach(field -> copy(run, made, field));
        List.of("wearer", "confirmed", "survey", "sizeTable").forEach(field -> copy(order, made, field));
        if (order.hasNonNull("reference")) {
            made.set("order", order.get("reference"));
        }
        if (order.hasNonNull("ease")) {
            made.set("ease", order.get("ease"));
        } else {
            style.ease().ifPresent(ease -> made.set("ease", ease));
        }
        made.set("sleeve", sleeve(run.path("sleeve"), order.path("sleeve"), made.path("ease")));
        if (run.path("underSleeve").isObject()) {
            ObjectNode under = made.putObject("underSleeve");
            OF_UNDER_SLEEVE.forEach(field -> copy(run.get("underSleeve"), under, field));
        }
        return made;
    }

    private static ObjectNode sleeve(JsonNode ofStyle, JsonNode ofOrder, JsonNode ease) {
        ObjectNode sleeve = JsonNodeFactory.instance.objectNode();
        OF_SLEEVE.forEach(field -> copy(ofStyle, sleeve, field));
        for (String half : List.of("front", "back")) {
            if (sleeve.path(half).isObject()) {
                // The armhole of the base size is not the wearer's.
                ((ObjectNode) sleeve.get(half)).remove("armhole");
            }
        }
        if (ease.hasNonNull("capEase")) {
            sleeve.remove("capHeight");
        }
        ofOrder.properties().forEach(entry -> sleeve.set(entry.getKey(), entry.getValue()));
        return sleeve;
    }

    private static void copy(JsonNode from, ObjectNode to, String field) {
        if (from.hasNonNull(field)) {
            to.set(field, from.get(field).deepCopy());
        }
    }
}
