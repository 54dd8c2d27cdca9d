package org.capwright.service.http;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ch.qos.logback.classic.Logger;
import ch.qos.logback.classic.spi.ILoggingEvent;
import ch.qos.logback.core.read.ListAppender;
import jakarta.servlet.MultipartConfigElement;
import jakarta.servlet.ServletContext;
import java.io.ByteArrayOutputStream;
import java.io.File;
import java.io.IOException;
import java.net.Socket;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.nio.file.StandardWatchEventKinds;
import java.nio.file.WatchService;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.TimeUnit;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import java.util.zip.GZIPOutputStream;
import org.capwright.service.CapwrightService;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.parallel.Isolated;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.slf4j.LoggerFactory;
import org.springframework.boot.SpringApplication;
import org.springframework.boot.web.server.context.WebServerApplicationContext;
import org.springframework.boot.web.server.servlet.context.ServletWebServerApplicationContext;
import org.springframework.context.ConfigurableApplicationContext;
import tools.jackson.databind.JsonNode;

/** The whole service over HTTP. Alone: a service that starts beside it sets up the log of both anew. */
@Isolated
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
        SpringApplication application = new SpringApplication(CapwrightService.class);
        // Attached once logging is set up, which would take it away again.
        application.addInitializers(starting -> {
            LOG.start();
            ((Logger) LoggerFactory.getLogger(org.slf4j.Logger.ROOT_LOGGER_NAME)).addAppender(LOG);
        });
        context = application.run("--server.port=0");
        port = ((WebServerApplicationContext) context).getWebServer().getPort();
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
        assertEquals(
                List.of("type", "title", "status", "detail", "instance", "line", "column", "violations"),
                List.copyOf(problem(post("", "{"), 400).propertyNames()));
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

    /** Sent as they stand: the client of the platform would mend or refuse them itself. */
    @ParameterizedTest
    @ValueSource(
            strings = {
                "/v1/{bicep=36.43219}|<tables>",
                "/v1/size-tables/..%2f36.43219",
                "/v1/size-tables/%zz36.43219",
                "/v1/size-tables?units=%zz36.43219",
                "36.43219"
            })
    void addressesThatAreNoneAreAnsweredWithProblemsAndNotLogged(String target) throws Exception {
        String answer =
                raw("GET " + target + " HTTP/1.1\r\nHost: x\r\nCookie: a=\u000736.43219\r\nConnection: close\r\n\r\n");
        assertTrue(answer.startsWith("HTTP/1.1 400"), answer);
        assertTrue(answer.toLowerCase(Locale.ROOT).contains("content-type: application/problem+json"), answer);
        assertTrue(answer.contains("\"type\":\"urn:capwright:problem:bad-request\""), answer);
        assertFalse(answer.contains("\tat ") || answer.contains("Exception") || answer.contains("<html"), answer);
        assertFalse(logged().contains("43219"), logged());
    }

    private static String raw(String request) throws IOException {
        try (Socket socket = new Socket("127.0.0.1", port)) {
            socket.getOutputStream().write(request.getBytes(StandardCharsets.US_ASCII));
            return new String(socket.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        }
    }

    @ParameterizedTest
    @CsvSource({
        "GET, /v1/nothing, 404",
        "GET, /v1/size-runs, 405",
        "POST, /v1/size-runs, 415",
        "GET, /v1/size-tables?units=ell, 200"
    })
    void errorsKeepWhatTheBrowserIsTold(String method, String path, int status) throws Exception {
        HttpResponse<byte[]> response = send(request(path).method(method, HttpRequest.BodyPublishers.noBody()));
        assertEquals(status, response.statusCode());
        for (String header : List.of(
                "Content-Security-Policy", "X-Content-Type-Options", "Referrer-Policy", "Cross-Origin-Opener-Policy")) {
            assertTrue(response.headers().firstValue(header).isPresent(), header);
        }
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "application/merge-patch+json",
                "application/problem+json",
                "application/*",
                "application/json;charset=UTF-16"
            })
    void onlyJsonIsTakenForJson(String type) throws Exception {
        HttpResponse<byte[]> response = send(
                request("/v1/size-runs").header("Content-Type", type).POST(HttpRequest.BodyPublishers.ofString(DEMO)));
        problem(response, 415);
        assertEquals(
                "application/json", response.headers().firstValue("Accept-Post").orElse(""));
    }

    /** RFC 9110, section 12.5.3: the answer to a content coding that is not taken names those that are. */
    @Test
    void compressedBodiesAreRefused() throws Exception {
        ByteArrayOutputStream packed = new ByteArrayOutputStream();
        try (GZIPOutputStream gzip = new GZIPOutputStream(packed)) {
            gzip.write(DEMO.getBytes(StandardCharsets.UTF_8));
        }
        HttpResponse<byte[]> response = send(request("/v1/size-runs")
                .header("Content-Type", "application/json")
                .header("Content-Encoding", "gzip")
                .POST(HttpRequest.BodyPublishers.ofByteArray(packed.toByteArray())));
        problem(response, 415);
        assertEquals(
                "identity", response.headers().firstValue("Accept-Encoding").orElse(""));
    }

    @ParameterizedTest
    @CsvSource({
        "/v1/size-runs, 200, 'OPTIONS,POST'",
        "/v1/size-tables, 200, 'GET,HEAD,OPTIONS,POST'",
        "/v1/nothing, 404, ''"
    })
    void preflightsTellTheMethodsThatThereAre(String path, int status, String methods) throws Exception {
        String answer = raw("OPTIONS " + path + " HTTP/1.1\r\nHost: x\r\nOrigin: http://elsewhere.example\r\n"
                + "Access-Control-Request-Method: PUT\r\nConnection: close\r\n\r\n");
        assertTrue(answer.startsWith("HTTP/1.1 " + status), answer);
        String allow = answer.lines()
                .filter(line -> line.startsWith("Allow:"))
                .map(line -> line.substring(6).strip())
                .findFirst()
                .orElse("");
        assertEquals(
                methods, Stream.of(allow.split(",")).map(String::strip).sorted().collect(Collectors.joining(",")));
        assertFalse(answer.contains("Access-Control-Allow"), answer);
    }

    private static HttpResponse<byte[]> file(String type, byte[] content) throws Exception {
        return send(request("/v1/checks")
                .header("Content-Type", type)
                .POST(HttpRequest.BodyPublishers.ofByteArray(content)));
    }

    private static byte[] form(String headers, byte[] content) {
        ByteArrayOutputStream form = new ByteArrayOutputStream();
        form.writeBytes(
                ("--XyZ\r\nContent-Disposition: form-data; name=\"file\"; filename=\"spec.csv\"\r\n" + headers + "\r\n")
                        .getBytes(StandardCharsets.US_ASCII));
        form.writeBytes(content);
        form.writeBytes("\r\n--XyZ--\r\n".getBytes(StandardCharsets.US_ASCII));
        return form.toByteArray();
    }

    @Test
    void aFileTooLargeIsTooLargeInAFormAsWell() throws Exception {
        byte[] large = " ".repeat(4_000_001).getBytes(StandardCharsets.US_ASCII);
        problem(file("text/csv", large), 413);
        problem(file("multipart/form-data; boundary=XyZ", form("Content-Type: text/csv\r\n", large)), 413);
    }

    /** What is sent is taken off the line before the connection is closed: a client that is still sending would lose the answer with it (RFC 9112, section 9.6). */
    @Test
    void theAnswerToWhatIsMuchTooLargeArrives() throws Exception {
        for (int i = 0; i < 5; i++) {
            problem(file("text/csv", new byte[50_000_000]), 413);
        }
    }

    /** Parts stay in memory, however large: nothing appears where the container would keep them. */
    @Test
    void noPartIsWrittenToTheDisk() throws Exception {
        MultipartConfigElement limits = context.getBean(MultipartConfigElement.class);
        assertTrue(limits.getFileSizeThreshold() >= limits.getMaxFileSize());
        Path folder = ((ServletWebServerApplicationContext) context)
                                .getServletContext()
                                .getAttribute(ServletContext.TEMPDIR)
                        instanceof File kept
                ? kept.toPath()
                : Path.of("none");
        byte[] drawing = (" ".repeat(20_000_000)).getBytes(StandardCharsets.US_ASCII);
        try (WatchService watch = folder.getFileSystem().newWatchService()) {
            folder.register(watch, StandardWatchEventKinds.ENTRY_CREATE);
            problem(file("multipart/form-data; boundary=XyZ", form("Content-Type: image/vnd.dxf\r\n", drawing)), 400);
            assertNull(watch.poll(1, TimeUnit.SECONDS), "a file was written to " + folder);
        }
    }

    @Test
    void aBaseSizeThatTheFileHasNotIsNamed() throws Exception {
        String csv = "code,unit,36,38,40\r\nbicep,cm,33.4,34.7,36\r\nlength,cm,59,59.5,60\r\n";
        HttpResponse<byte[]> response = send(request("/v1/checks?baseSize=99")
                .header("Content-Type", "text/csv")
                .POST(HttpRequest.BodyPublishers.ofString(csv)));
        JsonNode problem = problem(response, 400);
        assertEquals("urn:capwright:problem:bad-request", problem.get("type").stringValue());
        assertEquals("baseSize", problem.at("/violations/0/field").stringValue());
        assertEquals("99", problem.at("/violations/0/value").stringValue());
        assertTrue(problem.at("/violations/0/reason").stringValue().contains("36, 38, 40"));
    }

    @Test
    void saysWhereItListensAndWhatItIs() throws Exception {
        assertTrue(
                LOG.list.stream()
                        .anyMatch(event ->
                                event.getFormattedMessage().startsWith("Listening on http://127.0.0.1:" + port + " ")),
                ServiceTest::logged);
        JsonNode info = json(send(request("/actuator/info").GET()));
        assertEquals("Capwright", info.get("name").stringValue());
        assertTrue(info.at("/build/version").stringValue().matches("\\d+\\.\\d+\\.\\d+.*"), info::toString);
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
        assertFalse(logged().contains("43219") || logged().contains("98712"), logged());
    }

    private static String logged() {
        return LOG.list.stream()
                .map(event -> event.getFormattedMessage() + event.getThrowableProxy())
                .collect(Collectors.joining("\n"));
    }
}
