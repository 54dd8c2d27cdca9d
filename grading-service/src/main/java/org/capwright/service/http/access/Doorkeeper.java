package org.capwright.service.http.access;

import java.util.Optional;

/** Knows the keys. */
public interface Doorkeeper {

    /**
     * Whether keys are on: nobody is let in without one.
     *
     * @return false where everybody who can reach the service may do everything
     */
    boolean closed();

    /**
     * Whose key it is.
     *
     * @param key a key as a caller sends it
     * @return the caller; nobody if it is not known, was ended or has expired
     */
    Optional<Caller> caller(String key);

    /**
     * Whether a key is bound to an origin, so that pages from there may call.
     *
     * @param origin as a browser sends it
     * @return true if there is such a key
     */
    boolean knows(String origin);
}
