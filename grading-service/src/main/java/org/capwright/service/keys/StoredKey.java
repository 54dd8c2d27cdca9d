package org.capwright.service.keys;

import java.time.Instant;
import java.util.Set;
import org.capwright.service.http.access.Scope;

/**
 * A key without its secret.
 *
 * @param id the half of it that is no secret
 * @param tenant whose it is
 * @param name who is named in histories
 * @param scopes what it is good for
 * @param madeAt when it was made
 * @param expiresAt from when it is good for nothing
 * @param origins the origins that a publishable key is bound to; empty for a secret
 */
record StoredKey(
        String id,
        String tenant,
        String name,
        Set<Scope> scopes,
        Instant madeAt,
        Instant expiresAt,
        Set<String> origins) {

    StoredKey boundTo(Set<String> to) {
        return new StoredKey(id, tenant, name, scopes, madeAt, expiresAt, to);
    }
}
