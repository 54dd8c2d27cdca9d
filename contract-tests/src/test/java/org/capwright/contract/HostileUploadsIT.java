package org.capwright.contract;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.net.Socket;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/**
 * More than two hundred broken or hostile uploads to a service with a small heap: none fails it, none makes it hang, and it lives on. Seeds are in the names. The bar is two seconds each
 * on a quiet machine; the test allows ten on a busy one and prints the slowest.
 */
class HostileUploadsIT {

    private static final Duration HANGS = Duration.ofSeconds(10);
    private static final String CSV = "text/csv";
    private static final String DXF = "image/vnd.dxf";
    private static final String FORM = "multipart/form-data; boundary=XyZ";
    private static final String JSON = "application/json";

    private static final HttpClient CLIENT =
            HttpClient.newBuilder().version(HttpClient.Version.HTTP_1_1).build();

    private static RunningService service;

    private record Upload(String name, String type, byte[] body) {}

    @BeforeAll
    static void start() {
        service = RunningService.started("-Xmx512m", "-XX:+ExitOnOutOfMemoryError");
    }

    @AfterAll
    static void stop() {
        service.stop();
    }

    private static byte[] bytes(String text) {
        return text.getBytes(StandardCharsets.UTF_8);
    }

    private static byte[] drawn(String accept, String run) throws Exception {
        HttpRequest request = HttpRequest.newBuilder(URI.create(service.url() + "/v1/size-runs"))
                .header("Accept", accept)
                .header("Content-Type", JSON)
                .POST(HttpRequest.BodyPublishers.ofString(run))
                .build();
        HttpResponse<byte[]> answer = CLIENT.send(request, HttpResponse.BodyHandlers.ofByteArray());
        assertEquals(200, answer.statusCode());
        return answer.body();
    }

    private static byte[] form(byte[] file) {
        return form("Content-Disposition: form-data; name=\"file\"; filename=\"40.dxf\"\r\n", file);
    }

