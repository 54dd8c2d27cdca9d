package org.capwright.service.checks;

import io.swagger.v3.oas.annotations.media.ArraySchema;
import io.swagger.v3.oas.annotations.media.Schema;
import java.util.List;
import java.util.Locale;
import org.capwright.check.RunCoverage;
import org.capwright.quantity.Unit;
import org.capwright.tables.Interval;
import org.capwright.tables.survey.Coverage;

/** Who of a survey finds a size; lengths in the unit of the answer. */
@Schema(
        name = "Coverage",
        description = "How many of the people of a public survey find a size whose sleeve fits upper arm and arm length"
                + " both. A size fits as the base size fits its own body, give or take the slack.")
record CoverageAnswer(
        @Schema(description = "The survey. It says nothing of other populations.")
        String survey,

        @Schema(description = "People of the survey.", example = "2208")
        int people,

        @Schema(description = "People whom at least one size fits.", example = "1650")
        int covered,

        @Schema(description = "Covered divided by people.", example = "0.747")
        double share,

        @Schema(
                description =
                        "Least share in the population that the survey was drawn from, 95 % confidence (Wilson score).",
                example = "0.729")
        double least,

        @Schema(description = "Greatest share in that population, 95 % confidence.", example = "0.765")
        double greatest,

        @Schema(
                description = "The girth of the upper arm that was compared.",
                allowableValues = {"upperArmGirth", "upperArmGirthFlexed"},
                example = "upperArmGirth")
        String girth,

        @Schema(
                description =
                        "How much looser or tighter than the base size still fits: half the greatest jump of the arm"
                                + " in the table.",
                example = "0.69")
        double girthSlack,

        @Schema(
                description = "How much longer or shorter than the base size still fits. Common practice, no source.",
                example = "2")
        double lengthSlack,

        @ArraySchema(arraySchema = @Schema(description = "People whom each size fits; someone may be fitted by two."))
        List<FittedAnswer> sizes,

        @ArraySchema(arraySchema = @Schema(description = "Stretches of girth and of length that no size fits."))
        List<GapAnswer> gaps) {

    private static final double CONFIDENCE = 0.95;

    /** One size. */
    @Schema(name = "CoverageOfSize", description = "How many people a size fits.")
    record FittedAnswer(
            @Schema(description = "The size.", example = "40")
            String size,

            @Schema(description = "People of the survey whom it fits.", example = "412")
            int people) {}

    /** One gap. */
    @Schema(name = "CoverageGap", description = "A stretch of one dimension that no size fits.")
    record GapAnswer(
            @Schema(description = "The body dimension.", example = "armLength")
            String dimension,

            @Schema(
                    description = "Where it lies in the run.",
                    allowableValues = {"below", "between", "above"},
                    example = "above")
            String place,

            @Schema(description = "Lower end.", example = "57.4")
            double from,

            @Schema(description = "Upper end.", example = "63.1")
            double to,

            @Schema(description = "People of the survey in the stretch.", example = "310")
            int people) {}

    static CoverageAnswer of(RunCoverage.Covered covered, Unit unit) {
        Coverage coverage = covered.coverage();
        Interval range = coverage.shareInterval(CONFIDENCE);
        return new CoverageAnswer(
                coverage.survey().source(),
                coverage.people(),
                coverage.covered(),
                coverage.share(),
                range.lower(),
                range.upper(),
                coverage.girth().id(),
                shown(covered.girthSlack(), unit),
                shown(covered.lengthSlack(), unit),
                coverage.peopleBySize().entrySet().stream()
                        .map(size -> new FittedAnswer(size.getKey(), size.getValue()))
                        .toList(),
                coverage.gaps().stream()
                        .map(gap -> new GapAnswer(
                                gap.dimension().id(),
                                gap.place().name().toLowerCase(Locale.ROOT),
                                shown(gap.range().lower(), unit),
                                shown(gap.range().upper(), unit),
                                gap.people()))
                        .toList());
    }

    private static double shown(double millimetres, Unit unit) {
        return unit.figure(millimetres);
    }
}
