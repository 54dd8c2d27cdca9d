package org.capwright.service.webhooks;

import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.Parameter;
import io.swagger.v3.oas.annotations.tags.Tag;
import jakarta.servlet.http.HttpServletRequest;
import java.io.IOException;
import java.time.DateTimeException;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.capwright.json.problem.FoundViolations;
import org.capwright.json.schema.RequestObject;
import org.capwright.quantity.Unit;
import org.capwright.service.http.PageAsked;
import org.capwright.service.http.RequestBodies;
import org.capwright.service.http.access.Caller;
import org.capwright.service.http.access.Needs;
import org.capwright.service.http.access.Scope;
import org.springframework.http.CacheControl;
import org.springframework.http.HttpStatus;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.DeleteMapping;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RestController;

/** Makes, lists, renews and ends webhooks, and shows what was sent to them. */
@RestController
@Tag(name = "Webhooks")
final class WebhookController {

    static final String WEBHOOKS = "/v1/webhooks";

    private static final String ID = "Id of the webhook.";

    private final WebhookDesk desk;
    private final RequestBodies bodies;
    private final WebhookUrl urls;

    WebhookController(WebhookDesk desk, RequestBodies bodies, Sender sender) {
        this.desk = desk;
        this.bodies = bodies;
        this.urls = new WebhookUrl(sender.anywhere());
    }

    /** Makes a webhook. */
    @Operation(operationId = "createWebhook", summary = "Have an address told of events")
    @Needs(Scope.ADMIN)
    @PostMapping(path = WEBHOOKS, produces = MediaType.APPLICATION_JSON_VALUE)
    ResponseEntity<WebhookAnswer.Made> make(HttpServletRequest request) throws IOException {
        FoundViolations found = new FoundViolations(Unit.MILLIMETRE);
        RequestObject body = new RequestObject(bodies.read(request), WebhookSchema.WEBHOOK, "", Unit.MILLIMETRE, found);
        Optional<String> url = body.text("url");
        url.flatMap(urls::refused).ifPresent(reason -> body.refuse("url", reason));
        List<String> events = body.words("events");
        if (body.has("events") && events.isEmpty() && found.isEmpty()) {
            body.refuse("events", "must name one event or more; left out for all");
        }
        found.refuse();
        Webhook made = desk.make(
                Caller.of(request),
                url.orElseThrow(),
                body.has("events")
                        ? events
                        : Stream.of(WebhookEvent.values())
                                .map(WebhookEvent::word)
                                .toList());
        return made(made);
    }

    private static ResponseEntity<WebhookAnswer.Made> made(Webhook webhook) {
        return answered(
                HttpStatus.CREATED, new WebhookAnswer.Made(webhook.secrets().get(0), WebhookAnswer.of(webhook)));
    }

    /** Lists webhooks. */
    @Operation(operationId = "listWebhooks", summary = "List the webhooks")
    @Needs(Scope.ADMIN)
    @GetMapping(path = WEBHOOKS, produces = MediaType.APPLICATION_JSON_VALUE)
    ResponseEntity<WebhookAnswer.Listing> list(HttpServletRequest request) {
        return answered(
                HttpStatus.OK,
                new WebhookAnswer.Listing(desk.list(Caller.of(request)).stream()
                        .map(WebhookAnswer::of)
                        .toList()));
    }

    /** Renews the secret. */
    @Operation(operationId = "renewWebhookSecret", summary = "Make a new secret; the old one signs along for a while")
    @Needs(Scope.ADMIN)
    @PostMapping(path = WEBHOOKS + "/{id}/secrets", produces = MediaType.APPLICATION_JSON_VALUE)
    ResponseEntity<WebhookAnswer.Made> renew(
            HttpServletRequest request, @Parameter(description = ID) @PathVariable("id") String id) throws IOException {
        FoundViolations found = new FoundViolations(Unit.MILLIMETRE);
        int hours = new RequestObject(bodies.read(request), WebhookSchema.RENEWAL, "", Unit.MILLIMETRE, found)
                .whole("overlapHours")
                .orElse(WebhookSchema.USUAL_HOURS);
        found.refuse();
        return made(desk.renew(Caller.of(request), id, Duration.ofHours(hours)));
    }

    /** Ends a webhook. */
    @Operation(operationId = "endWebhook", summary = "Tell an address nothing any more, and forget what it was told")
    @Needs(Scope.ADMIN)
    @DeleteMapping(path = WEBHOOKS + "/{id}")
    ResponseEntity<Void> end(HttpServletRequest request, @Parameter(description = ID) @PathVariable("id") String id) {
        desk.end(Caller.of(request), id);
        return ResponseEntity.noContent().build();
    }

    /** Shows the log. */
    @Operation(operationId = "listWebhookDeliveries", summary = "Show what was sent to a webhook, the latest first")
    @Needs(Scope.ADMIN)
    @GetMapping(path = WEBHOOKS + "/{id}/deliveries", produces = MediaType.APPLICATION_JSON_VALUE)
    ResponseEntity<WebhookAnswer.Log> log(
            HttpServletRequest request, @Parameter(description = ID) @PathVariable("id") String id, PageAsked page) {
        List<Delivery> found =
                desk.log(Caller.of(request), id, page.after().map(WebhookController::place), page.limit() + 1);
        return answered(
                HttpStatus.OK,
                new WebhookAnswer.Log(
                        page.shown(found).stream().map(WebhookAnswer.Sent::of).toList(),
                        page.next(found, delivery -> delivery.madeAt() + "/" + delivery.id())));
    }

    private static WebhookBook.Place place(String text) {
        try {
            int slash = text.indexOf('/');
            return new WebhookBook.Place(
                    Instant.parse(text.substring(0, Math.max(0, slash))), text.substring(slash + 1));
        } catch (DateTimeException e) {
            throw PageAsked.wrongCursor(text);
        }
    }

    /** Sends something to be tried by. */
    @Operation(operationId = "tryWebhook", summary = "Send a trial message")
    @Needs(Scope.ADMIN)
    @PostMapping(path = WEBHOOKS + "/{id}/deliveries", produces = MediaType.APPLICATION_JSON_VALUE)
    ResponseEntity<WebhookAnswer.Sent> trial(
            HttpServletRequest request, @Parameter(description = ID) @PathVariable("id") String id) {
        return answered(HttpStatus.ACCEPTED, WebhookAnswer.Sent.of(desk.trial(Caller.of(request), id)));
    }

    /** Sends a message anew. */
    @Operation(operationId = "redeliverWebhook", summary = "Send a message again that was delivered or given up")
    @Needs(Scope.ADMIN)
    @PostMapping(path = WEBHOOKS + "/{id}/deliveries/{message}/attempts", produces = MediaType.APPLICATION_JSON_VALUE)
    ResponseEntity<WebhookAnswer.Sent> again(
            HttpServletRequest request,
            @Parameter(description = ID) @PathVariable("id") String id,
            @Parameter(description = "Id of the message.") @PathVariable("message") String message) {
        return answered(HttpStatus.ACCEPTED, WebhookAnswer.Sent.of(desk.again(Caller.of(request), id, message)));
    }

    private static <T> ResponseEntity<T> answered(HttpStatus status, T answer) {
        return ResponseEntity.status(status)
                .cacheControl(CacheControl.noStore())
                .body(answer);
    }
}
