package org.capwright.service.orders;

import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import org.capwright.service.http.access.Caller;
import org.capwright.service.http.settings.Durations;
import org.capwright.service.store.Store;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.beans.factory.annotation.Value;
import org.springframework.boot.context.event.ApplicationReadyEvent;
import org.springframework.context.event.EventListener;
import org.springframework.stereotype.Component;

/** Erases the measurements of orders that were cut or cancelled long ago, if the setting says after how long. An order that is still open is left alone. */
@Component
final class Retention implements AutoCloseable {

    private static final Logger LOG = LoggerFactory.getLogger(Retention.class);
    private static final String NAME = "retention";
    private static final int AT_ONCE = 100;

    private final Store store;
    private final OrderDesk desk;
    private final Optional<Duration> keep;
    private final ScheduledExecutorService clock = Executors.newSingleThreadScheduledExecutor(work -> {
        Thread thread = new Thread(work, NAME);
        thread.setDaemon(true);
        return thread;
    });

    Retention(Store store, OrderDesk desk, @Value("${capwright.keep-measurements}") String keep) {
        this.store = store;
        this.desk = desk;
        this.keep = keep.isBlank()
                ? Optional.empty()
                : Optional.of(Durations.read("capwright.keep-measurements", keep, "P730D"));
    }

    @EventListener(ApplicationReadyEvent.class)
    void begin() {
        keep.ifPresent(duration -> clock.scheduleWithFixedDelay(this::look, 0, 1, TimeUnit.HOURS));
    }

    private void look() {
        try {
            erase(Instant.now());
        } catch (RuntimeException e) {
            LOG.error(
                    "Measurements that are due were not erased; it is tried again in an hour: {}",
                    e.getClass().getName());
        }
    }

    private record Due(String tenant, String order) {}

    /** Erases what is due at a time, and tells how many orders that were. */
    int erase(Instant now) {
        if (keep.isEmpty()) {
            return 0;
        }
        int erased = 0;
        List<Due> due = due(now.minus(keep.get()));
        while (!due.isEmpty()) {
            due.forEach(order -> desk.erase(new Caller(order.tenant(), NAME, Set.of()), order.order()));
            erased += due.size();
            due = due(now.minus(keep.get()));
        }
        return erased;
    }

    private List<Due> due(Instant before) {
        return store.transaction(database -> database.sql("SELECT tenant, id FROM sleeve_order WHERE changed_at < ?"
                        + " AND erased_at IS NULL AND state IN ('cut', 'cancelled') LIMIT " + AT_ONCE)
                .params(before.atOffset(ZoneOffset.UTC))
                .query((row, number) -> new Due(row.getString(1), row.getString(2)))
                .list());
    }

    @Override
    public void close() {
        clock.shutdownNow();
    }
}
