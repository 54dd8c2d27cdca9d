package org.capwright.service.orders;

import io.swagger.v3.oas.annotations.media.Schema;
import java.util.Optional;
import org.capwright.service.http.problem.Problem;
import org.capwright.service.http.problem.ProblemKind;

/**
 * What came of a line.
 *
 * @param line its number
 * @param status what the order by itself would have been answered with
 * @param order id of the order
 * @param state how far it is
 * @param problem what is wrong
 */
@Schema(name = "BatchAnswer", description = "What came of one line: an order, or a problem.")
record BatchAnswer(
        @Schema(description = "Number of the line, from 1; blank lines count.", example = "1")
        int line,

        @Schema(
                description = "HTTP status code that the order by itself would have been answered with.",
                example = "201")
        int status,

        @Schema(description = "Id of the order, where it was taken.")
        Optional<String> order,

        @Schema(
                description = "Its state when it was taken.",
                allowableValues = {"taken", "questioned"},
                example = "taken")
        Optional<String> state,

        @Schema(description = "What is wrong, where it was not.")
        Optional<Problem> problem) {

    static BatchAnswer of(int line, Problem problem) {
        return new BatchAnswer(line, problem.status(), Optional.empty(), Optional.empty(), Optional.of(problem));
    }

    static BatchAnswer failed(int line) {
        return of(line, Problem.of(ProblemKind.INTERNAL_ERROR, "The service failed; send the line again."));
    }
}
