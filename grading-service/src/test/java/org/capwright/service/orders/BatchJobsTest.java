package org.capwright.service.orders;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.capwright.service.KeptService;
import org.capwright.service.http.JsonMapping;
import org.capwright.service.store.Databases;
import org.capwright.service.store.Store;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import tools.jackson.databind.JsonNode;

/** Batches that run as jobs. */
class BatchJobsTest {

    private static final String BATCHES = "/v1/order-batches";
    private static final long PATIENCE = 60_000;

    private static final String GOWN = """
        {"units":"cm","baseSize":"40","sizes":["38","40"],
         "sleeve":{"bicep":36,"length":60,"capHeight":13.5,"capOutward":1.9,"capInward":1.2},
         "underSleeve":{"wrist":19}}
        """;

    private static String style(KeptService service) {
        String id = "job-" + UUID.randomUUID();
        service.send("PUT", "/v1/styles/" + id, GOWN);
        return id;
    }

    private static String line(String style) {
        return "{\"style\":\"" + style + "\",\"size\":\"40\"}";
    }

    private static KeptService.Answer send(KeptService service, String lines, String... headers) {
        List<String> all = new ArrayList<>(List.of(headers));
        all.addAll(List.of("Content-Type", "application/x-ndjson"));
        return service.send("POST", BATCHES, lines, all.toArray(String[]::new));
    }

    private static KeptService.Answer begun(KeptService service, String lines, String... headers) {
        List<String> all = new ArrayList<>(List.of(headers));
        all.addAll(List.of("Prefer", "wait=10, respond-async"));
        return send(service, lines, all.toArray(String[]::new));
    }

    private static JsonNode ended(KeptService service, String job) {
        long end = System.currentTimeMillis() + PATIENCE;
        JsonNode now = service.get(job).json();
        while (now.get("state").stringValue().equals("running")) {
            assertTrue(System.currentTimeMillis() < end, now.toString());
            pause();
            now = service.get(job).json();
        }
        return now;
    }

