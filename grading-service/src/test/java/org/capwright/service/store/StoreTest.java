package org.capwright.service.store;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.stream.IntStream;
import org.capwright.service.http.access.Caller;
import org.capwright.service.http.access.Scope;
import org.capwright.service.http.problem.ProblemException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What is true of the store whatever it keeps. */
class StoreTest {

    private static final Caller CHOIR = new Caller("choir", "front desk", Set.of(Scope.ORDER));
    private static final Caller THEATRE = new Caller("theatre", "wardrobe", Set.of(Scope.ORDER));

    private static List<String> subjects(Store store, Caller caller) {
        return store.transaction(database -> AuditTrail.list(database, caller.tenant(), Optional.empty(), 100)).stream()
                .map(AuditTrail.Entry::subject)
                .toList();
    }

    private static String write(Store store, Caller caller, String subject) {
        return store.transaction(database -> {
            AuditTrail.write(database, caller, "style.made", subject);
            return subject;
        });
    }

    @ParameterizedTest
    @EnumSource
    void whatIsWrittenIsThereAfterReopening(Databases kind) {
        String setting = kind.empty();
        try (Store store = new Store(setting)) {
            write(store, CHOIR, "gown");
            write(store, CHOIR, "cassock");
            write(store, THEATRE, "doublet");
        }
        try (Store store = new Store(setting)) {
            assertEquals(List.of("cassock", "gown"), subjects(store, CHOIR));
            assertEquals(List.of("doublet"), subjects(store, THEATRE));
        }
    }

    @ParameterizedTest
    @EnumSource
    void workThatFailsLeavesNothing(Databases kind) {
        try (Store store = new Store(kind.empty())) {
            assertThrows(
                    ArithmeticException.class,
                    () -> store.transaction(database -> {
                        AuditTrail.write(database, CHOIR, "style.made", "gown");
                        throw new ArithmeticException();
                    }));
            assertEquals(List.of(), subjects(store, CHOIR));
        }
    }

    /** Two that make the same style at once: the second sees the first's and is not refused by the database. */
    @ParameterizedTest
    @EnumSource
    void workThatMeetsOtherWorkIsDoneAgain(Databases kind) throws Exception {
        try (Store store = new Store(kind.empty())) {
            write(store, CHOIR, "opened");
            int people = 8;
            CountDownLatch begin = new CountDownLatch(1);
            ExecutorService pool = Executors.newFixedThreadPool(people);
            List<Future<Integer>> made = IntStream.range(0, people)
                    .mapToObj(i -> pool.submit(() -> {
                        begin.await();
                        return store.transaction(database -> {
                            Optional<Integer> last = database.sql(
                                            "SELECT revision FROM style WHERE tenant = 'choir' AND id = 'gown' FOR"
                                                    + " UPDATE")
                                    .query(Integer.class)
                                    .optional();
                            if (last.isEmpty()) {
                                database.sql("INSERT INTO style (tenant, id, revision, archived)"
                                                + " VALUES ('choir', 'gown', 1, FALSE)")
                                        .update();
                                return 1;
                            }
                            database.sql("UPDATE style SET revision = ? WHERE tenant = 'choir' AND id = 'gown'")
                                    .param(last.get() + 1)
                                    .update();
                            return last.get() + 1;
                        });
                    }))
                    .toList();
            begin.countDown();
            Set<Integer> revisions = new java.util.TreeSet<>();
            for (Future<Integer> one : made) {
                revisions.add(one.get());
            }
            pool.shutdown();
            assertEquals(people, revisions.size(), "nobody's revision was overwritten: " + revisions);
        }
    }

    @Test
    void copiesOnOneServerClaimANameOnceAtATime() {
        String setting = Databases.POSTGRESQL.empty();
        try (Store one = new Store(setting);
                Store other = new Store(setting)) {
            boolean second = one.transaction(database -> {
                assertTrue(one.claim(database, "order 7"));
                return other.transaction(elsewhere -> other.claim(elsewhere, "order 7"));
            });
            assertFalse(second);
            boolean later = other.transaction(database -> other.claim(database, "order 7"));
            assertTrue(later, "free again");
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"off", "", "  "})
    void aStoreThatIsOffKeepsNothing(String setting) {
        try (Store store = new Store(setting)) {
            ProblemException refused = assertThrows(ProblemException.class, () -> write(store, CHOIR, "gown"));
            assertEquals(503, refused.problem().status());
            assertTrue(
                    refused.problem().detail().toString().contains("capwright.store"),
                    refused.problem().detail().toString());
        }
    }

    @Test
    void nothingIsWrittenBeforeTheFirstUse(@TempDir Path folder) throws Exception {
        Path kept = folder.resolve("kept");
        try (Store store = new Store(kept.toString())) {
            assertFalse(Files.exists(kept));
            write(store, CHOIR, "gown");
            assertTrue(Files.exists(kept));
        }
    }

    @Test
    void aStoreThatCannotBeReachedSaysSo() {
        try (Store store = new Store("jdbc:postgresql://127.0.0.1:9/none?user=capwright&password=hidden")) {
            ProblemException refused = assertThrows(ProblemException.class, () -> write(store, CHOIR, "gown"));
            assertEquals(503, refused.problem().status());
            assertFalse(refused.problem().detail().toString().contains("hidden"));
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"jdbc:mysql://x", "jdbc:h2:mem:x", "folder;INIT=x"})
    void otherAddressesAreRefused(String setting) {
        assertThrows(IllegalArgumentException.class, () -> new Store(setting));
    }
}
