package org.capwright.service.store;

import com.zaxxer.hikari.HikariDataSource;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.concurrent.locks.Lock;
import java.util.concurrent.locks.ReadWriteLock;
import java.util.concurrent.locks.ReentrantReadWriteLock;
import java.util.function.Consumer;
import java.util.function.Function;
import javax.sql.DataSource;
import org.capwright.service.http.problem.Problem;
import org.capwright.service.http.problem.ProblemException;
import org.capwright.service.http.problem.ProblemKind;
import org.flywaydb.core.Flyway;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.beans.factory.annotation.Value;
import org.springframework.core.NestedExceptionUtils;
import org.springframework.dao.ConcurrencyFailureException;
import org.springframework.dao.DataIntegrityViolationException;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.jdbc.datasource.TransactionAwareDataSourceProxy;
import org.springframework.jdbc.support.JdbcTransactionManager;
import org.springframework.stereotype.Component;
import org.springframework.transaction.CannotCreateTransactionException;
import org.springframework.transaction.support.TransactionSynchronizationManager;
import org.springframework.transaction.support.TransactionTemplate;

/** The database of styles and orders. Safe for many threads. */
@Component
public final class Store implements AutoCloseable {

    private static final Logger LOG = LoggerFactory.getLogger(Store.class);

    /** How often work is tried again that met other work on the same rows. */
    private static final int TRIES = 5;

    private static final int CONNECTIONS = 8 + Runtime.getRuntime().availableProcessors();
    private static final long PATIENCE = 10_000;

    private final StoreAddress address;
    private final ReadWriteLock doors = new ReentrantReadWriteLock(true);
    private final List<Consumer<DataSource>> waiting = new ArrayList<>();
    private @Nullable Opened opened;

    /**
     * A store that is not opened yet.
     *
     * @param setting a folder for the embedded database, a JDBC address of PostgreSQL, or {@code off}
     */
    public Store(@Value("${capwright.store}") String setting) {
        this.address = StoreAddress.of(setting);
    }

    /**
     * Has something done as soon as the store is open, once.
     *
     * @param work gets the database; what it does there within {@link #transaction} belongs to that transaction
     */
    public synchronized void whenOpen(Consumer<DataSource> work) {
        waiting.add(work);
    }

    /**
     * Whether something may be kept already, which work was left undone on.
     *
     * @return false for an embedded database that was never opened, and without a store
     */
    public boolean begun() {
        return address instanceof StoreAddress.Database database && database.begun();
    }

    private record Opened(
            HikariDataSource pool,
            JdbcClient client,
            TransactionTemplate transactions,
            Optional<Compaction> compaction) {}

    /**
     * Does work in one transaction: all of it is kept, or nothing. Work that meets other work on the same rows is done again from its beginning.
     *
     * @param work what to do; it must change nothing but the database
     * @param <T> what comes of it
     * @return what comes of it
     * @throws ProblemException if there is no store, or it cannot be reached
     */
    public <T> T transaction(Function<JdbcClient, T> work) {
        return locked(doors.readLock(), work);
    }

    /**
     * Does work in one transaction while this service does nothing else with the store. For work that takes away what others may just begin to refer to: the embedded database
     * does not lock the row that a new reference points to.
     *
     * @param work what to do
     * @param <T> what comes of it
     * @return what comes of it
     * @throws ProblemException if there is no store, or it cannot be reached
     */
    public <T> T alone(Function<JdbcClient, T> work) {
        return locked(doors.writeLock(), work);
    }

    private <T> T locked(Lock lock, Function<JdbcClient, T> work) {
        Opened store = open();
        lock.lock();
        try {
            for (int tries = 1; ; tries++) {
                try {
                    T done = Objects.requireNonNull(
                            store.transactions.execute(status -> Objects.requireNonNull(work.apply(store.client))));
                    if (!TransactionSynchronizationManager.isActualTransactionActive()) {
                        store.compaction.ifPresent(compaction -> compaction.after(store.pool));
                    }
                    return done;
                } catch (ConcurrencyFailureException | DataIntegrityViolationException e) {
                    if (tries == TRIES) {
                        throw e;
                    }
                }
            }
        } catch (CannotCreateTransactionException e) {
            throw unavailable(e);
        } finally {
            lock.unlock();
        }
    }

    /**
     * Claims a name until the end of the transaction, among all copies of the service that share the database. The embedded one has a single copy.
     *
     * @param database the database of the transaction
     * @param name what to claim
     * @return false if another transaction has it
     */
    public boolean claim(JdbcClient database, String name) {
        return !(address instanceof StoreAddress.Server)
                || database.sql("SELECT pg_try_advisory_xact_lock(hashtextextended(:name, 0))")
                        .param("name", name)
                        .query(Boolean.class)
                        .single();
    }

    /** The database itself, opened. */
    DataSource database() {
        return open().pool;
    }

    private synchronized Opened open() {
        Opened known = opened;
        if (known != null) {
            return known;
        }
        if (!(address instanceof StoreAddress.Database database)) {
            throw new ProblemException(Problem.of(
                    ProblemKind.UNAVAILABLE,
                    "This service keeps nothing: its setting capwright.store is off. Styles and orders need a store."));
        }
        HikariDataSource pool = new HikariDataSource();
        try {
            pool.setJdbcUrl(database.url());
            if (!database.user().isEmpty()) {
                pool.setUsername(database.user());
            }
            pool.setMaximumPoolSize(CONNECTIONS);
            pool.setConnectionTimeout(PATIENCE);
            Flyway.configure(Store.class.getClassLoader())
                    .dataSource(pool)
                    .locations("classpath:db/migration")
                    .placeholders(database.words())
                    .load()
                    .migrate();
        } catch (RuntimeException e) {
            pool.close();
            throw unavailable(e);
        }
        opened = new Opened(
                pool,
                JdbcClient.create(pool),
                new TransactionTemplate(new JdbcTransactionManager(pool)),
                database instanceof StoreAddress.Folder ? Optional.of(new Compaction()) : Optional.empty());
        LOG.info(
                "The store is open: {}",
                database instanceof StoreAddress.Folder folder ? folder.folder() : "PostgreSQL");
        waiting.forEach(work -> work.accept(new TransactionAwareDataSourceProxy(pool)));
        return opened;
    }

    /** What the driver says names the place and the reason, never the password or what was to be kept. */
    private static ProblemException unavailable(RuntimeException e) {
        LOG.error(
                "The store cannot be used: {}",
                NestedExceptionUtils.getMostSpecificCause(e).toString());
        return new ProblemException(Problem.of(
                ProblemKind.UNAVAILABLE, "The store of this service cannot be reached now; its log says why."));
    }

    @Override
    public synchronized void close() {
        if (opened != null) {
            opened.pool.close();
            opened = null;
        }
    }
}
