package org.capwright.service.orders;

import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.util.ArrayDeque;
import java.util.Optional;
import java.util.Queue;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Future;
import org.capwright.service.http.access.Caller;
import org.capwright.service.http.problem.ProblemException;
import org.capwright.words.Language;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import tools.jackson.databind.json.JsonMapper;

/**
 * Takes the orders of a stream, some of them at once, and answers line by line in their order. No more lines are read than there is work for, so a caller that sends faster, or reads slower, waits; what is
 * held does not grow with the batch.
 */
final class OrderBatch {

    private static final Logger LOG = LoggerFactory.getLogger(OrderBatch.class);

    private final OrderOnLine order;
    private final JsonMapper mapper;
    private final ExecutorService hands;
    private final int together;

    OrderBatch(OrderOnLine order, JsonMapper mapper, ExecutorService hands, int together) {
        this.order = order;
        this.mapper = mapper;
        this.hands = hands;
        this.together = together;
    }

    void take(Caller caller, BatchLines lines, Language language, OutputStream out) throws IOException {
        Queue<Future<BatchAnswer>> waiting = new ArrayDeque<>();
        Optional<BatchLines.Line> line = lines.next();
        while (line.isPresent()) {
            BatchLines.Line one = line.get();
            if (!one.blank()) {
                waiting.add(hands.submit(() -> answer(caller, one, language)));
            }
            // Before it waits for more, everything that was sent is answered.
            while (waiting.size() >= together || !waiting.isEmpty() && !lines.ready()) {
                write(waiting.remove(), out);
            }
            line = lines.next();
        }
        while (!waiting.isEmpty()) {
            write(waiting.remove(), out);
        }
    }

    private void write(Future<BatchAnswer> answer, OutputStream out) throws IOException {
        try {
            out.write(mapper.writeValueAsBytes(answer.get()));
            out.write('\n');
            out.flush();
        } catch (ExecutionException e) {
            throw new IllegalStateException(e.getCause());
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new UncheckedIOException(new IOException(e));
        }
    }

    private BatchAnswer answer(Caller caller, BatchLines.Line line, Language language) {
        try {
            return order.take(caller, line, language, (database, answer) -> {});
        } catch (ProblemException e) {
            return BatchAnswer.of(line.number(), e.problem().in(language));
        } catch (RuntimeException e) {
            LOG.error("Failed to take an order of a batch: {}", e.getClass().getName());
            return BatchAnswer.failed(line.number());
        }
    }
}
