package org.capwright.service.store;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.ResultSetMetaData;
import java.sql.SQLException;
import java.sql.Statement;
import java.sql.Types;
import java.time.OffsetDateTime;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.StringJoiner;
import org.jspecify.annotations.Nullable;

/** Moves everything that is kept from one store to another, of whichever kind: what was embedded goes on in PostgreSQL. */
public final class StoreMove {

    /** In such an order that what a row refers to is there before it. */
    private static final List<String> TABLES = List.of(
            "style",
            "style_revision",
            "audit_entry",
            "sleeve_order",
            "order_state",
            "content",
            "order_file",
            "idempotency",
            "api_key",
            "key_origin",
            "webhook",
            "webhook_delivery",
            "order_batch",
            "order_batch_part",
            "order_batch_line",
            "scheduled_tasks");

    /** Whose numbers the database gives. */
    private static final String NUMBERED = "audit_entry";

    private static final int AT_ONCE = 200;

    private StoreMove() {}

    /**
     * What is moved.
     *
     * @return the names of the tables
     */
    public static List<String> tables() {
        return TABLES;
    }

    /**
     * Copies everything in one transaction. No service may use either store meanwhile.
     *
     * @param from setting of a store, as {@code capwright.store} takes it
     * @param to setting of another one, in which nothing is kept yet
     * @return how many rows each table had
     * @throws IllegalArgumentException if there is something in the other one already
     * @throws SQLException if a database cannot be read or written; nothing is copied then
     */
    public static Map<String, Long> copy(String from, String to) throws SQLException {
        try (Store old = new Store(from);
                Store young = new Store(to);
                Connection source = old.database().getConnection();
                Connection target = young.database().getConnection()) {
            source.setAutoCommit(false);
            target.setAutoCommit(false);
            for (String table : TABLES) {
                if (count(target, table) > 0) {
                    throw new IllegalArgumentException(
                            "the other store has something in it already, in " + table + "; it must be empty");
                }
            }
            Map<String, Long> copied = new LinkedHashMap<>();
            for (String table : TABLES) {
                copied.put(table, copy(source, target, table));
            }
            goOnCounting(target);
            target.commit();
            return copied;
        }
    }

    private static long count(Connection database, String table) throws SQLException {
        return number(database, "SELECT COUNT(*) FROM " + table);
    }

    private static long number(Connection database, String sql) throws SQLException {
        try (Statement statement = database.createStatement();
                ResultSet row = statement.executeQuery(sql)) {
            row.next();
            return row.getLong(1);
        }
    }

    private static long copy(Connection source, Connection target, String table) throws SQLException {
        long rows = 0;
        try (Statement read = source.createStatement()) {
            read.setFetchSize(AT_ONCE);
            try (ResultSet row = read.executeQuery("SELECT * FROM " + table)) {
                ResultSetMetaData shape = row.getMetaData();
                try (PreparedStatement write = target.prepareStatement(insert(table, shape))) {
                    while (row.next()) {
                        for (int column = 1; column <= shape.getColumnCount(); column++) {
                            write.setObject(column, value(row, shape.getColumnType(column), column));
                        }
                        write.addBatch();
                        if (++rows % AT_ONCE == 0) {
                            write.executeBatch();
                        }
                    }
                    write.executeBatch();
                }
            }
        }
        if (count(target, table) != rows) {
            throw new SQLException("not every row of " + table + " was copied");
        }
        return rows;
    }

    private static String insert(String table, ResultSetMetaData shape) throws SQLException {
        StringJoiner columns = new StringJoiner(", ");
        for (int column = 1; column <= shape.getColumnCount(); column++) {
            columns.add(shape.getColumnName(column));
        }
        return "INSERT INTO " + table + " (" + columns + ")"
                + (table.equals(NUMBERED) ? " OVERRIDING SYSTEM VALUE" : "") + " VALUES ("
                + String.join(", ", Collections.nCopies(shape.getColumnCount(), "?")) + ")";
    }

    private static @Nullable Object value(ResultSet row, int type, int column) throws SQLException {
        return switch (type) {
            case Types.BLOB, Types.BINARY, Types.VARBINARY, Types.LONGVARBINARY -> row.getBytes(column);
            case Types.TIMESTAMP, Types.TIMESTAMP_WITH_TIMEZONE -> row.getObject(column, OffsetDateTime.class);
            default -> row.getObject(column);
        };
    }

    private static void goOnCounting(Connection target) throws SQLException {
        long next = number(target, "SELECT COALESCE(MAX(number), 0) + 1 FROM " + NUMBERED);
        try (Statement statement = target.createStatement()) {
            statement.execute("ALTER TABLE " + NUMBERED + " ALTER COLUMN number RESTART WITH " + next);
        }
    }
}
