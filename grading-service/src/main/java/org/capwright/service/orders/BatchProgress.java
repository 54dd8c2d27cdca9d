package org.capwright.service.orders;

import java.io.IOException;
import java.util.Iterator;
import java.util.Map;
import java.util.Queue;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import org.capwright.service.http.access.Caller;
import org.capwright.service.http.problem.Problem;
import org.capwright.service.http.problem.ProblemException;
import org.capwright.service.http.problem.ProblemKind;
import org.jspecify.annotations.Nullable;
import org.springframework.context.event.ContextClosedEvent;
import org.springframework.context.event.EventListener;
import org.springframework.http.HttpHeaders;
import org.springframework.http.MediaType;
import org.springframework.stereotype.Component;
import org.springframework.web.servlet.mvc.method.annotation.SseEmitter;

/** Tells those who listen how far a batch is (server-sent events, HTML Living Standard, section 9.2): at once, then whenever it has changed, and for the last time when it ends. */
@Component
final class BatchProgress implements AutoCloseable {

    private static final int MOST_LISTENERS = 200;
    private static final long LOOKS_EVERY = 500;

    /** So often something is said, so that nobody on the way takes the connection for dead. */
    private static final int LOOKS_TO_A_SIGN = 30;

    private final Queue<Listener> listeners = new ConcurrentLinkedQueue<>();
    private final BatchDesk desk;
    private final ScheduledExecutorService clock = Executors.newSingleThreadScheduledExecutor(work -> {
        Thread thread = new Thread(work, "batch-progress");
        thread.setDaemon(true);
        return thread;
    });

    BatchProgress(BatchDesk desk) {
        this.desk = desk;
        clock.scheduleWithFixedDelay(this::tell, LOOKS_EVERY, LOOKS_EVERY, TimeUnit.MILLISECONDS);
    }

    private static final class Listener {
        private final Caller caller;
        private final String id;
        private final SseEmitter events = new SseEmitter(0L);
        private @Nullable BatchJobAnswer last;
        private int looks;
        private volatile boolean gone;

        Listener(Caller caller, String id) {
            this.caller = caller;
            this.id = id;
            events.onCompletion(() -> gone = true);
            events.onError(failure -> gone = true);
        }
    }

    SseEmitter listen(Caller caller, String id) {
        if (listeners.size() >= MOST_LISTENERS) {
            throw new ProblemException(
                    Problem.of(
                            ProblemKind.UNAVAILABLE,
                            "Too many clients are listening already; ask /v1/order-batches/{id} from time to time"
                                    + " instead."),
                    Map.of(HttpHeaders.RETRY_AFTER, "5"));
        }
        desk.look(caller, id);
        Listener listener = new Listener(caller, id);
        listeners.add(listener);
        return listener.events;
    }

    private void tell() {
        for (Iterator<Listener> all = listeners.iterator(); all.hasNext(); ) {
            Listener listener = all.next();
            if (listener.gone || !told(listener)) {
                all.remove();
            }
        }
    }

    /** Whether there is more to tell. */
    private boolean told(Listener listener) {
        try {
            BatchJobAnswer now = BatchJobAnswer.of(desk.look(listener.caller, listener.id));
            if (!now.equals(listener.last)) {
                boolean runs = now.state().equals(BatchState.RUNNING.word());
                listener.events.send(
                        SseEmitter.event().name(runs ? "progress" : now.state()).data(now, MediaType.APPLICATION_JSON));
                listener.last = now;
                if (!runs) {
                    listener.events.complete();
                    return false;
                }
            } else if (++listener.looks % LOOKS_TO_A_SIGN == 0) {
                listener.events.send(SseEmitter.event().comment(""));
            }
            return true;
        } catch (IOException | RuntimeException e) {
            // The listener has gone, or the batch or the store has: the listener asks again.
            listener.events.complete();
            return false;
        }
    }

    /** Before the web server waits for requests to end. */
    @EventListener(ContextClosedEvent.class)
    void leave() {
        listeners.forEach(listener -> listener.events.complete());
        listeners.clear();
    }

    @Override
    public void close() {
        clock.shutdownNow();
    }
}
