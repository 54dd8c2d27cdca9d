package org.capwright.service.orders;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.BufferedReader;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.concurrent.TimeUnit;
import java.util.stream.Collectors;
import org.capwright.service.http.access.Caller;
import org.capwright.service.store.Databases;
import org.capwright.service.store.Store;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.springframework.context.annotation.AnnotationConfigApplicationContext;
import tools.jackson.databind.json.JsonMapper;

/** The process is killed (SIGKILL) at a random moment while it takes orders and works off a batch as a job: once on each database, often with {@code -Pthorough}. */
class KilledServiceTest {

    private static final int ROUNDS =
            Integer.getInteger("capwright.kills", Boolean.getBoolean("capwright.thorough") ? 25 : 1);
    private static final int LONGEST_PAUSE = 700;
    private static final long PATIENCE = TimeUnit.SECONDS.toNanos(120);
    private static final List<String> FORMATS = List.of("csv", "dxf", "json", "pdf", "plt", "svg");

    /** Of so many new orders of a round the files are unpacked and held against their fingerprints. */
    private static final int OPENED = 25;

    private static final String GOWN = """
        {"units":"cm","baseSize":"40","sizes":["38","40"],
         "sleeve":{"bicep":36,"length":60,"capHeight":13.5,"capOutward":1.9,"capInward":1.2},
         "underSleeve":{"wrist":19}}
        """;

    /** What a round was told: orders by their keys, those that it was told are cut, and batches that run as jobs. */
    private record Told(Map<String, String> taken, Set<String> cut, Set<String> jobs) {}

    @ParameterizedTest
    @EnumSource
    void whatWasAcknowledgedIsThereOnceAndWhole(Databases kind) throws Exception {
        long seed = System.nanoTime();
        Random random = new Random(seed);
        String setting = kind.empty();
        try (AnnotationConfigApplicationContext service = KilledWriter.service(setting)) {
            put(service);
        }
        Set<String> known = new HashSet<>();
        Set<String> told = new HashSet<>();
        for (int round = 1; round <= ROUNDS; round++) {
            Told now = killed(setting, round, random.nextInt(LONGEST_PAUSE));
            assertFalse(now.taken().isEmpty());
            told.addAll(now.taken().values());
            try (AnnotationConfigApplicationContext service = KilledWriter.service(setting)) {
                known = check(service, now, known, "seed " + seed + ", round " + round);
                assertTrue(
                        known.containsAll(told),
                        "seed " + seed + ", round " + round + ": nothing acknowledged is lost");
            }
        }
        System.out.println(kind + ": " + ROUNDS + " kills, " + told.size() + " orders acknowledged by name, "
                + known.size() + " kept, none lost, doubled or half done");
    }

    private static void put(AnnotationConfigApplicationContext service) {
        put(service.getBean(Store.class));
    }

    static void put(Store store) {
        store.transaction(database -> {
            database.sql("INSERT INTO style (tenant, id, revision, archived) VALUES ('local', ?, 1, FALSE)")
                    .param(KilledWriter.STYLE)
                    .update();
            return database.sql(
                            "INSERT INTO style_revision (tenant, id, revision, name, body, sha256, made_at, made_by)"
                                    + " VALUES ('local', ?, 1, 'gown', ?, ?, CURRENT_TIMESTAMP, 'test')")
                    .params(KilledWriter.STYLE, GOWN, "0".repeat(64))
                    .update();
        });
    }

    private static Told killed(String setting, int round, int pause) throws IOException, InterruptedException {
        Process process = started(setting, round);
        Told told = new Told(new HashMap<>(), new HashSet<>(), new HashSet<>());
        try (BufferedReader said =
                new BufferedReader(new InputStreamReader(process.getInputStream(), StandardCharsets.UTF_8))) {
            String line = said.readLine();
            while (line != null && !note(line, told)) {
                line = said.readLine();
            }
            Thread.sleep(pause);
            kill(process);
            for (String rest = said.readLine(); rest != null; rest = said.readLine()) {
                note(rest, told);
            }
        }
        return told;
    }

    /** By its handle: the process itself would close what it has said. */
    static void kill(Process process) throws InterruptedException {
        process.toHandle().destroyForcibly();
        process.waitFor();
    }

    static Process started(String setting, int round) throws IOException {
        return new ProcessBuilder(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-XX:TieredStopAtLevel=1",
                        "-XX:+UseSerialGC",
                        "-cp",
                        System.getProperty("java.class.path"),
                        KilledWriter.class.getName(),
                        setting,
                        Integer.toString(round))
                .redirectError(ProcessBuilder.Redirect.INHERIT)
                .start();
    }

