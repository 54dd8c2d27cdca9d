package org.capwright.service.http.load;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.function.BooleanSupplier;
import java.util.stream.Stream;
import org.capwright.service.KeptService;
import org.capwright.service.store.Databases;
import org.junit.jupiter.api.Test;

/** Nothing is computed for a caller that has left. */
class PresenceTest {

    /** Asks for lays that take long. */
    private static final String LONG = """
        {"units":"cm","baseSize":"40","sizes":["36","38","40","42","44","46"],
         "sleeve":{"bicep":36,"length":60,"capHeight":13.5,"capOutward":1.9,"capInward":1.2,"armhole":45},
         "overlay":{"rise":8,"length":34,"frontGap":6,"backGap":6,"pleats":{"count":8,"kind":"knife"}},
         "underSleeve":{"wrist":19},
         "grade":{"bicep":1.2,"length":0.5,"capHeight":0.4,"armhole":1.7},
         "materials":{"effort":"thorough","fabrics":[{"material":"main","width":150},{"material":"lining","width":140}],
          "order":{"36":9,"38":9,"40":9,"42":9,"44":9,"46":9}}}
        """;

    private static final String SHORT = """
        {"units":"cm","baseSize":"40","sizes":["38","40"],
         "sleeve":{"bicep":36,"length":60,"capHeight":13.5,"capOutward":1.9,"capInward":1.2},
         "underSleeve":{"wrist":19},"grade":{"bicep":1.2,"length":0.5,"capHeight":0.4}}
        """;

    /** Longer than a caller waits without being looked for, ms. */
    private static final int LONG_ENOUGH = 700;

    private final KeptService service = KeptService.on(Databases.EMBEDDED);

    private Socket asking(String call, String body) throws IOException {
        Socket socket = new Socket("127.0.0.1", service.port());
        byte[] bytes = body.getBytes(StandardCharsets.UTF_8);
        String head = call + " HTTP/1.1\r\nHost: localhost\r\nContent-Type: application/json\r\nContent-Length: "
                + bytes.length + "\r\n\r\n";
        socket.getOutputStream().write(head.getBytes(StandardCharsets.US_ASCII));
        socket.getOutputStream().write(bytes);
        return socket;
    }

    /** How many threads look for lays. */
    private static long searching() {
        return Thread.getAllStackTraces().values().stream()
                .filter(frames ->
                        Stream.of(frames).anyMatch(frame -> frame.getClassName().endsWith(".LaySearch")))
                .count();
    }

    private static void await(String what, BooleanSupplier there) throws InterruptedException {
        long end = System.nanoTime() + Duration.ofSeconds(30).toNanos();
        while (!there.getAsBoolean()) {
            assertTrue(System.nanoTime() < end, "waited in vain for " + what);
            Thread.sleep(20);
        }
    }

    @Test
    void lettingGoEndsTheSearchForLays() throws Exception {
        for (String call : List.of("POST /v1/materials", "POST /v1/size-runs/files/zip")) {
            Socket caller = asking(call, LONG);
            await("the search", () -> searching() > 0);
            caller.close();
            await("its end", () -> searching() == 0);
        }
    }

    /** Searches have all the turns; a style to keep waits behind them, and its caller leaves. Who waits after that is answered once the searches are given up. */
    @Test
    void whatWaitedForATurnIsNotDoneForACallerThatLeft() throws Exception {
        List<Socket> searches = new ArrayList<>();
        for (int i = 0; i < Runtime.getRuntime().availableProcessors(); i++) {
            searches.add(asking("POST /v1/materials", LONG));
        }
        await("the searches", () -> searching() >= searches.size());
        Socket leaving = asking("PUT /v1/styles/left-alone", SHORT);
        Socket staying = asking("PUT /v1/styles/stayed-for", SHORT);
        Thread.sleep(LONG_ENOUGH);
        leaving.close();
        for (Socket socket : searches) {
            socket.close();
        }
        assertTrue(new String(staying.getInputStream().readNBytes(12), StandardCharsets.US_ASCII).endsWith(" 201"));
        staying.close();
        assertEquals(200, service.get("/v1/styles/stayed-for").status());
        assertEquals(404, service.get("/v1/styles/left-alone").status(), "turns come in the order of asking");
    }
}
