package org.capwright.contract;

import static io.restassured.RestAssured.given;
import static org.hamcrest.Matchers.containsInAnyOrder;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasItem;
import static org.hamcrest.Matchers.startsWith;
import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.atlassian.oai.validator.restassured.OpenApiValidationFilter;
import io.restassured.path.json.JsonPath;
import io.restassured.response.Response;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The call of a made-to-order shop: a choir gown for one singer. */
class MadeToMeasureIT {

    private static OpenApiValidationFilter described;

    @BeforeAll
    static void readTheDescription() {
        described = Described.filter();
    }

    private static Response post(String body, String accept) {
        return given().filter(described)
                .header("Accept", accept)
                .contentType("application/json")
                .body(body)
                .post(RunningService.address() + "/v1/made-to-measure");
    }

    /** What is wrong on purpose is sent unvalidated, or the validator would refuse it before the service does. */
    private static Response postUnchecked(String body) {
        return given().contentType("application/json")
                .body(body)
                .post(RunningService.address() + "/v1/made-to-measure");
    }

    private static String with(String old, String replacement) {
        String example = Requests.madeToMeasure();
        assertTrue(example.contains(old), old);
        return example.replace(old, replacement);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "application/json",
                "image/svg+xml",
                "image/vnd.dxf",
                "text/csv",
                "application/pdf",
                "application/zip"
            })
    void answersInEveryFormat(String type) {
        Response response = post(Requests.madeToMeasure(), type);
        response.then()
                .statusCode(200)
                .contentType(startsWith(type))
                .header("Cache-Control", containsString("no-store"))
                .header("Capwright-Estimated", "armscyeGirth, wristGirth");
        assertArrayEquals(
                response.asByteArray(),
                post(Requests.madeToMeasure(), type).asByteArray(),
                "the same input, the same bytes");
    }

    /** Ease is finished garment less body: common practice, no source. The figures are added by hand. */
    @Test
    void sleeveIsMeasurementPlusEase() {
        JsonPath answer = post(Requests.madeToMeasure(), "application/json").jsonPath();
        String size = "sizeRun.sizes[0].";
        assertEquals("order 1207", answer.getString(size + "label"));
        assertEquals(38.5, answer.getDouble(size + "dimensions.bicep"), 1e-9);
        assertEquals(60, answer.getDouble(size + "dimensions.length"), 1e-9);
        assertEquals(29.9, answer.getDouble(size + "dimensions.elbow"), 1e-9);
        double wrist = answer.getDouble("estimates.find { it.dimension == 'wristGirth' }.value");
        assertEquals(wrist + 6, answer.getDouble(size + "dimensions.wrist"), 1e-9);
        double armhole = answer.getDouble(size + "dimensions.armhole");
        double armscye = answer.getDouble("estimates.find { it.dimension == 'armscyeGirth' }.value");
        assertEquals(1.14 * armscye, armhole, 1e-6);
        assertEquals(0.04 * armhole, answer.getDouble(size + "capEase"), 0.001);
    }

    @Test
    void marksWhatWasNotMeasured() {
        JsonPath answer = post(Requests.madeToMeasure(), "application/json").jsonPath();
        assertEquals(List.of("armscyeGirth", "wristGirth"), answer.getList("estimates.dimension"));
        for (int i = 0; i < 2; i++) {
            String estimate = "estimates[" + i + "].";
            double value = answer.getDouble(estimate + "value");
            assertTrue(answer.getDouble(estimate + "low") < value - 0.5, "people differ");
            assertTrue(answer.getDouble(estimate + "high") > value + 0.5, "people differ");
            assertEquals(0.95, answer.getDouble(estimate + "probability"), 1e-12);
        }
        String measured = with("\"elbowGirth\": 26", "\"elbowGirth\": 26, \"wristGirth\": 16, \"armscyeGirth\": 40");
        JsonPath complete = post(measured, "application/json").jsonPath();
        assertEquals(List.of(), complete.getList("estimates"));
    }

    /** EN 13402-3:2004: the bust class of 96 cm is 94 to 98 cm. */
    @Test
    void namesTheNearestSizeAndWhatDeparts() {
        JsonPath answer = post(Requests.madeToMeasure(), "application/json").jsonPath();
        assertEquals("94-98", answer.getString("nearestSize.size"));
        assertEquals("bustGirth", answer.getString("nearestSize.by"));
        List<String> departing = answer.getList("departures.dimension");
        assertTrue(departing.contains("armLength"), departing.toString());
        assertFalse(departing.contains("bustGirth"), departing.toString());
        JsonPath table = given().get(RunningService.address() + "/v1/size-tables/women-en-13402-3-bust?units=cm")
                .jsonPath();
        assertTrue(table.getList("sizes").contains("94-98"));
        double difference = answer.getDouble("departures.find { it.dimension == 'armLength' }.difference");
        double there = answer.getDouble("departures.find { it.dimension == 'armLength' }.table");
        assertEquals(59 - there, difference, 1e-9);
    }

    @Test
    void questionsAnUnusualMeasurementUntilItIsConfirmed() {
        String unusual = with("\"bustGirth\": 96", "\"bustGirth\": 84")
                .replace("\"upperArmGirth\": 31.5", "\"upperArmGirth\": 52")
                .replace("\"elbowGirth\": 26", "\"elbowGirth\": 23.5");
        post(unusual, "application/json")
                .then()
                .statusCode(422)
                .body("violations.field", equalTo(List.of("/wearer/upperArmGirth")))
                .body("violations[0].reason", containsString("measure again"))
                .body("violations[0].value", equalTo(52.0))
                .body("violations[0].unit", equalTo("cm"));
        JsonPath problem = post(unusual, "application/json").jsonPath();
        // A bust of 84 cm goes with an upper arm of 22 to 32 cm in any published table of women's sizes; common
        // practice.
        assertTrue(problem.getDouble("violations[0].minimum") > 20);
        assertTrue(problem.getDouble("violations[0].maximum") < 35);
        // So wide a sleeve needs an armhole to match: that of the garment.
        String confirmed = unusual.replace("\"armhole\": \"14%\", ", "")
                .replace("\"capOutward\"", "\"armhole\": 68, \"capOutward\"")
                .replaceFirst("\\{", "{\"confirmed\":[\"upperArmGirth\"],");
        post(confirmed, "application/json")
                .then()
                .statusCode(200)
                .body("confirmed", equalTo(List.of("upperArmGirth")))
                .body("sizeRun.sizes[0].dimensions.bicep", equalTo(59.0));
        String none = confirmed
                .replace("\"confirmed\":[\"upperArmGirth\"]", "\"survey\":\"none\"")
                .replace("\"upperArmGirth\": 52", "\"upperArmGirth\": 40")
                .replace("\"elbowGirth\": 23.5", "\"elbowGirth\": 23.5, \"wristGirth\": 16");
        post(none, "application/json").then().statusCode(200).body("estimates", equalTo(List.of()));
    }

    /** Large all over is a size: a bust of 128 cm with an arm of 44 cm. Nobody so large was surveyed, and that is said. */
    @Test
    void draftsForAWearerLargerThanAnybodySurveyed() {
        String large = with("\"bustGirth\": 96", "\"bustGirth\": 128")
                .replace("\"upperArmGirth\": 31.5", "\"upperArmGirth\": 44")
                .replace("\"elbowGirth\": 26", "\"elbowGirth\": 31");
        JsonPath answer = post(large, "application/json").jsonPath();
        assertEquals(51, answer.getDouble("sizeRun.sizes[0].dimensions.bicep"), 1e-9);
        assertEquals(List.of("bustGirth", "upperArmGirth", "elbowGirth"), answer.getList("together.extrapolated"));
        assertEquals(
                List.of("bustGirth", "upperArmGirth", "elbowGirth"),
                answer.getList("estimates.find { it.dimension == 'wristGirth' }.extrapolated"));
        assertTrue(answer.getDouble("together.rarity") > 0.0025);
        assertEquals(5, answer.getList("together.measurements").size());
        JsonPath usual = post(Requests.madeToMeasure(), "application/json").jsonPath();
        assertEquals(List.of(), usual.getList("together.extrapolated"));
        for (Map<String, Object> expected : usual.<Map<String, Object>>getList("together.measurements")) {
            double value = ((Number) expected.get("value")).doubleValue();
            assertTrue(((Number) expected.get("low")).doubleValue() < value, expected.toString());
            assertTrue(((Number) expected.get("high")).doubleValue() > value, expected.toString());
        }
    }

    /** The measurement to take again, and it alone: digits exchanged, half of them left out, in inches among centimetres; with the range that the others let expect. */
    @ParameterizedTest
    @CsvSource({
        "bustGirth, 96, 69, 85, 107",
        "stature, 168, 86, 150, 190",
        "stature, 168, 116, 142, 190",
        "upperArmGirth, 31.5, 12.4, 27, 36",
        "elbowGirth, 26, 36, 23, 28",
        "armLength, 59, 23.2, 52, 63",
    })
    void namesTheMeasurementToTakeAgain(String dimension, String right, String wrong, double least, double greatest) {
        String field = "\"" + dimension + "\": ";
        JsonPath problem = postUnchecked(with(field + right, field + wrong)).jsonPath();
        assertEquals(List.of("/wearer/" + dimension), problem.getList("violations.field"));
        assertTrue(problem.getString("violations[0].reason").contains("measure again"));
        double minimum = problem.getDouble("violations[0].minimum");
        double maximum = problem.getDouble("violations[0].maximum");
        assertTrue(least < minimum && minimum < Double.parseDouble(right), "from " + minimum);
        assertTrue(Double.parseDouble(right) < maximum && maximum < greatest, "to " + maximum);
    }

    /** What no body has is questioned for wearers whom no survey describes as well: a wrist larger than the arm, a hand smaller than its wrist. */
    @Test
    void questionsWhatNoBodyHasWithoutASurvey() {
        String child = """
            {"units":"cm","survey":"none",
             "wearer":{"upperArmGirth":20,"wristGirth":13,"armLength":42,"elbowGirth":18,"armscyeGirth":28,"stature":125},
             "ease":{"bicep":6,"wrist":8,"armhole":5,"capEase":"4%"},
             "underSleeve":{"handGirth":17},"sleeve":{}}
            """;
        post(child, "application/json").then().statusCode(200).body("unquestioned", equalTo(List.of()));
        String wrist = child.replace("\"wristGirth\":13", "\"wristGirth\":23").replace("17}", "24}");
        postUnchecked(wrist).then().statusCode(422).body("violations.field", equalTo(List.of("/wearer/wristGirth")));
        postUnchecked(child.replace("\"stature\":125", "\"stature\":52"))
                .then()
                .statusCode(422)
                .body("violations.field", equalTo(List.of("/wearer/stature")));
        postUnchecked(child.replace("\"handGirth\":17", "\"handGirth\":12"))
                .then()
                .statusCode(422)
                .body("violations.field", equalTo(List.of("/underSleeve/handGirth")));
        post(
                        wrist.replaceFirst("\\{", "{\"confirmed\":[\"wristGirth\"],")
                                .replace("\"wrist\":8", "\"wrist\":3"),
                        "application/json")
                .then()
                .statusCode(200);
    }

    /** Cloth does not pass over what is larger than it: a sleeve narrower than the arm is drafted, as it may be meant for a knit, but never without saying so, in any format. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "\"bicep\": 7 | \"bicep\": \"-20%\" | bicep-ease | bicep",
                "\"elbow\": \"15%\" | \"elbow\": \"-2%\" | elbow-ease | elbow",
                "\"wrist\": 6 | \"wrist\": -1.2 | wrist-ease | wrist",
                "\"armhole\": \"14%\", \"capEase\": \"4%\" | \"armhole\": -0.9, \"capEase\": \"12%\" | armhole-ease |"
                        + " armhole",
                "\"length\": 1 | \"length\": 20 | sleeve-length | length"
            })
    void saysThatTheArmDoesNotPass(String right, String wrong, String code, String subject) {
        String body = with(right, wrong)
                .replace("\"bicep\": 7", "\"bicep\": 3")
                .replace("\"elbowGirth\": 26", "\"elbowGirth\": 26, \"wristGirth\": 15.2, \"armscyeGirth\": 39");
        String bare = body.replaceAll("(?s)\"overlay\": \\{.*?\\}\\s*\\},", "");
        Response response = post(bare, "application/json");
        response.then().statusCode(200).header("Capwright-Findings", containsString(code));
        JsonPath answer = response.jsonPath();
        String finding = "sizeRun.findings.find { it.check == '" + code + "' }.";
        assertEquals("stop", answer.getString(finding + "severity"));
        assertEquals(subject, answer.getString(finding + "dimension"));
        post(bare, "image/svg+xml").then().statusCode(200).header("Capwright-Findings", containsString(code));
        JsonPath usual = post(Requests.madeToMeasure(), "application/json").jsonPath();
        assertEquals(List.of(), usual.getList("sizeRun.findings.findAll { it.severity == 'stop' }"));
    }

    /** Men are described by the men of 1988: stature 175.6 cm, chest 99.1 cm in the mean (NATICK/TR-89/044). */
    @Test
    void judgesMenByMen() {
        String man = with(
                        "\"bustGirth\": 96, \"stature\": 168, \"upperArmGirth\": 31.5",
                        "\"bustGirth\": 99, \"stature\": 176, \"upperArmGirth\": 33.5")
                .replace("\"elbowGirth\": 26", "\"elbowGirth\": 27.6")
                .replaceFirst("\\{", "{\"survey\":\"ansur-1988-men\",");
        JsonPath answer = post(man, "application/json").jsonPath();
        assertEquals("ansur-1988-men", answer.getString("together.survey"));
        assertTrue(answer.getString("estimates[0].source").contains("1774"), "men surveyed");
        // Mean of the men 17.4 cm, of the women 15.1.
        assertEquals(17.4, answer.getDouble("estimates.find { it.dimension == 'wristGirth' }.value"), 0.5);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "\"units\": \"cm\" | \"units\": \"ell\" | /units",
                "\"bustGirth\": 96 | \"bustGirth\": 960 | /wearer/bustGirth",
                "\"bustGirth\": 96, | '' | /wearer/bustGirth",
                "\"stature\" | \"hight\" | /wearer/hight",
                "\"bicep\": 7, | '' | /ease/bicep",
                "\"bicep\": 7 | \"bicep\": \"900%\" | /ease/bicep",
                "\"wrist\": 6, | '' | /ease/wrist",
                "\"armhole\": \"14%\", | '' | /ease/armhole",
                "\"capEase\": \"4%\" | \"capEase\": \"90%\" | /ease/capEase",
                "\"capOutward\": 1.9 | \"capOutward\": 1.9, \"capHeight\": 12 | /ease/capEase",
                "\"capOutward\": 1.9 | \"capOutward\": 1.9, \"armhole\": 45 | /ease/armhole",
                "\"underSleeve\": {}, | '' | /ease/elbow",
                "\"rise\": 14 | \"rise\": \"high\" | /overlay/rise",
                "\"order 1207\" | \"an order with a name that is far too long\" | /order",
                "women-en-13402-3-bust | women-en | /sizeTable",
                "\"sleeve\": { | \"confirmed\": [\"wristGirth\"], \"sleeve\": { | /confirmed",
                "\"wrist\": 6 | \"wrist\": 100 | /ease/wrist"
            })
    void namesTheFieldOfABadValue(String old, String replacement, String field) {
        postUnchecked(with(old, replacement))
                .then()
                .statusCode(422)
                .contentType(startsWith("application/problem+json"))
                .body("violations.field", hasItem(field));
    }

    @Test
    void namesEverythingThatIsWrongAtOnce() {
        String body = with("\"upperArmGirth\": 31.5", "\"upperArmGirth\": 52")
                .replace("\"bicep\": 7", "\"bicep\": \"x\"")
                .replace("\"vee\"", "\"zigzag\"");
        postUnchecked(body)
                .then()
                .statusCode(422)
                .body("violations.field", containsInAnyOrder("/wearer/upperArmGirth", "/ease/bicep", "/overlay/hem"));
    }

    @Test
    void takesInchesWithFractions() {
        String body = """
            {"units":"in","wearer":{"bustGirth":"36 1/2","stature":66,"upperArmGirth":"11 1/2"},
             "ease":{"bicep":"2 1/2"},"sleeve":{"capHeight":"5 1/4"}}
            """;
        post(body, "application/json")
                .then()
                .statusCode(200)
                .body("sizeRun.sizes[0].label", equalTo("made to measure"))
                .body("sizeRun.sizes[0].dimensions.bicep", equalTo(14.0));
    }

    @Test
    void nothingOfTheWearerIsLogged() {
        String body =
                with("\"upperArmGirth\": 31.5", "\"upperArmGirth\": 31.4159").replace("order 1207", "singer 4711");
        post(body, "application/json").then().statusCode(200);
        postUnchecked(body.replace("31.4159", "61.4159")).then().statusCode(422);
        String log = RunningService.log();
        assertTrue(log.contains("Started"), "the log is read");
        for (String word : List.of("1.4159", "singer", "4711", "upperArmGirth")) {
            assertFalse(log.contains(word), word);
        }
    }

    @Test
    void javaExampleWorks(@TempDir Path folder) throws Exception {
        Path pdf = folder.resolve("sleeve.pdf");
        String printed = Tool.run(
                "openjdk-17-jdk",
                List.of(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        RunningService.root()
                                .resolve("examples/MadeToMeasure.java")
                                .toString(),
                        RunningService.address(),
                        RunningService.root()
                                .resolve("examples/made-to-measure.json")
                                .toString(),
                        pdf.toString()));
        assertTrue(printed.contains("Measure before cutting: armscyeGirth, wristGirth."), printed);
        assertEquals("%PDF-", new String(Files.readAllBytes(pdf), 0, 5, StandardCharsets.US_ASCII));
    }

    @Test
    void javaScriptExampleWorks() {
        String printed = Tool.run(
                "nodejs",
                List.of(
                        "node",
                        RunningService.root()
                                .resolve("examples/made-to-measure.mjs")
                                .toString(),
                        RunningService.address(),
                        RunningService.root()
                                .resolve("examples/made-to-measure.json")
                                .toString()));
        assertTrue(printed.contains("order 1207: bicep 38.5 cm"), printed);
        assertTrue(printed.contains("Nearest size: 94-98 of women-en-13402-3-bust."), printed);
        assertTrue(printed.contains("Measure before cutting: wristGirth"), printed);
    }
}
