package org.capwright.service.webhooks;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.capwright.service.http.problem.Problem;
import org.capwright.service.http.problem.ProblemException;
import org.capwright.service.http.problem.ProblemKind;
import org.capwright.service.store.Times;
import org.springframework.jdbc.core.simple.JdbcClient;

/** The webhooks of a tenant and what is sent to them, in the database of one transaction. */
final class WebhookBook {

    private static final String WEBHOOK =
            "SELECT id, url, events, secret, CASE WHEN former_until > ? THEN former_secret"
                    + " END, made_at FROM webhook WHERE tenant = ?";
    private static final String DELIVERY = "SELECT id, webhook, event, payload, state, turn, attempts, made_at,"
            + " tried_at, next_at, outcome FROM webhook_delivery WHERE tenant = ?";

    private final JdbcClient database;
    private final String tenant;

    WebhookBook(JdbcClient database, String tenant) {
        this.database = database;
        this.tenant = tenant;
    }

    private static Webhook webhook(ResultSet row, int number) throws SQLException {
        return new Webhook(
                row.getString(1),
                row.getString(2),
                List.of(row.getString(3).split(" ")),
                Stream.concat(Stream.of(row.getString(4)), Optional.ofNullable(row.getString(5)).stream())
                        .toList(),
                row.getObject(6, OffsetDateTime.class).toInstant());
    }

    private static Optional<Instant> time(ResultSet row, int column) throws SQLException {
        return Optional.ofNullable(row.getObject(column, OffsetDateTime.class)).map(OffsetDateTime::toInstant);
    }

    private static Delivery delivery(ResultSet row, int number) throws SQLException {
        return new Delivery(
                row.getString(1),
                row.getString(2),
                row.getString(3),
                row.getString(4),
                Delivery.State.of(row.getString(5)),
                row.getInt(6),
                row.getInt(7),
                row.getObject(8, OffsetDateTime.class).toInstant(),
                time(row, 9),
                time(row, 10),
                Optional.ofNullable(row.getString(11)));
    }

    void add(Webhook webhook) {
        database.sql("INSERT INTO webhook (tenant, id, url, events, secret, made_at) VALUES (?, ?, ?, ?, ?, ?)")
                .params(
                        tenant,
                        webhook.id(),
                        webhook.url(),
                        String.join(" ", webhook.events()),
                        webhook.secrets().get(0),
                        webhook.madeAt().atOffset(ZoneOffset.UTC))
                .update();
    }

    List<Webhook> list() {
        return database.sql(WEBHOOK + " ORDER BY made_at, id")
                .params(Times.now(), tenant)
                .query(WebhookBook::webhook)
                .list();
    }

    Optional<Webhook> find(String id) {
        return database.sql(WEBHOOK + " AND id = ?")
                .params(Times.now(), tenant, id)
                .query(WebhookBook::webhook)
                .optional();
    }

    Webhook get(String id) {
        return find(id).orElseThrow(() -> new ProblemException(Problem.of(
                ProblemKind.NOT_FOUND, "There is no webhook of this id; GET /v1/webhooks lists the webhooks.")));
    }

    void remove(String id) {
        database.sql("DELETE FROM webhook WHERE tenant = ? AND id = ?")
                .params(tenant, id)
                .update();
    }

    void renew(String id, String secret, OffsetDateTime formerUntil) {
        database.sql("UPDATE webhook SET former_secret = secret, former_until = ?, secret = ?"
                        + " WHERE tenant = ? AND id = ?")
                .params(formerUntil, secret, tenant, id)
                .update();
    }

    /** Lets a receiver be that did not take what was sent; or ends that. */
    void rest(String id, Optional<Instant> until) {
        if (until.isPresent()) {
            database.sql("UPDATE webhook SET rests_until = ? WHERE tenant = ? AND id = ?")
                    .params(until.get().atOffset(ZoneOffset.UTC), tenant, id)
                    .update();
        } else {
            database.sql("UPDATE webhook SET rests_until = NULL WHERE tenant = ? AND id = ? AND rests_until IS NOT"
                            + " NULL")
                    .params(tenant, id)
                    .update();
        }
    }

    Optional<Instant> restsUntil(String id) {
        return database.sql("SELECT rests_until FROM webhook WHERE tenant = ? AND id = ? AND rests_until > ?")
                .params(tenant, id, Times.now())
                .query((row, number) -> row.getObject(1, OffsetDateTime.class).toInstant())
                .optional();
    }

    void enter(Delivery delivery) {
        database.sql("INSERT INTO webhook_delivery (tenant, id, webhook, event, payload, state, turn, attempts,"
                        + " made_at) VALUES (?, ?, ?, ?, ?, ?, ?, 0, ?)")
                .params(
                        tenant,
                        delivery.id(),
                        delivery.webhook(),
                        delivery.event(),
                        delivery.payload(),
                        delivery.state().word(),
                        delivery.turn(),
                        delivery.madeAt().atOffset(ZoneOffset.UTC))
                .update();
    }

    Optional<Delivery> delivery(String id) {
        return database.sql(DELIVERY + " AND id = ?")
                .params(tenant, id)
                .query(WebhookBook::delivery)
                .optional();
    }

    /**
     * A place in the log.
     *
     * @param madeAt when the delivery there was made
     * @param id its id
     */
    record Place(Instant madeAt, String id) {}

    List<Delivery> deliveries(String webhook, Optional<Place> after, int most) {
        List<Object> values = new ArrayList<>(List.of(tenant, webhook));
        after.ifPresent(place -> Collections.addAll(values, place.madeAt().atOffset(ZoneOffset.UTC), place.id()));
        values.add(most);
        return database.sql(DELIVERY + " AND webhook = ?" + (after.isPresent() ? " AND (made_at, id) < (?, ?)" : "")
                        + " ORDER BY made_at DESC, id DESC LIMIT ?")
                .params(values)
                .query(WebhookBook::delivery)
                .list();
    }

    /** Notes what came of an attempt. */
    void tried(Delivery delivery, Delivery.State state, String outcome, Optional<Instant> next) {
        database.sql("UPDATE webhook_delivery SET state = ?, attempts = attempts + 1, tried_at = ?, next_at = NULL,"
                        + " outcome = ? WHERE tenant = ? AND id = ?")
                .params(state.word(), Times.now(), outcome, tenant, delivery.id())
                .update();
        next.ifPresent(when -> database.sql("UPDATE webhook_delivery SET next_at = ? WHERE tenant = ? AND id = ?")
                .params(when.atOffset(ZoneOffset.UTC), tenant, delivery.id())
                .update());
    }

    void again(Delivery delivery) {
        database.sql("UPDATE webhook_delivery SET state = ?, turn = turn + 1, attempts = 0, next_at = NULL"
                        + " WHERE tenant = ? AND id = ?")
                .params(Delivery.State.WAITING.word(), tenant, delivery.id())
                .update();
    }

    /** Forgets what happened long ago. */
    void forget(String webhook, OffsetDateTime before) {
        database.sql("DELETE FROM webhook_delivery WHERE tenant = ? AND webhook = ? AND made_at < ? AND state <> ?")
                .params(tenant, webhook, before, Delivery.State.WAITING.word())
                .update();
    }
}
