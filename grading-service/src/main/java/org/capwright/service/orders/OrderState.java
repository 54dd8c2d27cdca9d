package org.capwright.service.orders;

import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.capwright.service.webhooks.WebhookEvent;

/** How far an order is. */
enum OrderState {
    /** Ready to be cut. */
    TAKEN,
    /** Held: a measurement is improbable. */
    QUESTIONED,
    /** Measured again and right, or looked at once more. */
    CONFIRMED,
    /** The cloth is cut. What is wrong now is a remake. */
    CUT,
    /** Given up. */
    CANCELLED;

    String word() {
        return name().toLowerCase(Locale.ROOT);
    }

    static Optional<OrderState> find(String word) {
        return Stream.of(values()).filter(state -> state.word().equals(word)).findFirst();
    }

    /** What webhooks are told when an order comes to it. */
    WebhookEvent event() {
        return switch (this) {
            case TAKEN -> WebhookEvent.ORDER_TAKEN;
            case QUESTIONED -> WebhookEvent.ORDER_QUESTIONED;
            case CONFIRMED -> WebhookEvent.ORDER_CONFIRMED;
            case CUT -> WebhookEvent.ORDER_CUT;
            case CANCELLED -> WebhookEvent.ORDER_CANCELLED;
        };
    }

    /** What may come after it. */
    Set<OrderState> next() {
        return switch (this) {
            case TAKEN -> Set.of(CONFIRMED, CUT, CANCELLED);
            case QUESTIONED -> Set.of(CONFIRMED, CANCELLED);
            case CONFIRMED -> Set.of(CUT, CANCELLED);
            case CUT, CANCELLED -> Set.of();
        };
    }

    /** Whether it may be cut or was: nobody gets a file of an order that must not be cut. */
    boolean drawn() {
        return this != QUESTIONED && this != CANCELLED;
    }
}
