package org.capwright.contract;

import static io.restassured.RestAssured.given;
import static org.hamcrest.Matchers.containsInAnyOrder;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasItem;
import static org.hamcrest.Matchers.startsWith;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.atlassian.oai.validator.restassured.OpenApiValidationFilter;
import io.restassured.path.json.JsonPath;
import io.restassured.response.Response;
import java.io.StringReader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import javax.xml.parsers.DocumentBuilderFactory;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;

/** The grade of the choir gown compared with bodies: as a request, and read back from its own spec table and outlines. */
class ChecksIT {

    private static final String SWAPPED =
            "code,unit,36,38,40,42,44\r\nbicep,cm,33.4,36,34.7,37.3,38.6\r\nlength,cm,59,59.5,60,60.5,61\r\n";

    private static OpenApiValidationFilter described;

    @BeforeAll
    static void readTheDescription() {
        described = Described.filter();
    }

    private static String checked(String sizeRun, String more) {
        return "{\"sizeRun\":" + sizeRun + more + "}";
    }

    private static Response post(String body, String accept) {
        return given().filter(described)
                .header("Accept", accept)
                .contentType("application/json")
                .body(body)
                .post(RunningService.address() + "/v1/checks");
    }

    private static byte[] drawn(String type) {
        return given().header("Accept", type)
                .contentType("application/json")
                .body(Requests.choirGown())
                .post(RunningService.address() + "/v1/size-runs")
                .asByteArray();
    }

    private static Response file(byte[] body, String type, String parameters) {
        return given().config(io.restassured.RestAssured.config()
                        .encoderConfig(io.restassured.config.EncoderConfig.encoderConfig()
                                .encodeContentTypeAs(type, io.restassured.http.ContentType.BINARY)
                                .appendDefaultContentCharsetToContentTypeIfUndefined(false)))
                .contentType(type)
                .urlEncodingEnabled(false)
                .body(body)
                .post(RunningService.address() + "/v1/checks" + parameters);
    }

    /** The bounds told beside a jump are those that the check of the jumps holds to: at the bound it passes, a tenth of a millimetre below it does not. */
    @Test
    void theBoundsOfAJumpAreThoseThatItIsJudgedBy() {
        String cell = "jumps.find { it.measure == 'bicep' && it.from == '38' }.";
        JsonPath answer = post(checked(Requests.choirGown(), ""), "application/json")
                .then()
                .statusCode(200)
                .extract()
                .jsonPath();
        double least = answer.getDouble(cell + "least");
        double greatest = answer.getDouble(cell + "greatest");
        assertTrue(least < answer.getDouble(cell + "garment") && answer.getDouble(cell + "garment") < greatest);
        assertEquals(0, judged(least + 0.0001), "at the least");
        assertEquals(1, judged(least - 0.01), "below it");
        assertEquals(0, judged(greatest - 0.0001), "at the greatest");
        assertEquals(1, judged(greatest + 0.01), "above it");
    }

    /** How many cautions and stops the jump of the bicep from 38 to 40 gets by the check of the jumps. */
    private static int judged(double jump) {
        String rule = "\"bicep\": [1.3, " + jump + ", 1.3, 1.3, 1.4]";
        return post(checked(Requests.choirGown().replace("\"bicep\": 1.3", rule), ""), "application/json")
                .then()
                .statusCode(200)
                .extract()
                .jsonPath()
                .getInt("findings.count { it.check == 'body-jump' && it.severity != 'info' && it.sizes == ['38', '40']"
                        + " && it.dimension == 'bicep' }");
    }

