package org.capwright.service.orders;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import org.capwright.json.order.StyleDocument;
import org.capwright.json.order.WearerOrder;
import org.capwright.json.problem.FieldViolation;
import org.capwright.json.problem.FoundViolations;
import org.capwright.json.problem.RefusedRequestException;
import org.capwright.json.style.SizeRunReader;
import org.capwright.quantity.Unit;
import org.capwright.service.madetomeasure.HeldMeasures;
import org.capwright.service.sizerun.SizeRunFormat;
import org.capwright.service.sizerun.SizeRunResult;
import org.capwright.service.sizerun.SizeRunService;
import org.capwright.service.styles.StyleRevision;
import org.capwright.words.Language;
import org.capwright.words.Text;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ObjectNode;

/** Draws the files of an order, all that people and programs cut from. An archive of them is put together when it is asked for. */
final class OrderDraft {

    private final List<SizeRunFormat> forms;
    private final JsonMapper mapper;
    private final DrawnSizes sizes = new DrawnSizes();

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
    record Drawn(Optional<String> size, List<FieldViolation> questions, List<PackedFile> files) {}

    /** Draws an order of a tenant that has a size or a wearer. */
    Drawn draw(String tenant, StyleRevision style, JsonNode order) {
        StyleDocument document = StyleDocument.of(mapper.readTree(style.body()));
        if (!order.hasNonNull("size")) {
            return ofWearer(document, document.sizeRun(style.revision()), order);
        }
        List<SizeRunFormat> asked = asked(order);
        String label = label(order.get("size"));
        Language language = language(order);
        return new Drawn(
                Optional.of(label),
                List.of(),
                sizes.get(
                        new DrawnSizes.Size(
                                tenant, style.sha256(), style.revision(), label, language, extensions(asked)),
                        () -> ofSize(document.sizeRun(style.revision()), label, language, asked)));
    }

    /** The forms that an order names, or all of them; always in the same order. */
    private List<SizeRunFormat> asked(JsonNode order) {
        if (!order.hasNonNull("files")) {
            return forms;
        }
        List<String> named =
                order.get("files").valueStream().map(JsonNode::asString).toList();
        return forms.stream().filter(form -> named.contains(form.extension())).toList();
    }

    private static List<String> extensions(List<SizeRunFormat> forms) {
        return forms.stream().map(SizeRunFormat::extension).toList();
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

    private static List<PackedFile> ofSize(ObjectNode run, String size, Language language, List<SizeRunFormat> asked) {
        SizeRunResult one = alone(run, size, language);
        return files(asked, form -> SizeRunService.written(one, form));
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
                held -> new Drawn(
                        Optional.empty(), held.questions(), files(asked(order), form -> held.written(form, mapper))));
    }

    private static <T> T made(StyleDocument style, ObjectNode run, JsonNode order, Function<HeldMeasures, T> use) {
        try {
            return use.apply(HeldMeasures.draft(WearerOrder.body(style, run, order), language(order)));
        } catch (RefusedRequestException e) {
            throw WearerOrder.placed(e, order);
        }
    }

    private interface Bytes {
        byte[] get() throws IOException;
    }

    private interface Writing {
        byte[] of(SizeRunFormat form) throws IOException;
    }

    private static List<PackedFile> files(List<SizeRunFormat> asked, Writing writing) {
        return asked.stream()
                .map(form -> PackedFile.of(new DrawnFile(form.extension(), bytes(() -> writing.of(form)))))
                .toList();
    }

    private static byte[] bytes(Bytes written) {
        try {
            return written.get();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
