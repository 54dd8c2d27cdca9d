package org.capwright.contract;

import static io.restassured.RestAssured.given;
import static org.hamcrest.Matchers.hasItem;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.atlassian.oai.validator.restassured.OpenApiValidationFilter;
import io.restassured.path.json.JsonPath;
import io.restassured.response.Response;
import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What to buy for the choir gown. */
class MaterialsIT {

    private static final String CLOTHS = """
            "materials":{"fabrics":[
              {"material":"main","width":140,"laying":"open","nap":"with","shrinkageLengthwise":0.03,"waste":0.05,"step":10},
              {"material":"main","width":115,"laying":"open","nap":"with"},
              {"material":"lining","width":140},
              {"material":"interfacing","width":90,"laying":"open"}],
             "trimming":{"waste":0.1,"step":10}}""";

    private static OpenApiValidationFilter described;

    @BeforeAll
    static void readTheDescription() {
        described = Described.filter();
    }

    private static String with(String materials) {
        return Requests.agreedWith("\"align\":\"underarm\"", "\"align\":\"underarm\"," + materials);
    }

    private static Response post(String body, String address, String accept) {
        return given().filter(described)
                .header("Accept", accept)
                .contentType("application/json")
                .body(body)
                .post(RunningService.address() + address);
    }

    /**
     * Cloth as bought is lay length / (1 - shrinkage) x (1 + waste), rounded up to the step (the change of dimension is a share of the original length: ISO
     * 5077, from memory); a lay is never shorter than area by width, a fact of geometry.
     */
    @Test
    void lengthToBuyFollowsFromTheLay() {
        JsonPath answer = post(with(CLOTHS), "/v1/materials", "application/json")
                .then()
                .statusCode(200)
                .extract()
                .jsonPath();
        List<Map<String, Object>> cloths = answer.getList("cloths");
        assertEquals(4 * 5, cloths.size());
        JsonPath run = post(with(CLOTHS), "/v1/size-runs", "application/json").jsonPath();
        for (Map<String, Object> cloth : cloths) {
            double lay = figure(cloth, "layLength");
            double exact = lay * figure(cloth, "shrinkageFactor") * figure(cloth, "wasteFactor");
            boolean first =
                    figure(cloth, "width") == 140 && cloth.get("material").equals("main");
            double step = first ? 10 : 5;
            assertEquals(first ? 1.05 / 0.97 * lay : lay, exact, 1e-6);
            assertEquals(Math.ceil(exact / step - 1e-6) * step, figure(cloth, "length"), 1e-9);
            assertTrue(lay >= figure(cloth, "areaBound") - 1e-6);
            assertEquals(figure(cloth, "areaBound") / lay, figure(cloth, "utilisation"), 1e-6);
            assertTrue(figure(cloth, "utilisation") <= 1);
            String size =
                    ((Map<?, ?>) cloth.get("pairs")).keySet().iterator().next().toString();
            double cut = run
                    .getList(
                            "workroom.cuttingList.findAll { it.size == '" + size + "' && it.material == '"
                                    + cloth.get("material") + "' }.collect { it.count * it.area }",
                            Double.class)
                    .stream()
                    .mapToDouble(area -> area)
                    .sum();
            assertEquals(cut, figure(cloth, "area"), 1e-4 * cut, "the area of the cutting list");
        }
        assertEquals(5, answer.getList("trimmings").size());
        for (int i = 0; i < 5; i++) {
            double hem = answer.getDouble("trimmings[" + i + "].hem");
            double edge = answer.getDouble("trimmings[" + i + "].attachedEdge");
            assertEquals(
                    Math.ceil((hem + edge) * 1.1 / 10 - 1e-6) * 10,
                    answer.getDouble("trimmings[" + i + "].length"),
                    1e-9);
            // A hem is the two slanted sides of a vee: Pythagoras on bicep and hem depth, for two sleeves.
            double bicep = run.getDouble("sizes[" + i + "].dimensions.bicep");
            double depth = 34 - run.getDouble("sizes[" + i + "].dimensions.capHeight");
            assertEquals(4 * Math.hypot(bicep / 2, depth), hem, 0.01);
        }
        // The same in the size run, where the pictures are left out.
        assertEquals(
                answer.getList("cloths.length", Double.class), run.getList("materials.cloths.length", Double.class));
        assertNull(run.get("materials.cloths[0].picture"));
    }

