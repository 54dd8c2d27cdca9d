package org.capwright.service.checks;

import com.fasterxml.jackson.annotation.JsonProperty;
import io.swagger.v3.oas.annotations.media.ArraySchema;
import io.swagger.v3.oas.annotations.media.Schema;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.capwright.check.WhatIf;
import org.capwright.grade.SizeRun;
import org.capwright.quantity.Unit;
import org.capwright.service.sizerun.FindingAnswer;
import org.capwright.service.sizerun.GradeWriter;

/** The smallest change of the grade rules that clears the stops; lengths in the unit of the answer. */
@Schema(
        name = "WhatIf",
        description = "The smallest change of the grade rules that clears the stops, drafted anew and checked.")
record WhatIfAnswer(
        @Schema(description = "Whether a run with this grade has no stop any more.", example = "true")
        boolean clears,

        @ArraySchema(
                arraySchema =
                        @Schema(
                                description =
                                        "Increments that change, from the old rule to the new one; empty where no change helps."))
        List<ChangeAnswer> changes,

        @Schema(description = "The whole field grade, to be put into the request as it stands.")
        Map<String, Object> grade,

        @ArraySchema(arraySchema = @Schema(description = "Stops that no change of these rules clears."))
        List<FindingAnswer> remaining) {

    /** Off the noise of binary fractions. */
    private static final double GRID = 1e10;

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

    static WhatIfAnswer of(WhatIf.Proposal proposal, Unit unit) {
        List<ChangeAnswer> changes = new ArrayList<>();
        for (WhatIf.Change change : proposal.changes()) {
            add(changes, change, proposal.run(), unit);
        }
        return new WhatIfAnswer(
                proposal.cleared(),
                changes,
                GradeWriter.written(proposal.run().rules(), unit),
                FindingAnswer.of(proposal.remaining(), unit));
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
        return Math.rint(unit.fromMillimetres(millimetres) * GRID) / GRID + 0.0; // + 0.0 turns -0.0 into 0.0
    }
}
