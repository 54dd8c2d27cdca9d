package org.capwright.service.http.load;

import jakarta.servlet.http.HttpServletRequest;
import java.util.concurrent.CancellationException;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.function.BooleanSupplier;
import java.util.function.Function;
import org.apache.catalina.connector.ClientAbortException;
import org.apache.coyote.ActionCode;
import org.apache.coyote.Request;
import org.springframework.web.context.request.RequestContextHolder;
import org.springframework.web.context.request.ServletRequestAttributes;

/**
 * Whether the caller of a request still waits for its answer. One that closes its side of the connection once the request is sent counts as gone: it cannot be told from one that left.
 */
public final class Presence {

    static final String CONNECTION = Presence.class.getName();

    private static final String WAITED = CONNECTION + ".waited";

    /** How often a connection is looked at, ms. */
    private static final int LOOK = 100;

    /** What a connection says has come where it is closed; of a next request there are more bytes. */
    private static final int CLOSED = 1;

    private static final ExecutorService HANDS = Executors.newCachedThreadPool(work -> {
        Thread thread = new Thread(work, "watched");
        thread.setDaemon(true);
        return thread;
    });

    private Presence() {}

    /** Notes that a request waited for its turn so long that its caller may have left. */
    static void waited(HttpServletRequest request) {
        request.setAttribute(WAITED, true);
    }

    /**
     * Makes sure that the caller of a request that waited for its turn is still there. Call it from the thread of the request, with its body read.
     *
     * @param request the request
     * @throws ClientAbortException if the caller is gone
     */
    public static void check(HttpServletRequest request) throws ClientAbortException {
        if (request.getAttribute(WAITED) != null
                && request.getAttribute(CONNECTION) instanceof Request connection
                && isClosed(connection)) {
            throw new ClientAbortException();
        }
    }

    private static boolean isClosed(Request connection) {
        // A read that does not wait.
        connection.action(ActionCode.AVAILABLE, true);
        return connection.getAvailable() == CLOSED;
    }

    /**
     * Does what takes long while the caller of the request that this thread answers still waits for it; without a request, to its end.
     *
     * @param <T> what comes of it
     * @param work is handed what tells whether it is given up; any thread may ask that, often
     * @param look is done from time to time meanwhile, in the thread of the request
     * @return what comes of it
     * @throws CancellationException if the caller is gone
     */
    public static <T> T whileThere(Function<BooleanSupplier, T> work, Runnable look) {
        if (!(RequestContextHolder.getRequestAttributes() instanceof ServletRequestAttributes attributes)
                || !(attributes.getRequest().getAttribute(CONNECTION) instanceof Request connection)) {
            return work.apply(() -> false);
        }
        AtomicBoolean gone = new AtomicBoolean();
        Future<T> result = HANDS.submit(() -> work.apply(gone::get));
        while (true) {
            try {
                return result.get(LOOK, TimeUnit.MILLISECONDS);
            } catch (TimeoutException e) {
                gone.compareAndSet(false, isClosed(connection));
                try {
                    look.run();
                } catch (RuntimeException failed) {
                    gone.set(true);
                    throw failed;
                }
            } catch (InterruptedException e) {
                gone.set(true);
                Thread.currentThread().interrupt();
                throw new CancellationException();
            } catch (ExecutionException e) {
                if (e.getCause() instanceof RuntimeException failed) {
                    throw failed;
                }
                throw new IllegalStateException(e.getCause());
            }
        }
    }
}
