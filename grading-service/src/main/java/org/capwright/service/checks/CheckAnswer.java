package org.capwright.service.checks;

import io.swagger.v3.oas.annotations.media.ArraySchema;
import io.swagger.v3.oas.annotations.media.Schema;
import java.util.List;
import java.util.Optional;
import org.capwright.service.sizerun.FindingAnswer;

/** The JSON answer to a grade that was checked; lengths in the unit named by {@code unit}. */
@Schema(name = "CheckReport", description = "A grade compared with bodies and practice.")
record CheckAnswer(
        @Schema(description = "Name of the style.", example = "Choir gown, bell shoulder")
        String name,

        @Schema(
                description = "Unit of every length.",
                allowableValues = {"mm", "cm", "in"},
                example = "cm")
        String unit,

        @Schema(description = "Names of the sizes, smallest first.", example = "[\"36\",\"38\",\"40\"]")
        List<String> sizes,

        @Schema(description = "The base size.", example = "40")
        String baseSize,

        @Schema(description = "Id of the table that the jumps were compared with.", example = "women-en-13402-3-bust")
        Optional<String> sizeTable,

        @Schema(description = "Where the table comes from.") Optional<String> source,

        SummaryAnswer summary,

        @ArraySchema(arraySchema = @Schema(description = "What was found, check by check; may be empty."))
        List<FindingAnswer> findings,

        @ArraySchema(
                arraySchema =
                        @Schema(
                                description =
                                        "What is behind the findings, the most telling first: single figures whose"
                                                + " change takes findings away. Empty where no single figure explains"
                                                + " any."))
        List<CauseAnswer> causes,

        @ArraySchema(arraySchema = @Schema(description = "The jumps of the garment beside those of the body."))
        List<JumpAnswer> jumps,

        @Schema(
                description =
                        "The smallest change of the grade rules that leaves no finding as grave as the gravest; there"
                                + " for a size run with stops or cautions.")
        Optional<WhatIfAnswer> whatIf,

        @Schema(
                description = "Who of a public survey finds a size; there where the bodies have a survey, and bicep and"
                        + " length are known.")
        Optional<CoverageAnswer> coverage,

        @ArraySchema(
                arraySchema = @Schema(description = "How a file was understood, step by step; empty for a size run."))
        List<TraceAnswer> traces,

        @ArraySchema(
                arraySchema =
                        @Schema(
                                description =
                                        "The figures as they were read from a spec table, in question or not; empty"
                                                + " for others."))
        List<FiguresAnswer> figures,

        @ArraySchema(
                arraySchema =
                        @Schema(
                                description =
                                        "Rows of a spec table whose names are not known, with what they may be; say it"
                                                + " by the mapping."))
        List<UnreadAnswer> unread) {

    /** A row as it was read. */
    @Schema(name = "ReadFigures", description = "The figures of a point of measure as they were read from a file.")
    record FiguresAnswer(
            @Schema(description = "Code of the point of measure.", example = "bicep")
            String measure,

            @ArraySchema(
                    arraySchema =
                            @Schema(
                                    description = "One per size, smallest first; null where there is none. Lengths all"
                                            + " round, halves doubled."),
                    schema = @Schema(nullable = true, type = "number"))
            List<Optional<Double>> values) {}

    /** A row that was not read. */
    @Schema(name = "UnreadRow", description = "A row or column with figures whose name is not known.")
    record UnreadAnswer(
            @Schema(description = "Line of the file from 1.", example = "4")
            int line,

            @Schema(description = "The name as it is written.", example = "Armlochumfg.")
            String name,

            @ArraySchema(
                    arraySchema =
                            @Schema(description = "What it may be, the likeliest first; nothing is used unasked."))
            List<ProposalAnswer> proposals) {}

    /** What a row may be. */
    @Schema(name = "RowProposal", description = "What a row may be.")
    record ProposalAnswer(
            @Schema(description = "Code of the point of measure, for the mapping.", example = "armhole")
            String measure,

            @Schema(description = "The likeness of words or figures that speaks for it.")
            String why) {}

    /** How many findings there are. */
    @Schema(name = "CheckSummary", description = "How many findings there are of each severity.")
    record SummaryAnswer(
            @Schema(
                    description =
                            "What to make of it: not judged where a part of the file was not read, else the gravest of"
                                    + " stop and caution, or pass.",
                    allowableValues = {"not judged", "stop", "caution", "pass"},
                    example = "caution")
            String verdict,

            @Schema(
                    description = "The gravest severity; none where there is no finding.",
                    allowableValues = {"none", "info", "caution", "stop"},
                    example = "caution")
            String gravest,

            @Schema(description = "Do not cut before these are mended or meant.", example = "0")
            int stop,

            @Schema(description = "Look at these before cutting.", example = "2")
            int caution,

            @Schema(description = "Worth knowing.", example = "5")
            int info) {}

    /** One cause. */
    @Schema(name = "Cause", description = "One figure that explains findings, with its cure.")
    record CauseAnswer(
            @Schema(
                    description = "What is the matter.",
                    example = "One figure explains 3 findings: the jump of bicep from 40 to 42.")
            String message,

            WhatIfAnswer.CureAnswer cure,

            @ArraySchema(
                    arraySchema =
                            @Schema(
                                    description = "Places in findings, from 0, of what it explains.",
                                    example = "[0,3]"))
            List<Integer> findings) {}

    /** One jump. */
    @Schema(name = "Jump", description = "The growth of a measure from one size to the next, beside that of the body.")
    record JumpAnswer(
            @Schema(description = "Code of the point of measure.", example = "bicep")
            String measure,

            @Schema(description = "The smaller size.", example = "38")
            String from,

            @Schema(description = "The larger size.", example = "40")
            String to,

            @Schema(description = "Growth of the garment.", example = "1.3")
            double garment,

            @Schema(description = "The body dimension, where a table is chosen.", example = "upperArmGirth")
            Optional<String> dimension,

            @Schema(description = "Growth of the body in the table, where it has both sizes.", example = "1.24")
            Optional<Double> body,

            @Schema(description = "Least growth of the garment that passes against the body.", example = "1.11")
            Optional<Double> least,

            @Schema(description = "Greatest growth of the garment that passes against the body.", example = "1.8")
            Optional<Double> greatest) {}

    /** One step of reading a file. */
    @Schema(name = "Trace", description = "One step of how a file was understood.")
    record TraceAnswer(
            @Schema(
                    description =
                            "Whether the file says so, it was assumed, is not used by any check, or was not read and"
                                    + " so not judged.",
                    allowableValues = {"found", "assumed", "left-out", "not-read"},
                    example = "found")
            String kind,

            @Schema(
                    description = "What the sender called the file; empty where only one was sent as the body.",
                    example = "sleeve-40.dxf")
            String file,

            @Schema(description = "Line of the file from 1; 0 where it is about the whole file.", example = "3")
            int line,

            @Schema(description = "What it is about: a size, a point of measure or the file.", example = "bicep")
            String subject,

            @Schema(description = "What was taken for what and why.")
            String words) {}
}
