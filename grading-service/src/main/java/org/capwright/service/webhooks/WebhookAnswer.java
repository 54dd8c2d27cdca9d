package org.capwright.service.webhooks;

import io.swagger.v3.oas.annotations.media.ArraySchema;
import io.swagger.v3.oas.annotations.media.Schema;
import java.time.Instant;
import java.util.List;
import java.util.Optional;

/**
 * A webhook as it is listed.
 *
 * @param id its id
 * @param url where to
 * @param events of what
 * @param madeAt when it was made
 */
@Schema(name = "Webhook", description = "An address that is told of events, without its secret.")
record WebhookAnswer(
        @Schema(description = "Its id.") String id,

        @Schema(description = "Where to.", example = "https://shop.example/capwright")
        String url,

        @ArraySchema(arraySchema = @Schema(description = "Of what.", example = "[\"order.taken\"]"))
        List<String> events,

        @Schema(description = "When it was made.") Instant madeAt) {

    static WebhookAnswer of(Webhook webhook) {
        return new WebhookAnswer(webhook.id(), webhook.url(), webhook.events(), webhook.madeAt());
    }

    /** Webhooks. */
    @Schema(name = "WebhookList", description = "The webhooks of a tenant, the oldest first.")
    record Listing(
            @ArraySchema(arraySchema = @Schema(description = "The webhooks; may be empty."))
            List<WebhookAnswer> webhooks) {}

    /** A webhook with its secret. */
    @Schema(name = "MadeWebhook", description = "A webhook with its new secret.")
    record Made(
            @Schema(description = "By it the receiver checks signatures. It is shown this once.", example = "whsec_…")
            String secret,

            WebhookAnswer webhook) {}

    /** A delivery. */
    @Schema(name = "WebhookDelivery", description = "An event on its way to a webhook.")
    record Sent(
            @Schema(
                    description = "Id of the message, the same whenever it is sent: webhook-id.",
                    example = "msg_9a3c6f70-41f5-4f4e-8d57-6f2b4f1f6a0e")
            String id,

            @Schema(description = "Type of the event.", example = "order.taken")
            String event,

            @Schema(
                    description = "How far it is.",
                    allowableValues = {"waiting", "delivered", "failed"},
                    example = "delivered")
            String state,

            @Schema(description = "How often it was tried, since it was last asked for.", example = "1")
            int attempts,

            @Schema(description = "When it happened.") Instant madeAt,

            @Schema(description = "When it was last tried.") Optional<Instant> triedAt,

            @Schema(description = "When it is tried again.") Optional<Instant> nextAt,

            @Schema(description = "What came of the last attempt.", example = "answered 204")
            Optional<String> outcome) {

        static Sent of(Delivery delivery) {
            return new Sent(
                    delivery.id(),
                    delivery.event(),
                    delivery.state().word(),
                    delivery.attempts(),
                    delivery.madeAt(),
                    delivery.triedAt(),
                    delivery.nextAt(),
                    delivery.outcome());
        }
    }

    /** The log. */
    @Schema(
            name = "WebhookDeliveryList",
            description = "What was sent to a webhook in the last thirty days, the latest first.")
    record Log(
            @ArraySchema(arraySchema = @Schema(description = "The deliveries of this page; may be empty."))
            List<Sent> deliveries,

            @Schema(description = "Cursor of the next page, where there is one.")
            Optional<String> next) {}
}
