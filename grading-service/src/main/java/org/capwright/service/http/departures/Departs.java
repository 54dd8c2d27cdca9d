package org.capwright.service.http.departures;

import java.lang.annotation.ElementType;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;

/**
 * A call, or a parameter of one, that is to go. The description marks it, and whoever uses it is told by headers: {@code Deprecation} (RFC 9745), {@code Sunset} (RFC 8594) and a link to what takes its place.
 */
@Target({ElementType.METHOD, ElementType.PARAMETER})
@Retention(RetentionPolicy.RUNTIME)
public @interface Departs {

    /**
     * From when on it should not be used.
     *
     * @return an instant, such as 2027-01-01T00:00:00Z
     */
    String since();

    /**
     * When it ends: a year after that at the earliest.
     *
     * @return an instant
     */
    String ends();

    /**
     * Where it is said what takes its place.
     *
     * @return an address, such as a part of the page of the description
     */
    String instead();
}
