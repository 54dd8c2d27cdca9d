package org.capwright.contract;

import static io.restassured.RestAssured.given;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasItems;
import static org.hamcrest.Matchers.hasSize;
import static org.hamcrest.Matchers.startsWith;
import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.atlassian.oai.validator.OpenApiInteractionValidator;
import com.atlassian.oai.validator.restassured.OpenApiValidationFilter;
import io.restassured.RestAssured;
import io.restassured.config.JsonConfig;
import io.restassured.path.json.JsonPath;
import io.restassured.path.json.config.JsonPathConfig;
import io.restassured.response.Response;
import java.io.StringReader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import javax.imageio.ImageIO;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The main job as a client sees it: one request, the graded nest as JSON, SVG, DXF and the spec table as CSV. */
class SizeRunIT {

    private static OpenApiValidationFilter described;

    @BeforeAll
    static void readTheDescription() {
        // Decimal figures are compared at 1e-9: as doubles, not as the floats that JsonPath reads by default.
        JsonPath.config = new JsonPathConfig(JsonPathConfig.NumberReturnType.DOUBLE);
        RestAssured.config = RestAssured.config()
                .jsonConfig(JsonConfig.jsonConfig().numberReturnType(JsonPathConfig.NumberReturnType.DOUBLE));
        String description =
                given().get(RunningService.address() + "/v3/api-docs").asString();
        described = new OpenApiValidationFilter(OpenApiInteractionValidator.createForInlineApiSpecification(description)
                .build());
    }

    private static Response post(String body, String accept) {
        return given().filter(described)
                .header("Accept", accept)
                .contentType("application/json")
                .body(body)
                .post(RunningService.address() + "/v1/size-runs");
    }

    @ParameterizedTest
    @ValueSource(strings = {"application/json", "image/svg+xml", "image/vnd.dxf", "text/csv", "application/pdf"})
    void answersTheAgreedRequestInEveryFormat(String type) {
        Response response = post(Requests.AGREED, type);
        response.then().statusCode(200).contentType(startsWith(type));
        assertArrayEquals(
                response.asByteArray(), post(Requests.AGREED, type).asByteArray(), "the same input, the same bytes");
    }

    @Test
    void jumpsInTheSpecTableAreTheGradeRules() {
        JsonPath answer = post(Requests.choirGown(), "application/json")
                .then()
                .statusCode(200)
                .extract()
                .jsonPath();
        assertEquals(List.of("36", "38", "40", "42", "44", "46"), answer.getList("specTable.sizes"));
        for (double jump : jumps(answer, "bicep")) {
            assertEquals(1.3, jump, 1e-9);
        }
        for (double jump : jumps(answer, "length")) {
            assertEquals(0.5, jump, 1e-9);
        }
        for (double jump : jumps(answer, "capHeight")) {
            assertEquals(0.4, jump, 1e-9);
        }
    }

    private static List<Double> jumps(JsonPath answer, String code) {
        return answer.getList("specTable.rows.find { it.code == '" + code + "' }.jumps", Double.class);
    }

    private static double value(JsonPath answer, String code, int size) {
        return answer.getDouble("specTable.rows.find { it.code == '" + code + "' }.values[" + size + "]");
    }

    /** RFC 4180, read by Commons CSV. */
    @Test
    void specTableAsCsvHoldsTheFiguresOfTheJson() throws Exception {
        JsonPath answer = post(Requests.choirGown(), "application/json").jsonPath();
        String csv = post(Requests.choirGown(), "text/csv").asString();
        assertTrue(csv.endsWith("\r\n"));
        List<CSVRecord> records = CSVFormat.RFC4180
                .builder()
                .setHeader()
                .setSkipHeaderRecord(true)
                .get()
                .parse(new StringReader(csv))
                .getRecords();
        assertEquals(answer.getList("specTable.rows").size(), records.size());
        for (CSVRecord row : records) {
            for (int size = 0; size < 6; size++) {
                assertEquals(
                        value(answer, row.get("code"), size),
                        Double.parseDouble(row.get(String.valueOf(36 + 2 * size))),
                        1e-6);
            }
        }
    }

