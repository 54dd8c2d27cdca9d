package org.capwright.service.styles;

import io.swagger.v3.oas.annotations.media.ArraySchema;
import io.swagger.v3.oas.annotations.media.Schema;
import java.time.Instant;
import java.util.List;
import java.util.Optional;

/**
 * A style as it is listed.
 *
 * @param id its id
 * @param name its name
 * @param revision number of the latest revision
 * @param entityTag what If-Match takes to change it
 * @param madeAt when that was made
 * @param madeBy who made it
 * @param archived whether it is archived
 */
@Schema(name = "StyleEntry", description = "A style as it is listed; GET /v1/styles/{id} has its body.")
record StyleAnswer(
        @Schema(description = "Id of the style.", example = "choir-gown")
        String id,

        @Schema(description = "Name of the style.", example = "Choir gown sleeve")
        String name,

        @Schema(description = "Number of the revision, from 1.", example = "3")
        int revision,

        @Schema(description = "What If-Match takes to change the style.", example = "\"\\\"3-8f14e45fceea\\\"\"")
        String entityTag,

        @Schema(description = "When the revision was made.") Instant madeAt,

        @Schema(description = "Name of the key that made it.", example = "pattern room")
        String madeBy,

        @Schema(description = "Whether the style is archived: orders pin it, and no more are taken.")
        boolean archived) {

    static StyleAnswer of(StyleRevision revision) {
        return new StyleAnswer(
                revision.id(),
                revision.name(),
                revision.revision(),
                revision.entityTag(),
                revision.madeAt(),
                revision.madeBy(),
                revision.archived());
    }

    /** Styles. */
    @Schema(name = "StyleList", description = "Styles in the order of their ids.")
    record Listing(
            @ArraySchema(arraySchema = @Schema(description = "The styles of this page; may be empty."))
            List<StyleAnswer> styles,

            @Schema(description = "Cursor of the next page, where there is one.")
            Optional<String> next) {}

    /** Revisions. */
    @Schema(name = "StyleRevisions", description = "Revisions of a style, latest first.")
    record Revisions(
            @ArraySchema(arraySchema = @Schema(description = "The revisions of this page."))
            List<StyleAnswer> revisions,

            @Schema(description = "Cursor of the next page, where there is one.")
            Optional<String> next) {}

    /** What an import did. */
    @Schema(name = "StyleImport", description = "What an import did.")
    record Imported(
            @Schema(description = "Styles in the document.", example = "4")
            int styles,

            @Schema(description = "Revisions that were new here.", example = "9")
            int revisions) {}
}
