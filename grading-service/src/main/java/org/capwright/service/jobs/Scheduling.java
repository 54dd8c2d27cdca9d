package org.capwright.service.jobs;

import com.github.kagkarlsson.scheduler.Scheduler;
import com.github.kagkarlsson.scheduler.SchedulerName;
import com.github.kagkarlsson.scheduler.logging.LogLevel;
import com.github.kagkarlsson.scheduler.stats.MicrometerStatsRegistry;
import com.github.kagkarlsson.scheduler.stats.StatsRegistryAdapter;
import com.github.kagkarlsson.scheduler.task.CompletionHandler;
import com.github.kagkarlsson.scheduler.task.ExecutionContext;
import com.github.kagkarlsson.scheduler.task.FailureHandler;
import com.github.kagkarlsson.scheduler.task.Task;
import com.github.kagkarlsson.scheduler.task.TaskInstance;
import com.github.kagkarlsson.scheduler.task.helper.Tasks;
import io.micrometer.core.instrument.Metrics;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.UUID;
import javax.sql.DataSource;
import org.capwright.service.http.settings.Durations;
import org.capwright.service.http.settings.WrongSettingException;
import org.capwright.service.store.Store;
import org.jspecify.annotations.Nullable;
import org.springframework.beans.factory.ObjectProvider;
import org.springframework.beans.factory.annotation.Value;
import org.springframework.stereotype.Component;

/**
 * Has work done by db-scheduler, whose table is in the store: every copy of the service looks there for what is due, and takes over what a copy has begun that is not alive any more. It begins when the store is
 * opened.
 */
@Component
public final class Scheduling implements AutoCloseable {

    /** Beside those that compute, for what waits on others. */
    private static final int HANDS = Runtime.getRuntime().availableProcessors() + 1;

    private static final Duration LOOKS_EVERY = Duration.ofSeconds(1);
    private static final Duration STOPS_WITHIN = Duration.ofSeconds(15);
    private static final Duration SHORTEST = Duration.ofMillis(100);
    private static final Duration LONGEST = Duration.ofMinutes(1);
    private static final Duration FIRST_RETRY = Duration.ofSeconds(1);

    /** After so many a copy counts as dead; the fewest that db-scheduler takes. */
    private static final int MISSED_SIGNS = 4;

    private final ObjectProvider<Work> kinds;
    private final Duration signs;
    private volatile @Nullable Scheduler scheduler;

    Scheduling(Store store, ObjectProvider<Work> kinds, @Value("${capwright.sign-of-life}") String signs) {
        this.kinds = kinds;
        this.signs = Durations.read("capwright.sign-of-life", signs, "PT5S");
        if (this.signs.compareTo(SHORTEST) < 0 || this.signs.compareTo(LONGEST) > 0) {
            throw new WrongSettingException(
                    "capwright.sign-of-life must be a duration from " + SHORTEST + " to " + LONGEST + ", not " + signs);
        }
        store.whenOpen(this::begin);
    }

    private void begin(DataSource database) {
        List<Task<?>> tasks = kinds.stream().<Task<?>>map(Scheduling::task).toList();
        Scheduler begun = Scheduler.create(database, tasks)
                .schedulerName(new SchedulerName.Fixed(UUID.randomUUID().toString()))
                .threads(HANDS)
                .pollingInterval(LOOKS_EVERY)
                .heartbeatInterval(signs)
                .missedHeartbeatsLimit(MISSED_SIGNS)
                .shutdownMaxWait(STOPS_WITHIN)
                .enablePriority()
                .enableImmediateExecution()
                .addSchedulerListener(
                        new StatsRegistryAdapter(new MicrometerStatsRegistry(Metrics.globalRegistry, tasks)))
                .failureLogging(LogLevel.WARN, false)
                .build();
        scheduler = begun;
        begun.start();
    }

    private static Task<Void> task(Work work) {
        return Tasks.custom(work.name(), Void.class)
                .defaultPriority(work.urgency())
                .onFailure(new FailureHandler.ExponentialBackoffFailureHandler<>(FIRST_RETRY))
                .execute((subject, context) -> after(work, subject, context));
    }

    private static CompletionHandler<Void> after(Work work, TaskInstance<Void> subject, ExecutionContext context) {
        Optional<Instant> next = work.run(
                subject.getId(),
                context.getExecution().consecutiveFailures,
                () -> context.getSchedulerState().isShuttingDown());
        return (complete, operations) ->
                next.ifPresentOrElse(when -> operations.reschedule(complete, when), operations::remove);
    }

    /**
     * Has work done. To be called within a transaction of the store, of which it becomes a part.
     *
     * @param kind name of the kind of work
     * @param subjects what it is to be done with, each apart from the others
     * @param at when, or as soon after that as there is a hand free
     */
    public void schedule(String kind, List<String> subjects, Instant at) {
        List<TaskInstance<?>> due = subjects.stream()
                .<TaskInstance<?>>map(subject -> instance(kind, subject))
                .toList();
        Objects.requireNonNull(scheduler, "the store is not open").scheduleBatch(due, at);
    }

    private TaskInstance<Void> instance(String kind, String subject) {
        Work work = kinds.stream()
                .filter(one -> one.name().equals(kind))
                .findFirst()
                .orElseThrow();
        return new TaskInstance.Builder<Void>(kind, subject)
                .priority(work.urgency())
                .build();
    }

    @Override
    public void close() {
        Scheduler begun = scheduler;
        if (begun != null) {
            begun.stop();
        }
    }
}
