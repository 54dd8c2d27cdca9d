package org.capwright.service.sizerun;

import java.util.Optional;
import org.capwright.json.problem.FoundViolations;
import org.capwright.json.problem.RefusedRequestException;
import org.capwright.json.schema.RequestObject;
import org.capwright.json.style.SizeRunReader;
import org.capwright.json.style.SizeRunRequest;
import org.capwright.quantity.Unit;
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
        } catch (RefusedRequestException e) {
            add(e, found);
            return Optional.empty();
        }
    }

    /**
     * Drafts every size.
     *
     * @param order the run
     * @return the run with its pieces
     * @throws RefusedRequestException if a size cannot be drafted, with everything that is wrong at the fields of the whole request
     */
    public static SizeRunResult drafted(SizeRunRequest order) {
        try {
            return SizeRunService.draft(order);
        } catch (RefusedRequestException e) {
            FoundViolations found = new FoundViolations(order.unit());
            add(e, found);
            found.refuse();
            throw e;
        }
    }

    private static void add(RefusedRequestException e, FoundViolations found) {
        e.violations().forEach(violation -> found.add(violation.at(POINTER + violation.field())));
    }
}
