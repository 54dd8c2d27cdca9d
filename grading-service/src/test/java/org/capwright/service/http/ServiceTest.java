package org.capwright.service.http;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ch.qos.logback.classic.Logger;
import ch.qos.logback.classic.spi.ILoggingEvent;
import ch.qos.logback.core.read.ListAppender;
import java.io.IOException;
import java.net.Socket;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.util.stream.Collectors;
import org.capwright.service.CapwrightService;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.slf4j.LoggerFactory;
import org.springframework.boot.SpringApplication;
import org.springframework.boot.web.server.context.WebServerApplicationContext;
import org.springframework.context.ConfigurableApplicationContext;
import tools.jackson.databind.JsonNode;

/** The whole service over HTTP. */
class ServiceTest {

    private static final String DEMO = """
            {"units":"cm","baseSize":"40","sizes":["36","38","40","42","44"],
             "sleeve":{"bicep":36,"length":60,"capHeight":13.5,"capOutward":1.9,"capInward":1.2,"armhole":45},
             "overlay":{"rise":14,"length":34,"hem":"vee","frontGap":6,"backGap":6,"pleats":{"count":8,"kind":"knife"}},
             "underSleeve":{"elbow":28,"wrist":19},
             "grade":{"bicep":1.2,"length":0.5,"capHeight":0.4,"armhole":[1.6,1.6,1.8,1.8]},
             "sizeTable":null,"seamAllowance":1.0,"align":"underarm"}
            """;

    private static final HttpClient CLIENT = HttpClient.newHttpClient();
    private static final ListAppender<ILoggingEvent> LOG = new ListAppender<>();
    private static ConfigurableApplicationContext context;
    private static int port;

    @BeforeAll
    static void start() {
        context = SpringApplication.run(CapwrightService.class, "--server.port=0");
        port = ((WebServerApplicationContext) context).getWebServer().getPort();
        LOG.start();
        ((Logger) LoggerFactory.getLogger(org.slf4j.Logger.ROOT_LOGGER_NAME)).addAppender(LOG);
    }

    @AfterAll
    static void stop() {
        context.close();
    }

    private static HttpRequest.Builder request(String path) {
        return HttpRequest.newBuilder(URI.create("http://localhost:" + port + path));
    }

    private static HttpResponse<byte[]> send(HttpRequest.Builder request) throws IOException, InterruptedException {
        return CLIENT.send(request.build(), HttpResponse.BodyHandlers.ofByteArray());
    }

    private static HttpResponse<byte[]> post(String accept, String body) throws IOException, InterruptedException {
        HttpRequest.Builder request = request("/v1/size-runs")
                .header("Content-Type", "application/json")
                .POST(HttpRequest.BodyPublishers.ofString(body));
        return send(accept.isEmpty() ? request : request.header("Accept", accept));
    }

    private static JsonNode json(HttpResponse<byte[]> response) {
        return JsonMapping.mapper().rebuild().build().readTree(response.body());
    }

    private static JsonNode problem(HttpResponse<byte[]> response, int status) {
        String text = new String(response.body(), StandardCharsets.UTF_8);
        assertEquals(status, response.statusCode(), text);
        assertEquals(
                "application/problem+json",
                response.headers().firstValue("Content-Type").orElse(""),
                text);
        JsonNode problem = json(response);
        assertEquals(status, problem.get("status").intValue());
        assertFalse(text.contains("Exception") || text.contains("\tat ") || text.contains("java."), text);
        return problem;
    }

    @ParameterizedTest
    @CsvSource({
        "'', application/json, {",
        "application/json, application/json, {",
        "image/svg+xml, image/svg+xml, <?xml",
        "image/vnd.dxf, image/vnd.dxf, 0",
        "text/csv, text/csv, style",
        "application/pdf, application/pdf, %PDF-1.",
        "application/zip, application/zip, PK"
    })
    void theDemoIsAnsweredInEveryForm(String accept, String type, String begins) throws Exception {
        HttpResponse<byte[]> response = post(accept, DEMO);
        String text = new String(response.body(), StandardCharsets.ISO_8859_1);
        assertEquals(200, response.statusCode(), text);
        assertTrue(response.headers().firstValue("Content-Type").orElse("").startsWith(type));
        assertTrue(text.strip().startsWith(begins.strip()), text.substring(0, 40));
        assertEquals("no-store", response.headers().firstValue("Cache-Control").orElse(""));
        assertTrue(
                response.headers().firstValue("Content-Disposition").orElse("").contains("filename="));
        assertArrayEquals(response.body(), post(accept, DEMO).body(), "the same request gives the same bytes");
    }

