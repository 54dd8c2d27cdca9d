package org.capwright.measure;

import java.util.List;
import java.util.stream.Collectors;

/** Thrown when no sleeve can be drafted from the measures given. Carries everything that was found wrong, each with what would work. */
public final class InvalidMeasuresException extends RuntimeException {

    private static final long serialVersionUID = 1L;

    private final transient List<Violation> violations;

    /**
     * An exception for one or more violations.
     *
     * @param violations at least one
     */
    public InvalidMeasuresException(List<Violation> violations) {
        super(violations.stream().map(v -> v.pointer() + ": " + v.reason()).collect(Collectors.joining("; ")));
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
