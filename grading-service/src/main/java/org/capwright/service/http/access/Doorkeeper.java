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
}
