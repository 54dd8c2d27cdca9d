package org.capwright.service.webhooks;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.capwright.service.jobs.Scheduling;
import org.capwright.service.store.Times;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ObjectNode;

/** Has events told to the webhooks of a tenant. They are written in the transaction of what they tell, so an event is told of everything that is kept, and of nothing else. */
@Component
public final class Announcements {

    private static final Duration REMEMBERED = Duration.ofDays(30);

    private final Scheduling scheduling;
    private final JsonMapper mapper;

    Announcements(Scheduling scheduling, JsonMapper mapper) {
        this.scheduling = scheduling;
        this.mapper = mapper;
    }

    /**
     * Has an event told.
     *
     * @param database the database of the transaction
     * @param tenant whose
     * @param event what happened
     * @param data to what; no measurements
     */
    public void tell(JdbcClient database, String tenant, WebhookEvent event, Object data) {
        WebhookBook book = new WebhookBook(database, tenant);
        for (Webhook webhook : book.list()) {
            if (webhook.events().contains(event.word())) {
                tell(book, tenant, webhook, event.word(), data);
            }
        }
    }

    Delivery tell(WebhookBook book, String tenant, Webhook webhook, String type, Object data) {
        Instant now = Times.now().toInstant();
        ObjectNode payload = mapper.createObjectNode();
        payload.put("type", type);
        payload.put("timestamp", now.toString());
        payload.set("data", mapper.valueToTree(data));
        Delivery delivery = new Delivery(
                "msg_" + UUID.randomUUID(),
                webhook.id(),
                type,
                payload.toString(),
                Delivery.State.WAITING,
                0,
                0,
                now,
                Optional.empty(),
                Optional.empty(),
                Optional.empty());
        book.forget(webhook.id(), Times.now().minus(REMEMBERED));
        book.enter(delivery);
        schedule(tenant, delivery);
        return delivery;
    }

    void schedule(String tenant, Delivery delivery) {
        scheduling.schedule(
                Deliveries.NAME,
                List.of(String.join("/", tenant, delivery.id(), Integer.toString(delivery.turn()))),
                Instant.now());
    }
}
