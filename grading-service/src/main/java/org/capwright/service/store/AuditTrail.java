package org.capwright.service.store;

import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Optional;
import org.capwright.service.http.access.Caller;
import org.springframework.jdbc.core.simple.JdbcClient;

/** Who did what and when. Entries name styles, orders and keys, and hold no measurement. They are written in the transaction of what they tell, and never changed. */
public final class AuditTrail {

    private AuditTrail() {}

    /**
     * One entry.
     *
     * @param number its place in the trail
     * @param at when
     * @param who name of the key
     * @param what what was done, for example {@code order.taken}
     * @param subject to which style, order or key
     */
    public record Entry(long number, Instant at, String who, String what, String subject) {}

    /**
     * Writes an entry.
     *
     * @param database the database of the transaction
     * @param caller who
     * @param what what was done
     * @param subject to what
     */
    public static void write(JdbcClient database, Caller caller, String what, String subject) {
        database.sql("INSERT INTO audit_entry (tenant, at, who, what, subject) VALUES (?, ?, ?, ?, ?)")
                .params(caller.tenant(), Times.now(), caller.name(), what, subject)
                .update();
    }

    /**
     * Entries of a tenant, newest first.
     *
     * @param database the database
     * @param tenant whose
     * @param before only entries before this one
     * @param most how many
     * @return the entries
     */
    public static List<Entry> list(JdbcClient database, String tenant, Optional<Long> before, int most) {
        return database.sql("SELECT number, at, who, what, subject FROM audit_entry"
                        + " WHERE tenant = ? AND number < ? ORDER BY number DESC LIMIT ?")
                .params(tenant, before.orElse(Long.MAX_VALUE), most)
                .query((row, i) -> new Entry(
                        row.getLong(1),
                        row.getObject(2, OffsetDateTime.class).toInstant(),
                        row.getString(3),
                        row.getString(4),
                        row.getString(5)))
                .list();
    }
}
