package org.capwright.service.styles;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import java.util.stream.Stream;
import java.util.stream.StreamSupport;
import org.capwright.service.KeptService;
import org.capwright.service.http.JsonMapping;
import org.capwright.service.store.Databases;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ArrayNode;

/** Styles that are kept, on both databases. The gowns are invented. */
class StylesTest {

    static final String GOWN = """
        {"name":"Choir gown","units":"cm","baseSize":"40","sizes":["36","38","40","42"],
         "sleeve":{"bicep":36,"length":60,"capHeight":13.5,"capOutward":1.9,"capInward":1.2,"armhole":45},
         "overlay":{"rise":14,"length":34,"hem":"vee","frontGap":6,"backGap":6,"pleats":{"count":8,"kind":"knife"}},
         "underSleeve":{"elbow":28,"wrist":19},
         "grade":{"bicep":1.2,"length":0.5,"capHeight":0.4,"armhole":1.6},
         "ease":{"bicep":7,"wrist":6,"armhole":"14%"}}
        """;

    private static String id() {
        return "gown-" + UUID.randomUUID();
    }

    private static KeptService.Answer put(KeptService service, String id, String body, String... headers) {
        return service.send("PUT", "/v1/styles/" + id, body, headers);
    }

    private static List<String> texts(JsonNode list, String field) {
        return StreamSupport.stream(list.spliterator(), false)
                .map(entry -> entry.path(field).asString())
                .toList();
    }

    @ParameterizedTest
    @EnumSource
    void aStyleIsAnsweredAsItWasPut(Databases kind) {
        KeptService service = KeptService.on(kind);
        String id = id();
        KeptService.Answer made = put(service, id, GOWN);
        assertEquals(201, made.status(), made.text());
        assertEquals(1, made.json().get("revision").intValue());
        KeptService.Answer there = service.get("/v1/styles/" + id);
        assertEquals(200, there.status());
        assertEquals(JsonMapping.mapper().readTree(GOWN), there.json());
        assertEquals(made.header("ETag"), there.header("ETag"));
        assertEquals(made.json().get("entityTag").stringValue(), there.header("ETag"));
        KeptService.Answer known = service.send("GET", "/v1/styles/" + id, "", "If-None-Match", there.header("ETag"));
        assertEquals(304, known.status());
        assertEquals(0, known.body().length);
    }

    /** RFC 9110, section 13.1.1, and RFC 6585, section 3. */
    @ParameterizedTest
    @EnumSource
    void nobodysChangeIsLost(Databases kind) {
        KeptService service = KeptService.on(kind);
        String id = id();
        String first = put(service, id, GOWN, "If-None-Match", "*").header("ETag");
        assertEquals(200, put(service, id, GOWN, "If-Match", first).status(), "nothing is made");
        String higher = GOWN.replace("13.5", "14");
        assertEquals(428, put(service, id, higher).status());
        assertEquals(412, put(service, id, higher, "If-None-Match", "*").status());
        assertEquals(
                412, put(service, id, higher, "If-Match", "\"1-000000000000\"").status());
        assertEquals(412, put(service, id, higher, "If-Match", "W/" + first).status(), "strong comparison");
        assertEquals(412, put(service, id(), higher, "If-Match", "*").status(), "there is nothing to change");
        KeptService.Answer second = put(service, id, higher, "If-Match", first);
        assertEquals(200, second.status(), second.text());
        assertEquals(2, second.json().get("revision").intValue());
        assertEquals(412, put(service, id, GOWN, "If-Match", first).status(), "meanwhile it was changed");
        KeptService.Answer same = put(service, id, higher, "If-Match", second.header("ETag"));
        assertEquals(2, same.json().get("revision").intValue(), "the same body is no change");
        assertEquals(
                412,
                service.send("DELETE", "/v1/styles/" + id, "", "If-Match", first)
                        .status());
    }

    @ParameterizedTest
    @EnumSource
    void revisionsStayAsTheyAre(Databases kind) {
        KeptService service = KeptService.on(kind);
        String id = id();
        String tag = put(service, id, GOWN).header("ETag");
        for (int height = 14; height <= 17; height++) {
            tag = put(service, id, GOWN.replace("13.5", "" + height), "If-Match", tag)
                    .header("ETag");
        }
        List<Integer> numbers = new ArrayList<>();
        String cursor = "";
        do {
            JsonNode page = service.get("/v1/styles/" + id + "/revisions?limit=2&cursor=" + cursor)
                    .json();
            page.get("revisions")
                    .forEach(entry -> numbers.add(entry.get("revision").intValue()));
            cursor = page.path("next").asString("");
        } while (!cursor.isEmpty());
        assertEquals(List.of(5, 4, 3, 2, 1), numbers);
        assertEquals(
                JsonMapping.mapper().readTree(GOWN),
                service.get("/v1/styles/" + id + "/revisions/1").json());
        KeptService.Answer none = service.get("/v1/styles/" + id + "/revisions/6");
        assertEquals(404, none.status());
        assertTrue(none.text().contains("1 to 5"), none.text());
        assertEquals(400, service.get("/v1/styles/" + id + "/revisions/last").status());
    }

