package org.capwright.service.orders;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.security.MessageDigest;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.HexFormat;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.stream.IntStream;
import java.util.stream.StreamSupport;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import org.capwright.service.KeptService;
import org.capwright.service.store.Databases;
import org.capwright.service.store.Store;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import tools.jackson.databind.JsonNode;

/** Orders on kept styles, on both databases. Gowns and wearers are invented. */
class OrdersTest {

    private static final String GOWN = """
        {"name":"Choir gown","units":"cm","baseSize":"40","sizes":["36","38","40","42"],
         "sleeve":{"bicep":36,"length":60,"capHeight":13.5,"capOutward":1.9,"capInward":1.2,"armhole":45},
         "overlay":{"rise":14,"length":34,"hem":"vee","frontGap":6,"backGap":6,"pleats":{"count":8,"kind":"knife"}},
         "underSleeve":{"elbow":28,"wrist":19},
         "grade":{"bicep":1.2,"length":0.5,"capHeight":0.4,"armhole":1.6},
         "ease":{"bicep":7,"elbow":"15%","wrist":6,"length":1,"armhole":"14%","capEase":"4%"}}
        """;

    private static final String SINGER = """
        {"reference":"order 1207",
         "wearer":{"bustGirth":96,"stature":168,"upperArmGirth":31.5,"armLength":59,"elbowGirth":26}}
        """;

    /** An upper arm that hardly anybody has with such a bust. */
    private static final String THIN = SINGER.replace("31.5", "22");

    private static String style(KeptService service) {
        String id = "gown-" + UUID.randomUUID();
        assertEquals(201, service.send("PUT", "/v1/styles/" + id, GOWN).status());
        return id;
    }

    private static KeptService.Answer order(KeptService service, String style, String body, String... headers) {
        return service.send("POST", "/v1/styles/" + style + "/orders", body, headers);
    }

    private static String taken(KeptService service, String style, String body) {
        KeptService.Answer answer = order(service, style, body);
        assertEquals(201, answer.status(), answer.text());
        return id(answer);
    }

    private static String id(KeptService.Answer answer) {
        return answer.json().get("order").get("id").stringValue();
    }

    private static KeptService.Answer change(KeptService service, String order, String state) {
        return service.send("POST", "/v1/orders/" + order + "/states", "{\"state\":\"" + state + "\"}");
    }

    private static byte[] file(KeptService service, String order, String format) {
        KeptService.Answer answer = service.get("/v1/orders/" + order + "/files/" + format);
        assertEquals(200, answer.status(), answer.text());
        return answer.body();
    }

    private static List<String> states(JsonNode details) {
        return StreamSupport.stream(details.get("history").spliterator(), false)
                .map(step -> step.get("state").stringValue())
                .toList();
    }

    /** A shop that prints asks for the PDF alone; it is the one that comes with all the others, and a remake has the same files. */
    @ParameterizedTest
    @EnumSource
    void onlyTheFilesAskedForAreDrawn(Databases kind) {
        KeptService service = KeptService.on(kind);
        String style = style(service);
        for (String body : List.of(SINGER.strip(), "{\"size\":\"38\"}")) {
            String all = taken(service, style, body);
            String one = taken(service, style, body.replaceFirst("\\{", "{\"files\":[\"pdf\"],"));
            assertEquals(List.of("csv", "dxf", "json", "pdf", "plt", "svg"), formats(service, all));
            assertEquals(List.of("pdf"), formats(service, one));
            assertArrayEquals(file(service, all, "pdf"), file(service, one, "pdf"));
            KeptService.Answer other = service.get("/v1/orders/" + one + "/files/dxf");
            assertEquals(404, other.status());
            assertTrue(other.text().contains("only pdf"), other.text());
            String again = taken(service, style, "{\"remakeOf\":\"" + one + "\"}");
            assertEquals(List.of("pdf"), formats(service, again));
            String more = taken(service, style, "{\"remakeOf\":\"" + one + "\",\"files\":[\"dxf\",\"pdf\"]}");
            assertEquals(List.of("dxf", "pdf"), formats(service, more));
        }
        for (String wrong : List.of("[]", "[\"pdf\",\"pdf\"]", "[\"zip\"]", "\"pdf\"")) {
            KeptService.Answer refused = order(service, style, "{\"size\":\"38\",\"files\":" + wrong + "}");
            assertEquals(422, refused.status(), wrong);
            assertTrue(refused.text().contains("\"/files"), refused.text());
        }
    }

