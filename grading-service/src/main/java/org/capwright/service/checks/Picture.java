package org.capwright.service.checks;

import java.util.List;
import java.util.Optional;
import org.capwright.json.problem.FieldViolation;
import org.capwright.report.JumpChart;
import org.capwright.report.NestPicture;
import org.capwright.service.http.problem.Problem;
import org.capwright.service.http.problem.ProblemException;
import org.capwright.service.http.problem.ProblemKind;
import org.capwright.words.Text;

/** What of a checked grade is drawn. */
enum Picture {
    /** Jumps beside those of the body. */
    JUMPS,
    /** The lines of all sizes over one another. */
    NEST;

    private static final int SHOWN = 20;

    static Picture of(String parameter) {
        return switch (parameter) {
            case "jumps" -> JUMPS;
            case "nest" -> NEST;
            default ->
                throw new ProblemException(Problem.of(
                        ProblemKind.BAD_REQUEST,
                        Text.of("The parameter picture must be jumps or nest."),
                        List.of(FieldViolation.of(
                                "picture",
                                "must be one of jumps, nest",
                                Optional.of(
                                        parameter.length() > SHOWN
                                                ? parameter.substring(0, SHOWN) + "…"
                                                : parameter)))));
        };
    }

    String drawn(GradeUnderCheck order) {
        return this == JUMPS
                ? JumpChart.write(order.name(), order.grade(), order.unit(), order.language())
                : NestPicture.write(order.name(), order.grade(), order.unit(), order.language());
    }
}