    private static byte[] form(String headers, byte[] file) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        out.writeBytes(bytes("--XyZ\r\n" + headers + "\r\n"));
        out.writeBytes(file);
        out.writeBytes(bytes("\r\n--XyZ--\r\n"));
        return out.toByteArray();
    }

    private static byte[] changed(byte[] file, Random random) {
        byte[] changed = file.clone();
        for (int i = 0; i < 1 + file.length / 500; i++) {
            changed[random.nextInt(changed.length)] = (byte) random.nextInt(256);
        }
        return changed;
    }

    private static byte[] random(int length, long seed) {
        byte[] made = new byte[length];
        new Random(seed).nextBytes(made);
        return made;
    }

    private static String entities(String entities) {
        return "0\nSECTION\n2\nENTITIES\n" + entities + "0\nENDSEC\n0\nEOF\n";
    }

    private static List<Upload> uploads() throws Exception {
        String run = Requests.choirGown();
        byte[] dxf = drawn(DXF, run);
        byte[] csv = drawn(CSV, run);
        byte[] check = bytes("{\"sizeRun\":" + run + "}");
        List<Upload> uploads = new ArrayList<>();
        for (int seed = 0; seed < 24; seed++) {
            Random random = new Random(seed);
            uploads.add(new Upload("dxf cut off " + seed, DXF, Arrays.copyOf(dxf, random.nextInt(dxf.length))));
            uploads.add(new Upload("csv cut off " + seed, CSV, Arrays.copyOf(csv, random.nextInt(csv.length))));
            uploads.add(new Upload("json cut off " + seed, JSON, Arrays.copyOf(check, random.nextInt(check.length))));
            byte[] whole = form(dxf);
            uploads.add(new Upload("form cut off " + seed, FORM, Arrays.copyOf(whole, random.nextInt(whole.length))));
            uploads.add(new Upload("dxf changed " + seed, DXF, changed(dxf, random)));
            uploads.add(new Upload("csv changed " + seed, CSV, changed(csv, random)));
            uploads.add(new Upload("form changed " + seed, FORM, changed(whole, random)));
        }
        for (int seed = 0; seed < 6; seed++) {
            byte[] noise = random(200_000, seed);
            for (String type : List.of(DXF, CSV, FORM, JSON)) {
                uploads.add(new Upload("noise " + seed, type, noise));
            }
            uploads.add(new Upload("noise in a form " + seed, FORM, form(noise)));
        }
        odd(uploads, dxf, csv);
        return uploads;
    }

    private static void odd(List<Upload> uploads, byte[] dxf, byte[] csv) {
        uploads.add(new Upload("deep arrays", JSON, bytes("{\"sizeRun\":" + "[".repeat(100_000))));
        uploads.add(new Upload("deep objects", JSON, bytes("{\"sizeRun\":".repeat(20_000))));
        uploads.add(new Upload(
                "deep request of a form",
                FORM,
                form("Content-Disposition: form-data; name=\"request\"\r\n", bytes("[".repeat(100_000)))));
        StringBuilder blocks = new StringBuilder("0\nSECTION\n2\nBLOCKS\n");
        for (int i = 0; i < 10_000; i++) {
            blocks.append("0\nBLOCK\n8\n0\n2\nB" + i + "\n10\n0\n20\n0\n0\nINSERT\n8\n0\n2\nB" + (i + 1)
                    + "\n10\n0\n20\n0\n0\nENDBLK\n");
        }
        uploads.add(new Upload(
                "deep blocks",
                DXF,
                bytes(blocks + "0\nENDSEC\n" + entities("0\nINSERT\n8\n0\n2\nB0\n10\n0\n20\n0\n"))));
        for (String huge : List.of("1e308", "-1e308", "9".repeat(400), "NaN", "Infinity", "1e9", "1e-320")) {
            String line = "0\nLINE\n8\n0\n10\n" + huge + "\n20\n0\n11\n5\n21\n" + huge + "\n";
            uploads.add(new Upload("coordinates " + huge.substring(0, 3), DXF, bytes(entities(line))));
            uploads.add(new Upload(
                    "figures " + huge.substring(0, 3),
                    CSV,
                    bytes("code,unit,36,38\nbicep,cm," + huge + ",36\nlength,cm,60," + huge + "\n")));
        }
        String table = new String(csv, StandardCharsets.UTF_8).replace("Bicep", "Bizepsweite ärmelkugel");
        String drawing = new String(dxf, StandardCharsets.US_ASCII);
        for (String page : List.of("windows-1252", "UTF-16", "UTF-16LE", "UTF-32", "IBM850")) {
            Charset charset = Charset.forName(page);
            uploads.add(new Upload("csv in " + page, CSV, table.getBytes(charset)));
            uploads.add(new Upload("dxf in " + page, DXF, drawing.getBytes(charset)));
            uploads.add(new Upload("json in " + page, JSON, "{\"sizeRun\":{}}".getBytes(charset)));
        }
        uploads.add(new Upload("csv of another charset", CSV + ";charset=KOI8-R", csv));
        uploads.add(new Upload("no boundary", "multipart/form-data", form(dxf)));
        uploads.add(new Upload("long boundary", "multipart/form-data; boundary=" + "x".repeat(500), form(dxf)));
        uploads.add(new Upload("all boundaries", FORM, bytes("--XyZ\r\n".repeat(300_000))));
        uploads.add(new Upload("nearly boundaries", FORM, bytes("\r\n--Xy".repeat(1_000_000))));
        uploads.add(new Upload(
                "endless headers", FORM, bytes("--XyZ\r\n" + "X: y\r\n".repeat(500_000) + "\r\n\r\n--XyZ--")));
        uploads.add(new Upload(
                "path as a name",
                FORM,
                form("Content-Disposition: form-data; name=\"file\"; filename=\"../../../etc/passwd\"\r\n", dxf)));
        uploads.add(new Upload(
                "quotes in a name",
                FORM,
                form("Content-Disposition: form-data; name=\"file\"; filename=\"a\\\"\";\"\r\n", csv)));
        uploads.add(new Upload(
                "encoded name",
                FORM,
                form("Content-Disposition: form-data; name=\"file\"; filename*=UTF-8''%zz%00.dxf\r\n", dxf)));
        uploads.add(new Upload("commas", CSV, bytes(",".repeat(3_900_000))));
        uploads.add(new Upload("quotes", CSV, bytes("\"".repeat(3_900_000))));
        uploads.add(new Upload(
                "the same line", DXF, bytes(entities("0\nLINE\n8\n0\n10\n0\n20\n0\n11\n9\n21\n9\n".repeat(300_000)))));
        byte[] blanks = new byte[23_900_000];
        Arrays.fill(blanks, (byte) ' ');
        uploads.add(new Upload("24 MB of blanks", DXF, blanks));
        uploads.add(new Upload("24 MB of blanks in a form", FORM, form(blanks)));
    }

    @Test
    void noneFailsTheServiceOrMakesItHang() throws Exception {
        List<Upload> uploads = uploads();
        assertTrue(uploads.size() >= 200, "only " + uploads.size());
        List<String> failed = new ArrayList<>();
        long slowest = 0;
        String slowestName = "";
        for (Upload upload : uploads) {
            HttpRequest request = HttpRequest.newBuilder(URI.create(service.url() + "/v1/checks"))
                    .header("Content-Type", upload.type)
                    .timeout(HANGS)
                    .POST(HttpRequest.BodyPublishers.ofByteArray(upload.body))
                    .build();
            long start = System.nanoTime();
            int status;
            try {
                status = CLIENT.send(request, HttpResponse.BodyHandlers.ofByteArray())
                        .statusCode();
            } catch (IOException e) {
                failed.add(upload.name + " as " + upload.type + ": " + e);
                continue;
            }
            long taken = System.nanoTime() - start;
            if (taken > slowest) {
                slowest = taken;
                slowestName = upload.name;
            }
            if (status >= 500 || status < 200) {
                failed.add(upload.name + " as " + upload.type + ": " + status);
            }
        }
        System.out.printf(
                Locale.ROOT,
                "%d hostile uploads, the slowest %.2f s: %s%n",
                uploads.size(),
                slowest / 1e9,
                slowestName);
        assertEquals(List.of(), failed);
        lives();
    }

    private static void lives() throws Exception {
        assertTrue(service.alive());
        assertEquals(
                200,
                CLIENT.send(
                                HttpRequest.newBuilder(URI.create(service.url() + "/actuator/health"))
                                        .build(),
                                HttpResponse.BodyHandlers.ofString())
                        .statusCode());
    }

    /** A hundred million blanks, in chunks and so without a length, and with one: refused by the limit, with a heap that could not hold them. */
    @Test
    void aHundredMillionBlanksAreRefused() throws Exception {
        for (String type : List.of(CSV, DXF, FORM, JSON)) {
            long start = System.nanoTime();
            assertEquals("HTTP/1.1 413", blanks(type, "Transfer-Encoding: chunked"), type + " in chunks");
            assertEquals("HTTP/1.1 413", blanks(type, "Content-Length: 100000000"), type + " with a length");
            System.out.printf(
                    Locale.ROOT, "100 MB of blanks twice as %s: %.2f s%n", type, (System.nanoTime() - start) / 1e9);
        }
        lives();
    }

    /** Sends until the service has heard enough, and gives the beginning of its answer. */
    private static String blanks(String type, String length) throws Exception {
        URI address = URI.create(service.url());
        try (Socket socket = new Socket(address.getHost(), address.getPort())) {
            InputStream in = socket.getInputStream();
            CompletableFuture<String> answer = CompletableFuture.supplyAsync(() -> {
                try {
                    return new String(in.readNBytes(12), StandardCharsets.US_ASCII);
                } catch (IOException e) {
                    return e.toString();
                }
            });
            OutputStream out = socket.getOutputStream();
            boolean chunked = length.startsWith("Transfer");
            byte[] million = new byte[1_000_000];
            Arrays.fill(million, (byte) ' ');
            try {
                out.write(bytes("POST /v1/checks HTTP/1.1\r\nHost: localhost\r\nContent-Type: " + type + "\r\n" + length
                        + "\r\n\r\n"));
                for (int i = 0; i < 100 && !answer.isDone(); i++) {
                    if (chunked) {
                        out.write(bytes("f4240\r\n"));
                    }
                    out.write(million);
                    if (chunked) {
                        out.write(bytes("\r\n"));
                    }
                }
            } catch (IOException e) {
                // It has hung up, as it may.
            }
            return answer.get(HANGS.toSeconds(), TimeUnit.SECONDS);
        }
    }
}
