package org.capwright.service.orders;

import io.swagger.v3.oas.annotations.media.ArraySchema;
import io.swagger.v3.oas.annotations.media.Schema;
import java.util.List;

/**
 * What a form for orders on a style has to ask.
 *
 * @param style id of the style
 * @param name its name
 * @param revision number of the revision
 * @param unit unit of every length
 * @param ease whether the style has an ease of its own
 * @param measurements what is measured
 */
@Schema(name = "OrderForm", description = "What a form for orders on a style has to ask.")
record OrderFormAnswer(
        @Schema(description = "Id of the style.", example = "choir-gown")
        String style,

        @Schema(description = "Name of the style.", example = "Choir gown sleeve")
        String name,

        @Schema(description = "Number of the latest revision.", example = "3")
        int revision,

        @Schema(
                description = "Unit of every length of an order on the style.",
                allowableValues = {"mm", "cm", "in"},
                example = "cm")
        String unit,

        @Schema(
                description =
                        "Whether the style has an ease. Without it every order by measurements must bring its own.",
                example = "true")
        boolean ease,

        @ArraySchema(
                arraySchema =
                        @Schema(
                                description = "Those that the sleeve is drafted from, then those by which slips are"
                                        + " noticed and missing ones estimated."))
        List<Measurement> measurements) {

    /** A measurement. */
    @Schema(name = "OrderMeasurement", description = "A measurement that is worth asking for.")
    record Measurement(
            @Schema(description = "Its name in ISO 8559-1, as wearer takes it.", example = "upperArmGirth")
            String dimension,

            @Schema(description = "Whether the sleeve is drafted from it.", example = "true")
            boolean drafted,

            @Schema(description = "How it is taken.") String definition,

            @Schema(description = "The least that is taken.", example = "10")
            double least,

            @Schema(description = "The most that is taken.", example = "80")
            double greatest) {}
}
