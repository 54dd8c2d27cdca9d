package org.capwright.service.webhooks;

import java.util.List;
import java.util.stream.Stream;
import org.capwright.json.schema.FieldType;
import org.capwright.json.schema.RequestSchema;
import org.capwright.json.schema.SchemaField;

/** The bodies of the calls about webhooks. */
final class WebhookSchema {

    static final int USUAL_HOURS = 24;
    static final int LONGEST_URL = 1000;

    static final RequestSchema WEBHOOK = RequestSchema.of(
            "NewWebhook",
            "An address that is to be told of events.",
            List.of(
                    SchemaField.required(
                                    "url",
                                    new FieldType.Text(LONGEST_URL),
                                    "Where to: https, with a name or an address that everybody can reach.")
                            .example("https://shop.example/capwright"),
                    SchemaField.optional(
                                    "events",
                                    new FieldType.Words(Stream.of(WebhookEvent.values())
                                            .map(WebhookEvent::word)
                                            .toList()),
                                    "Of what. Everything if left out.")
                            .example(List.of("order.taken", "order.questioned"))));

    static final RequestSchema RENEWAL = RequestSchema.of(
            "WebhookSecretRenewal",
            "How a secret is followed by another.",
            List.of(SchemaField.optional(
                            "overlapHours",
                            new FieldType.Whole(0, 720),
                            "How long messages are signed by the old secret as well. " + USUAL_HOURS + " if left out.")
                    .example(24)));

    private WebhookSchema() {}
}
