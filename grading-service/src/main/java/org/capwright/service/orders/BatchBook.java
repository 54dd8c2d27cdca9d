package org.capwright.service.orders;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import org.capwright.service.http.problem.Problem;
import org.capwright.service.http.problem.ProblemException;
import org.capwright.service.http.problem.ProblemKind;
import org.capwright.service.store.Times;
import org.capwright.words.Language;
import org.springframework.jdbc.core.simple.JdbcClient;

/** The batches of a tenant that run as jobs, in the database of one transaction. */
final class BatchBook {

    private static final String JOB = "SELECT b.id, b.state, b.line_count, COALESCE(SUM(p.answered), 0),"
            + " COALESCE(SUM(p.refused), 0), b.made_at, b.made_by, b.ended_at FROM order_batch b"
            + " LEFT JOIN order_batch_part p ON p.tenant = b.tenant AND p.batch = b.id"
            + " WHERE b.tenant = ? AND b.state <> 'receiving'";
    private static final String GROUPED = " GROUP BY b.id, b.state, b.line_count, b.made_at, b.made_by, b.ended_at";

    private final JdbcClient database;
    private final String tenant;

    BatchBook(JdbcClient database, String tenant) {
        this.database = database;
        this.tenant = tenant;
    }

    private static BatchJob job(ResultSet row, int number) throws SQLException {
        return new BatchJob(
                row.getString(1),
                BatchState.of(row.getString(2)),
                row.getInt(3),
                row.getInt(4),
                row.getInt(5),
                row.getObject(6, OffsetDateTime.class).toInstant(),
                row.getString(7),
                Optional.ofNullable(row.getObject(8, OffsetDateTime.class)).map(OffsetDateTime::toInstant));
    }

    void begin(String id, Sender by) {
        database.sql("INSERT INTO order_batch (tenant, id, state, line_count, made_at, made_by, language)"
                        + " VALUES (?, ?, ?, 0, ?, ?, ?)")
                .params(
                        tenant,
                        id,
                        BatchState.RECEIVING.word(),
                        Times.now(),
                        by.name(),
                        by.language().tag())
                .update();
    }

    /** Puts lines down that one hand is to work off. */
    void add(String id, int part, List<BatchLines.Line> lines) {
        database.sql("INSERT INTO order_batch_part (tenant, batch, part, line_count, answered, refused)"
                        + " VALUES (?, ?, ?, ?, 0, 0)")
                .params(tenant, id, part, lines.size())
                .update();
        List<Object> values = new ArrayList<>();
        lines.forEach(line -> Collections.addAll(values, tenant, id, line.number(), part, line.toKeep()));
        database.sql("INSERT INTO order_batch_line (tenant, batch, line, part, body) VALUES "
                        + String.join(", ", Collections.nCopies(lines.size(), "(?, ?, ?, ?, ?)")))
                .params(values)
                .update();
    }

    /** What is sent under an idempotency key. */
    record Sent(String id, String sha256) {}

    Optional<Sent> sent(String key) {
        return database.sql("SELECT id, request_sha256 FROM order_batch WHERE tenant = ? AND idempotency_key = ?")
                .params(tenant, key)
                .query((row, number) -> new Sent(row.getString(1), row.getString(2)))
                .optional();
    }

    void run(String id, int lines, Optional<String> key, String sha256) {
        database.sql("UPDATE order_batch SET state = ?, line_count = ?, idempotency_key = NULLIF(?, ''),"
                        + " request_sha256 = ? WHERE tenant = ? AND id = ?")
                .params(BatchState.RUNNING.word(), lines, key.orElse(""), sha256, tenant, id)
                .update();
    }

    BatchJob get(String id) {
        return database.sql(JOB + " AND b.id = ?" + GROUPED)
                .params(tenant, id)
                .query(BatchBook::job)
                .optional()
                .orElseThrow(() -> new ProblemException(Problem.of(
                        ProblemKind.NOT_FOUND,
                        "There is no batch of this id; GET /v1/order-batches lists those that run as jobs.")));
    }

    List<BatchJob> list(Optional<OrderSearch.Place> after, int most) {
        List<Object> values = new ArrayList<>(List.of(tenant));
        after.ifPresent(place -> Collections.addAll(values, place.takenAt().atOffset(ZoneOffset.UTC), place.id()));
        values.add(most);
        return database.sql(JOB + (after.isPresent() ? " AND (b.made_at, b.id) < (?, ?)" : "") + GROUPED
                        + " ORDER BY b.made_at DESC, b.id DESC LIMIT ?")
                .params(values)
                .query(BatchBook::job)
                .list();
    }

