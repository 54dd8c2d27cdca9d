package org.capwright.service.webhooks;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import java.util.stream.Stream;
import org.capwright.service.http.meters.TradeMeters;
import org.capwright.service.http.settings.Durations;
import org.capwright.service.jobs.Work;
import org.capwright.service.store.Store;
import org.springframework.beans.factory.annotation.Value;
import org.springframework.stereotype.Component;

/** Delivers events. A receiver that does not take one is tried again later, and left alone for a little by all others as well, so that a dead one keeps no hands busy. */
@Component
final class Deliveries implements Work {

    static final String NAME = "webhook-delivery";

    private final Store store;
    private final Sender sender;
    private final List<Duration> retries;

    Deliveries(Store store, Sender sender, @Value("${capwright.webhook-retries}") String retries) {
        this.store = store;
        this.sender = sender;
        this.retries = Stream.of(retries.split(","))
                .map(String::strip)
                .filter(text -> !text.isEmpty())
                .map(text -> Durations.read("capwright.webhook-retries", text, "PT5M"))
                .toList();
    }

    @Override
    public String name() {
        return NAME;
    }

    @Override
    public int urgency() {
        return 5;
    }

    private record Due(Webhook webhook, Delivery delivery, Optional<Instant> rests) {}

    @Override
    public Optional<Instant> run(String subject, int failures, BooleanSupplier ending) {
        String[] words = subject.split("/");
        String tenant = words[0];
        Optional<Due> due = store.transaction(database -> {
            WebhookBook book = new WebhookBook(database, tenant);
            return book.delivery(words[1])
                    .filter(delivery -> delivery.state() == Delivery.State.WAITING)
                    .filter(delivery -> delivery.turn() == Integer.parseInt(words[2]))
                    .flatMap(delivery -> book.find(delivery.webhook())
                            .map(webhook -> new Due(webhook, delivery, book.restsUntil(webhook.id()))));
        });
        if (due.isEmpty() || due.get().rests().isPresent()) {
            return due.flatMap(Due::rests);
        }
        Sender.Outcome outcome = sender.send(due.get().webhook(), due.get().delivery());
        TradeMeters.message(outcome.taken());
        return store.transaction(database -> noted(new WebhookBook(database, tenant), due.get(), outcome));
    }

    private Optional<Instant> noted(WebhookBook book, Due due, Sender.Outcome outcome) {
        Delivery delivery = due.delivery();
        if (outcome.taken()) {
            book.rest(due.webhook().id(), Optional.empty());
            book.tried(delivery, Delivery.State.DELIVERED, outcome.words(), Optional.empty());
            return Optional.empty();
        }
        if (outcome.gone() || delivery.attempts() >= retries.size()) {
            book.tried(delivery, Delivery.State.FAILED, outcome.words(), Optional.empty());
            return Optional.empty();
        }
        Instant next = Instant.now().plus(retries.get(delivery.attempts()));
        book.rest(due.webhook().id(), Optional.of(Instant.now().plus(retries.get(0))));
        book.tried(delivery, Delivery.State.WAITING, outcome.words(), Optional.of(next));
        return Optional.of(next);
    }
}
