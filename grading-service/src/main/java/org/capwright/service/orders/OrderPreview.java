package org.capwright.service.orders;

import io.swagger.v3.oas.annotations.media.ArraySchema;
import io.swagger.v3.oas.annotations.media.Schema;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.capwright.json.problem.FieldViolation;
import tools.jackson.databind.JsonNode;

/**
 * What an order would be, before it is taken.
 *
 * @param unit unit of every length
 * @param revision number of the revision that would be pinned
 * @param questions what is improbable
 * @param estimates what was not measured
 * @param sleeve what the sleeve would be
 */
@Schema(name = "OrderPreview", description = "What an order would be. Nothing of it is kept or logged.")
record OrderPreview(
        @Schema(
                description = "Unit of every length.",
                allowableValues = {"mm", "cm", "in"},
                example = "cm")
        String unit,

        @Schema(description = "Number of the revision that would be pinned.", example = "3")
        int revision,

        @ArraySchema(
                arraySchema =
                        @Schema(
                                description = "Measurements that hardly anybody has; an order with them is held as"
                                        + " questioned. May be empty."))
        List<FieldViolation> questions,

        @ArraySchema(arraySchema = @Schema(description = "What the sleeve needs and was not measured; may be empty."))
        List<Guess> estimates,

        Sleeve sleeve) {

    /** What is shown of the figures that an order would have, as made to measure or a size run answers them. */
    static OrderPreview of(JsonNode figures, JsonNode style, int revision, List<FieldViolation> questions) {
        JsonNode run = figures.has("sizeRun") ? figures.get("sizeRun") : figures;
        return new OrderPreview(
                run.path("unit").asString(),
                revision,
                questions,
                figures.path("estimates").valueStream().map(OrderPreview::guess).toList(),
                sleeve(run.path("sizes").path(0), style.path("overlay")));
    }

    private static Guess guess(JsonNode estimate) {
        return new Guess(
                estimate.path("dimension").asString(),
                estimate.path("value").doubleValue(),
                estimate.path("low").doubleValue(),
                estimate.path("high").doubleValue());
    }

    private static Sleeve sleeve(JsonNode size, JsonNode overlay) {
        Map<String, Double> dimensions = new LinkedHashMap<>();
        size.path("dimensions")
                .properties()
                .forEach(
                        entry -> dimensions.put(entry.getKey(), entry.getValue().doubleValue()));
        return new Sleeve(
                dimensions,
                size.path("pieces")
                        .valueStream()
                        .map(piece -> piece.path("id").asString())
                        .toList(),
                overlay.path("hem").asStringOpt(),
                overlay.path("join").isNumber()
                        ? Optional.of(overlay.path("join").doubleValue())
                        : Optional.empty(),
                size.hasNonNull("pleats") ? Optional.of(pleats(size.get("pleats"))) : Optional.empty());
    }

    private static Pleats pleats(JsonNode pleats) {
        return new Pleats(
                pleats.path("span").doubleValue(),
                pleats.path("folds")
                        .valueStream()
                        .map(fold -> fold.path("finished").doubleValue())
                        .toList());
    }

    /** A measurement that was not taken. */
    @Schema(name = "OrderEstimate", description = "A measurement that was not taken, estimated from the others.")
    record Guess(
            @Schema(description = "What was not measured, by its name in ISO 8559-1.", example = "wristGirth")
            String dimension,

            @Schema(description = "The estimate.", example = "15.6")
            double value,

            @Schema(description = "Lower end of what 95 of 100 people alike have.", example = "14.2")
            double low,

            @Schema(description = "Upper end of it.", example = "17")
            double high) {}

    /** The sleeve in few figures. */
    @Schema(name = "SleevePreview", description = "The sleeve in few figures, enough for a sketch.")
    record Sleeve(
            @Schema(
                    description = "Dimensions by their names among grade rules.",
                    example = "{\"bicep\":36,\"capHeight\":13.5}")
            Map<String, Double> dimensions,

            @Schema(description = "The pieces that there are.", example = "[\"overlay-main\",\"under-sleeve\"]")
            List<String> pieces,

            @Schema(description = "Hem of the overlay, where there is one.", example = "vee")
            Optional<String> hem,

            @Schema(description = "Where the raised line of the overlay joins the cap line, if the style says it.")
            Optional<Double> join,

            @Schema(description = "The pleats, where there are any.")
            Optional<Pleats> pleats) {}

    /** Where pleats land. */
    @Schema(name = "PleatPreview", description = "Where the pleats land on the finished seam.")
    record Pleats(
            @Schema(description = "Length of the seam.", example = "33")
            double span,

            @Schema(description = "Distance of each pleat along it from its front end.", example = "[2.1,6.2]")
            List<Double> folds) {}
}
