package org.capwright.json.problem;

import java.util.List;
import org.capwright.words.Text;

/** Thrown where JSON cannot be read as what it should be, or says what cannot be drafted: with everything that is wrong, at its fields. */
public final class RefusedRequestException extends RuntimeException {

    private static final long serialVersionUID = 1L;

    private final transient List<FieldViolation> violations;

    /**
     * A refusal.
     *
     * @param violations what is wrong, at least one
     */
    public RefusedRequestException(List<FieldViolation> violations) {
        // The values may be the measurements of a person and must not reach a log.
        super("The request is refused.");
        this.violations = List.copyOf(violations);
    }

    /**
     * What is wrong.
     *
     * @return in the order in which it was found
     */
    public List<FieldViolation> violations() {
        return violations;
    }

    /**
     * All of it in one sentence.
     *
     * @return how much is wrong, and the first of it
     */
    public Text detail() {
        FieldViolation first = violations.get(0);
        return Text.of(
                        violations.size() == 1
                                ? "One field is wrong: {field}: {reason}."
                                : "{count} fields are wrong, the first: {field}: {reason}.")
                .with("count", violations.size())
                .with("field", first.field().isEmpty() ? Text.of("the body") : Text.name(first.field()))
                .with("reason", first.reason());
    }

    /** A mistake of a caller is nothing to be traced. */
    @Override
    public Throwable fillInStackTrace() {
        return this;
    }
}
