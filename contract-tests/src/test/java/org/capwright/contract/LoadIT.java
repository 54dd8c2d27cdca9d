package org.capwright.contract;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** A service with a small heap and more to do than it can: every request is answered, or refused in order; none fails, and it lives on. Entity tags after RFC 9110, sections 8.8.3 and 13.1.2. */
class LoadIT {

    /** With {@code -Pthorough} all that the bar asks for, else as many as still have to wait for one another. */
    private static final boolean THOROUGH = Boolean.getBoolean("capwright.thorough");

    private static final HttpClient CLIENT =
            HttpClient.newBuilder().version(HttpClient.Version.HTTP_1_1).build();

    private static RunningService service;

    @BeforeAll
    static void start() {
        service = RunningService.started("-Xmx256m", "-XX:+ExitOnOutOfMemoryError");
    }

    @AfterAll
    static void stop() {
        service.stop();
    }

    private static HttpRequest.Builder to(String path) {
        return HttpRequest.newBuilder(URI.create(service.url() + path));
    }

    private static HttpRequest run(String body, String accept) {
        return to("/v1/size-runs")
                .header("Content-Type", "application/json")
                .header("Accept", accept)
                .POST(HttpRequest.BodyPublishers.ofString(body))
                .build();
    }

    private static HttpResponse<byte[]> sent(HttpRequest request) throws Exception {
        return CLIENT.send(request, HttpResponse.BodyHandlers.ofByteArray());
    }

    /** Sends one request many times at once, and gives the status codes; a refusal must say when to come again. */
    private static List<Integer> together(int times, HttpRequest request) {
        List<CompletableFuture<HttpResponse<byte[]>>> answers = new ArrayList<>();
        for (int i = 0; i < times; i++) {
            answers.add(CLIENT.sendAsync(request, HttpResponse.BodyHandlers.ofByteArray()));
        }
        return answers.stream()
                .map(CompletableFuture::join)
                .map(answer -> {
                    if (answer.statusCode() == 503) {
                        assertTrue(
                                answer.headers().firstValue("Retry-After").isPresent(),
                                () -> new String(answer.body(), StandardCharsets.UTF_8));
                    }
                    return answer.statusCode();
                })
                .toList();
    }

    private static void requireOnly(List<Integer> allowed, List<Integer> found) {
        assertTrue(allowed.containsAll(found), found::toString);
        assertTrue(found.contains(allowed.get(0)), found::toString);
    }

    private static void lives() throws Exception {
        assertTrue(service.alive());
        assertEquals(200, sent(to("/actuator/health").build()).statusCode());
        assertEquals(200, sent(run(Requests.choirGown(), "image/svg+xml")).statusCode());
    }

    @Test
    void moreRunsThanItCanTakeAreAnsweredOrRefusedInOrder() throws Exception {
        requireOnly(List.of(200, 503), together(THOROUGH ? 400 : 160, run(Requests.choirGown(), "image/svg+xml")));
        lives();
    }

    @Test
    void archivesOfFortySizesFitASmallHeap() throws Exception {
        String sizes =
                IntStream.range(0, 40).mapToObj(i -> "\"" + (20 + 2 * i) + "\"").collect(Collectors.joining(","));
        String run = "{\"units\":\"cm\",\"baseSize\":\"60\",\"sizes\":[" + sizes
                + "],\"sleeve\":{\"bicep\":36,\"length\":60,\"capHeight\":13.5,\"capOutward\":1.9,\"capInward\":1.2,\"armhole\":45},"
                + "\"overlay\":{\"rise\":14,\"length\":34,\"hem\":\"vee\",\"frontGap\":6,\"backGap\":6,"
                + "\"pleats\":{\"count\":8,\"kind\":\"knife\"}},\"underSleeve\":{\"elbow\":30,\"wrist\":22},"
                + "\"grade\":{\"bicep\":0.3,\"capHeight\":0.1,\"armhole\":0.36,\"elbow\":0.2,\"wrist\":0.15}}";
        requireOnly(List.of(200, 503), together(THOROUGH ? 8 : 3, run(run, "application/zip")));
        lives();
    }

    /** Twenty megabytes of lines: more than a drawing may have, or as many as it may. */
    @Test
    void largeUploadsFitASmallHeap() throws Exception {
        String line = "0\n"
                + "LINE\n"
                + "8\n"
                + "14\n"
                + "10\n"
                + "%d.123456789012345\n"
                + "20\n"
                + "0.123456789012345\n"
                + "11\n"
                + "9.123456789012345\n"
                + "21\n"
                + "9.123456789012345\n";
        StringBuilder drawing = new StringBuilder("0\nSECTION\n2\nENTITIES\n");
        for (int i = 0; drawing.length() < 20_000_000; i++) {
            drawing.append(line.replace("%d", Integer.toString(i % 1000)));
        }
        byte[] body = drawing.append("0\nENDSEC\n0\nEOF\n").toString().getBytes(StandardCharsets.US_ASCII);
        HttpRequest upload = to("/v1/checks?baseSize=40")
                .header("Content-Type", "image/vnd.dxf")
                .POST(HttpRequest.BodyPublishers.ofByteArray(body))
                .build();
        requireOnly(List.of(400, 422, 503), together(3, upload));
        lives();
    }

    @Test
    void theSameRunHasTheSameTag() throws Exception {
        String body = Requests.choirGown();
        String tag = tag(sent(run(body, "image/svg+xml")));
        assertEquals(tag, tag(sent(run(body, "image/svg+xml"))));
        assertNotEquals(tag, tag(sent(run(body, "text/csv"))));
        assertNotEquals(tag, tag(sent(run(body.replace("\"rise\": 14", "\"rise\": 15"), "image/svg+xml"))));
    }

    @Test
    void whoHasATableAlreadyGetsItNotAgain() throws Exception {
        String tag = tag(sent(to("/v1/size-tables").build()));
        HttpResponse<byte[]> again =
                sent(to("/v1/size-tables").header("If-None-Match", tag).build());
        assertEquals(304, again.statusCode());
        assertEquals(0, again.body().length);
        assertEquals(
                200,
                sent(to("/v1/size-tables")
                                .header("If-None-Match", "W/\"other\"")
                                .build())
                        .statusCode());
    }

    @Test
    void textIsCompressedInSpiteOfItsTag() throws Exception {
        HttpRequest request = to("/v1/size-runs")
                .header("Content-Type", "application/json")
                .header("Accept", "image/vnd.dxf")
                .header("Accept-Encoding", "gzip")
                .POST(HttpRequest.BodyPublishers.ofString(Requests.choirGown()))
                .build();
        assertEquals(
                "gzip", sent(request).headers().firstValue("Content-Encoding").orElse(""));
    }

    private static String tag(HttpResponse<byte[]> answer) {
        assertEquals(200, answer.statusCode());
        return answer.headers().firstValue("ETag").orElseThrow();
    }
}
