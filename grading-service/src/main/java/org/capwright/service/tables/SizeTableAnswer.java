package org.capwright.service.tables;

import io.swagger.v3.oas.annotations.media.ArraySchema;
import io.swagger.v3.oas.annotations.media.Schema;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * A size table.
 *
 * @param info what it is and where it comes from
 * @param unit unit of every length of the answer
 * @param sizes sizes, smallest first
 * @param labels size by second name
 * @param people people measured per size
 * @param rows the rows
 */
@Schema(name = "SizeTable", description = "A published table of measurements by size.")
record SizeTableAnswer(
        SizeTableAnswer.Info info,

        @Schema(
                description = "Unit of every length of the answer.",
                allowableValues = {"mm", "cm", "in"},
                example = "mm")
        String unit,

        @Schema(description = "The sizes, smallest first.", example = "[\"82-86\",\"86-90\"]")
        List<String> sizes,

        @Schema(description = "Sizes by their second names; may be empty.", example = "{\"36\":\"82-86\"}")
        Map<String, String> labels,

        @Schema(description = "People measured per size, for class means; else empty.", example = "{\"82-86\":331}")
        Map<String, Integer> people,

        @ArraySchema(arraySchema = @Schema(description = "The rows, each dimension once."))
        List<RowAnswer> rows) {

    /** Where a table comes from. */
    @Schema(name = "SizeTableInfo", description = "What a table is and where it comes from.")
    record Info(
            @Schema(description = "Short name, unique.", example = "women-en-13402-3-bust")
            String id,

            @Schema(description = "Title for people.") String title,

            @Schema(description = "The publication.") String source,

            @Schema(description = "Under what terms the figures may be used.")
            String licence,

            @Schema(description = "Where the figures were read, and how they were checked.")
            String readFrom,

            @Schema(
                    description = "How sure the transcription is.",
                    allowableValues = {"high", "medium-high", "medium", "not-judged"},
                    example = "high")
            String confidence,

            @Schema(description = "Whom the sizes are made for.", example = "adult women, bust class")
            String figureType,

            @Schema(description = "Who was measured or is meant.")
            String population,

            @Schema(
                    description = "Unit the table is published in.",
                    allowableValues = {"mm", "cm", "in"},
                    example = "cm")
            String publishedUnit,

            @Schema(
                    description = "Measurements of the body, or finished measurements of a garment.",
                    allowableValues = {"body", "garment"},
                    example = "body")
            String kind,

            @Schema(
                    description = "What the figures are.",
                    allowableValues = {"standard-figure", "class-mean", "interval"},
                    example = "class-mean")
            String statistic,

            @Schema(description = "The dimension that orders the sizes, where there is one.", example = "bustGirth")
            Optional<String> key,

            @Schema(description = "The dimensions the table has.", example = "[\"bustGirth\",\"upperArmGirth\"]")
            List<String> dimensions,

            @Schema(description = "Doubts, departures of definition, and what is missing.")
            List<String> notes) {}

    /** One row. */
    @Schema(name = "SizeTableRow", description = "One dimension over the sizes.")
    record RowAnswer(
            @Schema(description = "The dimension, named as in ISO 8559-1 where that has it.", example = "upperArmGirth")
            String dimension,

            @Schema(description = "What is measured.") String definition,

            @ArraySchema(
                    arraySchema = @Schema(description = "A value per size, smallest first; a size without is a gap."))
            List<ValueAnswer> values,

            @ArraySchema(
                    arraySchema =
                            @Schema(
                                    description =
                                            "Growth from each size to the next; none beside a gap, none where no dimension orders"
                                                    + " the sizes."))
            List<IncrementAnswer> increments,

            @Schema(
                    description = "Half width of the allowed deviation, where a garment standard gives one.",
                    example = "5")
            Optional<Double> tolerance) {}

    /** One value. */
    @Schema(name = "SizeTableValue", description = "One value of a row.")
    record ValueAnswer(
            @Schema(description = "The size.", example = "82-86")
            String size,

            @Schema(description = "The value.", example = "270.9")
            double value,

            @Schema(description = "Lower limit of the class, where the source gives limits.", example = "820")
            Optional<Double> lower,

            @Schema(description = "Upper limit of the class, where the source gives limits.", example = "860")
            Optional<Double> upper,

            @Schema(
                    description =
                            "Where the value comes from: printed in the source, following from a step it prints, the mean of the"
                                    + " people in the class, the middle of the class limits, or read off a curve between values.",
                    allowableValues = {
                        "published",
                        "step-rule",
                        "measured",
                        "class-centre",
                        "interpolated",
                        "user-supplied"
                    },
                    example = "measured")
            String provenance) {}

    /** One increment. */
    @Schema(name = "SizeTableIncrement", description = "Growth from one size to the next.")
    record IncrementAnswer(
            @Schema(description = "The smaller size.", example = "82-86")
            String from,

            @Schema(description = "The next size.", example = "86-90")
            String to,

            @Schema(description = "The growth; negative where a class mean falls back.", example = "12.4")
            double growth,

            @Schema(
                    description = "Where it comes from, as of a value.",
                    allowableValues = {
                        "published",
                        "step-rule",
                        "measured",
                        "class-centre",
                        "interpolated",
                        "user-supplied"
                    },
                    example = "measured")
            String provenance) {}

    /** The figures of one body. */
    @Schema(
            name = "SizeTableFigures",
            description = "What a table says of a body whose key dimension lies at or between its sizes.")
    record Figures(
            @Schema(description = "Id of the table.", example = "women-en-13402-3-bust")
            String sizeTable,

            @Schema(description = "The dimension that orders the sizes.", example = "bustGirth")
            String key,

            @Schema(description = "The value of it that was asked for.", example = "93")
            double at,

            @Schema(
                    description = "Unit of every length.",
                    allowableValues = {"mm", "cm", "in"},
                    example = "cm")
            String unit,

            @ArraySchema(
                    arraySchema =
                            @Schema(
                                    description =
                                            "The dimensions that have values there; one whose values leave a gap there is left out."))
            List<FigureAnswer> figures) {}

    /** One figure. */
    @Schema(name = "SizeTableFigure", description = "One dimension at a value of the key.")
    record FigureAnswer(
            @Schema(description = "The dimension.", example = "upperArmGirth")
            String dimension,

            @Schema(description = "The value, monotone between the sizes.", example = "30.1")
            double value,

            @Schema(
                    description = "interpolated between two sizes; at a size, where the table's own value comes from.",
                    allowableValues = {
                        "published",
                        "step-rule",
                        "measured",
                        "class-centre",
                        "interpolated",
                        "user-supplied"
                    },
                    example = "interpolated")
            String provenance) {}

    /** All tables. */
    @Schema(name = "SizeTables", description = "What size tables there are.")
    record Listing(List<Info> sizeTables) {}
}
