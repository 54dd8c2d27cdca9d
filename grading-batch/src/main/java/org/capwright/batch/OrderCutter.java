package org.capwright.batch;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.capwright.FileFormat;
import org.capwright.Pieces;
import org.capwright.json.StrictJson;
import org.capwright.json.madetomeasure.MeasureReader;
import org.capwright.json.madetomeasure.MeasureRequest;
import org.capwright.json.order.OrderRequest;
import org.capwright.json.order.OrderSchema;
import org.capwright.json.order.WearerOrder;
import org.capwright.json.problem.FoundViolations;
import org.capwright.json.problem.RefusedRequestException;
import org.capwright.json.schema.RequestObject;
import org.capwright.json.style.SizeRunRequest;
import org.capwright.quantity.InvalidMeasuresException;
import org.capwright.quantity.Unit;
import org.capwright.words.Language;
import tools.jackson.core.JacksonException;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ObjectNode;

/**
 * Cuts orders one by one, each a line as {@code POST /v1/order-batches} takes it: the same bytes that the service keeps for the order. Nothing is remembered of an order, and none makes it fail. Not safe for many threads.
 */
public final class OrderCutter {

    /** The formats that can be asked for. */
    public static final List<String> FORMATS = List.of("pdf", "svg", "dxf", "plt", "csv");

    private static final int LONGEST_LINE = 256 * 1024;
    private static final JsonMapper MAPPER = StrictJson.mapper().build();

    private final Map<String, KnownStyle> styles = new LinkedHashMap<>();
    private final List<String> formats;

    /**
     * A cutter of orders.
     *
     * @param styles bodies of {@code PUT /v1/styles/{id}}, JSON in UTF-8, by their ids; at least one
     * @param formats some of {@link #FORMATS}, at least one
     * @throws IllegalArgumentException if a style or a format is none, with what is wrong
     */
    public OrderCutter(Map<String, byte[]> styles, List<String> formats) {
        if (styles.isEmpty()) {
            throw new IllegalArgumentException("There must be at least one style.");
        }
        if (formats.isEmpty() || !FORMATS.containsAll(formats)) {
            throw new IllegalArgumentException(
                    "The formats are " + formats + "; they must be some of " + FORMATS + ".");
        }
        this.formats = List.copyOf(formats);
        styles.forEach((id, body) -> {
            try {
                this.styles.put(id, new KnownStyle(MAPPER.readTree(body)));
            } catch (RefusedRequestException e) {
                throw new IllegalArgumentException("The style " + id + " cannot be used. " + e.detail(), e);
            } catch (JacksonException e) {
                throw new IllegalArgumentException("The style " + id + " is not JSON.", e);
            }
        });
    }

    /**
     * Cuts one order.
     *
     * @param line one line, without its end
     * @return its files, or why there are none
     */
    public Outcome cut(byte[] line) {
        if (line.length > LONGEST_LINE) {
            return refused("", new Refusal("", "is longer than 256 kB"));
        }
        JsonNode tree;
        try {
            tree = MAPPER.readTree(StandardCharsets.UTF_8
                    .newDecoder()
                    .decode(ByteBuffer.wrap(line))
                    .toString());
        } catch (CharacterCodingException e) {
            return refused("", new Refusal("", "is not UTF-8"));
        } catch (JacksonException e) {
            return refused("", new Refusal("", "is not JSON"));
        }
        String reference = tree.path("reference").asStringOpt().orElse("");
        if (reference.length() > OrderSchema.LONGEST_REFERENCE) {
            reference = "";
        }
        try {
            return cut(tree, reference);
        } catch (RefusedRequestException e) {
            return new Outcome.NotCut(reference, "refused", Refusal.of(e.violations()));
        } catch (RuntimeException e) {
            // The engine is at fault; the message may hold a figure. The other orders are cut all the same.
            return refused(
                    reference,
                    new Refusal(
                            "", "cannot be cut: " + e.getClass().getSimpleName() + "; this is a fault of the engine"));
        }
    }

    private static Outcome refused(String reference, Refusal refusal) {
        return new Outcome.NotCut(reference, "refused", List.of(refusal));
    }

    private Outcome cut(JsonNode tree, String reference) {
        if (styles.size() == 1 && tree instanceof ObjectNode only && !only.hasNonNull("style")) {
            only.put("style", styles.keySet().iterator().next());
        }
        FoundViolations found = new FoundViolations(Unit.MILLIMETRE);
        Optional<String> named =
                new RequestObject(tree, OrderSchema.BATCH_LINE, "", Unit.MILLIMETRE, found).text("style");
        found.refuse();
        String id = named.orElseThrow();
        KnownStyle style = styles.get(id);
        if (style == null) {
            return refused(reference, new Refusal("/style", "is none of " + styles.keySet()));
        }
        ObjectNode order = ((ObjectNode) tree).deepCopy();
        order.remove(List.of("style", "idempotencyKey"));
        OrderRequest request = OrderRequest.read(order);
        if (request.remakeOf().isPresent()) {
            return refused(reference, new Refusal("/remakeOf", "has no use in a batch; give all measurements"));
        }
        ObjectNode run = style.run(request.revision());
        request.checkUnits(run.path("units").asString(""));
        Language language = Language.find(order.path("language").asString("")).orElse(Language.ENGLISH);
        if (order.hasNonNull("size")) {
            JsonNode size = order.get("size");
            String label = size.isString() ? size.stringValue().strip() : size.toString();
            return new Outcome.Cut(reference, id, files(style.alone(request.revision(), label, language)));
        }
        try {
            return made(style, run, order, reference, id, language);
        } catch (RefusedRequestException e) {
            throw WearerOrder.placed(e, order);
        }
    }

    private Outcome made(
            KnownStyle style, ObjectNode run, ObjectNode order, String reference, String id, Language language) {
        FoundViolations questions = new FoundViolations(
                run.path("units").asStringOpt().flatMap(Unit::find).orElse(Unit.MILLIMETRE));
        MeasureRequest measures = MeasureReader.held(WearerOrder.body(style.document(), run, order), questions)
                .in(language);
        List<CutFile> files;
        try {
            files = files(measures.run());
        } catch (RefusedRequestException e) {
            // What cannot be drafted is likely to be what is improbable.
            FoundViolations found = new FoundViolations(measures.run().unit());
            questions.list().forEach(found::add);
            measures.places().add(e, found);
            throw found.list().isEmpty() ? e : new RefusedRequestException(found.list());
        }
        return questions.list().isEmpty()
                ? new Outcome.Cut(reference, id, files)
                : new Outcome.NotCut(reference, "questioned", Refusal.of(questions.list()));
    }

    private List<CutFile> files(SizeRunRequest request) {
        try {
            Pieces drawn = request.pieces(request.graded());
            Pieces pieces = request.plotterWidth().isPresent()
                    ? drawn.onPlotter(request.plotterWidth().getAsDouble())
                    : drawn;
            List<CutFile> files = new ArrayList<>();
            for (String format : formats) {
                files.add(new CutFile(format, written(pieces, form(request, format))));
            }
            return files;
        } catch (InvalidMeasuresException e) {
            throw request.refused(e);
        }
    }

    private static byte[] written(Pieces pieces, FileFormat form) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try {
            pieces.write(form, out);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return out.toByteArray();
    }

    private static FileFormat form(SizeRunRequest request, String format) {
        return switch (format) {
            case "csv" -> FileFormat.CSV;
            case "svg" -> FileFormat.SVG;
            case "plt" -> FileFormat.HPGL;
            case "dxf" -> request.dxf();
            default -> FileFormat.PDF;
        };
    }
}