    /** Read by the rules of the HTML standard, section 9.2: blocks apart by empty lines, fields of a name and a value. */
    @Test
    void howFarTheSearchIsIsToldBeforeItsEnd() {
        String body = with(CLOTHS.replace("\"trimming\"", "\"order\":{\"36\":8,\"40\":8},\"trimming\""));
        Response answer = given().contentType("application/json")
                .body(body)
                .post(RunningService.address() + "/v1/materials/events");
        assertEquals(200, answer.statusCode());
        assertTrue(answer.contentType().startsWith("text/event-stream"), answer.contentType());
        double done = -1;
        String[] events = answer.asString().split("\n\n");
        for (String event : events) {
            boolean last = event.equals(events[events.length - 1]);
            String[] lines = event.split("\n");
            assertEquals("event: " + (last ? "done" : "progress"), lines[0]);
            JsonPath data = JsonPath.from(lines[1].replaceFirst("^data: ", ""));
            if (last) {
                assertEquals(
                        post(body, "/v1/materials", "application/json")
                                .jsonPath()
                                .getMap(""),
                        data.getMap(""));
            } else {
                assertTrue(data.getDouble("done") > done && data.getDouble("done") <= 1, event);
                done = data.getDouble("done");
            }
        }
        assertTrue(events.length > 1, "nothing was told before the end");
        given().contentType("application/json")
                .body(Requests.AGREED)
                .post(RunningService.address() + "/v1/materials/events")
                .then()
                .statusCode(422)
                .body("violations.field", hasItem("/materials"));
    }

    private static double figure(Map<String, Object> from, String name) {
        return ((Number) from.get(name)).doubleValue();
    }

    /** The picture is read by an independent renderer. */
    @Test
    void laysAreDrawn(@TempDir Path folder) throws Exception {
        JsonPath answer =
                post(with(CLOTHS), "/v1/materials", "application/json").jsonPath();
        String picture = answer.getString("cloths[0].picture");
        Path svg = folder.resolve("lay.svg");
        Files.writeString(svg, picture);
        Path png = folder.resolve("lay.png");
        Tool.run("librsvg2-bin", List.of("rsvg-convert", "-w", "1000", "-o", png.toString(), svg.toString()));
        assertTrue(Files.size(png) > 5_000, "something is drawn");
        assertTrue(picture.contains("no. 1") && picture.contains("with nap"), picture);
    }

