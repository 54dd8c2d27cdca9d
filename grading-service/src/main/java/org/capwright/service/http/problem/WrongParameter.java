package org.capwright.service.http.problem;

import java.util.List;
import java.util.Optional;
import org.capwright.json.problem.FieldViolation;
import org.capwright.words.Text;

/** Refuses a parameter or a header of a request. */
public final class WrongParameter {

    private static final int SHOWN = 20;

    private WrongParameter() {}

    /**
     * The exception for a parameter that is wrong.
     *
     * @param parameter its name
     * @param reason what is wrong and what would work, continuing "The parameter … "
     * @param value what was given
     * @return an exception that answers 400
     */
    public static ProblemException of(String parameter, Text reason, String value) {
        String shown = value.length() > SHOWN ? value.substring(0, SHOWN) + "…" : value;
        return new ProblemException(Problem.of(
                ProblemKind.BAD_REQUEST,
                Text.of("The parameter {parameter} {reason}.")
                        .with("parameter", parameter)
                        .with("reason", reason),
                List.of(FieldViolation.of(parameter, reason, Optional.of(shown)))));
    }

    /**
     * The exception for a parameter that is wrong.
     *
     * @param parameter its name
     * @param reason what is wrong and what would work, continuing "The parameter … "
     * @param value what was given
     * @return an exception that answers 400
     */
    public static ProblemException of(String parameter, String reason, String value) {
        return of(parameter, Text.of(reason), value);
    }
}
