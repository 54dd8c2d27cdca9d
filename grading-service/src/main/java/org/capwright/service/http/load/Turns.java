package org.capwright.service.http.load;

import java.time.Duration;
import java.util.concurrent.Semaphore;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;

/** Turns to do something, handed out first come, first served. Safe for threads. */
final class Turns {

    private final Semaphore free;
    private final AtomicInteger waiting = new AtomicInteger();
    private final int most;
    private final Duration patience;

    /**
     * Turns.
     *
     * @param together how many may have theirs at once, 1 or more
     * @param most how many may wait for theirs, 0 or more
     * @param patience how long each waits
     */
    Turns(int together, int most, Duration patience) {
        this.free = new Semaphore(together, true);
        this.most = most;
        this.patience = patience;
    }

    /** Waits for a turn; whoever got one gives it {@linkplain #end() back}. False where too many wait already, or the wait was too long. */
    boolean take() {
        if (waiting.get() == 0 && free.tryAcquire()) {
            return true;
        }
        try {
            return waiting.incrementAndGet() <= most && free.tryAcquire(patience.toMillis(), TimeUnit.MILLISECONDS);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            return false;
        } finally {
            waiting.decrementAndGet();
        }
    }

    void end() {
        free.release();
    }
}
