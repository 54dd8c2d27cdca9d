package org.capwright.contract;

import static io.restassured.RestAssured.given;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasItem;
import static org.hamcrest.Matchers.not;
import static org.hamcrest.Matchers.startsWith;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.atlassian.oai.validator.restassured.OpenApiValidationFilter;
import io.restassured.path.json.JsonPath;
import io.restassured.response.Response;
import io.restassured.specification.RequestSpecification;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** Files of a style drawn elsewhere, sent as a form as a browser or curl sends them. */
class UploadsIT {

    private static final String CSV = "code,unit,36,38,40\r\nbicep,cm,33.4,34.7,36\r\nlength,cm,59,59.5,60\r\n";
    private static final String REQUEST = "{\"name\":\"Gown from"
            + " elsewhere\",\"units\":\"cm\",\"baseSize\":\"40\",\"sizeTable\":\"women-en-13402-3-bust\"}";

    private static final String XLSX = "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet";

    private static OpenApiValidationFilter described;

    @BeforeAll
    static void readTheDescription() {
        described = Described.answers();
    }

    private static RequestSpecification form() {
        return given().config(io.restassured.RestAssured.config());
    }

    private static Response send(RequestSpecification form) {
        return form.post(RunningService.address() + "/v1/checks/uploads");
    }

    private static byte[] bytes(String text) {
        return text.getBytes(StandardCharsets.UTF_8);
    }

    /** The gown in one size alone, as an older drawing would come: one file per size. */
    private static byte[] drawn(String size, double steps) {
        String run = """
            {"units":"cm","baseSize":"%s","sizes":["%s"],"layout":"blocks",
             "sleeve":{"bicep":%s,"length":%s,"capHeight":%s,"armhole":45},
             "underSleeve":{"wrist":22}}
            """.formatted(size, size, 36 + 1.3 * steps, 60 + 0.5 * steps, 13.5 + 0.4 * steps);
        return given().header("Accept", "image/vnd.dxf")
                .contentType("application/json")
                .body(run)
                .post(RunningService.address() + "/v1/size-runs")
                .then()
                .statusCode(200)
                .extract()
                .asByteArray();
    }

    @Test
    void readsASpecTableWithWhatIsSaidOfIt() {
        Response answer = send(form().filter(described)
                .multiPart("file", "spec.csv", bytes(CSV), "text/csv")
                .multiPart("request", REQUEST, "application/json"));
        JsonPath read = answer.then().statusCode(200).extract().jsonPath();
        assertEquals("Gown from elsewhere", read.getString("name"));
        assertEquals("40", read.getString("baseSize"));
        assertEquals("women-en-13402-3-bust", read.getString("sizeTable"));
        assertEquals(List.of(1.3, 1.3), read.getList("jumps.findAll { it.measure == 'bicep' }.garment"));
        assertTrue(read.getList("traces.file").contains("spec.csv"));
    }

    /** The least parts that a workbook has (ISO/IEC 29500-1), zipped by the JDK; what openpyxl writes is read in the core's tests. */
    @Test
    void readsAWorkbookAsAFormAndAlone() throws IOException {
        ByteArrayOutputStream workbook = new ByteArrayOutputStream();
        try (ZipOutputStream zip = new ZipOutputStream(workbook)) {
            put(zip, "xl/workbook.xml", "<workbook><sheets><sheet name='Gown' sheetId='1'/></sheets></workbook>");
            put(
                    zip,
                    "xl/worksheets/sheet1.xml",
                    "<worksheet><sheetData>"
                            + CSV.lines()
                                    .map(line -> Stream.of(line.split(","))
                                            .map(cell -> "<c t='str'><v>" + cell + "</v></c>")
                                            .collect(Collectors.joining("", "<row>", "</row>")))
                                    .collect(Collectors.joining())
                            + "</sheetData></worksheet>");
        }
        String alone = given().filter(described)
                .contentType(XLSX)
                .body(workbook.toByteArray())
                .post(RunningService.address() + "/v1/checks?units=cm")
                .then()
                .statusCode(200)
                .extract()
                .asString();
        String sent = send(form().multiPart("file", "gown.xlsx", workbook.toByteArray(), "application/octet-stream")
                        .multiPart("request", "{\"units\":\"cm\"}", "application/json"))
                .then()
                .statusCode(200)
                .extract()
                .asString();
        for (String answer : List.of(alone, sent)) {
            assertEquals(
                    List.of(1.3, 1.3),
                    JsonPath.from(answer).getList("jumps.findAll { it.measure == 'bicep' }.garment"));
        }
    }

    private static void put(ZipOutputStream zip, String name, String content) throws IOException {
        zip.putNextEntry(new ZipEntry(name));
        zip.write(bytes(content));
        zip.closeEntry();
    }

    /** The form may be sent to the address of all checks as well, as before it had one of its own. */
    @Test
    void theOtherAddressAnswersTheSame() {
        String[] answers = Stream.of("/v1/checks", "/v1/checks/uploads")
                .map(address -> form().multiPart("file", "spec.csv", bytes(CSV), "text/csv")
                        .multiPart("request", REQUEST, "application/json")
                        .post(RunningService.address() + address)
                        .then()
                        .statusCode(200)
                        .extract()
                        .asString())
                .toArray(String[]::new);
        assertEquals(answers[0], answers[1]);
    }

