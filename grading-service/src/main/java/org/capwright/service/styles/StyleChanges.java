package org.capwright.service.styles;

import io.swagger.v3.oas.annotations.media.ArraySchema;
import io.swagger.v3.oas.annotations.media.Schema;
import java.util.List;
import java.util.Optional;

/**
 * What one revision changed.
 *
 * @param id id of the style
 * @param from number of the revision before
 * @param to number of the revision after
 * @param units unit of the points of measure
 * @param fields fields of the style that differ
 * @param pointsOfMeasure what that did to the finished sleeve
 */
@Schema(name = "StyleChanges", description = "What differs between two revisions, and what that does to the sleeve.")
record StyleChanges(
        @Schema(description = "Id of the style.", example = "choir-gown")
        String id,

        @Schema(description = "Number of the revision before.", example = "2")
        int from,

        @Schema(description = "Number of the revision after.", example = "3")
        int to,

        @Schema(
                description = "Unit of the points of measure: that of the revision after.",
                allowableValues = {"mm", "cm", "in"},
                example = "cm")
        String units,

        @ArraySchema(arraySchema = @Schema(description = "Fields of the style that differ; may be empty."))
        List<Field> fields,

        @ArraySchema(
                arraySchema =
                        @Schema(
                                description = "Points of measure that differ, size by size, measured along the lines of"
                                        + " both; may be empty."))
        List<Measure> pointsOfMeasure) {

    /** A field. */
    @Schema(name = "ChangedField", description = "A field of the style that differs.")
    record Field(
            @Schema(description = "Where it stands, as a JSON pointer (RFC 6901).", example = "/sleeve/capHeight")
            String field,

            @Schema(description = "Its value before, as JSON; none if it was left out.", example = "13.5")
            Optional<String> before,

            @Schema(description = "Its value after, as JSON; none if it is left out.", example = "14")
            Optional<String> after) {}

    /** A point of measure. */
    @Schema(name = "ChangedMeasure", description = "A point of measure of one size that differs.")
    record Measure(
            @Schema(description = "Code of the spec table.", example = "capLine")
            String code,

            @Schema(description = "What is measured.", example = "Cap line")
            String name,

            @Schema(description = "The size.", example = "40")
            String size,

            @Schema(description = "Before; none if it was not there.", example = "46.2")
            Optional<Double> before,

            @Schema(description = "After; none if it is not there any more.", example = "46.9")
            Optional<Double> after,

            @Schema(description = "After less before, where there are both.", example = "0.7")
            Optional<Double> difference) {}
}
