package org.capwright.json.problem;

import org.capwright.quantity.Subject;

/**
 * A field of a request, of which a violation speaks that was found while it was read.
 *
 * @param pointer where it stands, as a JSON pointer (RFC 6901)
 */
public record RequestField(String pointer) implements Subject {

    @Override
    public String code() {
        return pointer;
    }
}
