package org.capwright.service.orders;

import java.util.Optional;
import java.util.regex.Pattern;
import org.capwright.service.http.problem.WrongParameter;
import org.capwright.service.store.Fingerprint;

/**
 * What a caller names an attempt by, so that trying again takes no second order.
 *
 * @param text the key
 * @param request fingerprint of the request that came with it
 */
record IdempotencyKey(String text, String request) {

    static final String HEADER = "Idempotency-Key";

    private static final Pattern RIGHT = Pattern.compile("[\\x21-\\x7e]{1,200}");

    /** Reads the header with what was sent. */
    static Optional<IdempotencyKey> of(Optional<String> header, String style, byte[] body) {
        return text(header).map(key -> new IdempotencyKey(key, Fingerprint.of(style + "\n" + Fingerprint.of(body))));
    }

    /** Reads the header; the quotes of a structured field may be left out. */
    static Optional<String> text(Optional<String> header) {
        return header.map(value -> {
            String text = value.strip();
            boolean quoted = text.length() > 1 && text.startsWith("\"") && text.endsWith("\"");
            String key = quoted ? text.substring(1, text.length() - 1) : text;
            if (!RIGHT.matcher(key).matches()) {
                throw WrongParameter.of(HEADER, "must be 1 to 200 visible ASCII characters", value);
            }
            return key;
        });
    }
}
