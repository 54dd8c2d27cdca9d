package org.capwright.service.orders;

import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.tags.Tag;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import org.capwright.service.http.Accepted;
import org.capwright.service.http.RequestBodies;
import org.capwright.service.http.access.Caller;
import org.capwright.service.http.access.Needs;
import org.capwright.service.http.access.Scope;
import org.capwright.service.http.problem.Problem;
import org.capwright.service.http.problem.ProblemException;
import org.capwright.service.http.problem.ProblemKind;
import org.springframework.http.HttpHeaders;
import org.springframework.http.InvalidMediaTypeException;
import org.springframework.http.MediaType;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RestController;
import tools.jackson.databind.json.JsonMapper;

/** Takes many orders in one request. */
@RestController
@Tag(name = "Orders")
final class BatchController implements AutoCloseable {

    static final MediaType LINES = MediaType.parseMediaType("application/x-ndjson");

    private static final int HANDS = Runtime.getRuntime().availableProcessors();

    private final ExecutorService hands = Executors.newFixedThreadPool(HANDS, work -> {
        Thread thread = new Thread(work, "batch");
        thread.setDaemon(true);
        return thread;
    });
    private final OrderBatch batch;

    BatchController(OrderDesk desk, RequestBodies bodies, JsonMapper mapper) {
        this.batch = new OrderBatch(desk, bodies, mapper, hands, 2 * HANDS);
    }

    /** Takes orders line by line. */
    @Operation(operationId = "createOrderBatch", summary = "Take many orders, one on a line, answered line by line")
    @Needs(Scope.ORDER)
    @PostMapping("/v1/order-batches")
    void take(HttpServletRequest request, HttpServletResponse response) throws IOException {
        Accepted.best(request, List.of(LINES));
        checkType(request);
        response.setContentType(LINES.toString());
        response.setHeader(HttpHeaders.CACHE_CONTROL, "no-store");
        batch.take(
                Caller.of(request),
                new BatchLines(request.getInputStream(), OrderBatch.LONGEST_LINE),
                response.getOutputStream());
    }

    private static void checkType(HttpServletRequest request) {
        String type = request.getContentType();
        try {
            if (type != null && MediaType.parseMediaType(type).equalsTypeAndSubtype(LINES)) {
                return;
            }
        } catch (InvalidMediaTypeException e) {
            // said below
        }
        throw new ProblemException(
                Problem.of(
                        ProblemKind.UNSUPPORTED_MEDIA_TYPE,
                        "The body must be sent as Content-Type: " + LINES + ", one order on a line, in UTF-8."),
                Map.of("Accept-Post", LINES.toString()));
    }

    @Override
    public void close() {
        hands.shutdownNow();
    }
}
