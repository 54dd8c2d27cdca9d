package org.capwright.service.checks;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.capwright.check.CheckedGrade;
import org.capwright.check.Findings;
import org.capwright.check.Threshold;
import org.capwright.check.Thresholds;
import org.capwright.json.problem.FoundViolations;
import org.capwright.json.schema.RequestObject;
import org.capwright.json.style.SizeRunRequest;
import org.capwright.json.tables.TableReader;
import org.capwright.quantity.Quantity;
import org.capwright.quantity.Unit;
import org.capwright.service.http.problem.ProblemException;
import org.capwright.service.sizerun.NestedRun;
import org.capwright.service.sizerun.SizeRunResult;
import org.capwright.tables.SizeTable;
import org.capwright.words.Language;
import tools.jackson.databind.JsonNode;

/** Reads a size run with limits of the label, and checks it. */
final class CheckReader {

    private CheckReader() {}

    /**
     * Reads and checks.
     *
     * @param tree the body
     * @return what was found
     * @throws ProblemException with everything that is wrong
     */
    static GradeUnderCheck read(JsonNode tree) {
        Optional<Unit> named = NestedRun.unit(tree);
        Unit unit = named.orElse(Unit.MILLIMETRE);
        FoundViolations found = new FoundViolations(unit);
        RequestObject body = new RequestObject(tree, CheckSchema.REQUEST, "", unit, found);
        Optional<SizeRunRequest> order = NestedRun.read(body, found);
        // No limit can be judged without its unit.
        Thresholds thresholds = named.isPresent() ? thresholds(body) : Thresholds.usual();
        Optional<SizeTable> table = TableReader.field(body, found);
        found.refuse();
        SizeRunRequest run = order.orElseThrow();
        SizeRunResult result = NestedRun.drafted(run);
        CheckedGrade grade = CheckedGrade.of(result.run()).against(table.or(run::sizeTable));
        return new GradeUnderCheck(
                run.name(),
                unit,
                grade,
                Findings.of(result.patterns(), grade, thresholds),
                List.of(),
                Optional.empty(),
                thresholds,
                Optional.of(result),
                Language.ENGLISH);
    }

    /** The limits that the label sets itself. */
    static Thresholds thresholds(RequestObject body) {
        Map<Threshold, Double> own = new EnumMap<>(Threshold.class);
        body.object("thresholds").ifPresent(limits -> {
            for (Threshold threshold : Threshold.values()) {
                OptionalDouble limit = threshold.quantity() == Quantity.LENGTH
                        ? limits.length(threshold.key())
                        : limits.ratio(threshold.key());
                limit.ifPresent(value -> own.put(threshold, value));
            }
        });
        return new Thresholds(own);
    }
}
