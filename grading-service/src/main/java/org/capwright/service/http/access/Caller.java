package org.capwright.service.http.access;

import jakarta.servlet.http.HttpServletRequest;
import java.util.Set;

/**
 * Who calls.
 *
 * @param tenant whose styles and orders the caller sees
 * @param name who is named in histories: the name of the key
 * @param scopes what the caller may do
 */
public record Caller(String tenant, String name, Set<Scope> scopes) {

    /** Everybody, as long as keys are off: the service then answers this machine alone. */
    public static final Caller LOCAL = new Caller("local", "this machine", Set.of(Scope.values()));

    private static final String ATTRIBUTE = Caller.class.getName();

    /**
     * Who sent a request.
     *
     * @param request a request that was let in
     * @return the caller
     */
    public static Caller of(HttpServletRequest request) {
        return request.getAttribute(ATTRIBUTE) instanceof Caller known ? known : LOCAL;
    }

    /** Remembers who sent a request. */
    void remember(HttpServletRequest request) {
        request.setAttribute(ATTRIBUTE, this);
    }
}