    private static List<String> formats(KeptService service, String order) {
        return service.get("/v1/orders/" + order)
                .json()
                .get("files")
                .valueStream()
                .map(file -> file.get("format").stringValue())
                .toList();
    }

    /** A form says beforehand what the order will say, from the figures of the call that keeps nothing, and leaves no trace. */
    @ParameterizedTest
    @EnumSource
    void aPreviewSaysWhatTheOrderWouldAndKeepsNothing(Databases kind) {
        KeptService service = KeptService.on(kind);
        String style = style(service);
        JsonNode form = service.get("/v1/styles/" + style + "/order-form").json();
        assertEquals("cm", form.get("unit").stringValue());
        assertTrue(form.get("ease").booleanValue());
        assertEquals(
                List.of(
                        "upperArmGirth",
                        "armLength",
                        "elbowGirth",
                        "wristGirth",
                        "armscyeGirth",
                        "bustGirth",
                        "stature"),
                form.get("measurements")
                        .valueStream()
                        .map(each -> each.get("dimension").stringValue())
                        .toList());
        JsonNode preview = preview(service, style, THIN).json();
        JsonNode order = order(service, style, THIN).json();
        assertEquals(order.get("questions"), preview.get("questions"));
        assertEquals(1, preview.get("questions").size());
        String id = taken(service, style, SINGER);
        JsonNode made = service.get("/v1/orders/" + id + "/files/json").json();
        JsonNode right = preview(service, style, SINGER).json();
        assertEquals(0, right.get("questions").size());
        assertEquals(
                made.get("sizeRun").get("sizes").get(0).get("dimensions"),
                right.get("sleeve").get("dimensions"));
        assertEquals(
                made.get("estimates")
                        .valueStream()
                        .map(each -> each.get("value"))
                        .toList(),
                right.get("estimates")
                        .valueStream()
                        .map(each -> each.get("value"))
                        .toList());
        assertEquals(8, right.get("sleeve").get("pleats").get("folds").size());
        JsonNode ofSize = preview(service, style, "{\"size\":\"38\"}").json();
        assertEquals(34.8, ofSize.get("sleeve").get("dimensions").get("bicep").doubleValue(), 1e-9);
        KeptService.Answer wrong = preview(service, style, "{\"size\":\"39\"}");
        assertEquals(422, wrong.status(), wrong.text());
        assertEquals("/size", wrong.json().get("violations").get(0).get("field").stringValue());
        assertEquals(
                "/remakeOf",
                preview(service, style, "{\"remakeOf\":\"" + id + "\"}")
                        .json()
                        .get("violations")
                        .get(0)
                        .get("field")
                        .stringValue());
        assertEquals(
                2, service.get("/v1/orders?style=" + style).json().get("orders").size(), "only those that were taken");
    }

    private static KeptService.Answer preview(KeptService service, String style, String body) {
        return service.send("POST", "/v1/styles/" + style + "/order-previews", body);
    }

