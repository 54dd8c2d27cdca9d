package org.capwright.service.styles;

import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;
import org.capwright.json.problem.FieldViolation;
import org.capwright.service.http.problem.Problem;
import org.capwright.service.http.problem.ProblemException;
import org.capwright.service.http.problem.ProblemKind;
import org.capwright.words.Text;

/** The id of a style, chosen by who keeps it. Small letters alone, so that no two differ by their case. */
final class StyleId {

    static final String PATTERN = "^[a-z0-9][a-z0-9._-]{0,63}$";

    static final String REASON =
            "must be 1 to 64 of the characters a to z, 0 to 9, full stop, hyphen and underscore, a letter or digit"
                    + " first";

    private static final Pattern RIGHT = Pattern.compile(PATTERN);

    private StyleId() {}

    static boolean right(String id) {
        return RIGHT.matcher(id).matches();
    }

    /** The id, for a style that is to be kept. */
    static String checked(String id) {
        if (!right(id)) {
            String shown = id.length() > 64 ? id.substring(0, 64) + "…" : id;
            throw new ProblemException(Problem.of(
                    ProblemKind.BAD_REQUEST,
                    Text.of("The id {reason}.").with("reason", Text.of(REASON)),
                    List.of(FieldViolation.of("id", REASON, Optional.of(shown)))));
        }
        return id;
    }
}
