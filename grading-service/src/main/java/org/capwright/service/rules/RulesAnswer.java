package org.capwright.service.rules;

import io.swagger.v3.oas.annotations.media.ArraySchema;
import io.swagger.v3.oas.annotations.media.Schema;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.capwright.service.sizerun.FindingAnswer;

/** Derived grade rules; lengths in the unit named by {@code unit}. */
@Schema(name = "GradeRules", description = "Grade rules that follow the growth of bodies, with how each came about.")
record RulesAnswer(
        @Schema(
                description = "Unit of every length.",
                allowableValues = {"mm", "cm", "in"},
                example = "cm")
        String unit,

        @Schema(description = "Names of the sizes, smallest first.", example = "[\"36\",\"38\",\"40\"]")
        List<String> sizes,

        @Schema(description = "The base size.", example = "40")
        String baseSize,

        @Schema(description = "Id of the table of bodies.", example = "women-en-13402-3-bust")
        String sizeTable,

        @Schema(description = "Where the table comes from.") String source,

        @Schema(description = "Step of the grid.", example = "0.1")
        double grid,

        @Schema(description = "The whole field grade, to be put into the request as it stands.")
        Map<String, Object> grade,

        @ArraySchema(arraySchema = @Schema(description = "How each derived rule came about."))
        List<DerivationAnswer> derivations,

        @ArraySchema(
                arraySchema =
                        @Schema(
                                description =
                                        "Cautions and stops that even rules on this grid bring about all the same,"
                                                + " each with its reason; empty where all checks pass, or growth is"
                                                + " rounded by size."))
        List<FindingAnswer> findings) {

    /** How one rule came about. */
    @Schema(name = "Derivation", description = "How a rule came about. Growth is counted from the base size.")
    record DerivationAnswer(
            @Schema(description = "Name of the rule in grade.", example = "bicep")
            String dimension,

            @Schema(
                    description = "The body dimension that it follows, where it follows one.",
                    example = "upperArmGirth")
            Optional<String> body,

            @Schema(description = "How it came about.", example = "as upperArmGirth, with the same ease in every size")
            String words,

            @Schema(description = "The publication that the growth goes back to, or that it was stated in the request.")
            String source,

            @Schema(
                    description = "Growth from the base size before rounding, one per size.",
                    example = "[-1.12,0,1.29]")
            List<Double> exact,

            @Schema(description = "Growth on the grid, as the grade has it.", example = "[-1.1,0,1.3]")
            List<Double> rounded,

            @Schema(
                    description = "Sizes whose body figure comes from the survey, as the table has a gap there.",
                    example = "[]")
            List<String> estimated) {}
}