    /** The files are those of the same wearer by the call that keeps nothing. */
    @ParameterizedTest
    @EnumSource
    void anOrderHasTheFilesOfItsWearer(Databases kind) throws Exception {
        KeptService service = KeptService.on(kind);
        String style = style(service);
        KeptService.Answer answer = order(service, style, SINGER);
        assertEquals(201, answer.status(), answer.text());
        String id = id(answer);
        assertEquals("/v1/orders/" + id, answer.header("Location"));
        assertEquals(answer.json(), service.get("/v1/orders/" + id).json());
        assertEquals("taken", answer.json().get("order").get("state").stringValue());
        String measured = """
            {"name":"Choir gown","revision":"1","units":"cm","order":"order 1207",
             "wearer":{"bustGirth":96,"stature":168,"upperArmGirth":31.5,"armLength":59,"elbowGirth":26},
             "ease":{"bicep":7,"elbow":"15%","wrist":6,"length":1,"armhole":"14%","capEase":"4%"},
             "sleeve":{"capOutward":1.9,"capInward":1.2},
             "overlay":{"rise":14,"length":34,"hem":"vee","frontGap":6,"backGap":6,"pleats":{"count":8,"kind":"knife"}},
             "underSleeve":{}}
            """;
        Map<String, String> types = new LinkedHashMap<>(Map.of(
                "svg", "image/svg+xml",
                "dxf", "image/vnd.dxf",
                "csv", "text/csv",
                "pdf", "application/pdf",
                "plt", "application/vnd.hp-hpgl",
                "json", "application/json"));
        assertEquals(types.size(), answer.json().get("files").size());
        for (JsonNode listed : answer.json().get("files")) {
            String format = listed.get("format").stringValue();
            byte[] file = file(service, id, format);
            assertArrayEquals(
                    service.send("POST", "/v1/made-to-measure", measured, "Accept", types.get(format))
                            .body(),
                    file,
                    format);
            assertEquals(file.length, listed.get("bytes").intValue());
            String sha256 = HexFormat.of()
                    .formatHex(MessageDigest.getInstance("SHA-256").digest(file));
            assertEquals(sha256, listed.get("sha256").stringValue());
            KeptService.Answer known = service.send(
                    "GET", "/v1/orders/" + id + "/files/" + format, "", "If-None-Match", "\"" + sha256 + "\"");
            assertEquals(304, known.status());
        }
        assertEquals(types.keySet(), unpacked(file(service, id, "zip")).keySet());
        assertArrayEquals(
                file(service, id, "pdf"), unpacked(file(service, id, "zip")).get("pdf"));
        assertArrayEquals(file(service, id, "zip"), file(service, id, "zip"));
        assertEquals(404, service.get("/v1/orders/" + id + "/files/exe").status());
    }

    private static Map<String, byte[]> unpacked(byte[] zip) throws IOException {
        Map<String, byte[]> files = new LinkedHashMap<>();
        try (ZipInputStream in = new ZipInputStream(new ByteArrayInputStream(zip))) {
            for (ZipEntry entry = in.getNextEntry(); entry != null; entry = in.getNextEntry()) {
                files.put(entry.getName().substring("order.".length()), in.readAllBytes());
            }
        }
        return files;
    }

    /** A size of the run is drafted as the run drafts it. */
    @ParameterizedTest
    @EnumSource
    void anOrderBySizeHasThatSize(Databases kind) {
        KeptService service = KeptService.on(kind);
        String style = style(service);
        JsonNode run =
                service.send("POST", "/v1/styles/" + style + "/size-runs", "").json();
        for (int i = 0; i < 4; i++) {
            String size = run.get("sizes").get(i).get("label").stringValue();
            String id = taken(service, style, "{\"size\":" + size + "}");
            JsonNode alone = new JsonFile(file(service, id, "json")).tree();
            assertEquals(1, alone.get("sizes").size());
            assertEquals(
                    run.get("sizes").get(i).get("dimensions"),
                    alone.get("sizes").get(0).get("dimensions"));
            assertEquals(
                    run.get("sizes").get(i).get("pieces"),
                    alone.get("sizes").get(0).get("pieces"));
        }
        KeptService.Answer none = order(service, style, "{\"size\":\"48\"}");
        assertEquals(422, none.status());
        assertEquals("/size", none.json().get("violations").get(0).get("field").stringValue());
    }

    private record JsonFile(byte[] bytes) {
        JsonNode tree() {
            return org.capwright.service.http.JsonMapping.mapper().readTree(bytes);
        }
    }

