package org.capwright.service.styles;

import java.time.Instant;

/**
 * One revision of a style. It never changes.
 *
 * @param id id of the style
 * @param revision its number, from 1
 * @param name name of the style
 * @param body the body, JSON
 * @param sha256 fingerprint of the body
 * @param madeAt when it was made
 * @param madeBy name of the key that made it
 * @param archived whether the style is archived
 */
public record StyleRevision(
        String id,
        int revision,
        String name,
        String body,
        String sha256,
        Instant madeAt,
        String madeBy,
        boolean archived) {

    private static final int TAG = 12;

    /** Number and fingerprint: a style that was deleted and made anew begins at 1 again, and is not what it was. */
    String entityTag() {
        return "\"" + revision + "-" + sha256.substring(0, TAG) + "\"";
    }
}
