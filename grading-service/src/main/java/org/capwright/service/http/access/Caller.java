package org.capwright.service.http.access;

import jakarta.servlet.http.HttpServletRequest;
import java.util.Set;

/**
 * Who calls.
 *
 * @param tenant whose styles and orders the caller sees; empty for the operator, who sees none
 * @param name who is named in histories: the name of the key
 * @param scopes what the caller may do
 * @param origins the web origins that the key is bound to, which then stands in the open in their pages; empty for a key that is a secret
 */
public record Caller(String tenant, String name, Set<Scope> scopes, Set<String> origins) {

    /** Everybody, as long as keys are off: the service then answers this machine alone. */
    public static final Caller LOCAL = new Caller("local", "this machine", Set.of(Scope.values()));

    /** Who runs the installation: makes the first key of a tenant, and does nothing with what is a tenant's. */
    public static final Caller OPERATOR = new Caller("", "operator", Set.of());

    private static final String ATTRIBUTE = Caller.class.getName();

    /**
     * A caller with a key that is a secret, or none of keys.
     *
     * @param tenant whose styles and orders the caller sees
     * @param name who is named in histories
     * @param scopes what the caller may do
     */
    public Caller(String tenant, String name, Set<Scope> scopes) {
        this(tenant, name, scopes, Set.of());
    }

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

    /**
     * Whether the key stands in the open, so that anybody may have it.
     *
     * @return true if it is bound to origins
     */
    public boolean isPublishable() {
        return !origins.isEmpty();
    }

    /** Remembers who sent a request. */
    void remember(HttpServletRequest request) {
        request.setAttribute(ATTRIBUTE, this);
    }

    boolean may(Access needed) {
        if (equals(OPERATOR)) {
            return needed.operator();
        }
        return scopes.contains(needed.scope()) && (!isPublishable() || needed.publishable());
    }
}