    /** The DXF of each size, read back by ezdxf and measured: widths, cap height and length as the spec table says. */
    @Test
    void dxfReadBackMeasuresAsTheSpecTable(@TempDir Path folder) throws Exception {
        String request = Requests.choirGown().replaceFirst("\\{", "{\"layout\":\"blocks\",");
        Path file = folder.resolve("gown.dxf");
        Files.write(file, post(request, "image/vnd.dxf").asByteArray());
        Path script = folder.resolve("measure.py");
        Files.writeString(script, resource("measure_dxf.py"));
        JsonPath measured = JsonPath.from(
                Tool.run("python3-ezdxf", List.of("/usr/bin/python3", script.toString(), file.toString())));
        assertEquals("AC1009", measured.getString("version"));
        assertEquals(0, measured.getInt("errors"));
        JsonPath answer = post(Requests.choirGown(), "application/json").jsonPath();
        List<String> sizes = answer.getList("specTable.sizes");
        for (int i = 0; i < sizes.size(); i++) {
            String sleeve = "blocks.find { it.piece == 'UNDER-SLEEVE' && it.size == '" + sizes.get(i) + "' }.";
            assertEquals(10 * value(answer, "bicep", i), 2 * measured.getDouble(sleeve + "right"), 0.01);
            assertEquals(10 * value(answer, "capHeight", i), measured.getDouble(sleeve + "top"), 0.01);
            assertEquals(
                    10 * value(answer, "length", i),
                    measured.getDouble(sleeve + "top") - measured.getDouble(sleeve + "bottom"),
                    0.01);
            String overlay = "blocks.find { it.piece == 'OVERLAY' && it.size == '" + sizes.get(i) + "' }.";
            assertEquals(
                    10 * value(answer, "overlayTotalLength", i),
                    measured.getDouble(overlay + "top") - measured.getDouble(overlay + "bottom"),
                    0.01);
        }
    }

    private static String resource(String name) throws Exception {
        return new String(
                SizeRunIT.class.getResourceAsStream("/" + name).readAllBytes(),
                java.nio.charset.StandardCharsets.UTF_8);
    }

    /** Drawn by librsvg at 254 dots per inch, ten to the millimetre: the test square and the nest measure in pixels what they should in millimetres. */
    @Test
    void svgDrawnByAnotherRendererIsAtTrueScale(@TempDir Path folder) throws Exception {
        Path file = folder.resolve("gown.svg");
        Files.write(file, post(Requests.choirGown(), "image/svg+xml").asByteArray());
        Tool.run("libxml2-utils", List.of("xmllint", "--nonet", "--noout", file.toString()));
        Path picture = folder.resolve("gown.png");
        Tool.run(
                "librsvg2-bin",
                List.of(
                        "rsvg-convert",
                        "--unlimited",
                        "-d",
                        "254",
                        "-p",
                        "254",
                        "-b",
                        "white",
                        "-o",
                        picture.toString(),
                        file.toString()));
        var image = ImageIO.read(picture.toFile());
        String head = Files.readString(file).substring(0, 400);
        double width = Double.parseDouble(head.replaceAll("(?s).*? width=\"([0-9.]+)mm\".*", "$1"));
        assertEquals(width * 10, image.getWidth(), 1.5);
        // The square is 50 mm wide, drawn from x = 15, y = 36 mm; walk along y = 40 mm, where there is no text.
        int first = -1;
        int last = -1;
        for (int x = 100; x < 720; x++) {
            if ((image.getRGB(x, 400) & 0xff) < 128) {
                first = first < 0 ? x : first;
                last = x;
            }
        }
        assertEquals(500, last - first, 6, "outer edges of a 50 mm square with a line of 0.3 mm");
    }

    @Test
    void svgHasTitleDescriptionAndEverySize() {
        post(Requests.choirGown(), "image/svg+xml")
                .then()
                .statusCode(200)
                .body(containsString("<title>Choir gown sleeve, revision 1</title>"))
                .body(containsString("<desc>"))
                .body(containsString("data-size=\"36\""))
                .body(containsString("data-size=\"46\""));
    }

    @Test
    void refusesWhatItCannotGiveOrTake() {
        given().header("Accept", "image/png")
                .contentType("application/json")
                .body(Requests.AGREED)
                .post(RunningService.address() + "/v1/size-runs")
                .then()
                .statusCode(406)
                .contentType(startsWith("application/problem+json"));
        given().contentType("text/plain")
                .body(Requests.AGREED)
                .post(RunningService.address() + "/v1/size-runs")
                .then()
                .statusCode(415)
                .contentType(startsWith("application/problem+json"));
        given().contentType("application/json")
                .body(" ".repeat(2_000_000))
                .post(RunningService.address() + "/v1/size-runs")
                .then()
                .statusCode(413)
                .contentType(startsWith("application/problem+json"));
        given().contentType("application/json")
                .body("[".repeat(1_000) + "]".repeat(1_000))
                .post(RunningService.address() + "/v1/size-runs")
                .then()
                .statusCode(400)
                .contentType(startsWith("application/problem+json"));
    }

