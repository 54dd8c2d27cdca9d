package org.capwright.service.orders;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.capwright.service.http.problem.Problem;
import org.capwright.service.http.problem.ProblemException;
import org.capwright.service.http.problem.ProblemKind;
import org.capwright.service.store.Fingerprint;
import org.springframework.jdbc.core.simple.JdbcClient;

/** The orders of a tenant in the database of one transaction. */
final class OrderBook {

    private static final String ORDER =
            "SELECT id, style, revision, engine, reference, size, remake_of, state, taken_at,"
                    + " changed_at, questions, erased_at FROM sleeve_order WHERE tenant = ?";

    private final JdbcClient database;
    private final String tenant;

    OrderBook(JdbcClient database, String tenant) {
        this.database = database;
        this.tenant = tenant;
    }

    private static SleeveOrder order(ResultSet row, int number) throws SQLException {
        return new SleeveOrder(
                row.getString(1),
                row.getString(2),
                row.getInt(3),
                row.getString(4),
                Optional.ofNullable(row.getString(5)),
                Optional.ofNullable(row.getString(6)),
                Optional.ofNullable(row.getString(7)),
                OrderState.find(row.getString(8)).orElseThrow(),
                row.getObject(9, OffsetDateTime.class).toInstant(),
                row.getObject(10, OffsetDateTime.class).toInstant(),
                Optional.ofNullable(row.getString(11)),
                Optional.ofNullable(row.getObject(12, OffsetDateTime.class)).map(OffsetDateTime::toInstant));
    }

    Optional<SleeveOrder> find(String id) {
        return database.sql(ORDER + " AND id = ?")
                .params(tenant, id)
                .query(OrderBook::order)
                .optional();
    }

    SleeveOrder get(String id) {
        return find(id).orElseThrow(() -> new ProblemException(
                Problem.of(ProblemKind.NOT_FOUND, "There is no order of this id; GET /v1/orders lists the orders.")));
    }

    /** As {@link #get}; no two change it at once. */
    SleeveOrder getLocked(String id) {
        database.sql("SELECT state FROM sleeve_order WHERE tenant = ? AND id = ? FOR UPDATE")
                .params(tenant, id)
                .query(String.class)
                .optional();
        return get(id);
    }

    List<SleeveOrder> list(OrderSearch search, Optional<OrderSearch.Place> after, int most) {
        StringBuilder sql = new StringBuilder(ORDER);
        List<Object> values = new ArrayList<>(List.of(tenant));
        search.state().ifPresent(state -> add(sql, values, " AND state = ?", state.word()));
        search.style().ifPresent(style -> add(sql, values, " AND style = ?", style));
        search.reference().ifPresent(reference -> add(sql, values, " AND reference = ?", reference));
        search.from().ifPresent(time -> add(sql, values, " AND taken_at >= ?", time.atOffset(ZoneOffset.UTC)));
        search.to().ifPresent(time -> add(sql, values, " AND taken_at < ?", time.atOffset(ZoneOffset.UTC)));
        after.ifPresent(place -> {
            add(sql, values, " AND (taken_at, id) < (?, ?)", place.takenAt().atOffset(ZoneOffset.UTC));
            values.add(place.id());
        });
        sql.append(" ORDER BY taken_at DESC, id DESC LIMIT ?");
        values.add(most);
        return database.sql(sql.toString())
                .params(values)
                .query(OrderBook::order)
                .list();
    }

    private static void add(StringBuilder sql, List<Object> values, String condition, Object value) {
        sql.append(condition);
        values.add(value);
    }

    /** Writes a new order with the body that it was taken by. */
    void enter(SleeveOrder order, String request, String by) {
        database.sql("INSERT INTO sleeve_order (tenant, id, style, revision, engine, reference, size, remake_of,"
                        + " state, taken_at, changed_at, request, questions) VALUES (?, ?, ?, ?, ?, NULLIF(?, ''), NULLIF(?, ''),"
                        + " NULLIF(?, ''), ?, ?, ?, ?, NULLIF(?, ''))")
                .params(
                        tenant,
                        order.id(),
                        order.style(),
                        order.revision(),
                        order.engine(),
                        order.reference().orElse(""),
                        order.size().orElse(""),
                        order.remakeOf().orElse(""),
                        order.state().word(),
                        order.takenAt().atOffset(ZoneOffset.UTC),
                        order.changedAt().atOffset(ZoneOffset.UTC),
                        request,
                        order.questions().orElse(""))
                .update();
        step(order.id(), 1, order.state(), order.takenAt(), by);
    }

    private void step(String id, int number, OrderState state, Instant at, String by) {
        database.sql("INSERT INTO order_state (tenant, order_id, step, state, changed_at, changed_by)"
                        + " VALUES (?, ?, ?, ?, ?, ?)")
                .params(tenant, id, number, state.word(), at.atOffset(ZoneOffset.UTC), by)
                .update();
    }

    List<OrderAnswer.Step> history(String id) {
        return database.sql("SELECT state, changed_at, changed_by FROM order_state"
                        + " WHERE tenant = ? AND order_id = ? ORDER BY step")
                .params(tenant, id)
                .query((row, number) -> new OrderAnswer.Step(
                        row.getString(1), row.getObject(2, OffsetDateTime.class).toInstant(), row.getString(3)))
                .list();
    }

