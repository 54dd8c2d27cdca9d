package org.capwright.quantity;

import java.util.List;
import java.util.stream.Collectors;

/**
 * Thrown when measures cannot work: no sleeve can be drafted from them, or no table has them. Carries everything that was found wrong, each with what would work.
 *
 * <p>The message names subjects and reasons, never a value: values may be measurements of a person.
 */
public final class InvalidMeasuresException extends IllegalArgumentException {

    private static final long serialVersionUID = 1L;

    private final transient List<Violation> violations;

    /**
     * An exception for one or more violations.
     *
     * @param violations at least one
     */
    public InvalidMeasuresException(List<Violation> violations) {
        super(violations.stream()
                .map(v -> v.subject().code() + ": " + v.sentence())
                .collect(Collectors.joining("; ")));
        this.violations = List.copyOf(violations);
    }

    /**
     * An exception for one violation.
     *
     * @param violation what is wrong
     */
    public InvalidMeasuresException(Violation violation) {
        this(List.of(violation));
    }

    /**
     * What is wrong.
     *
     * @return at least one violation
     */
    public List<Violation> violations() {
        return violations;
    }
}