    /** A cap that is half a centimetre higher is that in every size, and the cap line is longer by a part of it that the spec tables of both say. */
    @ParameterizedTest
    @EnumSource
    void aChangeIsToldInPointsOfMeasure(Databases kind) {
        KeptService service = KeptService.on(kind);
        String id = id();
        String tag = put(service, id, GOWN).header("ETag");
        put(service, id, GOWN.replace("13.5", "14").replace("\"42\"]", "\"42\",\"44\"]"), "If-Match", tag);
        JsonNode changes = service.get("/v1/styles/" + id + "/changes").json();
        assertEquals(1, changes.get("from").intValue());
        assertEquals(2, changes.get("to").intValue());
        assertEquals(List.of("/sizes", "/sleeve/capHeight"), texts(changes.get("fields"), "field"));
        assertEquals("13.5", changes.get("fields").get(1).get("before").stringValue());
        assertEquals("14", changes.get("fields").get(1).get("after").stringValue());
        double[][] lines = {capLines(service, id, 1), capLines(service, id, 2)};
        int heights = 0;
        int lengths = 0;
        for (JsonNode measure : changes.get("pointsOfMeasure")) {
            boolean fresh = measure.get("size").stringValue().equals("44");
            assertEquals(fresh, measure.path("before").isMissingNode(), measure.toString());
            if (!fresh && measure.get("code").stringValue().equals("capHeight")) {
                assertEquals(0.5, measure.get("difference").doubleValue(), 1e-9);
                heights++;
            }
            if (!fresh && measure.get("code").stringValue().equals("capLine")) {
                assertEquals(
                        lines[1][lengths] - lines[0][lengths],
                        measure.get("difference").doubleValue(),
                        1e-5);
                lengths++;
            }
        }
        assertEquals(4, heights);
        assertEquals(4, lengths);
        assertEquals(400, service.get("/v1/styles/" + id + "/changes?to=1").status());
    }