    /** The usual case for several files: one outline per size. */
    @Test
    void readsOneOutlinePerSize() {
        JsonPath read = send(form().multiPart("file", "sleeve-38.dxf", drawn("38", -1), "image/vnd.dxf")
                        .multiPart("file", "sleeve-42.dxf", drawn("42", 1), "application/octet-stream")
                        .multiPart("file", "sleeve-40.dxf", drawn("40", 0), "application/dxf")
                        .multiPart("request", REQUEST, "application/json"))
                .then()
                .statusCode(200)
                .extract()
                .jsonPath();
        assertEquals(List.of("38", "40", "42"), read.getList("sizes"));
        List<Double> bicep = read.getList("jumps.findAll { it.measure == 'bicep' }.garment", Double.class);
        assertEquals(2, bicep.size());
        bicep.forEach(jump -> assertEquals(1.3, jump, 0.005));
        assertEquals(0, read.getInt("summary.stop"));
    }

    @Test
    void limitsAndOwnTablesCount() {
        String said =
                "{\"units\":\"cm\",\"thresholds\":{\"unevenEndCaution\":0},\"sizeTable\":" + Requests.sizeTable() + "}";
        send(form().multiPart("file", "spec.csv", bytes(CSV), "text/csv")
                        .multiPart("request", said, "application/json"))
                .then()
                .statusCode(200)
                .body("sizeTable", equalTo("workshop-women"));
    }

    @Test
    void namesEverythingThatIsWrongWithTheRequest() {
        send(form().multiPart("file", "spec.csv", bytes(CSV), "text/csv")
                        .multiPart(
                                "request",
                                "{\"units\":\"ell\",\"sizeTable\":\"no-such\",\"x\":1,\"baseSize\":true}",
                                "application/json"))
                .then()
                .statusCode(422)
                .body("violations.field", hasItem("/request/units"))
                .body("violations.field", hasItem("/request/sizeTable"))
                .body("violations.field", hasItem("/request/x"))
                .body("violations.field", hasItem("/request/baseSize"));
    }

    @Test
    void saysWhichFileIsBroken() {
        send(form().multiPart("file", "sleeve-40.dxf", drawn("40", 0), "image/vnd.dxf")
                        .multiPart("file", "../../sleeve-42.dxf", bytes("0\nSECTION\nbroken"), "image/vnd.dxf"))
                .then()
                .statusCode(400)
                .contentType(startsWith("application/problem+json"))
                .body("detail", startsWith("sleeve-42.dxf: "))
                .body("detail", not(containsString("..")));
    }

    @Test
    void refusesOtherForms() {
        refused(form().multiPart("request", REQUEST, "application/json"), "no part file");
        refused(
                form().multiPart("file", "a.csv", bytes(CSV), "text/csv")
                        .multiPart("file", "b.csv", bytes(CSV), "text/csv"),
                "more than one spec table");
        refused(
                form().multiPart("file", "a.csv", bytes(CSV), "text/csv")
                        .multiPart("file", "b.dxf", drawn("40", 0), "image/vnd.dxf"),
                "one or the other");
        refused(
                form().multiPart("file", "a.csv", bytes(CSV), "text/csv")
                        .multiPart("picture", "x.csv", bytes("x"), "text/csv"),
                "a part with an unknown name");
        refused(
                form().multiPart("file", "a.csv", bytes(CSV), "text/csv").multiPart("request", "{", "application/json"),
                "The part request is not a JSON");
        RequestSpecification many = form();
        for (int i = 0; i < 80; i++) {
            many = many.multiPart("file", i + ".dxf", bytes("0"), "image/vnd.dxf");
        }
        refused(many, "more than 64 parts");
        form().multiPart("file", "a.csv", bytes(CSV), "text/csv")
                .post(RunningService.address() + "/v1/checks?units=cm")
                .then()
                .statusCode(400);
    }

    private static void refused(RequestSpecification form, String why) {
        send(form)
                .then()
                .statusCode(400)
                .contentType(startsWith("application/problem+json"))
                .body("detail", containsString(why));
    }

    /** All files together are bounded, and none of them is written to the disk of the service. */
    @Test
    void boundsTheWholeFormAndLeavesNoFile() throws IOException {
        Set<Path> before = temporaryFiles();
        byte[] large = new byte[9_000_000];
        java.util.Arrays.fill(large, (byte) ' ');
        RequestSpecification form = form();
        for (int i = 0; i < 3; i++) {
            form = form.multiPart("file", i + ".dxf", large, "image/vnd.dxf");
        }
        send(form).then().statusCode(413).body("detail", containsString("million bytes"));
        send(form().multiPart("file", "0.dxf", large, "image/vnd.dxf")).then().statusCode(400);
        Set<Path> after = temporaryFiles();
        after.removeAll(before);
        assertFalse(
                after.stream().anyMatch(path -> path.getFileName().toString().startsWith("upload")), after.toString());
        assertTrue(after.isEmpty(), after.toString());
    }

    /** What the container of the service keeps in its temporary folder. */
    private static Set<Path> temporaryFiles() throws IOException {
        try (Stream<Path> folders = Files.list(Path.of(System.getProperty("java.io.tmpdir")))) {
            return folders.filter(path -> path.getFileName().toString().startsWith("tomcat."))
                    .flatMap(UploadsIT::within)
                    .collect(Collectors.toSet());
        }
    }

    private static Stream<Path> within(Path folder) {
        try (Stream<Path> files = Files.walk(folder)) {
            return files.filter(Files::isRegularFile).toList().stream();
        } catch (IOException | java.io.UncheckedIOException e) {
            return Stream.empty();
        }
    }
}