    /** The pinned revision and the kept bytes do not follow the style. */
    @ParameterizedTest
    @EnumSource
    void anOrderPinsItsRevision(Databases kind) {
        KeptService service = KeptService.on(kind);
        String style = style(service);
        String first = taken(service, style, SINGER);
        byte[] before = file(service, first, "pdf");
        service.send("PUT", "/v1/styles/" + style, GOWN.replace("\"rise\":14", "\"rise\":12"), "If-Match", "*");
        assertArrayEquals(before, file(service, first, "pdf"));
        String second = taken(service, style, SINGER);
        assertEquals(
                2,
                service.get("/v1/orders/" + second)
                        .json()
                        .get("order")
                        .get("revision")
                        .intValue());
        String old = taken(service, style, SINGER.replace("{\"ref", "{\"revision\":1,\"ref"));
        assertArrayEquals(before, file(service, old, "pdf"));
        assertEquals(
                404,
                order(service, style, SINGER.replace("{\"ref", "{\"revision\":7,\"ref"))
                        .status());
        KeptService.Answer archived = service.send("DELETE", "/v1/styles/" + style, "");
        assertEquals(200, archived.status(), "orders pin it");
        assertTrue(archived.json().get("archived").booleanValue());
        assertArrayEquals(before, file(service, first, "pdf"));
        assertEquals(409, order(service, style, SINGER).status(), "no more orders");
        service.send("PUT", "/v1/styles/" + style, GOWN, "If-Match", "*");
        assertEquals(201, order(service, style, SINGER).status(), "back on the shelf");
    }

    @ParameterizedTest
    @EnumSource
    void improbableMeasurementsHoldTheOrder(Databases kind) {
        KeptService service = KeptService.on(kind);
        String style = style(service);
        KeptService.Answer held = order(service, style, THIN);
        assertEquals(201, held.status(), held.text());
        assertEquals("questioned", held.json().get("order").get("state").stringValue());
        assertEquals(
                "/wearer/upperArmGirth",
                held.json().get("questions").get(0).get("field").stringValue());
        String id = id(held);
        assertEquals(409, service.get("/v1/orders/" + id + "/files/pdf").status());
        assertEquals(409, service.get("/v1/orders/" + id + "/files/zip").status());
        assertEquals(409, change(service, id, "cut").status());
        KeptService.Answer confirmed = change(service, id, "confirmed");
        assertEquals(List.of("questioned", "confirmed"), states(confirmed.json()));
        assertEquals(
                states(confirmed.json()),
                states(change(service, id, "confirmed").json()),
                "said twice, done once");
        assertEquals(200, service.get("/v1/orders/" + id + "/files/pdf").status());
        KeptService.Answer undrafted = order(service, style, SINGER.replace("31.5", "45"));
        assertEquals(422, undrafted.status(), "no cap is that wide; the likely slip is named first");
        assertEquals(
                "/wearer/upperArmGirth",
                undrafted.json().get("violations").get(0).get("field").stringValue());
        KeptService.Answer named =
                order(service, style, THIN.replace("{\"ref", "{\"confirmed\":[\"upperArmGirth\"],\"ref"));
        assertEquals("taken", named.json().get("order").get("state").stringValue());
    }

    @ParameterizedTest
    @CsvSource({
        "cut, confirmed, 409",
        "cut, cancelled, 409",
        "cancelled, confirmed, 409",
        "cancelled, cut, 409",
        "confirmed, cut, 200",
        "confirmed, cancelled, 200",
        "cut, cut, 200",
        "confirmed, taken, 422",
        "confirmed, questioned, 422"
    })
    void statesFollowOneAnother(String first, String second, int status) {
        KeptService service = KeptService.on(Databases.EMBEDDED);
        String id = taken(service, style(service), "{\"size\":\"38\"}");
        assertEquals(200, change(service, id, first).status());
        KeptService.Answer then = change(service, id, second);
        assertEquals(status, then.status(), then.text());
        JsonNode details = service.get("/v1/orders/" + id).json();
        assertEquals(
                status == 200 && !first.equals(second) ? 3 : 2,
                details.get("history").size());
        assertEquals("this machine", details.get("history").get(1).get("by").stringValue());
        assertEquals(
                first.equals("cancelled") || second.equals("cancelled") && status == 200 ? 409 : 200,
                service.get("/v1/orders/" + id + "/files/pdf").status());
    }

