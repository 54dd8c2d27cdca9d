package org.capwright.service.orders;

import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayDeque;
import java.util.Optional;
import java.util.Queue;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Future;
import org.capwright.quantity.Unit;
import org.capwright.service.http.RequestBodies;
import org.capwright.service.http.access.Caller;
import org.capwright.service.http.problem.FoundViolations;
import org.capwright.service.http.problem.Problem;
import org.capwright.service.http.problem.ProblemException;
import org.capwright.service.http.problem.ProblemKind;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ObjectNode;

/**
 * Takes the orders of a stream, some of them at once, and answers line by line in their order. No more lines are read than there is work for, so a caller that sends faster, or reads slower, waits; what is
 * held does not grow with the batch.
 */
final class OrderBatch {

    static final int LONGEST_LINE = 64 * 1024;

    private static final Logger LOG = LoggerFactory.getLogger(OrderBatch.class);
    private static final String STYLE = "style";
    private static final String KEY = "idempotencyKey";

    private final OrderDesk desk;
    private final RequestBodies bodies;
    private final JsonMapper mapper;
    private final ExecutorService hands;
    private final int together;

    OrderBatch(OrderDesk desk, RequestBodies bodies, JsonMapper mapper, ExecutorService hands, int together) {
        this.desk = desk;
        this.bodies = bodies;
        this.mapper = mapper;
        this.hands = hands;
        this.together = together;
    }

    void take(Caller caller, BatchLines lines, OutputStream out) throws IOException {
        Queue<Future<BatchAnswer>> waiting = new ArrayDeque<>();
        Optional<BatchLines.Line> line = lines.next();
        while (line.isPresent()) {
            BatchLines.Line one = line.get();
            if (!one.blank()) {
                waiting.add(hands.submit(() -> answer(caller, one)));
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

    private BatchAnswer answer(Caller caller, BatchLines.Line line) {
        try {
            return taken(caller, line);
        } catch (ProblemException e) {
            return BatchAnswer.of(line.number(), e.problem());
        } catch (RuntimeException e) {
            LOG.error("Failed to take an order of a batch: {}", e.getClass().getName());
            return BatchAnswer.of(
                    line.number(), Problem.of(ProblemKind.INTERNAL_ERROR, "The service failed; send the line again."));
        }
    }

    private BatchAnswer taken(Caller caller, BatchLines.Line line) {
        if (!line.whole()) {
            throw new ProblemException(Problem.of(
                    ProblemKind.BODY_TOO_LARGE,
                    "The line is longer than " + LONGEST_LINE / 1024 + " kB, the most that is read of one."));
        }
        JsonNode tree = bodies.parse(line.bytes());
        FoundViolations found = new FoundViolations(Unit.MILLIMETRE);
        if (!tree.isObject()) {
            found.add("", "must be an object: an order, with the id of its style as style");
        }
        String style = tree.path(STYLE).asStringOpt().orElse("");
        if (tree.isObject() && style.isEmpty()) {
            found.add("/" + STYLE, "is missing; the id of a kept style");
        }
        if (tree.hasNonNull(KEY) && !tree.get(KEY).isString()) {
            found.add("/" + KEY, "must be a text");
        }
        found.refuse();
        ObjectNode order = (ObjectNode) tree;
        order.remove(STYLE);
        Optional<String> key = Optional.ofNullable(order.remove(KEY)).flatMap(JsonNode::asStringOpt);
        OrderDesk.Taken taken = desk.take(
                caller,
                style,
                order,
                IdempotencyKey.of(key, style, order.toString().getBytes(StandardCharsets.UTF_8)));
        JsonNode entry = mapper.readTree(taken.body()).path("order");
        return new BatchAnswer(
                line.number(), 201, Optional.of(taken.id()), entry.path("state").asStringOpt(), Optional.empty());
    }
}