    private static void pause() {
        try {
            Thread.sleep(50);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    /** What is answered line by line is the same as in a stream, but for the ids of the orders. */
    @ParameterizedTest
    @EnumSource
    void aJobAnswersWhatAStreamDoes(Databases kind) {
        KeptService service = KeptService.on(kind);
        String style = style(service);
        String good = line(style);
        String batch = String.join(
                "\n",
                good,
                "{\"style\":",
                "",
                "{\"style\":\"nothing\",\"size\":\"40\"}",
                good.replace("\"40\"", "\"48\""),
                " ".repeat(OrderOnLine.LONGEST) + good,
                "\"\\u0000\"",
                good.replace("\"40\"", "38,\"reference\":\"last\""));
        KeptService.Answer begun = begun(service, batch, "Accept-Language", "fr");
        assertEquals(202, begun.status(), begun.text());
        assertEquals("respond-async", begun.header("Preference-Applied"));
        String job = begun.header("Location");
        assertTrue(job.matches(BATCHES + "/[0-9a-f-]{36}"), job);
        assertEquals(7, begun.json().get("lines").intValue());
        JsonNode ended = ended(service, job);
        assertEquals("done", ended.get("state").stringValue());
        assertEquals(7, ended.get("answered").intValue());
        assertEquals(5, ended.get("refused").intValue());
        KeptService.Answer results = service.get(job + "/results");
        assertTrue(results.header("Content-Type").startsWith("application/x-ndjson"));
        assertEquals(
                withoutIds(send(service, batch, "Accept-Language", "fr").text()),
                withoutIds(results.text()),
                "the stream answers the same, in the language of the sender, which is kept with the job");
        String first = JsonMapping.mapper()
                .readTree(results.text().lines().findFirst().orElseThrow())
                .get("order")
                .stringValue();
        assertEquals(
                "fr",
                service.get("/v1/orders/" + first + "/measurements")
                        .json()
                        .path("language")
                        .asString("none"),
                "the files are in the language of the sender");
        assertEquals(
                4, service.get("/v1/orders?style=" + style).json().get("orders").size());
        assertTrue(service.get(BATCHES).text().contains(job.substring(BATCHES.length() + 1)));
        assertEquals(
                409,
                service.send("POST", job + "/states", "{\"state\":\"cancelled\"}")
                        .status(),
                "it is done");
    }

    private static List<String> withoutIds(String lines) {
        return lines.lines()
                .map(line -> line.replaceAll("[0-9a-f]{8}-[0-9a-f-]{27}", "id"))
                .toList();
    }

    /** Fetched as a browser's EventSource does: events, each with a name and the job as data. */
    @ParameterizedTest
    @EnumSource
    void whoListensIsToldUntilTheEnd(Databases kind) throws IOException {
        KeptService service = KeptService.on(kind);
        String good = line(style(service));
        String job =
                begun(service, String.join("\n", List.of(good, good, good))).header("Location");
        List<String> events = new ArrayList<>();
        JsonNode last = null;
        try (Socket socket = new Socket("127.0.0.1", service.port())) {
            socket.setSoTimeout((int) PATIENCE);
            socket.getOutputStream()
                    .write(("GET " + job + "/events HTTP/1.1\r\nHost: x\r\nConnection: close\r\n\r\n")
                            .getBytes(StandardCharsets.US_ASCII));
            BufferedReader said =
                    new BufferedReader(new InputStreamReader(socket.getInputStream(), StandardCharsets.UTF_8));
            for (String line = said.readLine(); line != null; line = said.readLine()) {
                if (line.startsWith("event:")) {
                    events.add(line.substring(6));
                } else if (line.startsWith("data:")) {
                    last = JsonMapping.mapper().readTree(line.substring(5));
                }
            }
        }
        assertEquals("done", events.get(events.size() - 1), events.toString());
        assertTrue(events.subList(0, events.size() - 1).stream().allMatch("progress"::equals), events.toString());
        assertEquals(3, last.get("answered").intValue());
        assertEquals(
                404, service.get(BATCHES + "/" + UUID.randomUUID() + "/events").status());
    }

    @ParameterizedTest
    @EnumSource
    void aCancelledJobTakesNoMoreAndKeepsNoMeasurement(Databases kind) {
        KeptService service = KeptService.on(kind);
        String style = style(service);
        String batch = IntStream.range(0, 300)
                .mapToObj(i -> line(style).replace("}", ",\"reference\":\"" + i + "\"}"))
                .collect(Collectors.joining("\n"));
        String job = begun(service, batch).header("Location");
        KeptService.Answer cancelled = service.send("POST", job + "/states", "{\"state\":\"cancelled\"}");
        assertEquals(200, cancelled.status(), cancelled.text());
        assertEquals("cancelled", cancelled.json().get("state").stringValue());
        int taken = orders(service, style);
        assertTrue(taken < 300, "it was cancelled in time");
        assertEquals(taken, service.get(job).json().get("answered").intValue());
        assertEquals(taken, service.get(job + "/results").text().lines().count());
        assertEquals(0L, (long) service.bean(Store.class)
                .transaction(database -> database.sql(
                                "SELECT COUNT(*) FROM order_batch_line WHERE batch = ?" + " AND body IS NOT NULL")
                        .param(job.substring(BATCHES.length() + 1))
                        .query(Long.class)
                        .single()));
        assertEquals(
                200,
                service.send("POST", job + "/states", "{\"state\":\"cancelled\"}")
                        .status());
        assertEquals(
                422,
                service.send("POST", job + "/states", "{\"state\":\"done\"}").status());
    }

    private static int orders(KeptService service, String style) {
        return service.bean(Store.class)
                .transaction(database -> database.sql("SELECT COUNT(*) FROM sleeve_order WHERE style = ?")
                        .param(style)
                        .query(Integer.class)
                        .single());
    }

    @ParameterizedTest
    @EnumSource
    void aBatchSentAgainUnderItsKeyIsOneJob(Databases kind) {
        KeptService service = KeptService.on(kind);
        String style = style(service);
        String key = UUID.randomUUID().toString();
        String first = begun(service, line(style), "Idempotency-Key", key).header("Location");
        KeptService.Answer again = begun(service, line(style), "Idempotency-Key", key);
        assertEquals(202, again.status());
        assertEquals(first, again.header("Location"));
        assertEquals(
                422,
                begun(service, line(style) + "\n" + line(style), "Idempotency-Key", key)
                        .status());
        assertNotEquals(first, begun(service, line(style)).header("Location"));
        ended(service, first);
        assertEquals(400, begun(service, " \n\n").status());
    }

    @ParameterizedTest
    @EnumSource
    void resultsAreGoneSomeTimeAfterTheEnd(Databases kind) {
        KeptService service = KeptService.on(kind);
        String job = begun(service, line(style(service))).header("Location");
        ended(service, job);
        String subject = "local/" + job.substring(BATCHES.length() + 1);
        assertTrue(service.bean(BatchEnd.class).run(subject, 0, () -> false).isPresent(), "too early");
        assertTrue(new BatchEnd(service.bean(Store.class), "PT0S")
                .run(subject, 0, () -> false)
                .isEmpty());
        assertEquals(404, service.get(job).status());
    }
}
