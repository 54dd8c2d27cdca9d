package org.capwright.service.orders;

import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import org.capwright.service.http.settings.Durations;
import org.capwright.service.jobs.Work;
import org.capwright.service.store.Store;
import org.capwright.service.store.Times;
import org.springframework.beans.factory.annotation.Value;
import org.springframework.stereotype.Component;

/** Takes the results of a batch away some time after it ended, and what was left of one whose sender broke off. */
@Component
final class BatchEnd implements Work {

    static final String NAME = "order-batch-end";

    private static final Duration LOOKS_EVERY = Duration.ofHours(6);

    private final Store store;
    private final Duration keep;

    BatchEnd(Store store, @Value("${capwright.keep-batches}") String keep) {
        this.store = store;
        this.keep = Durations.read("capwright.keep-batches", keep, "P7D");
    }

    @Override
    public String name() {
        return NAME;
    }

    @Override
    public int urgency() {
        return 1;
    }

    @Override
    public Optional<Instant> run(String subject, int failures, BooleanSupplier ending) {
        String[] words = subject.split("/");
        boolean gone = store.transaction(database ->
                new BatchBook(database, words[0]).remove(words[1], Times.now().minus(keep)));
        return gone ? Optional.empty() : Optional.of(Instant.now().plus(LOOKS_EVERY));
    }
}
