package org.capwright.service.webhooks;

import java.time.Instant;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * An event on its way to a webhook.
 *
 * @param id the id of the message, the same whenever it is sent
 * @param webhook where to
 * @param event type of the event
 * @param payload what is sent
 * @param state how far it is
 * @param turn how often somebody asked for it again
 * @param attempts how often it was tried in this turn
 * @param madeAt when it happened
 * @param triedAt when it was last tried
 * @param nextAt when it is tried again
 * @param outcome what came of the last attempt
 */
record Delivery(
        String id,
        String webhook,
        String event,
        String payload,
        State state,
        int turn,
        int attempts,
        Instant madeAt,
        Optional<Instant> triedAt,
        Optional<Instant> nextAt,
        Optional<String> outcome) {

    /** How far it is. */
    enum State {
        /** To be tried, or tried again. */
        WAITING,
        /** The receiver has it. */
        DELIVERED,
        /** Given up. */
        FAILED;

        String word() {
            return name().toLowerCase(Locale.ROOT);
        }

        static State of(String word) {
            return Stream.of(values())
                    .filter(state -> state.word().equals(word))
                    .findFirst()
                    .orElseThrow();
        }
    }
}
