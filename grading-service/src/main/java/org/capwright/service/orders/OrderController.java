package org.capwright.service.orders;

import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.Parameter;
import io.swagger.v3.oas.annotations.tags.Tag;
import jakarta.servlet.http.HttpServletRequest;
import java.io.IOException;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.util.Base64;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.capwright.json.order.OrderRequest;
import org.capwright.json.problem.FoundViolations;
import org.capwright.json.schema.RequestObject;
import org.capwright.quantity.Unit;
import org.capwright.service.http.Languages;
import org.capwright.service.http.PageAsked;
import org.capwright.service.http.RequestBodies;
import org.capwright.service.http.access.Caller;
import org.capwright.service.http.access.Needs;
import org.capwright.service.http.access.Scope;
import org.capwright.service.sizerun.SizeRunFormat;
import org.capwright.service.sizerun.SizeRunService;
import org.capwright.service.store.Fingerprint;
import org.springframework.http.CacheControl;
import org.springframework.http.ContentDisposition;
import org.springframework.http.HttpHeaders;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.DeleteMapping;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestHeader;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RestController;

/** Takes orders on kept styles and hands out their files. */
@RestController
@Tag(name = "Orders")
final class OrderController {

    private static final String ID = "Id of the order.";
    private static final String ZIP = "zip";

    private final OrderDesk desk;
    private final RequestBodies bodies;
    private final Map<String, MediaType> types;

    OrderController(OrderDesk desk, RequestBodies bodies, SizeRunService drafting) {
        this.desk = desk;
        this.bodies = bodies;
        this.types = drafting.forms().stream()
                .collect(Collectors.toMap(SizeRunFormat::extension, SizeRunFormat::contentType));
    }

    /** Takes an order. */
    @Operation(operationId = "createOrder", summary = "Take an order on a kept style and draw its files")
    @Needs(value = Scope.ORDER, publishable = true)
    @PostMapping(path = "/v1/styles/{id}/orders", produces = MediaType.APPLICATION_JSON_VALUE)
    ResponseEntity<byte[]> take(
            HttpServletRequest request,
            @Parameter(description = "Id of the style.", example = "choir-gown") @PathVariable("id") String style,
            @Parameter(
                            description =
                                    "A text that no other order has, such as a random UUID: the same order sent again"
                                            + " with it is not taken twice.",
                            example = "7f2c1d1a-order-1207")
                    @RequestHeader(name = IdempotencyKey.HEADER, required = false)
                    Optional<String> key)
            throws IOException {
        byte[] body = bodies.bytes(request, RequestBodies.MOST_BYTES);
        OrderDesk.Taken taken = desk.take(
                Caller.of(request),
                style,
                OrderRequest.in(Languages.of(request), bodies.parse(body)),
                IdempotencyKey.of(key, style, body));
        return ResponseEntity.created(URI.create("/v1/orders/" + taken.id()))
                .contentType(MediaType.APPLICATION_JSON)
                .cacheControl(CacheControl.noStore())
                .body(taken.body().getBytes(StandardCharsets.UTF_8));
    }

    /** Lists orders. */
    @Operation(operationId = "listOrders", summary = "List orders, the latest first")
    @Needs(Scope.READ)
    @GetMapping(path = "/v1/orders", produces = MediaType.APPLICATION_JSON_VALUE)
    ResponseEntity<OrderAnswer.Listing> list(
            HttpServletRequest request,
            @Parameter(description = "Only those in this state.") @RequestParam(name = "state", defaultValue = "")
                    String state,
            @Parameter(description = "Only those on the style of this id.")
                    @RequestParam(name = "style", defaultValue = "")
                    String style,
            @Parameter(description = "Only those of this shop reference.")
                    @RequestParam(name = "reference", defaultValue = "")
                    String reference,
            @Parameter(description = "Only those taken then or later: a day, from midnight in UTC, or a time.")
                    @RequestParam(name = "from", defaultValue = "")
                    String from,
            @Parameter(description = "Only those taken before: a day, at midnight in UTC, or a time.")
                    @RequestParam(name = "to", defaultValue = "")
                    String to,
            PageAsked page) {
        OrderSearch search = OrderSearch.of(state, style, reference, from, to);
        List<SleeveOrder> found =
                desk.list(Caller.of(request), search, page.after().map(OrderSearch.Place::read), page.limit() + 1);
        return answered(new OrderAnswer.Listing(
                page.shown(found).stream().map(OrderAnswer.Entry::of).toList(),
                page.next(found, order -> OrderSearch.Place.of(order).text())));
    }