    @Test
    void orderIsLaidTogetherAndGoesIntoArchiveAndPdf(@TempDir Path folder) throws Exception {
        String body = with(CLOTHS.replace("\"trimming\"", "\"order\":{\"38\":1,\"42\":2},\"trimming\""));
        JsonPath answer = post(body, "/v1/materials", "application/json").jsonPath();
        assertEquals(4, answer.getList("cloths").size());
        assertEquals(Map.of("38", 1, "42", 2), answer.getMap("cloths[0].pairs"));
        assertEquals(12, answer.getInt("cloths[0].pieces"));
        Map<String, byte[]> files = new HashMap<>();
        byte[] zip = post(body, "/v1/size-runs", "application/zip").asByteArray();
        try (ZipInputStream in = new ZipInputStream(new ByteArrayInputStream(zip))) {
            for (ZipEntry entry = in.getNextEntry(); entry != null; entry = in.getNextEntry()) {
                files.put(entry.getName(), in.readAllBytes());
            }
        }
        String sums = new String(files.get("SHA256SUMS"), StandardCharsets.UTF_8);
        assertEquals(
                4,
                files.keySet().stream().filter(name -> name.contains("-lay-")).count());
        for (Map.Entry<String, byte[]> file : files.entrySet()) {
            if (!file.getKey().equals("SHA256SUMS")) {
                String sum = HexFormat.of()
                        .formatHex(java.security.MessageDigest.getInstance("SHA-256")
                                .digest(file.getValue()));
                assertTrue(sums.contains(sum + "  " + file.getKey() + "\n"), file.getKey());
            }
        }
        Path pdf = folder.resolve("gown.pdf");
        Files.write(pdf, post(body, "/v1/size-runs", "application/pdf").asByteArray());
        String text = Tool.run("poppler-utils", List.of("pdftotext", "-l", "2", pdf.toString(), "-"));
        assertTrue(text.contains("To buy for the whole order, cm"), text);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "\"width\":140,\"laying\":\"open\",\"nap\"|\"width\":30,\"laying\":\"open\",\"nap\"|/materials/fabrics/0/width",
                "\"width\":115|\"width\":-2|/materials/fabrics/1/width",
                "\"material\":\"lining\"|\"material\":\"linning\"|/materials/fabrics/2/material",
                "\"width\":140}|\"width\":140,\"selvedge\":200}|/materials/fabrics/2/selvedge",
                "\"waste\":0.05|\"waste\":5|/materials/fabrics/0/waste",
                "\"waste\":0.1|\"waste\":-1|/materials/trimming/waste",
                "\"trimming\"|\"order\":{\"38\":0},\"trimming\"|/materials/order",
                "\"trimming\"|\"order\":{\"39\":1},\"trimming\"|/materials/order/39",
                "\"trimming\"|\"order\":{\"38\":1.5},\"trimming\"|/materials/order/38",
                "\"trimming\"|\"order\":{\"38\":100000},\"trimming\"|/materials/order/38",
                "\"trimming\"|\"order\":{\"38\":400,\"40\":200},\"trimming\"|/materials/order",
                "\"trimming\"|\"order\":[1],\"trimming\"|/materials/order",
                "{\"material\":\"interfacing\",\"width\":90,\"laying\":\"open\"}|7|/materials/fabrics/3",
                "\"nap\":\"with\",\"shrinkageLengthwise\"|\"nap\":\"with\",\"shrinkage\":0.1,\"shrinkageLengthwise\"|/materials/fabrics/0/shrinkage"
            })
    void namesTheFieldOfABadCloth(String old, String replacement, String field) {
        assertTrue(CLOTHS.contains(old), old);
        // Every form of the answer refuses alike, the nest too, which shows no cloth.
        for (String accept : List.of("application/json", "image/svg+xml")) {
            given().header("Accept", accept)
                    .contentType("application/json")
                    .body(with(CLOTHS.replaceFirst(java.util.regex.Pattern.quote(old), replacement)))
                    .post(RunningService.address() + "/v1/size-runs")
                    .then()
                    .statusCode(422)
                    .body("violations.field", hasItem(field));
        }
    }

    @Test
    void withoutClothsThereIsNothingToLay() {
        post(Requests.AGREED, "/v1/materials", "application/json")
                .then()
                .statusCode(422)
                .body("violations.field", hasItem("/materials"));
    }

    /** A knife pleat of depth d takes up 2 d (common practice, no source): so eight of 2 cm take 32 cm from the edge. */
    @Test
    void riseFollowsFromPleatsOfGivenNumberAndDepth() {
        String body = Requests.agreedWith("\"rise\":14,", "").replace("\"count\":8", "\"count\":8,\"depth\":2");
        JsonPath answer = post(body, "/v1/size-runs", "application/json")
                .then()
                .statusCode(200)
                .extract()
                .jsonPath();
        for (int i = 0; i < 5; i++) {
            assertEquals(32, answer.getDouble("sizes[" + i + "].pleats.takeUp"), 1e-4);
            assertEquals(8, answer.getInt("sizes[" + i + "].pleats.count"));
            assertTrue(answer.getDouble("sizes[" + i + "].dimensions.rise") > 0);
        }
        // The depth may grow, and the rise with it.
        JsonPath growing = post(
                        body.replace("\"bicep\":1.2", "\"bicep\":1.2,\"pleatDepth\":0.1"),
                        "/v1/size-runs",
                        "application/json")
                .jsonPath();
        for (int i = 0; i < 5; i++) {
            assertEquals(16 * (2 + 0.1 * (i - 2)), growing.getDouble("sizes[" + i + "].pleats.takeUp"), 1e-4);
        }
        // Too deep for any sleeve: the range that would work is told.
        post(body.replace("\"depth\":2", "\"depth\":25"), "/v1/size-runs", "application/json")
                .then()
                .statusCode(422)
                .body("violations.field", hasItem("/overlay/pleats/depth"));
        // With a rise as well, one of the three is too much.
        post(Requests.agreedWith("\"count\":8", "\"count\":8,\"depth\":2"), "/v1/size-runs", "application/json")
                .then()
                .statusCode(422)
                .body("violations.field", hasItem("/overlay/pleats/depth"));
    }

    /** The page count is that of the file, as pdfinfo reads it. */
    @ParameterizedTest
    @CsvSource({"a4", "a3", "letter"})
    void pagesAreCounted(String format, @TempDir Path folder) throws Exception {
        String body = with("\"paper\":{\"format\":\"" + format + "\"}");
        int pages = post(body, "/v1/size-runs", "application/json").jsonPath().getInt("paper.pages");
        Path pdf = folder.resolve("gown.pdf");
        Files.write(pdf, post(body, "/v1/size-runs", "application/pdf").asByteArray());
        assertTrue(Tool.run("poppler-utils", List.of("pdfinfo", pdf.toString()))
                .matches("(?s).*Pages:\\s+" + pages + "\\b.*"));
    }
}