    /** What the sender says of rows counts; what was not read stands first in every report. */
    @Test
    void rowsOfOtherNamesAreProposedAndMapped() {
        byte[] sheet = "Ma\u00df (cm);36;38;40;42;44\nZwickel;33,4;34,7;36;37,3;38,6\nArmloch;43;44,5;46;47,5;49\n"
                .getBytes(java.nio.charset.StandardCharsets.UTF_16LE);
        JsonPath unsaid = file(sheet, "text/csv", "?units=cm").jsonPath();
        assertEquals("not judged", unsaid.getString("summary.verdict"));
        assertEquals("not-read", unsaid.getString("findings[0].check"));
        assertEquals("Zwickel", unsaid.getString("unread[0].name"));
        assertEquals("bicep", unsaid.getString("unread[0].proposals[0].measure"));
        assertEquals(List.of("armhole"), unsaid.getList("figures.measure"));
        String mapping = "&mapping=%7B%22Zwickel%22%3A%22bicep%22%7D";
        JsonPath said = file(sheet, "text/csv", "?units=cm" + mapping).jsonPath();
        assertEquals(List.of(), said.getList("unread"));
        assertEquals(
                "[33.4, 34.7, 36.0, 37.3, 38.6]",
                said.getList("figures[0].values").toString());
        file(sheet, "text/csv", "?mapping=%7B%22Zwickel%22%3A%22collar%22%7D")
                .then()
                .statusCode(400)
                .body("violations[0].field", equalTo("mapping"))
                .body("violations[0].reason", org.hamcrest.Matchers.containsString("bicep"));
        given().multiPart("file", "sheet.csv", sheet, "text/csv")
                .multiPart("request", "{\"mapping\":{\"Zwickel\":\"bicep\"}}", "application/json")
                .post(RunningService.address() + "/v1/checks")
                .then()
                .statusCode(200)
                .body("unread.size()", equalTo(0))
                .body("figures[0].measure", equalTo("bicep"));
    }

    @Test
    void jumpsAreTheRulesBesideTheTable() {
        JsonPath answer = post(checked(Requests.choirGown(), ""), "application/json")
                .then()
                .statusCode(200)
                .extract()
                .jsonPath();
        assertEquals("women-en-13402-3-bust", answer.getString("sizeTable"));
        JsonPath table = given().get(RunningService.address() + "/v1/size-tables/women-en-13402-3-bust?units=cm")
                .jsonPath();
        assertEquals(table.getString("info.source"), answer.getString("source"));
        List<Double> bicep = answer.getList("jumps.findAll { it.measure == 'bicep' }.garment", Double.class);
        assertEquals(5, bicep.size());
        bicep.forEach(jump -> assertEquals(1.3, jump, 1e-9));
        // The difference of the published class means of ANSUR 1988, 28.33 and 29.45 cm, between labels 38 and 40.
        assertEquals(1.12, answer.getDouble("jumps.find { it.measure == 'bicep' && it.from == '38' }.body"), 1e-6);
        int all = answer.getInt("summary.stop") + answer.getInt("summary.caution") + answer.getInt("summary.info");
        assertEquals(answer.getList("findings").size(), all);
        assertEquals(
                answer.getList("findings.findAll { it.severity == 'caution' }").size(),
                answer.getInt("summary.caution"));
    }

    /** A jump of 3 cm in an arm that grows by 1.2 cm is a mistake in any grade: common practice, no source. */
    @Test
    void stopsABicepThatJumps() {
        String body = checked(Requests.choirGown().replace("\"bicep\": 1.3", "\"bicep\": [1.3, 1.3, 4, 1.3, 1.3]"), "");
        JsonPath answer = post(body, "application/json").jsonPath();
        assertEquals("stop", answer.getString("summary.gravest"));
        assertTrue(answer.getList("findings.findAll { it.severity == 'stop' && it.dimension == 'bicep' }.sizes")
                .contains(List.of("40", "42")));
    }

    @Test
    void limitsAndTableOfTheLabelCount() {
        String plain = Requests.choirGown();
        assertFalse(checks(checked(plain, "")).contains("pleat-layers"));
        assertTrue(checks(checked(plain, ",\"thresholds\":{\"pleatLayersCaution\":2}"))
                .contains("pleat-layers"));
        post(checked(plain, ",\"sizeTable\":\"women-en-13402-3-bust-2012\""), "application/json")
                .then()
                .statusCode(200)
                .body("sizeTable", equalTo("women-en-13402-3-bust-2012"));
    }

    private static List<String> checks(String body) {
        return post(body, "application/json").jsonPath().getList("findings.check");
    }