    private static double[] capLines(KeptService service, String id, int revision) {
        JsonNode rows = service.send("POST", "/v1/styles/" + id + "/size-runs?revision=" + revision, "")
                .json()
                .get("specTable")
                .get("rows");
        for (JsonNode row : rows) {
            if (row.get("code").stringValue().equals("capLine")) {
                return StreamSupport.stream(row.get("values").spliterator(), false)
                        .mapToDouble(JsonNode::doubleValue)
                        .toArray();
            }
        }
        throw new AssertionError("no cap line");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "application/json",
                "image/svg+xml",
                "image/vnd.dxf",
                "text/csv",
                "application/pdf",
                "application/vnd.hp-hpgl",
                "application/zip"
            })
    void aKeptStyleIsDraftedAsItsBodyIs(String type) {
        KeptService service = KeptService.on(Databases.EMBEDDED);
        String id = id();
        String run = GOWN.replace(",\n \"ease\":{\"bicep\":7,\"wrist\":6,\"armhole\":\"14%\"}", "");
        assertNotEquals(GOWN, run);
        put(service, id, GOWN);
        KeptService.Answer kept = service.send("POST", "/v1/styles/" + id + "/size-runs", "", "Accept", type);
        assertEquals(200, kept.status(), kept.text());
        assertArrayEquals(
                service.send("POST", "/v1/size-runs", run, "Accept", type).body(), kept.body());
    }

    /** Without a revision of its own a style is marked with the number of the kept one. */
    @ParameterizedTest
    @EnumSource
    void filesSayWhichRevisionTheyAre(Databases kind) {
        KeptService service = KeptService.on(kind);
        String id = id();
        String tag = put(service, id, GOWN).header("ETag");
        tag = put(service, id, GOWN.replace("13.5", "14"), "If-Match", tag).header("ETag");
        assertEquals("2", revision(service, id));
        put(service, id, GOWN.replace("{\"name\"", "{\"revision\":\"spring\",\"name\""), "If-Match", tag);
        assertEquals("spring", revision(service, id));
    }

    private static String revision(KeptService service, String id) {
        return service.send("POST", "/v1/styles/" + id + "/size-runs", "")
                .json()
                .get("revision")
                .stringValue();
    }

    @ParameterizedTest
    @EnumSource
    void listsHaveNoGapsAndNoRepeats(Databases kind) {
        KeptService service = KeptService.on(kind);
        String mine = id();
        List<String> ids =
                Stream.of("-a", "-b", "-c", "-d", "-e").map(mine::concat).toList();
        ids.forEach(id -> put(service, id, GOWN));
        List<String> listed = new ArrayList<>();
        String cursor = "";
        do {
            KeptService.Answer answer = service.get("/v1/styles?limit=2&cursor=" + cursor);
            assertEquals(200, answer.status(), answer.text());
            JsonNode page = answer.json();
            listed.addAll(texts(page.get("styles"), "id"));
            cursor = page.path("next").asString("");
            if (listed.contains(mine + "-b")) {
                // What goes before the cursor shifts nothing.
                service.send("DELETE", "/v1/styles/" + mine + "-a", "");
            }
        } while (!cursor.isEmpty());
        assertEquals(ids, listed.stream().filter(id -> id.startsWith(mine)).toList());
        assertEquals(listed.stream().sorted().distinct().toList(), listed);
        for (String wrong : List.of("limit=0", "limit=201", "limit=x", "cursor=!", "cursor=YQ%3D%3D", "archived=x")) {
            KeptService.Answer refused = service.get("/v1/styles?" + wrong);
            assertEquals(400, refused.status(), wrong);
            assertEquals(
                    wrong.split("=")[0],
                    refused.json().get("violations").get(0).get("field").stringValue());
        }
    }

    @ParameterizedTest
    @EnumSource
    void whatIsExportedCanBeImported(Databases kind) {
        KeptService service = KeptService.on(kind);
        String mine = id();
        String tag = put(service, mine + "-a", GOWN).header("ETag");
        put(service, mine + "-a", GOWN.replace("13.5", "14"), "If-Match", tag);
        put(service, mine + "-b", GOWN);
        String document = exported(service, mine).replace(mine, mine + "-too");
        assertEquals("{\"styles\":2,\"revisions\":3}", load(service, document).text());
        assertEquals(document, exported(service, mine + "-too"), "as it was");
        assertEquals("{\"styles\":2,\"revisions\":0}", load(service, document).text(), "once is enough");
        KeptService.Answer clash = load(
                service,
                document.replace("\"capHeight\":13.5", "\"capHeight\":13").replace("-too-a\"", "-new\""));
        assertEquals(409, clash.status(), clash.text());
        assertEquals(404, service.get("/v1/styles/" + mine + "-new").status(), "all of it or nothing");
        KeptService.Answer wrong = load(service, document.replace("\"capHeight\":13.5", "\"capHeight\":135"));
        assertEquals(422, wrong.status());
        assertEquals(
                List.of("/styles/0/revisions/0/style/sleeve/capHeight", "/styles/1/revisions/0/style/sleeve/capHeight"),
                texts(wrong.json().get("violations"), "field"));
    }

    private static String exported(KeptService service, String beginning) {
        JsonNode document = service.get("/v1/style-collection").json();
        ((ArrayNode) document.get("styles"))
                .removeIf(style -> !style.get("id").stringValue().startsWith(beginning));
        return document.toString();
    }

    private static KeptService.Answer load(KeptService service, String document) {
        return service.send("POST", "/v1/style-collection", document);
    }

    @ParameterizedTest
    @EnumSource
    void whatCannotBeCutIsNotKept(Databases kind) {
        KeptService service = KeptService.on(kind);
        String id = id();
        KeptService.Answer refused = put(
                service,
                id,
                GOWN.replace("\"capOutward\":1.9", "\"capOutward\":190").replace("\"wrist\":6", "\"wrist\":6000"));
        assertEquals(422, refused.status());
        assertEquals(
                List.of("/ease/wrist", "/sleeve/capOutward"),
                texts(refused.json().get("violations"), "field"));
        assertEquals(
                422, put(service, id, GOWN.replace("\"ease\"", "\"eases\"")).status());
        assertEquals(422, put(service, id, "[]").status());
        assertEquals(404, service.get("/v1/styles/" + id).status());
        for (String wrong : List.of("Gown", "-gown", "g".repeat(65), "g%20own")) {
            assertEquals(400, put(service, wrong, GOWN).status(), wrong);
        }
    }

    @ParameterizedTest
    @EnumSource
    void aStyleMadeAnewIsAnotherOne(Databases kind) {
        KeptService service = KeptService.on(kind);
        String id = id();
        String tag = put(service, id, GOWN).header("ETag");
        assertEquals(204, service.send("DELETE", "/v1/styles/" + id, "").status());
        assertEquals(404, service.send("DELETE", "/v1/styles/" + id, "").status());
        put(service, id, GOWN.replace("13.5", "14"));
        assertEquals(
                412,
                put(service, id, GOWN.replace("13.5", "15"), "If-Match", tag).status());
    }
}