    /** An allowance of 10 cm would close a wrist of 5 cm upon itself. */
    @Test
    void refusesAnAllowanceWiderThanTheNarrowestPart() {
        String body = Requests.agreedWith("\"elbow\":28,\"wrist\":19", "\"elbow\":6,\"wrist\":5")
                .replace("\"seamAllowance\":1.0", "\"seamAllowance\":10");
        given().contentType("application/json")
                .body(body)
                .post(RunningService.address() + "/v1/size-runs")
                .then()
                .statusCode(422)
                .body("violations.field", hasItems("/seamAllowance"))
                .body("violations[0].reason", containsString("Under-sleeve"));
    }

    /** A hand of 20 cm is usual, common practice, no source: the agreed wrist of 19 cm is too narrow for it in the small sizes. */
    @Test
    void warnsOfAWristThatTheHandDoesNotPass() {
        JsonPath answer = given().contentType("application/json")
                .body(Requests.AGREED)
                .post(RunningService.address() + "/v1/size-runs")
                .jsonPath();
        String finding = "findings.find { it.check == 'wrist-opening' }";
        assertEquals("caution", answer.getString(finding + ".severity"));
        assertEquals(List.of("36", "38", "40", "42", "44"), answer.getList(finding + ".sizes"));
        assertEquals(19, answer.getDouble(finding + ".value"), 1e-9);
        JsonPath known = given().contentType("application/json")
                .body(Requests.agreedWith("\"wrist\":19", "\"wrist\":19,\"handGirth\":21.5"))
                .post(RunningService.address() + "/v1/size-runs")
                .jsonPath();
        assertEquals("info", known.getString(finding + ".severity"));
        assertEquals(21.5, known.getDouble(finding + ".least"), 1e-9);
        // No style that is drafted has seams that do not match.
        assertTrue(answer.getList("findings.check").stream().noneMatch("seam-mismatch"::equals));
        assertTrue(answer.getList("workroom.seams.matches").stream().allMatch(Boolean.TRUE::equals));
    }

    /** The page for a projector, read by poppler: one, as many tens of centimetres wide and high as its grid, with words to set it by. */
    @Test
    void aProjectorGetsOnePageOverAGrid(@TempDir Path folder) throws Exception {
        String request = Requests.agreedWith(
                "\"align\":\"underarm\"", "\"paper\":{\"format\":\"projector\",\"ground\":\"light\",\"width\":140}");
        Path pdf = folder.resolve("table.pdf");
        Files.write(
                pdf,
                given().filter(described)
                        .baseUri(RunningService.address())
                        .contentType("application/json")
                        .accept("application/pdf")
                        .body(request)
                        .post("/v1/size-runs")
                        .asByteArray());
        String info = Tool.run("poppler-utils", List.of("pdfinfo", pdf.toString()));
        assertTrue(info.matches("(?s).*Pages: +1\n.*"), info);
        java.util.regex.Matcher size = java.util.regex.Pattern.compile("Page size: +([0-9.]+) x ([0-9.]+)")
                .matcher(info);
        assertTrue(size.find(), info);
        for (int side = 1; side <= 2; side++) {
            double tens = Double.parseDouble(size.group(side)) / 72 * 2.54 / 10;
            assertEquals(Math.rint(tens), tens, 0.001, info);
        }
        String words = Tool.run("poppler-utils", List.of("pdftotext", pdf.toString(), "-"));
        assertTrue(words.contains("50 cm on the table, both ways"), words);
        given().filter(described)
                .baseUri(RunningService.address())
                .contentType("application/json")
                .body(request)
                .post("/v1/size-runs")
                .then()
                .statusCode(200)
                .body("paper.format", equalTo("projector"))
                .body("paper.pages", equalTo(1));
    }

