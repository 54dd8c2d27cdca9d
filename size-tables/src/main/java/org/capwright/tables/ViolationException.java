package org.capwright.tables;

import java.util.List;
import java.util.stream.Collectors;

/**
 * Input that cannot be used, with everything that is wrong with it.
 *
 * <p>The message holds the values given, which may be measurements of a person: show it to the caller, keep it out of
 * logs.
 */
public final class ViolationException extends IllegalArgumentException {

    private final transient List<Violation> violations;

    /**
     * Collects all violations of one input.
     *
     * @param violations at least one violation, in the order of the fields
     */
    public ViolationException(List<Violation> violations) {
        super(violations.stream().map(Violation::toString).collect(Collectors.joining("; ")));
        this.violations = List.copyOf(violations);
    }

    /**
     * Reports a single violation.
     *
     * @param violation what is wrong
     */
    public ViolationException(Violation violation) {
        this(List.of(violation));
    }

    /**
     * Everything that is wrong with the input.
     *
     * @return an unmodifiable list, not empty
     */
    public List<Violation> violations() {
        return violations;
    }
}
