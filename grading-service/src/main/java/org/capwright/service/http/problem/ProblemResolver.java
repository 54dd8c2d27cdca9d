package org.capwright.service.http.problem;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.core.Ordered;
import org.springframework.core.annotation.Order;
import org.springframework.http.HttpHeaders;
import org.springframework.stereotype.Component;
import org.springframework.web.ErrorResponse;
import org.springframework.web.servlet.HandlerExceptionResolver;
import org.springframework.web.servlet.ModelAndView;

/** Answers every exception of a request with a problem document. */
@Component
@Order(Ordered.HIGHEST_PRECEDENCE)
final class ProblemResolver implements HandlerExceptionResolver {

    private static final Logger LOG = LoggerFactory.getLogger(ProblemResolver.class);
    private static final int FRAMES = 12;

    private final ProblemWriter writer;

    ProblemResolver(ProblemWriter writer) {
        this.writer = writer;
    }

    @Override
    public ModelAndView resolveException(
            HttpServletRequest request, HttpServletResponse response, @Nullable Object handler, Exception exception) {
        try {
            answer(request, response, exception);
        } catch (IOException e) {
            LOG.debug("the caller has gone away");
        }
        return new ModelAndView();
    }

    private void answer(HttpServletRequest request, HttpServletResponse response, Exception exception)
            throws IOException {
        if (exception instanceof ProblemException known) {
            writer.write(request, response, known.problem(), known.headers());
        } else if (exception instanceof ErrorResponse error
                && error.getStatusCode().is4xxClientError()) {
            Map<String, String> headers = new HashMap<>();
            for (String name : List.of(HttpHeaders.ALLOW, HttpHeaders.ACCEPT)) {
                List<String> values = error.getHeaders().get(name);
                if (values != null) {
                    headers.put(name, String.join(", ", values));
                }
            }
            writer.write(
                    request,
                    response,
                    StatusProblems.of(error.getStatusCode().value(), request.getMethod(), headers),
                    headers);
        } else if (exception instanceof IOException) {
            LOG.debug("the caller has gone away");
        } else {
            log(exception);
            writer.write(request, response, StatusProblems.of(500, request.getMethod(), Map.of()), Map.of());
        }
    }

    /** The place, but not the message: it could hold the measurements of a person. */
    private static void log(Exception exception) {
        StringBuilder text = new StringBuilder(exception.getClass().getName());
        StackTraceElement[] trace = exception.getStackTrace();
        for (int i = 0; i < Math.min(FRAMES, trace.length); i++) {
            text.append("\n\tat ").append(trace[i]);
        }
        LOG.error("Failed to answer: {}", text);
    }
}
