package org.capwright.service.checks;

import com.fasterxml.jackson.annotation.JsonProperty;
import io.swagger.v3.oas.annotations.media.ArraySchema;
import io.swagger.v3.oas.annotations.media.Schema;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.capwright.check.WhatIf;
import org.capwright.grade.SizeRun;
import org.capwright.json.style.GradeWriter;
import org.capwright.quantity.Unit;
import org.capwright.service.sizerun.FindingAnswer;
import org.capwright.words.Language;

/** The smallest change of the grade rules that leaves no finding as grave as the gravest; lengths in the unit of the answer. */
@Schema(
        name = "WhatIf",
        description =
                "The smallest change of the grade rules that leaves no finding as grave as the gravest (no stop; or no"
                        + " caution, where nothing stops) and creates none, drafted anew and checked. As few figures"
                        + " change as will do.")
record WhatIfAnswer(
        @Schema(
                description = "Whether a run with this grade has no finding as grave as the gravest any more.",
                example = "true")
        boolean clears,

        @ArraySchema(
                arraySchema =
                        @Schema(
                                description = "The figures to change, the most telling first: one, where one is enough."
                                        + " Empty where no change helps, or all increments have to change at"
                                        + " once."))
        List<CureAnswer> cures,

        @ArraySchema(
                arraySchema =
                        @Schema(
                                description = "Increments that change, from the old rule to the new one; empty where no"
                                        + " change helps."))
        List<ChangeAnswer> changes,

        @Schema(description = "The whole field grade, to be put into the request as it stands.")
        Map<String, Object> grade,

        @ArraySchema(arraySchema = @Schema(description = "The gravest findings that no change of these rules clears."))
        List<FindingAnswer> remaining) {

    /** One increment before and after. */
    @Schema(name = "RuleChange", description = "One increment of a grade rule, before and after.")
    record ChangeAnswer(
            @Schema(description = "Name of the rule in grade.", example = "bicep")
            String dimension,

            @Schema(description = "The smaller size.", example = "38")
            String from,

            @Schema(description = "The larger size.", example = "40")
            String to,

            @Schema(description = "The increment as it was.", example = "0.4")
            double old,

            @Schema(description = "The increment proposed.", example = "1.1") @JsonProperty("new")
            double proposed) {}

    /** One figure to change. */
    @Schema(
            name = "Cure",
            description =
                    "One figure to change: an increment, a rule that is the same between all sizes, or the figure of a"
                            + " size.")
    record CureAnswer(
            @Schema(description = "Name of the rule in grade, or point of measure of a spec table.", example = "bicep")
            String dimension,

            @Schema(
                    description =
                            "The sizes of the jump; the smallest and the largest where the rule is the same between"
                                    + " all sizes; one size where its own figure is meant.",
                    example = "[\"38\",\"40\"]")
            List<String> sizes,

            @Schema(description = "The figure as it was.", example = "3")
            double old,

            @Schema(description = "The figure proposed.", example = "1.4") @JsonProperty("new")
            double proposed,

            @Schema(description = "The least figure that passes as well.", example = "1.35")
            double least,

            @Schema(description = "The greatest figure that passes as well.", example = "1.45")
            double greatest,

            @Schema(description = "How many cautions and stops go with it.", example = "7")
            int cured) {

        static CureAnswer of(WhatIf.Cure cure, Unit unit) {
            return new CureAnswer(
                    cure.place().code(),
                    cure.sizes(),
                    shown(cure.before(), unit),
                    shown(cure.after(), unit),
                    shown(cure.passing().lower(), unit),
                    shown(cure.passing().upper(), unit),
                    cure.cured().size());
        }
    }

    static WhatIfAnswer of(WhatIf.Proposal proposal, Unit unit, Language language) {
        List<ChangeAnswer> changes = new ArrayList<>();
        for (WhatIf.Change change : proposal.changes()) {
            add(changes, change, proposal.run(), unit);
        }
        return new WhatIfAnswer(
                proposal.cleared(),
                proposal.cures().stream().map(cure -> CureAnswer.of(cure, unit)).toList(),
                changes,
                GradeWriter.written(proposal.run().rules(), unit),
                FindingAnswer.of(proposal.remaining(), unit, language));
    }

    private static void add(List<ChangeAnswer> changes, WhatIf.Change change, SizeRun run, Unit unit) {
        List<Double> before = change.before().increments();
        List<Double> after = change.after().increments();
        for (int k = 0; k < after.size(); k++) {
            if (!before.get(k).equals(after.get(k))) {
                changes.add(new ChangeAnswer(
                        change.dimension().gradeName(),
                        run.sizes().get(k).label(),
                        run.sizes().get(k + 1).label(),
                        shown(before.get(k), unit),
                        shown(after.get(k), unit)));
            }
        }
    }

    private static double shown(double millimetres, Unit unit) {
        return unit.figure(millimetres);
    }
}