    /** A picture of the worn sleeve that is sent stands on the cover, and lies in the archive as it came; poppler and Python look. */
    @Test
    void aPictureAsWornIsPutOnTheCoverAndIntoTheArchive(@TempDir Path folder) throws Exception {
        java.awt.image.BufferedImage drawn =
                new java.awt.image.BufferedImage(120, 160, java.awt.image.BufferedImage.TYPE_INT_RGB);
        drawn.setRGB(60, 80, 0x4477aa);
        java.io.ByteArrayOutputStream png = new java.io.ByteArrayOutputStream();
        ImageIO.write(drawn, "png", png);
        String request = Requests.agreedWith(
                "\"align\":\"underarm\"",
                "\"wornPicture\":\"" + java.util.Base64.getEncoder().encodeToString(png.toByteArray()) + "\"");
        Path pdf = folder.resolve("gown.pdf");
        Files.write(pdf, post(request, "application/pdf").asByteArray());
        String images = Tool.run("poppler-utils", List.of("pdfimages", "-list", "-f", "1", "-l", "1", pdf.toString()));
        assertTrue(images.matches("(?s).*image +120 +160 .*"), images);
        String words = Tool.run("poppler-utils", List.of("pdftotext", "-l", "1", pdf.toString(), "-"));
        assertTrue(words.contains("A simulation of the base size, sent with the request"), words);
        Path zip = folder.resolve("gown.zip");
        Files.write(zip, post(request, "application/zip").asByteArray());
        Tool.run("python3", List.of("python3", "-m", "zipfile", "-e", zip.toString(), folder.toString()));
        try (var files = Files.list(folder)) {
            Path worn = files.filter(file -> file.toString().endsWith("worn.png"))
                    .findFirst()
                    .orElseThrow();
            assertArrayEquals(png.toByteArray(), Files.readAllBytes(worn));
        }
    }

