package org.capwright.service.orders;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import org.capwright.json.problem.FieldViolation;
import org.capwright.json.problem.FoundViolations;
import org.capwright.json.problem.RefusedRequestException;
import org.capwright.json.style.SizeRunReader;
import org.capwright.quantity.Unit;
import org.capwright.service.madetomeasure.HeldMeasures;
import org.capwright.service.sizerun.SizeRunFormat;
import org.capwright.service.sizerun.SizeRunResult;
import org.capwright.service.sizerun.SizeRunService;
import org.capwright.service.styles.StyleDocument;
import org.capwright.words.Language;
import org.capwright.words.Text;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;

/** Draws the files of an order, all that people and programs cut from. An archive of them is put together when it is asked for. */
final class OrderDraft {

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

    private final List<SizeRunFormat> forms;
    private final JsonMapper mapper;

    OrderDraft(List<SizeRunFormat> forms, JsonMapper mapper) {
        this.forms =
                forms.stream().filter(form -> !form.extension().equals("zip")).toList();
        this.mapper = mapper;
    }

    /**
     * What was drawn.
     *
     * @param size the size, unless it was drawn by measurements
     * @param questions what is improbable
     * @param files the files
     */
    record Drawn(Optional<String> size, List<FieldViolation> questions, List<DrawnFile> files) {}

    /** Draws an order that has a size or a wearer. */
    Drawn draw(StyleDocument style, int revision, JsonNode order) {
        ObjectNode run = style.sizeRun(revision);
        return order.hasNonNull("size")
                ? ofSize(run, label(order.get("size")), language(order))
                : ofWearer(style, run, order);
    }

    private static Language language(JsonNode order) {
        return Language.find(order.path("language").asString("")).orElse(Language.ENGLISH);
    }

    /** A whole number is read as its digits. */
    private static String label(JsonNode size) {
        return size.isString() ? size.stringValue().strip() : size.toString();
    }

    /** What an order would be that has a size or a wearer; of its files only the figures are made. */
    OrderPreview preview(StyleDocument style, int revision, JsonNode order) {
        ObjectNode run = style.sizeRun(revision);
        SizeRunFormat json = forms.stream()
                .filter(form -> form.extension().equals("json"))
                .findFirst()
                .orElseThrow();
        if (order.hasNonNull("size")) {
            SizeRunResult one = alone(run, label(order.get("size")), language(order));
            return OrderPreview.of(figures(() -> SizeRunService.written(one, json)), run, revision, List.of());
        }
        return made(
                style,
                run,
                order,
                held -> OrderPreview.of(figures(() -> held.written(json, mapper)), run, revision, held.questions()));
    }

    private JsonNode figures(Bytes written) {
        return mapper.readTree(bytes(written));
    }

    private Drawn ofSize(ObjectNode run, String size, Language language) {
        SizeRunResult one = alone(run, size, language);
        return new Drawn(Optional.of(size), List.of(), files(form -> SizeRunService.written(one, form)));
    }

    private static SizeRunResult alone(ObjectNode run, String size, Language language) {
        SizeRunResult whole = SizeRunService.draft(SizeRunReader.read(run).in(language));
        if (!whole.order().sizes().contains(size)) {
            FoundViolations found = new FoundViolations(Unit.MILLIMETRE);
            found.add(
                    "/size",
                    Text.of("must be one of the sizes {sizes}")
                            .with("sizes", Text.names(whole.order().sizes())),
                    size);
            found.refuse();
        }
        return SizeRunService.draft(whole.alone(size));
    }

    private Drawn ofWearer(StyleDocument style, ObjectNode run, JsonNode order) {
        return made(
                style,
                run,
                order,
                held -> new Drawn(Optional.empty(), held.questions(), files(form -> held.written(form, mapper))));
    }

    private static <T> T made(StyleDocument style, ObjectNode run, JsonNode order, Function<HeldMeasures, T> use) {
        try {
            return use.apply(HeldMeasures.draft(measures(style, run, order), language(order)));
        } catch (RefusedRequestException e) {
            FoundViolations found = new FoundViolations(
                    run.path("units").asStringOpt().flatMap(Unit::find).orElse(Unit.MILLIMETRE));
            e.violations().forEach(violation -> found.add(placed(violation, order)));
            found.refuse();
            throw e;
        }
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
                        Text.of("the style's {field} {reason}")
                                .with("field", violation.field())
                                .with("reason", violation.reason()));
    }

    /** The body of a made-to-measure order: the wearer's from the order, the sleeve from the style but for what follows from the wearer. */
    private static ObjectNode measures(StyleDocument style, ObjectNode run, JsonNode order) {
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

    private interface Bytes {
        byte[] get() throws IOException;
    }

    private interface Writing {
        byte[] of(SizeRunFormat form) throws IOException;
    }

    private List<DrawnFile> files(Writing writing) {
        List<DrawnFile> files = new ArrayList<>();
        for (SizeRunFormat form : forms) {
            files.add(new DrawnFile(form.extension(), bytes(() -> writing.of(form))));
        }
        return files;
    }

    private static byte[] bytes(Bytes written) {
        try {
            return written.get();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
