package org.capwright.service.check;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.capwright.check.CheckedGrade;
import org.capwright.check.Threshold;
import org.capwright.check.Thresholds;
import org.capwright.measure.Quantity;
import org.capwright.measure.Unit;
import org.capwright.service.problem.FieldViolation;
import org.capwright.service.problem.FoundViolations;
import org.capwright.service.problem.ProblemException;
import org.capwright.service.shape.NearestWord;
import org.capwright.service.shape.RequestObject;
import org.capwright.service.sizerun.Drafting;
import org.capwright.service.sizerun.Findings;
import org.capwright.service.sizerun.SizeRunOrder;
import org.capwright.service.sizerun.SizeRunReader;
import org.capwright.service.sizerun.SizeRunResult;
import org.capwright.tables.SizeTable;
import org.capwright.tables.SizeTables;
import tools.jackson.databind.JsonNode;

/** Reads a size run with limits of the label, and checks it. */
final class CheckReader {

    private static final String RUN = "/sizeRun";

    private CheckReader() {}

    /**
     * Reads and checks.
     *
     * @param tree the body
     * @return what was found
     * @throws ProblemException with everything that is wrong
     */
    static CheckOrder read(JsonNode tree) {
        String symbol = tree.path("sizeRun").path("units").asStringOpt().orElse("");
        Unit unit = Unit.MILLIMETRE;
        boolean known = false;
        for (Unit one : Unit.values()) {
            if (one.symbol().equals(symbol)) {
                unit = one;
                known = true;
            }
        }
        FoundViolations found = new FoundViolations(unit);
        RequestObject body = new RequestObject(tree, CheckShape.REQUEST, "", unit, found);
        Optional<SizeRunOrder> order = order(body, found);
        // No limit can be judged without its unit.
        Thresholds thresholds = known ? thresholds(body) : Thresholds.usual();
        Optional<SizeTable> table = body.text("sizeTable").flatMap(id -> {
            Optional<SizeTable> chosen = table(id);
            if (chosen.isEmpty()) {
                body.refuse("sizeTable", unknown(id));
            }
            return chosen;
        });
        found.refuse();
        SizeRunOrder run = order.orElseThrow();
        SizeRunResult result = drafted(run);
        CheckedGrade grade = Findings.grade(result, table.or(run::sizeTable));
        return new CheckOrder(run.name(), unit, grade, Findings.of(result, grade, thresholds), List.of());
    }

    /** A table that a grade can be held against. */
    static Optional<SizeTable> table(String id) {
        return SizeTables.find(id).filter(Findings::comparable);
    }

    /** What is wrong with an id that is not of such a table. */
    static String unknown(String id) {
        List<String> ids = SizeTables.all().stream()
                .filter(Findings::comparable)
                .map(SizeTable::id)
                .toList();
        return "is not the id of a table of bodies whose sizes a body dimension orders; "
                + NearestWord.to(id, ids)
                        .map(near -> "did you mean " + near + "?")
                        .orElse("there are " + String.join(", ", ids));
    }

    private static Optional<SizeRunOrder> order(RequestObject body, FoundViolations found) {
        if (!body.has("sizeRun")) {
            return Optional.empty();
        }
        try {
            return body.raw("sizeRun").map(SizeRunReader::read);
        } catch (ProblemException e) {
            add(e, found);
            return Optional.empty();
        }
    }

    private static SizeRunResult drafted(SizeRunOrder order) {
        try {
            return Drafting.draft(order);
        } catch (ProblemException e) {
            FoundViolations found = new FoundViolations(order.unit());
            add(e, found);
            found.refuse();
            throw e;
        }
    }

    private static void add(ProblemException e, FoundViolations found) {
        for (FieldViolation violation : e.problem().violations()) {
            found.add(new FieldViolation(
                    RUN + violation.field(),
                    violation.reason(),
                    violation.value(),
                    violation.unit(),
                    violation.minimum(),
                    violation.maximum()));
        }
    }

    private static Thresholds thresholds(RequestObject body) {
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