    void change(String id, OrderState state, Instant at, String by) {
        database.sql("UPDATE sleeve_order SET state = ?, changed_at = ? WHERE tenant = ? AND id = ?")
                .params(state.word(), at.atOffset(ZoneOffset.UTC), tenant, id)
                .update();
        step(id, history(id).size() + 1, state, at, by);
    }

    Optional<String> request(String id) {
        return database.sql("SELECT request FROM sleeve_order WHERE tenant = ? AND id = ? AND request IS NOT NULL")
                .params(tenant, id)
                .query(String.class)
                .optional();
    }

    /** Keeps files by their fingerprints: the same bytes are kept once, and are not sent to the database again. */
    List<OrderFile> keep(String id, List<PackedFile> files) {
        List<OrderFile> kept = files.stream().map(PackedFile::file).toList();
        List<Object> asked = new ArrayList<>(List.of(tenant));
        kept.forEach(file -> asked.add(file.sha256()));
        Set<String> known = database.sql("SELECT sha256 FROM content WHERE tenant = ? AND sha256 IN ("
                        + String.join(", ", Collections.nCopies(kept.size(), "?")) + ")")
                .params(asked)
                .query(String.class)
                .set();
        List<Object> contents = new ArrayList<>();
        files.stream()
                .filter(one -> !known.contains(one.file().sha256()))
                .forEach(one -> Collections.addAll(
                        contents, tenant, one.file().sha256(), one.file().size(), one.packed()));
        if (!contents.isEmpty()) {
            database.sql("INSERT INTO content (tenant, sha256, size, packed) VALUES "
                            + String.join(", ", Collections.nCopies(contents.size() / 4, "(?, ?, ?, ?)"))
                            + " ON CONFLICT DO NOTHING")
                    .params(contents)
                    .update();
        }
        List<Object> values = new ArrayList<>();
        kept.forEach(file -> Collections.addAll(values, tenant, id, file.format(), file.sha256()));
        database.sql("INSERT INTO order_file (tenant, order_id, format, sha256) VALUES "
                        + String.join(", ", Collections.nCopies(kept.size(), "(?, ?, ?, ?)")))
                .params(values)
                .update();
        return kept;
    }

    List<OrderFile> files(String id) {
        return database.sql(
                        "SELECT f.format, f.sha256, c.size FROM order_file f JOIN content c ON c.tenant = f.tenant AND"
                                + " c.sha256 = f.sha256 WHERE f.tenant = ? AND f.order_id = ? ORDER BY f.format")
                .params(tenant, id)
                .query((row, number) -> new OrderFile(row.getString(1), row.getString(2), row.getInt(3)))
                .list();
    }

    /** The bytes of a file, compared with their fingerprint: a damaged file is never cut from. */
    byte[] bytes(OrderFile file) {
        byte[] bytes = database.sql("SELECT packed FROM content WHERE tenant = ? AND sha256 = ?")
                .params(tenant, file.sha256())
                .query((row, number) -> PackedFile.unpacked(row.getBytes(1)))
                .single();
        if (!Fingerprint.of(bytes).equals(file.sha256())) {
            throw new IllegalStateException("a kept file does not match its fingerprint");
        }
        return bytes;
    }

    /** Takes away what belongs to the body. What is kept for other orders as well stays. */
    void erase(String id, Instant at) {
        List<OrderFile> files = files(id);
        database.sql("DELETE FROM order_file WHERE tenant = ? AND order_id = ?")
                .params(tenant, id)
                .update();
        for (OrderFile file : files) {
            database.sql("DELETE FROM content WHERE tenant = ? AND sha256 = ? AND NOT EXISTS (SELECT 1 FROM"
                            + " order_file f WHERE f.tenant = content.tenant AND f.sha256 = content.sha256)")
                    .params(tenant, file.sha256())
                    .update();
        }
        database.sql("UPDATE idempotency SET answer = NULL WHERE tenant = ? AND order_id = ?")
                .params(tenant, id)
                .update();
        database.sql("UPDATE sleeve_order SET request = NULL, questions = NULL, erased_at = ? WHERE tenant = ? AND"
                        + " id = ?")
                .params(at.atOffset(ZoneOffset.UTC), tenant, id)
                .update();
    }

    /**
     * What was answered to an idempotency key.
     *
     * @param requestSha256 fingerprint of the request
     * @param order id of the order
     * @param answer the answer; none once the order was erased
     */
    record Answered(String requestSha256, String order, Optional<String> answer) {}

    Optional<Answered> answered(String key) {
        return database.sql("SELECT request_sha256, order_id, answer FROM idempotency"
                        + " WHERE tenant = ? AND idempotency_key = ?")
                .params(tenant, key)
                .query((row, number) ->
                        new Answered(row.getString(1), row.getString(2), Optional.ofNullable(row.getString(3))))
                .optional();
    }

    void remember(String key, Answered answered) {
        database.sql("INSERT INTO idempotency (tenant, idempotency_key, request_sha256, order_id, answer)"
                        + " VALUES (?, ?, ?, ?, NULLIF(?, ''))")
                .params(
                        tenant,
                        key,
                        answered.requestSha256(),
                        answered.order(),
                        answered.answer().orElse(""))
                .update();
    }
}
