package org.capwright.service.jobs;

import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import org.capwright.service.http.problem.ProblemException;
import org.capwright.service.store.Store;
import org.springframework.boot.context.event.ApplicationReadyEvent;
import org.springframework.context.event.EventListener;
import org.springframework.stereotype.Component;

/** Opens a store that has been used before, shortly after the start, so that what was left undone goes on without anybody's call. A store that nobody has put anything in stays unopened. */
@Component
final class Resumption implements AutoCloseable {

    /** The first calls go before. */
    private static final int SOON = 2;

    private static final int AGAIN = 30;

    private final Store store;
    private final ScheduledExecutorService clock = Executors.newSingleThreadScheduledExecutor(work -> {
        Thread thread = new Thread(work, "resumption");
        thread.setDaemon(true);
        return thread;
    });

    Resumption(Store store) {
        this.store = store;
    }

    @EventListener(ApplicationReadyEvent.class)
    void begin() {
        if (store.begun()) {
            clock.scheduleWithFixedDelay(this::open, SOON, AGAIN, TimeUnit.SECONDS);
        }
    }

    private void open() {
        try {
            store.transaction(database -> true);
            clock.shutdown();
        } catch (ProblemException e) {
            // The store has said why; it may be reached later.
        }
    }

    @Override
    public void close() {
        clock.shutdownNow();
    }
}
