package org.capwright.service.madetomeasure;

import io.swagger.v3.oas.annotations.media.ArraySchema;
import io.swagger.v3.oas.annotations.media.Schema;
import java.util.List;
import java.util.Optional;
import org.capwright.service.sizerun.SizeRunAnswer;

/** The JSON answer to a made-to-measure order; lengths in the unit named by {@code unit}. */
@Schema(
        name = "MadeToMeasure",
        description =
                "A sleeve set for one wearer. Every length is in the unit named by unit. Nothing about the wearer is"
                        + " stored or logged.")
record MeasureAnswer(
        @Schema(
                description = "Unit of every length and coordinate.",
                allowableValues = {"mm", "cm", "in"},
                example = "cm")
        String unit,

        @Schema(description = "The nearest size of the chosen table, where one was chosen.")
        Optional<NearestAnswer> nearestSize,

        @ArraySchema(
                arraySchema =
                        @Schema(
                                description =
                                        "Measurements further from the nearest size than half a step to the next size,"
                                                + " and than 5 mm; may be empty."))
        List<DepartureAnswer> departures,

        @ArraySchema(
                arraySchema =
                        @Schema(
                                description =
                                        "What the sleeve needed and was not measured; measure it before cutting."))
        List<EstimateAnswer> estimates,

        @Schema(description = "Measurements that were named as confirmed.", example = "[\"upperArmGirth\"]")
        List<String> confirmed,

        @Schema(
                description = "Measurements that could not be compared with the survey: it lacks them, they lie further"
                        + " beyond it than it is wide, or there is nothing to hold them against.",
                example = "[\"waistGirth\"]")
        List<String> unquestioned,

        @Schema(description = "How the measurements go together, where a survey was asked.")
        Optional<TogetherAnswer> together,

        SizeRunAnswer sizeRun) {

    /** The nearest size. */
    @Schema(name = "NearestSize", description = "The size that the wearer comes nearest to.")
    record NearestAnswer(
            @Schema(description = "Id of the table.", example = "women-en-13402-3-bust")
            String sizeTable,

            @Schema(description = "The size.", example = "40")
            String size,

            @Schema(description = "The dimension by which it is the nearest.", example = "bustGirth")
            String by,

            @Schema(description = "Where the table comes from.")
            String source) {}

    /** A departure. */
    @Schema(name = "Departure", description = "A measurement that departs from the nearest size.")
    record DepartureAnswer(
            @Schema(description = "What was measured, by its name in ISO 8559-1.", example = "upperArmGirth")
            String dimension,

            @Schema(description = "The wearer's.", example = "31.5")
            double wearer,

            @Schema(description = "That of the nearest size.", example = "28.4")
            double table,

            @Schema(description = "Wearer less table.", example = "3.1")
            double difference,

            @Schema(description = "The size that is nearest in this dimension alone.", example = "46")
            String nearestSize) {}

    /** An estimate. */
    @Schema(name = "Estimate", description = "A measurement that was not taken, estimated by regression.")
    record EstimateAnswer(
            @Schema(description = "What was not measured, by its name in ISO 8559-1.", example = "wristGirth")
            String dimension,

            @Schema(description = "The estimate that the sleeve is drafted with.", example = "15.6")
            double value,

            @Schema(description = "Lower end of the prediction interval.", example = "14.2")
            double low,

            @Schema(description = "Upper end of the prediction interval.", example = "17")
            double high,

            @Schema(
                    description = "Share of people alike whose measurement lies between low and high.",
                    example = "0.95")
            double probability,

            @Schema(description = "What it is estimated from.", example = "[\"bustGirth\",\"stature\"]")
            List<String> from,

            @Schema(
                    description =
                            "What of that lies beyond the people surveyed: the estimate is then extrapolated, and its"
                                    + " range widened by half. Most often empty.",
                    example = "[]")
            List<String> extrapolated,

            @Schema(description = "The survey and how many people were measured.")
            String source) {}

    /** How the measurements go together. */
    @Schema(
            name = "Together",
            description =
                    "All measurements compared with one another, by means and covariance of the survey. Size itself is"
                            + " not judged: bust girth, or the first girth given, and stature are taken as they are.")
    record TogetherAnswer(
            @Schema(description = "Id of the survey.", example = "ansur-1988-women")
            String survey,

            @Schema(
                    description = "Share of people of this size whose other measurements lie at least as far out, all"
                            + " together (distance of Mahalanobis); 1 where there are none. Below 0.0025 they are"
                            + " questioned.",
                    example = "0.42")
            double rarity,

            @ArraySchema(
                    arraySchema =
                            @Schema(
                                    description = "Each measurement and what 95 of 100 people with all the others have."
                                            + " Empty where there are less than two."))
            List<ExpectationAnswer> measurements,

            @Schema(
                    description =
                            "Measurements beyond the people surveyed: what is said of them, and of others by them, is"
                                    + " extrapolated.",
                    example = "[]")
            List<String> extrapolated) {}

    /** A measurement in the light of the others. */
    @Schema(name = "Expectation", description = "A measurement in the light of all the others.")
    record ExpectationAnswer(
            @Schema(description = "What was measured, by its name in ISO 8559-1.", example = "upperArmGirth")
            String dimension,

            @Schema(description = "The wearer's.", example = "31.5")
            double value,

            @Schema(description = "Lower end of what is expected.", example = "28.1")
            double low,

            @Schema(description = "Upper end of what is expected.", example = "33.6")
            double high) {}
}
