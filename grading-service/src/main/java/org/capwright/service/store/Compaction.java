package org.capwright.service.store;

import java.sql.Connection;
import java.sql.SQLException;
import java.time.Duration;
import java.util.concurrent.atomic.AtomicLong;
import javax.sql.DataSource;
import org.h2.engine.SessionLocal;
import org.h2.jdbc.JdbcConnection;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Gives back the room that commits leave behind in the file of the embedded database. Every commit is written by itself, as a copy of the pages it changed; what an earlier one wrote is then dead, but
 * stands beside pages that live on. The database moves those together by itself only where commits wait to be written, and here none does: without this the file of 20,000 small orders is fourteen times
 * as large as what is in it.
 */
final class Compaction {

    private static final Logger LOG = LoggerFactory.getLogger(Compaction.class);

    private static final long EVERY = Duration.ofSeconds(10).toNanos();

    /** The share of the file that is to be alive, percent. */
    private static final int ALIVE = 70;

    /** The most that is moved at once, bytes: some tenths of a second. */
    private static final int MOVED = 16 << 20;

    private final AtomicLong due = new AtomicLong(System.nanoTime() + EVERY);

    /**
     * Moves pages together where it is time to.
     *
     * @param database the embedded database, outside of a transaction
     */
    void after(DataSource database) {
        long now = System.nanoTime();
        long expected = due.get();
        if (now - expected < 0 || !due.compareAndSet(expected, now + EVERY)) {
            return;
        }
        try (Connection connection = database.getConnection()) {
            SessionLocal session =
                    (SessionLocal) connection.unwrap(JdbcConnection.class).getSession();
            session.getDatabase().getStore().getMvStore().compact(ALIVE, MOVED);
        } catch (SQLException e) {
            // What was asked for is done and kept; only room is not given back.
            LOG.warn("The file of the store could not be made smaller: {}", e.toString());
        }
    }
}
