package org.capwright.service.webhooks;

import java.util.Locale;

/** What a webhook can be told of. */
public enum WebhookEvent {
    /** An order was taken. */
    ORDER_TAKEN,
    /** An order was taken whose measurements are improbable; it is held until it is confirmed. */
    ORDER_QUESTIONED,
    /** An order was confirmed. */
    ORDER_CONFIRMED,
    /** The cloth of an order was cut. */
    ORDER_CUT,
    /** An order was cancelled. */
    ORDER_CANCELLED,
    /** The measurements and files of an order were erased. */
    ORDER_ERASED,
    /** Every line of a batch is answered. */
    BATCH_DONE,
    /** A batch was cancelled. */
    BATCH_CANCELLED;

    /** Sent when somebody asks for it, to whichever webhook is named. */
    static final String TRIAL = "webhook.trial";

    /**
     * The type of the event.
     *
     * @return for example {@code order.taken}
     */
    public String word() {
        return name().toLowerCase(Locale.ROOT).replace('_', '.');
    }
}