    @ParameterizedTest
    @EnumSource
    void theSameOrderIsTakenOnce(Databases kind) {
        String setting = kind.empty();
        KeptService service = KeptService.started(setting);
        String style = style(service);
        String key = "key-" + UUID.randomUUID();
        KeptService.Answer first = order(service, style, SINGER, "Idempotency-Key", key);
        assertEquals(201, first.status());
        change(service, id(first), "cut");
        KeptService.Answer again = order(service, style, SINGER, "Idempotency-Key", "\"" + key + "\"");
        assertEquals(201, again.status());
        assertEquals(first.text(), again.text(), "the same answer, though the order went on");
        assertEquals(422, order(service, style, THIN, "Idempotency-Key", key).status());
        assertEquals(
                422,
                order(service, style(service), SINGER, "Idempotency-Key", key).status());
        assertEquals(
                400, order(service, style, SINGER, "Idempotency-Key", "a b").status());
        assertEquals(
                422, order(service, style, "{}", "Idempotency-Key", key + "2").status());
        assertEquals(
                201,
                order(service, style, SINGER, "Idempotency-Key", key + "2").status(),
                "what was refused was not taken");
        service.stop();
        KeptService restarted = KeptService.started(setting);
        try {
            assertEquals(
                    first.text(),
                    order(restarted, style, SINGER, "Idempotency-Key", key).text());
            assertEquals(
                    2,
                    restarted
                            .get("/v1/orders?style=" + style)
                            .json()
                            .get("orders")
                            .size());
        } finally {
            restarted.stop();
        }
    }

    /** Many at once with one key: one order; the others get its answer, or are told to wait. */
    @ParameterizedTest
    @EnumSource
    void atOnceItIsTakenOnceAsWell(Databases kind) throws Exception {
        KeptService service = KeptService.on(kind);
        String style = style(service);
        String key = "key-" + UUID.randomUUID();
        int people = 8;
        CountDownLatch begin = new CountDownLatch(1);
        ExecutorService pool = Executors.newFixedThreadPool(people);
        List<Future<KeptService.Answer>> answers = IntStream.range(0, people)
                .mapToObj(i -> pool.submit(() -> {
                    begin.await();
                    return order(service, style, SINGER, "Idempotency-Key", key);
                }))
                .toList();
        begin.countDown();
        Set<String> bodies = new HashSet<>();
        for (Future<KeptService.Answer> answer : answers) {
            assertTrue(
                    Set.of(201, 409).contains(answer.get().status()),
                    answer.get().text());
            if (answer.get().status() == 201) {
                bodies.add(answer.get().text());
            }
        }
        pool.shutdown();
        assertEquals(1, bodies.size());
        assertEquals(
                1, service.get("/v1/orders?style=" + style).json().get("orders").size());
    }

    /** One altered measurement is enough: the rest, and the revision, come from the first order. */
    @ParameterizedTest
    @EnumSource
    void aRemakeAltersTheFirst(Databases kind) {
        KeptService service = KeptService.on(kind);
        String style = style(service);
        String first = taken(service, style, SINGER);
        service.send("PUT", "/v1/styles/" + style, GOWN.replace("\"rise\":14", "\"rise\":12"), "If-Match", "*");
        String remake = taken(
                service,
                style,
                "{\"reference\":\"order 1207\",\"remakeOf\":\"" + first + "\",\"wearer\":{\"armLength\":57}}");
        JsonNode details = service.get("/v1/orders/" + remake).json();
        assertEquals(first, details.get("order").get("remakeOf").stringValue());
        assertEquals(1, details.get("order").get("revision").intValue());
        JsonNode wearer =
                service.get("/v1/orders/" + remake + "/measurements").json().get("wearer");
        assertEquals(57, wearer.get("armLength").doubleValue());
        assertEquals(31.5, wearer.get("upperArmGirth").doubleValue());
        String whole = taken(service, style, SINGER.replace("59", "57").replace("{\"ref", "{\"revision\":1,\"ref"));
        assertArrayEquals(file(service, whole, "pdf"), file(service, remake, "pdf"));
        String again = taken(service, style, "{\"remakeOf\":\"" + first + "\"}");
        assertEquals(
                "order 1207",
                service.get("/v1/orders/" + again)
                        .json()
                        .get("order")
                        .get("reference")
                        .stringValue());
        assertArrayEquals(file(service, first, "pdf"), file(service, again, "pdf"));
        for (String wrong : List.of("\"nobody\"", "7")) {
            assertEquals(
                    "/remakeOf",
                    order(service, style, "{\"remakeOf\":" + wrong + ",\"size\":\"38\"}")
                            .json()
                            .get("violations")
                            .get(0)
                            .get("field")
                            .stringValue());
        }
        service.send("DELETE", "/v1/orders/" + first + "/measurements", "");
        assertEquals(
                422, order(service, style, "{\"remakeOf\":\"" + first + "\"}").status());
    }