    /** A line that was cut off by the end says nothing. */
    private static boolean note(String line, Told told) {
        String[] words = line.split(" ");
        if (words.length != 3 || words[2].length() != 36) {
            return false;
        }
        if (words[0].equals("taken")) {
            told.taken().put(words[1], words[2]);
        } else if (words[0].equals("cut")) {
            told.cut().add(words[2]);
        } else if (words[0].equals("job")) {
            told.jobs().add(words[2]);
        }
        return told.taken().size() > 0;
    }

    /** Gives the ids of all orders. */
    private static Set<String> check(
            AnnotationConfigApplicationContext service, Told told, Set<String> known, String message) {
        Store store = service.getBean(Store.class);
        Set<String> ofJobs = new HashSet<>();
        for (String job : told.jobs()) {
            ofJobs.addAll(finished(service, job, message));
        }
        assertEquals(
                KilledWriter.LINES_OF_A_JOB * told.jobs().size(),
                ofJobs.size(),
                message + ": every line of a job has an order of its own");
        OrderDesk desk = service.getBean(OrderDesk.class);
        List<SleeveOrder> orders = store.transaction(database -> new OrderBook(database, "local")
                .list(OrderSearch.of("", KilledWriter.STYLE, "", "", ""), Optional.empty(), 1_000_000));
        Set<String> ids = orders.stream().map(SleeveOrder::id).collect(Collectors.toSet());
        assertTrue(ids.containsAll(told.taken().values()), message + ": nothing acknowledged is lost");
        assertTrue(ids.containsAll(ofJobs), message + ": every line of a job has its order");
        orders.stream()
                .filter(order -> told.cut().contains(order.id()))
                .forEach(order -> assertEquals(OrderState.CUT, order.state(), message));
        orders.stream()
                .filter(order -> !known.contains(order.id()))
                .limit(OPENED)
                .forEach(order -> assertEquals(
                        FORMATS,
                        desk.files(Caller.LOCAL, order.id(), Optional.empty()).stream()
                                .map(DrawnFile::format)
                                .sorted()
                                .toList(),
                        message));
        whole(store, message);
        told.taken().entrySet().stream()
                .filter(one -> one.getKey().contains("size"))
                .limit(3)
                .forEach(one -> assertEquals(
                        one.getValue(),
                        KilledWriter.take(service, one.getKey(), KilledWriter.SIZE)
                                .id(),
                        message + ": sent again it is the same order"));
        return ids;
    }

    /** In one statement, so of one moment: the last commit of a killed service may be at the server still. */
    private static void whole(Store store, String message) {
        List<Long> counts = store.transaction(database -> database.sql("""
            SELECT (SELECT COUNT(*) FROM sleeve_order),
              (SELECT COUNT(*) FROM idempotency),
              (SELECT COUNT(*) FROM audit_entry WHERE what = 'order.taken'),
              (SELECT COUNT(*) FROM sleeve_order o WHERE 6 = (SELECT COUNT(*) FROM order_file f
                 JOIN content c ON c.tenant = f.tenant AND c.sha256 = f.sha256
                 WHERE f.tenant = o.tenant AND f.order_id = o.id)),
              (SELECT COUNT(*) FROM sleeve_order o WHERE CASE o.state WHEN 'cut' THEN 2 ELSE 1 END =
                 (SELECT COUNT(*) FROM order_state s WHERE s.tenant = o.tenant AND s.order_id = o.id))
            """)
                .query((row, number) ->
                        List.of(row.getLong(1), row.getLong(2), row.getLong(3), row.getLong(4), row.getLong(5)))
                .single());
        assertEquals(
                Set.of(counts.get(0)),
                new HashSet<>(counts),
                message + ": every order has its key, so none is doubled, its entry in the audit trail, all of its"
                        + " files and all of its states, but " + counts);
    }

    /** The orders of a job that goes on after the kill by itself. */
    private static List<String> finished(AnnotationConfigApplicationContext service, String job, String message) {
        BatchDesk desk = service.getBean(BatchDesk.class);
        long end = System.nanoTime() + PATIENCE;
        while (desk.look(Caller.LOCAL, job).state() == BatchState.RUNNING) {
            assertTrue(System.nanoTime() < end, message + ": " + desk.look(Caller.LOCAL, job));
            try {
                Thread.sleep(50);
            } catch (InterruptedException e) {
                Thread.currentThread().interrupt();
            }
        }
        ByteArrayOutputStream results = new ByteArrayOutputStream();
        try {
            desk.results(Caller.LOCAL, job, results);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        JsonMapper mapper = service.getBean(JsonMapper.class);
        return results.toString(StandardCharsets.UTF_8)
                .lines()
                .map(line -> mapper.readTree(line).path("order").asString("none"))
                .toList();
    }
}
