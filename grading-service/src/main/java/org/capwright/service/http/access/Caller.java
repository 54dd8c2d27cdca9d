package org.capwright.service.http.access;

import jakarta.servlet.http.HttpServletRequest;
import java.util.Set;

/**
 * Who calls.
 *
 * @param tenant whose styles and orders the caller sees; empty for the operator, who sees none
 * @param name who is named in histories: the name of the key
 * @param scopes what the caller may do
 */
public record Caller(String tenant, String name, Set<Scope> scopes) {

    /** Everybody, as long as keys are off: the service then answers this machine alone. */
    public static final Caller LOCAL = new Caller("local", "this machine", Set.of(Scope.values()));

    /** Who runs the installation: makes the first key of a tenant, and does nothing with what is a tenant's. */
    public static final Caller OPERATOR = new Caller("", "operator", Set.of());

    private static final String ATTRIBUTE = Caller.class.getName();

    /**
     * Who sent a request.
     *
     * @param request a request that was let in
     * @return the caller
     */
    public static Caller of(HttpServletRequest request) {
        if (request.getAttribute(ATTRIBUTE) instanceof Caller known) {
            return known;
        }
        throw new IllegalStateException("a request came past the gate");
    }

    /** Remembers who sent a request. */
    void remember(HttpServletRequest request) {
        request.setAttribute(ATTRIBUTE, this);
    }

    boolean may(Access needed) {
        return equals(OPERATOR) ? needed.operator() : scopes.contains(needed.scope());
    }
}