    /** What the order does not say is mended in the style: its field, then what is wrong with it. */
    @ParameterizedTest
    @EnumSource
    void namesTheFieldOfTheStyle(Databases kind) {
        KeptService service = KeptService.on(kind);
        String refused =
                order(service, style(service), SINGER.replace("31.5", "52")).text();
        assertTrue(refused.contains("the style's /ease/capEase: no cap height gives "), refused);
    }

    @ParameterizedTest
    @EnumSource
    void erasingLeavesTheAccounting(Databases kind) {
        KeptService service = KeptService.on(kind);
        String style = style(service);
        String key = "key-" + UUID.randomUUID();
        String id = id(order(service, style, THIN, "Idempotency-Key", key));
        String twin = taken(service, style, "{\"size\":\"38\"}");
        String other = taken(service, style, "{\"size\":\"38\"}");
        assertTrue(service.get("/v1/orders/" + id + "/measurements").text().contains("\"upperArmGirth\":22"));
        JsonNode erased =
                service.send("DELETE", "/v1/orders/" + id + "/measurements", "").json();
        assertEquals(List.of("questioned", "cancelled"), states(erased), "what is not cut cannot be any more");
        assertEquals(0, erased.get("files").size());
        assertEquals(0, erased.get("questions").size());
        assertFalse(erased.get("order").path("erasedAt").isMissingNode());
        assertEquals("order 1207", erased.get("order").get("reference").stringValue());
        assertEquals(404, service.get("/v1/orders/" + id + "/measurements").status());
        assertEquals(404, service.get("/v1/orders/" + id + "/files/pdf").status());
        KeptService.Answer again = order(service, style, THIN, "Idempotency-Key", key);
        assertEquals(201, again.status());
        assertEquals(id, id(again), "no second order");
        assertFalse(again.text().contains("upperArmGirth"), again.text());
        assertEquals(
                erased,
                service.send("DELETE", "/v1/orders/" + id + "/measurements", "").json(),
                "said twice");
        service.send("DELETE", "/v1/orders/" + twin + "/measurements", "");
        assertEquals(200, service.get("/v1/orders/" + other + "/files/pdf").status(), "kept for the other");
    }

    /** Orders that are open are never due; what is due is erased by the setting and named in the audit trail. */
    @ParameterizedTest
    @EnumSource
    void whatIsDueIsErased(Databases kind) {
        KeptService service = KeptService.on(kind);
        String style = style(service);
        String open = taken(service, style, SINGER);
        String cut = taken(service, style, SINGER);
        change(service, cut, "cut");
        Store store = service.bean(Store.class);
        OrderDesk desk = service.bean(OrderDesk.class);
        Instant later = Instant.now().plus(Duration.ofDays(31));
        try (Retention none = new Retention(store, desk, "");
                Retention longer = new Retention(store, desk, "P40D");
                Retention month = new Retention(store, desk, "P30D")) {
            assertEquals(0, none.erase(later) + longer.erase(later));
            assertTrue(month.erase(later) >= 1);
        }
        assertEquals(404, service.get("/v1/orders/" + cut + "/files/pdf").status());
        assertEquals(200, service.get("/v1/orders/" + open + "/files/pdf").status());
        JsonNode trail = service.get("/v1/audit?limit=200").json().get("entries");
        List<String> ofCut = StreamSupport.stream(trail.spliterator(), false)
                .filter(entry -> entry.get("subject").stringValue().equals(cut))
                .map(entry ->
                        entry.get("who").stringValue() + " " + entry.get("what").stringValue())
                .toList();
        assertEquals(List.of("retention order.erased", "this machine order.cut", "this machine order.taken"), ofCut);
        // 31.5 may also be the seconds of a time.
        String said = trail.toString().replaceAll("T[0-9:.]+Z", "");
        assertFalse(said.contains("31.5"), "no measurement is in the trail");
    }

