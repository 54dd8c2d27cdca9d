package org.capwright.service.check;

import java.util.List;
import java.util.Optional;
import org.capwright.export.svg.JumpChart;
import org.capwright.export.svg.NestPicture;
import org.capwright.service.problem.FieldViolation;
import org.capwright.service.problem.Problem;
import org.capwright.service.problem.ProblemException;
import org.capwright.service.problem.ProblemKind;

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
                        "The parameter picture must be jumps or nest.",
                        List.of(FieldViolation.of(
                                "picture",
                                "must be one of jumps, nest",
                                Optional.of(
                                        parameter.length() > SHOWN
                                                ? parameter.substring(0, SHOWN) + "…"
                                                : parameter)))));
        };
    }

    String drawn(CheckOrder order) {
        return this == JUMPS
                ? JumpChart.write(order.name(), order.grade(), order.unit())
                : NestPicture.write(order.name(), order.grade(), order.unit());
    }
}