    @Test
    void wrongRequestsAreAnsweredWithProblems() throws Exception {
        assertEquals(
                "/sleeve/bicep",
                problem(post("image/svg+xml, */*", DEMO.replace("36,\"length\"", "-36,\"length\"")), 422)
                        .get("violations")
                        .get(0)
                        .get("field")
                        .stringValue());
        assertEquals(2, problem(post("", "{\n\"units\":}"), 400).get("line").intValue());
        problem(post("text/html", DEMO), 406);
        problem(post("", "[".repeat(100_000)), 400);
        problem(post("", " ".repeat(300 * 1024)), 413);
        problem(post("", "{\"a\":".repeat(250_000)), 413);
        problem(
                send(request("/v1/size-runs")
                        .header("Content-Type", "text/plain")
                        .POST(HttpRequest.BodyPublishers.ofString(DEMO))),
                415);
        problem(send(request("/v1/size-runs").POST(HttpRequest.BodyPublishers.ofString(DEMO))), 415);
        problem(send(request("/v1/size-runs").GET()), 405);
        problem(send(request("/v1/nothing").header("Accept", "image/svg+xml").GET()), 404);
        problem(send(request("/error").GET()), 404);
        problem(send(request("/v1/size-tables/nothing").GET()), 404);
        problem(send(request("/v1/size-tables/women-en-13402-3-bust?units=ell").GET()), 400);
        problem(send(request("/v1/size-tables").header("Accept", "text/csv").GET()), 406);
        problem(send(request("/actuator/env").GET()), 404);
    }

    @Test
    void aBodySentInChunksIsBoundedAsWell() throws Exception {
        HttpRequest.Builder request = request("/v1/size-runs")
                .header("Content-Type", "application/json")
                .POST(HttpRequest.BodyPublishers.ofInputStream(() ->
                        new java.io.ByteArrayInputStream(" ".repeat(400 * 1024).getBytes(StandardCharsets.UTF_8))));
        problem(send(request), 413);
    }

    @Test
    void whatIsNoHttpIsAnsweredWithoutATrace() throws Exception {
        try (Socket socket = new Socket("localhost", port)) {
            socket.getOutputStream()
                    .write("GET /v1/{size}|<tables> HTTP/1.1\r\nHost: x\r\nConnection: close\r\n\r\n"
                            .getBytes(StandardCharsets.US_ASCII));
            String answer = new String(socket.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
            assertTrue(answer.startsWith("HTTP/1.1 400"), answer);
            assertFalse(answer.contains("\tat ") || answer.contains("Exception"), answer);
        }
    }

    @Test
    void healthAndDescriptionAreServed() throws Exception {
        assertEquals(
                "UP",
                json(send(request("/actuator/health").GET())).get("status").stringValue());
        HttpResponse<byte[]> description = send(request("/v3/api-docs").GET());
        assertEquals(200, description.statusCode());
        String text = new String(description.body(), StandardCharsets.UTF_8);
        assertTrue(text.contains("\"openapi\":\"3.0."), text.substring(0, 60));
        for (String needed : new String[] {
            "\"413\"",
            "\"415\"",
            "\"406\"",
            "\"422\"",
            "image/vnd.dxf",
            "text/csv",
            "application/problem+json",
            "SizeRunRequest"
        }) {
            assertTrue(text.contains(needed), needed);
        }
        assertEquals(200, send(request("/swagger-ui/index.html").GET()).statusCode());
    }

    @Test
    void sizeTablesAreServedWithTheirSources() throws Exception {
        JsonNode list = json(send(request("/v1/size-tables").GET())).get("sizeTables");
        assertTrue(list.size() > 10);
        for (JsonNode info : list) {
            JsonNode table = json(send(
                    request("/v1/size-tables/" + info.get("id").stringValue()).GET()));
            assertFalse(table.get("info").get("source").stringValue().isBlank());
            assertFalse(table.get("rows").isEmpty());
        }
        // EN 13402-3: bust classes of women are 4 cm apart from 74 cm on; class centres 76, 80, 84 ...
        JsonNode bust = json(send(request("/v1/size-tables/women-en-13402-3-bust?units=cm")
                        .GET()))
                .get("rows")
                .get(0);
        assertEquals("bustGirth", bust.get("dimension").stringValue());
        assertEquals(4, bust.get("increments").get(0).get("growth").doubleValue(), 1e-12);
        assertEquals(76, bust.get("values").get(0).get("value").doubleValue(), 1e-12);
    }

    @Test
    void noMeasurementIsLogged() throws Exception {
        String odd = DEMO.replace("36,\"length\"", "36.43219,\"length\"");
        post("", odd);
        post("", odd.replace("13.5", "43.98712"));
        post("", odd + "}");
        String logged = LOG.list.stream()
                .map(event -> event.getFormattedMessage() + event.getThrowableProxy())
                .collect(Collectors.joining("\n"));
        assertFalse(logged.contains("43219") || logged.contains("98712"), logged);
    }
}