    /** One wrong figure of a sheet is named with what mends it: even growth of 13 mm from 364 to 416 (figures invented). */
    @Test
    void aWrongFigureOfASheetIsNamedWithItsCure() {
        byte[] sheet =
                "Measure (cm),36,38,40,42,44,46\nBicep,36.4,37.7,39.0,41.3,41.6,42.9\nSleeve length,60,60.3,60.6,60.9,61.2,61.5\n"
                        .getBytes(java.nio.charset.StandardCharsets.UTF_8);
        JsonPath read = file(sheet, "text/csv", "?units=cm").jsonPath();
        assertEquals("bicep", read.getString("causes[0].cure.dimension"));
        assertEquals(List.of("42"), read.getList("causes[0].cure.sizes"));
        assertEquals(40.3, read.getDouble("causes[0].cure.new"), 1e-9);
        assertTrue(read.getDouble("causes[0].cure.least") <= 40.3 && read.getDouble("causes[0].cure.greatest") < 41.3);
        byte[] mended = new String(sheet, java.nio.charset.StandardCharsets.UTF_8)
                .replace("41.3", "40.3")
                .getBytes(java.nio.charset.StandardCharsets.UTF_8);
        assertEquals("pass", file(mended, "text/csv", "?units=cm").jsonPath().getString("summary.verdict"));
    }

    /** RFC 4180, read by Commons CSV. */
    @Test
    void csvHoldsTheFindingsAndNoFormula() throws Exception {
        String body = checked(Requests.choirGown().replace("Choir gown sleeve", "=HYPERLINK(1,\\\"2\\\")"), "");
        JsonPath answer = post(body, "application/json").jsonPath();
        String csv = post(body, "text/csv").then().statusCode(200).extract().asString();
        List<CSVRecord> records = CSVFormat.RFC4180
                .builder()
                .setHeader()
                .setSkipHeaderRecord(true)
                .get()
                .parse(new StringReader(csv))
                .getRecords();
        assertEquals(
                answer.getList("findings.check"),
                records.stream().map(row -> row.get("check")).toList());
        assertTrue(csv.endsWith("\r\n"));
        for (CSVRecord row : records) {
            assertTrue(row.get("style").startsWith("'="), row.get("style"));
        }
    }

    /** Garment and body differ in fill and dash; colours are greys only, so that a print in black and white tells as much. */
    @Test
    void chartNeedsNoColour(@TempDir Path folder) throws Exception {
        Path file = folder.resolve("jumps.svg");
        Files.write(
                file, post(checked(Requests.choirGown(), ""), "image/svg+xml").asByteArray());
        Tool.run("libxml2-utils", List.of("xmllint", "--nonet", "--noout", file.toString()));
        NodeList bars = DocumentBuilderFactory.newInstance()
                .newDocumentBuilder()
                .parse(file.toFile())
                .getElementsByTagName("rect");
        int garment = 0;
        int body = 0;
        for (int i = 0; i < bars.getLength(); i++) {
            Element bar = (Element) bars.item(i);
            if (bar.getAttribute("class").equals("garment")) {
                garment++;
                assertEquals("", bar.getAttribute("stroke-dasharray"));
            } else if (bar.getAttribute("class").equals("body")) {
                body++;
                assertFalse(bar.getAttribute("stroke-dasharray").isEmpty());
            }
        }
        // Five measures with a body dimension, five jumps each, and one of each in the legend.
        assertEquals(26, garment);
        assertEquals(26, body);
        Path picture = folder.resolve("jumps.png");
        Tool.run("librsvg2-bin", List.of("rsvg-convert", "-o", picture.toString(), file.toString()));
        var image = javax.imageio.ImageIO.read(picture.toFile());
        for (int y = 0; y < image.getHeight(); y += 2) {
            for (int x = 0; x < image.getWidth(); x += 2) {
                int rgb = image.getRGB(x, y);
                assertEquals(rgb >> 16 & 0xff, rgb & 0xff, "grey at " + x + ", " + y);
            }
        }
    }

    @Test
    void specTableComesBackAsTheRun() {
        JsonPath run =
                post(checked(Requests.choirGown(), ""), "application/json").jsonPath();
        JsonPath read = file(drawn("text/csv"), "text/csv", "?units=cm&sizeTable=women-en-13402-3-bust")
                .then()
                .statusCode(200)
                .extract()
                .jsonPath();
        sameJumps(run, read, "bicep", 1e-4);
        sameJumps(run, read, "length", 1e-4);
        sameJumps(run, read, "armhole", 1e-4);
        assertEquals(0, read.getInt("summary.stop"));
        assertFalse(read.getList("traces").isEmpty());
    }

