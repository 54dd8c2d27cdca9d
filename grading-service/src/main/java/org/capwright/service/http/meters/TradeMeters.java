package org.capwright.service.http.meters;

import io.micrometer.core.instrument.Metrics;

/** Counts what the workroom asks about: drafts, refusals, orders and pages. Nothing that is counted tells of a tenant or a wearer. */
public final class TradeMeters {

    private TradeMeters() {}

    /**
     * A style was drafted.
     *
     * @param sizes in how many sizes
     */
    public static void drafted(int sizes) {
        Metrics.counter("capwright.drafts").increment();
        Metrics.counter("capwright.drafted.sizes").increment(sizes);
    }

    /**
     * A PDF was drawn.
     *
     * @param pages how many sheets it has
     */
    public static void drawn(int pages) {
        Metrics.counter("capwright.pages").increment(pages);
    }

    /**
     * A request was refused that a caller could have made better.
     *
     * @param reason why, one of few words
     */
    public static void refused(String reason) {
        Metrics.counter("capwright.refused", "reason", reason).increment();
    }

    /**
     * Something happened to an order.
     *
     * @param event what, for example {@code order.questioned}
     */
    public static void order(String event) {
        Metrics.counter("capwright.orders", "event", event).increment();
    }

    /**
     * A message was sent to a webhook.
     *
     * @param taken whether the receiver took it
     */
    public static void message(boolean taken) {
        Metrics.counter("capwright.messages", "taken", Boolean.toString(taken)).increment();
    }
}
