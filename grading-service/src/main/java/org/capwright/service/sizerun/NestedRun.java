package org.capwright.service.sizerun;

import java.util.Optional;
import org.capwright.quantity.Unit;
import org.capwright.service.http.problem.FieldViolation;
import org.capwright.service.http.problem.FoundViolations;
import org.capwright.service.http.problem.ProblemException;
import org.capwright.service.http.schema.RequestObject;
import tools.jackson.databind.JsonNode;

/** A size run within another request, as its field {@code sizeRun}. */
public final class NestedRun {

    private static final String POINTER = "/sizeRun";

    private NestedRun() {}

    /**
     * The unit of the run, in which the lengths around it are read as well.
     *
     * @param tree the whole request
     * @return the unit; none if it is not named or wrong
     */
    public static Optional<Unit> unit(JsonNode tree) {
        return tree.path("sizeRun").path("units").asStringOpt().flatMap(Unit::find);
    }

    /**
     * Reads the run.
     *
     * @param body a request that declares the field
     * @param found gathers everything that is wrong with it
     * @return the run; none if it was left out or is wrong
     */
    public static Optional<SizeRunRequest> read(RequestObject body, FoundViolations found) {
        try {
            return body.raw("sizeRun").map(SizeRunReader::read);
        } catch (ProblemException e) {
            add(e, found);
            return Optional.empty();
        }
    }

    /**
     * Drafts every size.
     *
     * @param order the run
     * @return the run with its pieces
     * @throws ProblemException if a size cannot be drafted, with everything that is wrong at the fields of the whole request
     */
    public static SizeRunResult drafted(SizeRunRequest order) {
        try {
            return SizeRunService.draft(order);
        } catch (ProblemException e) {
            FoundViolations found = new FoundViolations(order.unit());
            add(e, found);
            found.refuse();
            throw e;
        }
    }

    private static void add(ProblemException e, FoundViolations found) {
        for (FieldViolation violation : e.problem().violations()) {
            found.add(violation.at(POINTER + violation.field(), violation.reason()));
        }
    }
}
