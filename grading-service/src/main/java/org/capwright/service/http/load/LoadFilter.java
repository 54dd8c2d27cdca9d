package org.capwright.service.http.load;

import jakarta.servlet.FilterChain;
import jakarta.servlet.ServletException;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.time.Duration;
import java.util.Map;
import java.util.Optional;
import org.capwright.service.http.problem.Problem;
import org.capwright.service.http.problem.ProblemException;
import org.capwright.service.http.problem.ProblemKind;
import org.springframework.beans.factory.annotation.Qualifier;
import org.springframework.core.Ordered;
import org.springframework.core.annotation.Order;
import org.springframework.http.HttpHeaders;
import org.springframework.http.HttpMethod;
import org.springframework.stereotype.Component;
import org.springframework.web.filter.OncePerRequestFilter;
import org.springframework.web.servlet.HandlerExceptionResolver;

/**
 * Bounds what is computed at once. As many requests with a body compute as there are processors, fewer where the heap is small; others wait before their bodies are read, so that
 * they take up no memory. Large bodies have turns of their own as well. A stream of lines may be sent for as long as its sender likes, and what its lines ask for is done by hands of its own: it takes none of these
 * turns. Who would wait too long is answered 503 with {@code Retry-After}.
 */
@Component
@Order(Ordered.LOWEST_PRECEDENCE - 10)
final class LoadFilter extends OncePerRequestFilter {

    /** What a run of many sizes in every form takes at most while it is made, bytes: the archive of forty sizes was measured. */
    private static final long OF_A_RUN = 100_000_000;

    /** What the largest upload takes while it is read and checked, bytes. */
    private static final long OF_AN_UPLOAD = 200_000_000;

    /** Bodies beyond this are large, bytes. */
    private static final long LARGE = 1_000_000;

    /** Half of the threads that the container has, so that there are others to say that the service is busy, or in good health. */
    private static final int MOST_WAITING = 100;

    private static final String LINES = "application/x-ndjson";

    /** Each holds a thread of the container. */
    private static final int MOST_STREAMS = 16;

    private static final int MOST_UPLOADS_WAITING = 20;
    private static final Duration PATIENCE = Duration.ofSeconds(20);
    private static final Duration UPLOAD_PATIENCE = Duration.ofSeconds(30);

    /** After this a caller may have left, ns. */
    private static final long LONG_WAIT = 500_000_000;

    /** When to come again, s. */
    private static final String LATER = "5";

    private final Turns turns = new Turns(
            (int) Math.max(
                    1,
                    Math.min(
                            Runtime.getRuntime().availableProcessors(),
                            Runtime.getRuntime().maxMemory() / OF_A_RUN)),
            MOST_WAITING,
            PATIENCE);

    private final Turns uploads = new Turns(
            (int) Math.max(1, Runtime.getRuntime().maxMemory() / OF_AN_UPLOAD), MOST_UPLOADS_WAITING, UPLOAD_PATIENCE);

    private final Turns streams = new Turns(MOST_STREAMS, MOST_UPLOADS_WAITING, PATIENCE);

    private final HandlerExceptionResolver problems;

    LoadFilter(@Qualifier("handlerExceptionResolver") HandlerExceptionResolver problems) {
        this.problems = problems;
    }

    @Override
    protected boolean shouldNotFilter(HttpServletRequest request) {
        return !HttpMethod.POST.matches(request.getMethod()) && !HttpMethod.PUT.matches(request.getMethod());
    }

    @Override
    protected void doFilterInternal(HttpServletRequest request, HttpServletResponse response, FilterChain chain)
            throws ServletException, IOException {
        boolean stream =
                Optional.ofNullable(request.getContentType()).orElse("").startsWith(LINES);
        boolean large = !stream
                && (request.getContentLengthLong() > LARGE || request.getHeader(HttpHeaders.TRANSFER_ENCODING) != null);
        Turns taken = stream ? streams : turns;
        if (large && !uploads.take()) {
            busy(request, response);
            return;
        }
        try {
            long since = System.nanoTime();
            if (!taken.take()) {
                busy(request, response);
                return;
            }
            if (System.nanoTime() - since > LONG_WAIT) {
                Presence.waited(request);
            }
            try {
                chain.doFilter(request, response);
            } finally {
                taken.end();
            }
        } finally {
            if (large) {
                uploads.end();
            }
        }
    }

    private void busy(HttpServletRequest request, HttpServletResponse response) {
        problems.resolveException(
                request,
                response,
                null,
                new ProblemException(
                        Problem.of(
                                ProblemKind.UNAVAILABLE,
                                "The service has more to do than it can take on now. Retry-After says when to try"
                                        + " again."),
                        Map.of(HttpHeaders.RETRY_AFTER, LATER)));
    }
}
