package org.capwright.service.http.access;

import java.util.Optional;
import org.springframework.web.method.HandlerMethod;

/**
 * What a call needs.
 *
 * @param scope the scope of the key
 * @param operator whether the operator may call it as well
 * @param publishable whether keys may call it that are bound to origins
 */
public record Access(Scope scope, boolean operator, boolean publishable) {

    private static final Access USUAL = new Access(Scope.READ, false, false);

    /**
     * What a method needs that answers a call.
     *
     * @param handler the method
     * @return what {@link Needs} says, else the usual
     */
    public static Access of(HandlerMethod handler) {
        return Optional.ofNullable(handler.getMethodAnnotation(Needs.class))
                .map(needs -> new Access(needs.value(), needs.operator(), needs.publishable()))
                .orElse(USUAL);
    }
}
