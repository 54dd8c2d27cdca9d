package org.capwright.service.orders;

import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.Parameter;
import io.swagger.v3.oas.annotations.tags.Tag;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.stream.Stream;
import org.capwright.service.http.Accepted;
import org.capwright.service.http.Languages;
import org.capwright.service.http.access.Caller;
import org.capwright.service.http.access.Needs;
import org.capwright.service.http.access.Scope;
import org.capwright.service.http.problem.Problem;
import org.capwright.service.http.problem.ProblemException;
import org.capwright.service.http.problem.ProblemKind;
import org.capwright.words.Text;
import org.springframework.http.HttpHeaders;
import org.springframework.http.HttpStatus;
import org.springframework.http.InvalidMediaTypeException;
import org.springframework.http.MediaType;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestHeader;
import org.springframework.web.bind.annotation.RestController;
import tools.jackson.databind.json.JsonMapper;

/** Takes many orders in one request. */
@RestController
@Tag(name = "Orders")
final class BatchController implements AutoCloseable {

    static final MediaType LINES = MediaType.parseMediaType("application/x-ndjson");

    private static final String PREFER = "Prefer";
    private static final String RESPOND_ASYNC = "respond-async";
    private static final int HANDS = Runtime.getRuntime().availableProcessors();

    private final ExecutorService hands = Executors.newFixedThreadPool(HANDS, work -> {
        Thread thread = new Thread(work, "batch");
        thread.setDaemon(true);
        return thread;
    });
    private final OrderBatch batch;

    private final BatchDesk jobs;
    private final JsonMapper mapper;

    BatchController(OrderOnLine order, BatchDesk jobs, JsonMapper mapper) {
        this.batch = new OrderBatch(order, mapper, hands, 2 * HANDS);
        this.jobs = jobs;
        this.mapper = mapper;
    }

    /** Takes orders line by line. */
    @Operation(operationId = "createOrderBatch", summary = "Take many orders, one on a line, answered line by line")
    @Needs(Scope.ORDER)
    @PostMapping("/v1/order-batches")
    void take(
            HttpServletRequest request,
            HttpServletResponse response,
            @Parameter(
                            description = "respond-async has the orders taken as a job: the answer is 202, and Location"
                                    + " says where the job is.",
                            example = RESPOND_ASYNC)
                    @RequestHeader(name = PREFER, required = false)
                    Optional<String> prefer,
            @Parameter(
                            description = "For a job: a text that no other batch has. The same batch sent again with it"
                                    + " makes no second job.",
                            example = "night-2026-11-26")
                    @RequestHeader(name = IdempotencyKey.HEADER, required = false)
                    Optional<String> key)
            throws IOException {
        checkType(request);
        response.setHeader(HttpHeaders.CACHE_CONTROL, "no-store");
        BatchLines lines = new BatchLines(request.getInputStream(), OrderOnLine.LONGEST);
        if (prefer.filter(BatchController::asksForAJob).isPresent()) {
            Accepted.best(request, List.of(MediaType.APPLICATION_JSON, LINES));
            BatchJob job = jobs.receive(Caller.of(request), lines, Languages.of(request), IdempotencyKey.text(key));
            response.setStatus(HttpStatus.ACCEPTED.value());
            response.setHeader(HttpHeaders.LOCATION, BatchJobController.BATCHES + "/" + job.id());
            response.setHeader("Preference-Applied", RESPOND_ASYNC);
            response.setContentType(MediaType.APPLICATION_JSON_VALUE);
            response.getOutputStream().write(mapper.writeValueAsBytes(BatchJobAnswer.of(job)));
            return;
        }
        Accepted.best(request, List.of(LINES));
        response.setContentType(LINES.toString());
        batch.take(Caller.of(request), lines, Languages.of(request), response.getOutputStream());
    }

    /** RFC 7240, section 4.1. */
    private static boolean asksForAJob(String prefer) {
        return Stream.of(prefer.split("[,;]")).anyMatch(one -> one.strip().equalsIgnoreCase(RESPOND_ASYNC));
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
                        Text.of("The body must be sent as Content-Type: {type}, one order on a line, in UTF-8.")
                                .with("type", LINES.toString())),
                Map.of("Accept-Post", LINES.toString()));
    }

    @Override
    public void close() {
        hands.shutdownNow();
    }
}
