package org.capwright.service.orders;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.BufferedReader;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.UUID;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.capwright.service.KeptService;
import org.capwright.service.http.JsonMapping;
import org.capwright.service.store.Databases;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import tools.jackson.databind.JsonNode;

/** Many orders in one request, on both databases. */
class BatchesTest {

    private static final String GOWN = """
        {"units":"cm","baseSize":"40","sizes":["38","40"],
         "sleeve":{"bicep":36,"length":60,"capHeight":13.5,"capOutward":1.9,"capInward":1.2},
         "underSleeve":{"wrist":19}}
        """;

    private static String style(KeptService service) {
        String id = "batch-" + UUID.randomUUID();
        service.send("PUT", "/v1/styles/" + id, GOWN);
        return id;
    }

    private static KeptService.Answer send(KeptService service, String lines) {
        return service.send("POST", "/v1/order-batches", lines, "Content-Type", "application/x-ndjson");
    }

    private static List<JsonNode> lines(KeptService.Answer answer) {
        return answer.text().lines().map(JsonMapping.mapper()::readTree).toList();
    }

    @ParameterizedTest
    @EnumSource
    void oneBadLineSpoilsNoOther(Databases kind) {
        KeptService service = KeptService.on(kind);
        String style = style(service);
        String good = "{\"style\":\"" + style + "\",\"size\":\"40\"}";
        KeptService.Answer answer = send(
                service,
                String.join(
                        "\n",
                        good,
                        "{\"style\":",
                        "",
                        "{\"style\":\"nothing\",\"size\":\"40\"}",
                        good.replace("\"40\"", "\"48\""),
                        "[]",
                        "{\"size\":\"40\"}",
                        " ".repeat(OrderOnLine.LONGEST) + good,
                        good.replace("\"40\"", "38,\"reference\":\"last\"")));
        assertEquals(200, answer.status(), answer.text());
        assertTrue(answer.header("Content-Type").startsWith("application/x-ndjson"));
        List<JsonNode> lines = lines(answer);
        assertEquals(
                List.of("1 201", "2 400", "4 404", "5 422", "6 422", "7 422", "8 413", "9 201"),
                lines.stream()
                        .map(line -> line.get("line").intValue() + " "
                                + line.get("status").intValue())
                        .toList());
        assertEquals(
                "/style",
                lines.get(5)
                        .get("problem")
                        .get("violations")
                        .get(0)
                        .get("field")
                        .stringValue());
        JsonNode last = service.get("/v1/orders/" + lines.get(7).get("order").stringValue())
                .json();
        assertEquals("last", last.get("order").get("reference").stringValue());
        assertEquals(
                2, service.get("/v1/orders?style=" + style).json().get("orders").size());
    }

    /** After a broken connection the whole batch is sent again. */
    @ParameterizedTest
    @EnumSource
    void aBatchSentAgainIsTakenOnce(Databases kind) {
        KeptService service = KeptService.on(kind);
        String style = style(service);
        String batch = IntStream.range(0, 20)
                .mapToObj(i -> "{\"style\":\"" + style + "\",\"size\":\"40\",\"reference\":\"" + i
                        + "\",\"idempotencyKey\":\"" + style + i + "\"}")
                .collect(Collectors.joining("\n"));
        String first = send(service, batch.substring(0, batch.length() / 2)).text();
        List<JsonNode> all = lines(send(service, batch));
        assertEquals(20, all.size());
        assertEquals(
                first.lines().filter(line -> line.contains("201")).toList(),
                all
                        .subList(0, (int) first.lines()
                                .filter(line -> line.contains("201"))
                                .count())
                        .stream()
                        .map(JsonNode::toString)
                        .toList());
        assertEquals(
                20,
                all.stream()
                        .map(line -> line.get("order").stringValue())
                        .collect(Collectors.toCollection(HashSet::new))
                        .size());
        assertEquals(
                20,
                service.get("/v1/orders?style=" + style).json().get("orders").size());
    }

    /** Each line is answered before the next one is sent: nothing waits for the end of the batch. */
    @Test
    void linesAreAnsweredAsTheyCome() throws IOException {
        KeptService service = KeptService.on(Databases.EMBEDDED);
        String line = "{\"style\":\"" + style(service) + "\",\"size\":\"40\"}\n";
        try (Socket socket = new Socket("127.0.0.1", service.port())) {
            socket.setSoTimeout(60_000);
            write(
                    socket,
                    "POST /v1/order-batches HTTP/1.1\r\nHost: x\r\nContent-Type: application/x-ndjson\r\n"
                            + "Transfer-Encoding: chunked\r\n\r\n");
            BufferedReader answers =
                    new BufferedReader(new InputStreamReader(socket.getInputStream(), StandardCharsets.UTF_8));
            for (int i = 1; i <= 3; i++) {
                write(socket, Integer.toHexString(line.length()) + "\r\n" + line + "\r\n");
                String said = answers.readLine();
                while (!said.startsWith("{")) {
                    said = answers.readLine();
                }
                assertTrue(said.startsWith("{\"line\":" + i + ",\"status\":201"), said);
            }
            write(socket, "0\r\n\r\n");
        }
    }

    private static void write(Socket socket, String text) throws IOException {
        socket.getOutputStream().write(text.getBytes(StandardCharsets.US_ASCII));
        socket.getOutputStream().flush();
    }

    @Test
    void onlyLinesAreTakenAndAnswered() {
        KeptService service = KeptService.on(Databases.EMBEDDED);
        assertEquals(415, service.send("POST", "/v1/order-batches", "{}").status());
        assertEquals(
                406,
                service.send(
                                "POST",
                                "/v1/order-batches",
                                "{}",
                                "Content-Type",
                                "application/x-ndjson",
                                "Accept",
                                "application/pdf")
                        .status());
    }

    /** However long a line is, no more of it is held than the longest. */
    @Test
    void linesAreReadWithinBounds() throws IOException {
        InputStream in = new ByteArrayInputStream(
                ("ab\n\n" + "x".repeat(30_000) + "\r\nlast").getBytes(StandardCharsets.US_ASCII));
        BatchLines lines = new BatchLines(in, 10);
        List<String> read = new ArrayList<>();
        for (var line = lines.next(); line.isPresent(); line = lines.next()) {
            read.add(line.get().number()
                    + new String(line.get().bytes(), StandardCharsets.US_ASCII)
                    + line.get().whole());
        }
        assertEquals(List.of("1abtrue", "2true", "3" + "x".repeat(10) + "false", "4lasttrue"), read);
    }
}