    /** Every broken request gets a problem document that names the field. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "\"bicep\":36 | \"bicep\":-36 | /sleeve/bicep",
                "\"capHeight\":13.5 | \"capHeight\":60 | /sleeve/capHeight",
                "\"capHeight\":13.5 | \"capHeight\":\"NaN\" | /sleeve/capHeight",
                "\"bicep\":36 | \"bicep\":null | /sleeve/bicep",
                "[\"36\",\"38\",\"40\",\"42\",\"44\"] | [\"38\",\"36\",\"40\",\"42\",\"44\"] | /sizes/1",
                "[\"36\",\"38\",\"40\",\"42\",\"44\"] | [\"36\",\"36\",\"40\",\"42\",\"44\"] | /sizes/1",
                "\"baseSize\":\"40\" | \"baseSize\":\"41\" | /baseSize",
                "[1.6,1.6,1.8,1.8] | [1.6,1.6] | /grade/armhole",
                "\"align\":\"underarm\" | \"allign\":\"underarm\" | /allign",
                "\"units\":\"cm\" | \"units\":\"furlong\" | /units",
                "\"wrist\":19 | \"wrist\":33 | /underSleeve/wrist",
                "\"frontGap\":6 | \"frontGap\":30 | /overlay/frontGap",
                "\"count\":8 | \"count\":-8 | /overlay/pleats/count",
                "\"rise\":14 | \"rise\":1e400 | /overlay/rise",
                "\"seamAllowance\":1.0 | \"seamAllowance\":200 | /seamAllowance",
                "\"armhole\":45 | \"armhole\":90 | /overlay/frontGap",
                "\"align\":\"underarm\" | \"paper\":{\"format\":\"roll\",\"width\":1.5} | /paper/width",
                "\"align\":\"underarm\" | \"paper\":{\"format\":\"roll\",\"width\":20} | /paper/width",
                "\"align\":\"underarm\" | \"paper\":{\"format\":\"a4\",\"ground\":\"dark\"} | /paper/ground",
                "\"align\":\"underarm\" | \"paper\":{\"format\":\"projector\",\"width\":20} | /paper/width",
                "\"align\":\"underarm\" | \"wornPicture\":\"no picture\" | /wornPicture",
                "\"align\":\"underarm\" | \"wornPicture\":\"iVBORw0KGgo=\" | /wornPicture",
                "\"sizeTable\":null | \"sizeTable\":\"no-such\" | /sizeTable"
            })
    void namesTheFieldOfABadValue(String old, String replacement, String field) {
        given().contentType("application/json")
                .body(Requests.agreedWith(old, replacement))
                .post(RunningService.address() + "/v1/size-runs")
                .then()
                .statusCode(org.hamcrest.Matchers.anyOf(equalTo(400), equalTo(422)))
                .contentType(startsWith("application/problem+json"))
                .body("violations.field", hasItems(startsWith(field)));
    }

    @Test
    void namesEverythingThatIsWrongAtOnce() {
        String body = Requests.agreedWith("\"bicep\":36", "\"bicep\":-36")
                .replace("\"units\":\"cm\"", "\"units\":\"cm\",\"colour\":\"red\"")
                .replace("\"elbow\":28", "\"elbow\":\"wide\"");
        given().contentType("application/json")
                .body(body)
                .post(RunningService.address() + "/v1/size-runs")
                .then()
                .body("violations", hasSize(3))
                .body("violations.field", hasItems("/sleeve/bicep", "/colour", "/underSleeve/elbow"));
    }

    @Test
    void takesInchesWithFractions() {
        String body = """
            {"units":"in","baseSize":"12","sizes":["10","12","14"],
             "sleeve":{"bicep":"14 1/4","capHeight":"5 1/4","armhole":"17 3/4","length":"23 5/8"},
             "underSleeve":{"wrist":"8 1/2"},
             "grade":{"bicep":"1/2","capHeight":"1/8","armhole":"1/2"},"seamAllowance":"5/8"}
            """;
        JsonPath answer =
                post(body, "application/json").then().statusCode(200).extract().jsonPath();
        assertEquals(14.25, value(answer, "bicep", 1), 1e-9);
        assertEquals(0.5, jumps(answer, "bicep").get(0), 1e-9);
    }

    @Test
    void publishesTheSizeTablesWithIncrements() {
        Response tables = given().filter(described).get(RunningService.address() + "/v1/size-tables");
        tables.then().statusCode(200);
        Response one =
                given().filter(described).get(RunningService.address() + "/v1/size-tables/women-en-13402-3-bust");
        one.then().statusCode(200).body(containsString("EN 13402-3"));
        given().get(RunningService.address() + "/v1/size-tables/no-such").then().statusCode(404);
    }

    /** The class means of ANSUR 1988 for the classes that are called 38 and 40: 28.33 and 29.45 cm. A bust in between has an arm in between. */
    @Test
    void tellsTheFiguresOfABustBetweenTwoSizes() {
        String table = RunningService.address() + "/v1/size-tables/women-en-13402-3-bust";
        JsonPath whole = given().get(table + "?units=cm").jsonPath();
        double small = bust(whole, "38");
        double large = bust(whole, "40");
        JsonPath at = figures(table, small);
        assertEquals(28.33, at.getDouble("figures.find { it.dimension == 'upperArmGirth' }.value"), 1e-9);
        assertEquals("measured", at.getString("figures.find { it.dimension == 'upperArmGirth' }.provenance"));
        JsonPath between = figures(table, (small + large) / 2);
        double arm = between.getDouble("figures.find { it.dimension == 'upperArmGirth' }.value");
        assertTrue(arm > 28.33 && arm < 29.45, "arm " + arm);
        assertEquals("interpolated", between.getString("figures.find { it.dimension == 'upperArmGirth' }.provenance"));
        for (String wrong : List.of("at=930&units=cm", "at=NaN&units=cm", "units=cm", "at=93&units=ell")) {
            given().get(table + "/figures?" + wrong)
                    .then()
                    .statusCode(400)
                    .contentType(startsWith("application/problem+json"));
        }
        given().get(RunningService.address() + "/v1/size-tables/no-such/figures?at=93")
                .then()
                .statusCode(404);
    }

    private static double bust(JsonPath table, String label) {
        String size = table.getString("labels.'" + label + "'");
        return table.getDouble(
                "rows.find { it.dimension == 'bustGirth' }.values.find { it.size == '" + size + "' }.value");
    }

    private static JsonPath figures(String table, double at) {
        return given().filter(described)
                .get(table + "/figures?units=cm&at=" + at)
                .then()
                .statusCode(200)
                .extract()
                .jsonPath();
    }

    /** The validator must be able to fail: an answer that the description does not know. */
    @Test
    void validatorNoticesAnAnswerThatIsNotDescribed() {
        String description =
                given().get(RunningService.address() + "/v3/api-docs").asString();
        String wrong = description.replace("\"specTable\"", "\"specTabel\"");
        OpenApiValidationFilter strict =
                new OpenApiValidationFilter(OpenApiInteractionValidator.createForInlineApiSpecification(wrong)
                        .build());
        assertThrows(
                OpenApiValidationFilter.OpenApiValidationException.class,
                () -> given().filter(strict)
                        .contentType("application/json")
                        .accept("application/json")
                        .body(Requests.AGREED)
                        .post(RunningService.address() + "/v1/size-runs"));
    }
}