    /** Within 0.05 mm, half of what the finest ruler of a sewing room shows: common practice, no source. */
    @Test
    void outlinesComeBackAsTheRun() {
        JsonPath run =
                post(checked(Requests.choirGown(), ""), "application/json").jsonPath();
        JsonPath read = file(drawn("image/vnd.dxf"), "image/vnd.dxf", "?units=cm&sizeTable=women-en-13402-3-bust")
                .then()
                .statusCode(200)
                .extract()
                .jsonPath();
        assertEquals(run.getList("sizes"), read.getList("sizes"));
        sameJumps(run, read, "bicep", 0.005);
        sameJumps(run, read, "length", 0.005);
        List<String> stopped = read.getList("findings.findAll { it.severity == 'stop' }.dimension");
        for (String measure : List.of("bicep", "length", "capHeight", "capLine", "wrist")) {
            assertFalse(stopped.contains(measure), measure);
        }
    }

    private static void sameJumps(JsonPath run, JsonPath read, String measure, double tolerance) {
        String jumps = "jumps.findAll { it.measure == '" + measure + "' }.garment";
        List<Double> expected = run.getList(jumps, Double.class);
        List<Double> actual = read.getList(jumps, Double.class);
        assertEquals(expected.size(), actual.size(), measure);
        for (int i = 0; i < expected.size(); i++) {
            assertEquals(expected.get(i), actual.get(i), tolerance, measure);
        }
    }

    @Test
    void twoSizesOfASpecTableSwappedAreNamed() {
        file(SWAPPED.getBytes(java.nio.charset.StandardCharsets.UTF_8), "text/csv", "")
                .then()
                .statusCode(200)
                .body("findings.check", hasItem("sizes-swapped"));
    }

    @Test
    void namesEverythingThatIsWrongAtOnce() {
        String run =
                Requests.choirGown().replace("\"bicep\": 36", "\"bicep\": -36").replace("\"vee\"", "\"zigzag\"");
        given().contentType("application/json")
                .body(checked(run, ",\"thresholds\":{\"unevenStop\":999,\"x\":1},\"sizeTable\":\"no-such\""))
                .post(RunningService.address() + "/v1/checks")
                .then()
                .statusCode(422)
                .body(
                        "violations.field",
                        containsInAnyOrder(
                                "/sizeRun/sleeve/bicep",
                                "/sizeRun/overlay/hem",
                                "/thresholds/unevenStop",
                                "/thresholds/x",
                                "/sizeTable"));
    }

    @ParameterizedTest
    @CsvSource({"{}, 422", "[], 422", "{\"sizeRun\":3}, 422", "{\"sizeRun\":{\"units\":\"ell\"}}, 422", "{, 400"})
    void refusesWhatIsNoSizeRun(String body, int status) {
        given().contentType("application/json")
                .body(body)
                .post(RunningService.address() + "/v1/checks")
                .then()
                .statusCode(status)
                .contentType(startsWith("application/problem+json"));
    }

    @ParameterizedTest
    @CsvSource({
        "text/csv, 'a,b', '', 400",
        "text/csv, '', '', 400",
        "text/csv, 'a,b', ?units=ell, 400",
        "text/csv, 'a,b', ?sizeTable=no-such, 400",
        "image/vnd.dxf, 'no drawing', '', 400",
        "image/vnd.dxf, '0', '', 400",
        "text/plain, 'a,b', '', 415",
        "application/json, '{}', ?units=cm, 400"
    })
    void refusesFilesThatHoldNoGrade(String type, String body, String parameters, int status) {
        file(body.getBytes(java.nio.charset.StandardCharsets.UTF_8), type, parameters)
                .then()
                .statusCode(status)
                .contentType(startsWith("application/problem+json"));
    }

    @Test
    void tellsTheLineOfABadCell() {
        String bad = "code,unit,36,38,40\r\n"
                + "length,cm,59,59.5,60\r\n"
                + "wrist,cm,20,21,22\r\n"
                + "elbow,cm,29,30,31\r\n"
                + "bicep,cm,33.4,wide,36\r\n";
        file(bad.getBytes(java.nio.charset.StandardCharsets.UTF_8), "text/csv", "")
                .then()
                .statusCode(400)
                .body("line", equalTo(5));
    }
}
