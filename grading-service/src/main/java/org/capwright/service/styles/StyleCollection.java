package org.capwright.service.styles;

import io.swagger.v3.oas.annotations.media.ArraySchema;
import io.swagger.v3.oas.annotations.media.Schema;
import java.time.Instant;
import java.util.List;
import tools.jackson.databind.JsonNode;

/**
 * Every style of a tenant, as one document.
 *
 * @param styles the styles
 */
@Schema(name = "StyleCollection", description = "Every style with every revision, to keep elsewhere and to put back.")
record StyleCollection(
        @ArraySchema(arraySchema = @Schema(description = "In the order of their ids."))
        List<Kept> styles) {

    /** A style. */
    @Schema(name = "KeptStyle", description = "A style with every revision.")
    record Kept(
            @Schema(description = "Id of the style.", example = "choir-gown")
            String id,

            @Schema(description = "Whether it is archived.") boolean archived,

            @ArraySchema(arraySchema = @Schema(description = "From the first to the latest."))
            List<KeptRevision> revisions) {}

    /** A revision. */
    @Schema(name = "KeptStyleRevision", description = "A revision of a style.")
    record KeptRevision(
            @Schema(description = "Its number, from 1.", example = "1")
            int revision,

            @Schema(description = "When it was made.") Instant madeAt,

            @Schema(description = "Name of the key that made it.", example = "pattern room")
            String madeBy,

            @Schema(implementation = Object.class) JsonNode style) {}
}
