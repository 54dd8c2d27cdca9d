package org.capwright.service.orders;

import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.Parameter;
import io.swagger.v3.oas.annotations.tags.Tag;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.util.List;
import org.capwright.json.problem.FoundViolations;
import org.capwright.json.schema.RequestObject;
import org.capwright.quantity.Unit;
import org.capwright.service.http.Accepted;
import org.capwright.service.http.PageAsked;
import org.capwright.service.http.RequestBodies;
import org.capwright.service.http.access.Caller;
import org.capwright.service.http.access.Needs;
import org.capwright.service.http.access.Scope;
import org.springframework.http.CacheControl;
import org.springframework.http.HttpHeaders;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RestController;
import org.springframework.web.servlet.mvc.method.annotation.SseEmitter;

/** Says how far batches are that run as jobs, hands out their results, cancels them. */
@RestController
@Tag(name = "Orders")
final class BatchJobController {

    static final String BATCHES = "/v1/order-batches";

    private static final String ID = "Id of the batch.";

    private final BatchDesk desk;
    private final BatchProgress progress;
    private final RequestBodies bodies;

    BatchJobController(BatchDesk desk, BatchProgress progress, RequestBodies bodies) {
        this.desk = desk;
        this.progress = progress;
        this.bodies = bodies;
    }

    /** Lists jobs. */
    @Operation(operationId = "listOrderBatches", summary = "List batches that run as jobs, the latest first")
    @Needs(Scope.READ)
    @GetMapping(path = BATCHES, produces = MediaType.APPLICATION_JSON_VALUE)
    ResponseEntity<BatchJobAnswer.Listing> list(HttpServletRequest request, PageAsked page) {
        List<BatchJob> found =
                desk.list(Caller.of(request), page.after().map(OrderSearch.Place::read), page.limit() + 1);
        return answered(new BatchJobAnswer.Listing(
                page.shown(found).stream().map(BatchJobAnswer::of).toList(),
                page.next(found, job -> new OrderSearch.Place(job.madeAt(), job.id()).text())));
    }

    /** Shows a job. */
    @Operation(operationId = "getOrderBatch", summary = "Show how far a batch is")
    @Needs(Scope.READ)
    @GetMapping(path = BATCHES + "/{id}", produces = MediaType.APPLICATION_JSON_VALUE)
    ResponseEntity<BatchJobAnswer> get(
            HttpServletRequest request, @Parameter(description = ID) @PathVariable("id") String id) {
        return answered(BatchJobAnswer.of(desk.look(Caller.of(request), id)));
    }

    /** Tells how far a job is as it goes on. */
    @Operation(operationId = "listenToOrderBatch", summary = "Listen to how far a batch is")
    @Needs(Scope.READ)
    @GetMapping(path = BATCHES + "/{id}/events", produces = MediaType.TEXT_EVENT_STREAM_VALUE)
    ResponseEntity<SseEmitter> listen(
            HttpServletRequest request, @Parameter(description = ID) @PathVariable("id") String id) {
        return answered(progress.listen(Caller.of(request), id));
    }

    /** Hands out results. */
    @Operation(operationId = "getOrderBatchResults", summary = "Fetch what is answered so far, line by line")
    @Needs(Scope.ORDER)
    @GetMapping(BATCHES + "/{id}/results")
    void results(
            HttpServletRequest request,
            HttpServletResponse response,
            @Parameter(description = ID) @PathVariable("id") String id)
            throws IOException {
        Accepted.best(request, List.of(BatchController.LINES));
        desk.look(Caller.of(request), id);
        response.setContentType(BatchController.LINES.toString());
        response.setHeader(HttpHeaders.CACHE_CONTROL, "no-store");
        desk.results(Caller.of(request), id, response.getOutputStream());
    }

    /** Cancels a job. */
    @Operation(operationId = "changeOrderBatch", summary = "Cancel a batch: take no more of its orders")
    @Needs(Scope.ORDER)
    @PostMapping(path = BATCHES + "/{id}/states", produces = MediaType.APPLICATION_JSON_VALUE)
    ResponseEntity<BatchJobAnswer> change(
            HttpServletRequest request, @Parameter(description = ID) @PathVariable("id") String id) throws IOException {
        FoundViolations found = new FoundViolations(Unit.MILLIMETRE);
        new RequestObject(bodies.read(request), StateSchema.BATCH_CHANGE, "", Unit.MILLIMETRE, found).choice("state");
        found.refuse();
        return answered(BatchJobAnswer.of(desk.cancel(Caller.of(request), id)));
    }

    private static <T> ResponseEntity<T> answered(T answer) {
        return ResponseEntity.ok().cacheControl(CacheControl.noStore()).body(answer);
    }
}
