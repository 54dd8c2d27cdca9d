package org.capwright.service.orders;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.BufferedReader;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.UUID;
import java.util.concurrent.CompletableFuture;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.capwright.service.KeptService;
import org.capwright.service.http.JsonMapping;
import org.capwright.service.store.Databases;
import org.capwright.service.store.Store;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** Two copies of the service on one PostgreSQL. */
class TwoCopiesTest {

    private static final long PATIENCE = 120_000;
    private static final int LINES = 1_200;

    private static final String GOWN = """
        {"units":"cm","baseSize":"40","sizes":["38","40"],
         "sleeve":{"bicep":36,"length":60,"capHeight":13.5,"capOutward":1.9,"capInward":1.2},
         "underSleeve":{"wrist":19}}
        """;

    private static final KeptService ONE = KeptService.on(Databases.POSTGRESQL);
    private static KeptService other;

    @BeforeAll
    static void start() {
        other = ONE.copy();
    }

    @AfterAll
    static void stop() {
        other.stop();
    }

    /** Sends the same to both at once. */
    private static List<KeptService.Answer> both(
            String method, String path, String one, String two, String... headers) {
        CompletableFuture<KeptService.Answer> first =
                CompletableFuture.supplyAsync(() -> ONE.send(method, path, one, headers));
        KeptService.Answer second = other.send(method, path, two, headers);
        return List.of(first.join(), second);
    }

    private static String style() {
        String id = "shared-" + UUID.randomUUID();
        assertEquals(201, ONE.send("PUT", "/v1/styles/" + id, GOWN).status());
        return id;
    }

    @Test
    void anOrderSentToBothIsTakenOnce() {
        String style = style();
        for (int round = 0; round < 5; round++) {
            String key = UUID.randomUUID().toString();
            Set<String> ids = new HashSet<>();
            for (KeptService.Answer answer : both(
                    "POST",
                    "/v1/styles/" + style + "/orders",
                    "{\"size\":\"40\"}",
                    "{\"size\":\"40\"}",
                    "Idempotency-Key",
                    key)) {
                assertTrue(answer.status() == 201 || answer.status() == 409, answer.text());
                if (answer.status() == 201) {
                    ids.add(answer.json().get("order").get("id").stringValue());
                }
            }
            assertEquals(1, ids.size());
        }
        assertEquals(
                5, ONE.get("/v1/orders?style=" + style).json().get("orders").size());
    }

    @Test
    void ofTwoChangesOfAStyleOneIsRefused() {
        String style = style();
        for (int revision = 1; revision <= 5; revision++) {
            String tag = other.get("/v1/styles/" + style).header("ETag");
            List<Integer> answered = both(
                            "PUT",
                            "/v1/styles/" + style,
                            GOWN.replace("\"length\":60", "\"length\":" + (60 + revision)),
                            GOWN.replace("\"length\":60", "\"length\":" + (50 - revision)),
                            "If-Match",
                            tag)
                    .stream()
                    .map(KeptService.Answer::status)
                    .sorted()
                    .toList();
            assertEquals(List.of(200, 412), answered);
        }
        assertEquals(
                6,
                ONE.get("/v1/styles/" + style + "/revisions")
                        .json()
                        .get("revisions")
                        .size());
    }

    @Test
    void bothWorkOffOneJob() {
        String style = style();
        String lines = IntStream.range(0, LINES)
                .mapToObj(i -> "{\"style\":\"" + style + "\",\"size\":\"40\"}")
                .collect(Collectors.joining("\n"));
        String job = ONE.send(
                        "POST",
                        "/v1/order-batches",
                        lines,
                        "Content-Type",
                        "application/x-ndjson",
                        "Prefer",
                        "respond-async")
                .header("Location");
        Set<String> hands = new TreeSet<>();
        String state = "running";
        long end = System.currentTimeMillis() + PATIENCE;
        while (state.equals("running") && System.currentTimeMillis() < end) {
            hands.addAll(ONE.bean(Store.class)
                    .transaction(database -> database.sql(
                                    "SELECT DISTINCT picked_by FROM scheduled_tasks WHERE picked AND task_name = ?"
                                            + " AND task_instance LIKE ?")
                            .params(BatchParts.NAME, "%" + job.substring(job.lastIndexOf('/') + 1) + "%")
                            .query(String.class)
                            .list()));
            state = other.get(job).json().get("state").stringValue();
        }
        assertEquals("done", state);
        assertEquals(2, hands.size(), "each copy had a hand in it");
        List<String> orders = new ArrayList<>();
        other.get(job + "/results")
                .text()
                .lines()
                .map(JsonMapping.mapper()::readTree)
                .forEach(line -> orders.add(line.get("order").stringValue()));
        assertEquals(LINES, orders.size());
        assertEquals(LINES, new HashSet<>(orders).size());
        assertEquals((long) LINES, (long) ONE.bean(Store.class)
                .transaction(database -> database.sql("SELECT COUNT(*) FROM sleeve_order WHERE style = ?")
                        .param(style)
                        .query(Long.class)
                        .single()));
    }

    /** A third copy begins a job and is killed; the others end it without being asked. */
    @Test
    void theJobOfAKilledCopyIsEndedByTheOthers() throws Exception {
        KilledServiceTest.put(ONE.bean(Store.class));
        Process third = KilledServiceTest.started(ONE.store(), 1);
        try (BufferedReader said =
                new BufferedReader(new InputStreamReader(third.getInputStream(), StandardCharsets.UTF_8))) {
            String[] words = said.readLine().split(" ");
            assertEquals("job", words[0]);
            // An order is taken, so the job has begun as well.
            said.readLine();
            KilledServiceTest.kill(third);
            String job = "/v1/order-batches/" + words[2];
            long end = System.currentTimeMillis() + PATIENCE;
            while (other.get(job).json().get("state").stringValue().equals("running")) {
                assertTrue(System.currentTimeMillis() < end, other.get(job).text());
                Thread.sleep(100);
            }
            assertEquals(
                    KilledWriter.LINES_OF_A_JOB,
                    ONE.get(job + "/results")
                            .text()
                            .lines()
                            .map(line -> JsonMapping.mapper()
                                    .readTree(line)
                                    .get("order")
                                    .stringValue())
                            .distinct()
                            .count());
        }
    }
}