    /**
     * Who sent a batch.
     *
     * @param name name of the key
     * @param language what is said to whoever sent it
     */
    record Sender(String name, Language language) {}

    /** In whose name lines are to be worked off; nobody's if the batch does not run any more. */
    Optional<Sender> runsFor(String id) {
        return database.sql("SELECT made_by, language FROM order_batch WHERE tenant = ? AND id = ? AND state = ?")
                .params(tenant, id, BatchState.RUNNING.word())
                .query((row, number) -> new Sender(
                        row.getString(1), Language.find(row.getString(2)).orElse(Language.ENGLISH)))
                .optional();
    }

    /** The next line of a part that is to be answered. */
    Optional<BatchLines.Line> next(String id, int part) {
        return database.sql("SELECT line, body FROM order_batch_line WHERE tenant = ? AND batch = ? AND part = ?"
                        + " AND body IS NOT NULL ORDER BY line LIMIT 1")
                .params(tenant, id, part)
                .query((row, number) -> BatchLines.Line.kept(row.getInt(1), row.getBytes(2)))
                .optional();
    }

    /**
     * Answers a line, once.
     *
     * @return false if it was answered already, or is not to be answered any more
     */
    boolean answer(String id, int part, BatchAnswer answer, String json) {
        int answered = database.sql("UPDATE order_batch_line SET answer = ?, body = NULL"
                        + " WHERE tenant = ? AND batch = ? AND line = ? AND body IS NOT NULL")
                .params(json, tenant, id, answer.line())
                .update();
        database.sql("UPDATE order_batch_part SET answered = answered + ?, refused = refused + ?"
                        + " WHERE tenant = ? AND batch = ? AND part = ?")
                .params(answered, answer.problem().isPresent() ? answered : 0, tenant, id, part)
                .update();
        return answered == 1;
    }

    /** Ends a batch whose lines are all answered. */
    boolean endIfDone(String id) {
        return database.sql("UPDATE order_batch SET state = ?, ended_at = ? WHERE tenant = ? AND id = ? AND state = ?"
                                + " AND NOT EXISTS (SELECT 1 FROM order_batch_part p WHERE p.tenant = order_batch.tenant AND p.batch ="
                                + " order_batch.id AND p.answered < p.line_count)")
                        .params(BatchState.DONE.word(), Times.now(), tenant, id, BatchState.RUNNING.word())
                        .update()
                == 1;
    }

    /** Cancels a batch that runs. The measurements that are not to be used any more are gone at once. */
    boolean cancel(String id) {
        int cancelled = database.sql(
                        "UPDATE order_batch SET state = ?, ended_at = ?" + " WHERE tenant = ? AND id = ? AND state = ?")
                .params(BatchState.CANCELLED.word(), Times.now(), tenant, id, BatchState.RUNNING.word())
                .update();
        if (cancelled == 1) {
            database.sql("UPDATE order_batch_line SET body = NULL WHERE tenant = ? AND batch = ?")
                    .params(tenant, id)
                    .update();
        }
        return cancelled == 1;
    }

    /** A line that was answered. */
    record Result(int line, String answer) {}

    List<Result> results(String id, int after, int most) {
        return database.sql("SELECT line, answer FROM order_batch_line WHERE tenant = ? AND batch = ? AND line > ?"
                        + " AND answer IS NOT NULL ORDER BY line LIMIT ?")
                .params(tenant, id, after, most)
                .query((row, number) -> new Result(row.getInt(1), row.getString(2)))
                .list();
    }

    /** Takes a batch away, unless it runs or ended later than that. */
    boolean remove(String id, OffsetDateTime endedBefore) {
        database.sql("DELETE FROM order_batch WHERE tenant = ? AND id = ?"
                        + " AND (ended_at < ? OR state = ? AND made_at < ?)")
                .params(tenant, id, endedBefore, BatchState.RECEIVING.word(), endedBefore)
                .update();
        return database.sql("SELECT COUNT(*) FROM order_batch WHERE tenant = ? AND id = ?")
                        .params(tenant, id)
                        .query(Long.class)
                        .single()
                == 0;
    }

    /** Takes a batch away that nobody has been told of. */
    void drop(String id) {
        database.sql("DELETE FROM order_batch WHERE tenant = ? AND id = ?")
                .params(tenant, id)
                .update();
    }
}
