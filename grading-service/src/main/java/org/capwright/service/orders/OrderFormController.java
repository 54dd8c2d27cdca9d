package org.capwright.service.orders;

import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.Parameter;
import io.swagger.v3.oas.annotations.tags.Tag;
import jakarta.servlet.http.HttpServletRequest;
import java.io.IOException;
import org.capwright.json.order.OrderRequest;
import org.capwright.service.http.Languages;
import org.capwright.service.http.RequestBodies;
import org.capwright.service.http.access.Caller;
import org.capwright.service.http.access.Needs;
import org.capwright.service.http.access.Scope;
import org.springframework.http.CacheControl;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RestController;

/** What the form of a shop asks before the order. */
@RestController
@Tag(name = "Orders")
final class OrderFormController {

    private static final String ID = "Id of the style.";

    private final OrderForm form;
    private final RequestBodies bodies;

    OrderFormController(OrderForm form, RequestBodies bodies) {
        this.form = form;
        this.bodies = bodies;
    }

    /** Tells what to measure. */
    @Operation(operationId = "getOrderForm", summary = "Tell what to measure for an order on a kept style")
    @Needs(value = Scope.ORDER, publishable = true)
    @GetMapping(path = "/v1/styles/{id}/order-form", produces = MediaType.APPLICATION_JSON_VALUE)
    ResponseEntity<OrderFormAnswer> asked(
            HttpServletRequest request,
            @Parameter(description = ID, example = "choir-gown") @PathVariable("id") String style) {
        return answered(form.asked(Caller.of(request), style));
    }

    /** Tries an order. */
    @Operation(operationId = "previewOrder", summary = "Try an order on a kept style without taking it")
    @Needs(value = Scope.ORDER, publishable = true)
    @PostMapping(path = "/v1/styles/{id}/order-previews", produces = MediaType.APPLICATION_JSON_VALUE)
    ResponseEntity<OrderPreview> tried(
            HttpServletRequest request,
            @Parameter(description = ID, example = "choir-gown") @PathVariable("id") String style)
            throws IOException {
        return answered(
                form.tried(Caller.of(request), style, OrderRequest.in(Languages.of(request), bodies.read(request))));
    }

    private static <T> ResponseEntity<T> answered(T answer) {
        return ResponseEntity.ok().cacheControl(CacheControl.noStore()).body(answer);
    }
}