    @ParameterizedTest
    @EnumSource
    void ordersAreFoundAgain(Databases kind) {
        KeptService service = KeptService.on(kind);
        String style = style(service);
        List<String> ids = new ArrayList<>();
        for (int i = 0; i < 5; i++) {
            ids.add(
                    0,
                    taken(
                            service,
                            style,
                            "{\"size\":\"40\",\"reference\":\"" + style.substring(5, 30) + i % 2 + "\"}"));
        }
        change(service, ids.get(0), "cut");
        List<String> listed = new ArrayList<>();
        String cursor = "";
        do {
            JsonNode page = service.get("/v1/orders?style=" + style + "&limit=2&cursor=" + cursor)
                    .json();
            listed.addAll(ids(page));
            cursor = page.path("next").asString("");
        } while (!cursor.isEmpty());
        assertEquals(new HashSet<>(ids), new HashSet<>(listed));
        assertEquals(5, listed.size());
        assertEquals(
                List.of(ids.get(0)),
                ids(service.get("/v1/orders?style=" + style + "&state=cut").json()));
        assertEquals(
                2,
                ids(service.get("/v1/orders?reference=" + style.substring(5, 30) + "1")
                                .json())
                        .size());
        assertEquals(
                5,
                ids(service.get("/v1/orders?from=2026-01-01&style=" + style).json())
                        .size());
        assertEquals(
                0,
                ids(service.get("/v1/orders?to=2026-01-01&style=" + style).json())
                        .size());
        for (String wrong : List.of(
                "state=done",
                "from=yesterday",
                "to=2026-13-01",
                "limit=0",
                "cursor=eA",
                "style=%00",
                "reference=a%00")) {
            KeptService.Answer refused = service.get("/v1/orders?" + wrong);
            assertEquals(400, refused.status(), wrong);
            assertEquals(
                    wrong.split("=")[0],
                    refused.json().get("violations").get(0).get("field").stringValue());
        }
    }

    /** Forty characters outside the basic plane are forty characters. */
    @ParameterizedTest
    @EnumSource
    void longNamesAreKeptWhole(Databases kind) {
        KeptService service = KeptService.on(kind);
        String reference = "\uD83D\uDC57".repeat(40);
        String id = taken(service, style(service), "{\"size\":\"38\",\"reference\":\"" + reference + "\"}");
        assertEquals(
                reference,
                service.get("/v1/orders/" + id)
                        .json()
                        .get("order")
                        .get("reference")
                        .stringValue());
    }

    private static List<String> ids(JsonNode page) {
        return StreamSupport.stream(page.get("orders").spliterator(), false)
                .map(order -> order.get("id").stringValue())
                .toList();
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "{}| ''",
                "{\"size\":\"38\",\"wearer\":{\"stature\":168}}| /size",
                "{\"wearer\":{\"upperArmGirth\":-3}}| /wearer/upperArmGirth",
                "{\"wearer\":{\"upperArmGirht\":31}}| /wearer/upperArmGirht",
                "{\"size\":\"38\",\"units\":\"in\"}| /units",
                "{\"size\":\"38\",\"revision\":0}| /revision",
                "{\"size\":\"38\",\"colour\":\"red\"}| /colour",
                "[]| ''"
            })
    void whatIsWrongIsNamed(String body, String field) {
        KeptService service = KeptService.on(Databases.EMBEDDED);
        KeptService.Answer refused = order(service, style(service), body);
        assertEquals(422, refused.status(), refused.text());
        assertEquals(field, refused.json().get("violations").get(0).get("field").stringValue());
    }

    @ParameterizedTest
    @EnumSource
    void whereThereIsNothingItIsNotFound(Databases kind) {
        KeptService service = KeptService.on(kind);
        assertEquals(404, order(service, "nothing", SINGER).status());
        for (String path : List.of("", "/measurements", "/files/pdf")) {
            assertEquals(
                    404, service.get("/v1/orders/" + UUID.randomUUID() + path).status());
        }
        assertEquals(404, change(service, "x", "cut").status());
        assertNotEquals(500, service.get("/v1/orders/%00").status());
    }
}