    /** Shows an order. */
    @Operation(operationId = "getOrder", summary = "Show an order with its history and its files")
    @Needs(Scope.READ)
    @GetMapping(path = "/v1/orders/{id}", produces = MediaType.APPLICATION_JSON_VALUE)
    ResponseEntity<OrderAnswer> get(
            HttpServletRequest request, @Parameter(description = ID) @PathVariable("id") String id) {
        return answered(desk.look(Caller.of(request), id));
    }

    /** Brings an order on. */
    @Operation(operationId = "changeOrder", summary = "Confirm an order, or note that it is cut or cancelled")
    @Needs(Scope.ORDER)
    @PostMapping(path = "/v1/orders/{id}/states", produces = MediaType.APPLICATION_JSON_VALUE)
    ResponseEntity<OrderAnswer> change(
            HttpServletRequest request, @Parameter(description = ID) @PathVariable("id") String id) throws IOException {
        FoundViolations found = new FoundViolations(Unit.MILLIMETRE);
        Optional<String> state =
                new RequestObject(bodies.read(request), StateSchema.CHANGE, "", Unit.MILLIMETRE, found).choice("state");
        found.refuse();
        return answered(desk.change(
                Caller.of(request), id, state.flatMap(OrderState::find).orElseThrow()));
    }

    /** Shows what an order was taken by. */
    @Operation(operationId = "getOrderMeasurements", summary = "Show the body that an order was taken by")
    @Needs(Scope.ORDER)
    @GetMapping(path = "/v1/orders/{id}/measurements", produces = MediaType.APPLICATION_JSON_VALUE)
    ResponseEntity<byte[]> measurements(
            HttpServletRequest request, @Parameter(description = ID) @PathVariable("id") String id) {
        return ResponseEntity.ok()
                .contentType(MediaType.APPLICATION_JSON)
                .cacheControl(CacheControl.noStore())
                .body(desk.measurements(Caller.of(request), id).getBytes(StandardCharsets.UTF_8));
    }

    /** Erases what belongs to the body. */
    @Operation(
            operationId = "eraseOrderMeasurements",
            summary = "Erase the measurements and files of an order; its accounting stays")
    @Needs(Scope.ADMIN)
    @DeleteMapping(path = "/v1/orders/{id}/measurements", produces = MediaType.APPLICATION_JSON_VALUE)
    ResponseEntity<OrderAnswer> erase(
            HttpServletRequest request, @Parameter(description = ID) @PathVariable("id") String id) {
        return answered(desk.erase(Caller.of(request), id));
    }

    /** Hands out a file. */
    @Operation(operationId = "getOrderFile", summary = "Fetch a file of an order, byte for byte as it was drawn")
    @Needs(Scope.READ)
    @GetMapping("/v1/orders/{id}/files/{format}")
    ResponseEntity<byte[]> file(
            HttpServletRequest request,
            @Parameter(description = ID) @PathVariable("id") String id,
            @Parameter(description = "The end of the file's name; zip for all files.", example = "pdf")
                    @PathVariable("format")
                    String format) {
        boolean all = format.equals(ZIP);
        List<DrawnFile> files = desk.files(Caller.of(request), id, all ? Optional.empty() : Optional.of(format));
        byte[] body = all ? OrderArchive.of(files) : files.get(0).bytes();
        String sha256 = Fingerprint.of(body);
        return ResponseEntity.ok()
                .contentType(types.getOrDefault(format, MediaType.APPLICATION_OCTET_STREAM))
                .cacheControl(CacheControl.noCache().cachePrivate())
                .eTag("\"" + sha256 + "\"")
                .header(
                        "Repr-Digest",
                        "sha-256=:"
                                + Base64.getEncoder()
                                        .encodeToString(HexFormat.of().parseHex(sha256)) + ":")
                .header(
                        HttpHeaders.CONTENT_DISPOSITION,
                        ContentDisposition.attachment()
                                .filename("order-" + id + "." + format)
                                .build()
                                .toString())
                .body(body);
    }

    private static <T> ResponseEntity<T> answered(T answer) {
        return ResponseEntity.ok().cacheControl(CacheControl.noStore()).body(answer);
    }
}
