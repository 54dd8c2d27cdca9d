package org.capwright.contract;

import static io.restassured.RestAssured.given;
import static org.hamcrest.Matchers.containsInAnyOrder;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.atlassian.oai.validator.restassured.OpenApiValidationFilter;
import io.restassured.path.json.JsonPath;
import io.restassured.response.ValidatableResponse;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tools.jackson.databind.json.JsonMapper;

/** Rules derived from a table of bodies, put into a request as a label without rules would do it. */
class GradeRulesIT {

    private static final JsonMapper JSON = JsonMapper.builder().build();
    private static final String TABLE = "women-en-13402-3-bust";

    private static OpenApiValidationFilter described;

    @BeforeAll
    static void readTheDescription() {
        described = Described.filter();
    }

    @SuppressWarnings("unchecked")
    private static Map<String, Object> gown(String units) {
        String inches = """
            {"units":"in","baseSize":"40","sizes":["36","38","40","42","44","46"],
             "sleeve":{"bicep":"14 1/4","length":"23 1/2","capHeight":"5 1/4","armhole":"17 1/2"},
             "underSleeve":{"elbow":12,"wrist":"8 1/2"}}
            """;
        Map<String, Object> run =
                JSON.readValue(units.equals("in") ? inches : Requests.choirGown(), LinkedHashMap.class);
        run.remove("sizeTable");
        run.remove("grade");
        return run;
    }

    private static ValidatableResponse derived(Map<String, Object> request) {
        return given().filter(described)
                .contentType("application/json")
                .body(JSON.writeValueAsString(request))
                .post(RunningService.address() + "/v1/grade-rules")
                .then();
    }

    private static JsonPath graded(Map<String, Object> run, JsonPath rules) {
        Map<String, Object> graded = new LinkedHashMap<>(run);
        graded.put("grade", rules.getMap("grade"));
        return given().filter(described)
                .contentType("application/json")
                .body(JSON.writeValueAsString(graded))
                .post(RunningService.address() + "/v1/size-runs")
                .then()
                .statusCode(200)
                .extract()
                .jsonPath();
    }

    /**
     * With constant ease every size is the base size plus what the published table says its arm has more; half a grid step is all that rounding may take, in the last size as in
     * the first.
     */
    @ParameterizedTest
    @CsvSource({"cm, 1 mm, 0.1", "cm, 1/8 in, 0.3175", "in, 1/8 in, 0.125", "in, 1/4 in, 0.25", "cm, 0.5 cm, 0.5"})
    void everySizeIsTheBodyWithinHalfAGridStep(String units, String grid, double step) {
        Map<String, Object> run = gown(units);
        JsonPath rules = derived(Map.of(
                        "sizeRun",
                        run,
                        "sizeTable",
                        TABLE,
                        "ease",
                        Map.of("policy", "constant"),
                        "grid",
                        grid,
                        "increments",
                        "bySize"))
                .statusCode(200)
                .extract()
                .jsonPath();
        assertEquals(step, rules.getDouble("grid"), 1e-9);
        JsonPath drafted = graded(run, rules);
        JsonPath table = given().get(RunningService.address() + "/v1/size-tables/" + TABLE + "?units=" + units)
                .jsonPath();
        Map<String, String> bodies = Map.of(
                "bicep", "upperArmGirth", "armhole", "armscyeGirth", "elbow", "elbowGirth", "wrist", "wristGirth");
        bodies.forEach((measure, body) -> {
            List<Double> garment =
                    drafted.getList("specTable.rows.find { it.code == '" + measure + "' }.values", Double.class);
            List<Double> arm = table.getList(
                    "rows.find { it.dimension == '" + body
                            + "' }.values.findAll { it.size in ['82-86','86-90','90-94','94-98','98-102','102-107']"
                            + " }.value",
                    Double.class);
            assertEquals(6, garment.size());
            assertEquals(6, arm.size());
            for (int i = 0; i < 6; i++) {
                double expected = garment.get(2) + arm.get(i) - arm.get(2);
                assertEquals(expected, garment.get(i), step / 2 + 1e-6, measure + " of size " + i);
            }
        });
        // Every increment is on the grid.
        List<Double> bicep = rules.getList("derivations.find { it.dimension == 'bicep' }.rounded", Double.class);
        for (double growth : bicep) {
            assertEquals(Math.rint(growth / step), growth / step, 1e-6);
        }
        assertEquals(
                given().get(RunningService.address() + "/v1/size-tables/" + TABLE)
                        .jsonPath()
                        .getString("info.source"),
                rules.getString("source"));
        assertEquals("upperArmGirth", rules.getString("derivations.find { it.dimension == 'bicep' }.body"));
    }

    /** A derived grade follows bodies, so that no check of its jumps stops it. */
    @Test
    void aDerivedGradePassesTheChecks() {
        Map<String, Object> run = gown("cm");
        JsonPath rules = derived(Map.of("sizeRun", run, "sizeTable", TABLE))
                .statusCode(200)
                .extract()
                .jsonPath();
        Map<String, Object> graded = new LinkedHashMap<>(run);
        graded.put("grade", rules.getMap("grade"));
        given().filter(described)
                .contentType("application/json")
                .body(JSON.writeValueAsString(Map.of("sizeRun", graded, "sizeTable", TABLE)))
                .post(RunningService.address() + "/v1/checks")
                .then()
                .statusCode(200)
                .body("summary.stop", equalTo(0))
                .body("summary.caution", equalTo(rules.getList("findings").size()));
    }

    /** The class means of the survey, arm 29.45 cm in size 40 and 28.33 cm in 38, in proportion; and 2 mm more ease per size. */
    @Test
    void theEasePolicyCounts() {
        Map<String, Object> run = gown("cm");
        JsonPath percent = derived(Map.of(
                        "sizeRun", run, "sizeTable", TABLE, "ease", Map.of("policy", "percent"), "grid", "0.01 mm"))
                .extract()
                .jsonPath();
        assertEquals(
                36 * 28.33 / 29.45 - 36,
                percent.getDouble("derivations.find { it.dimension == 'bicep' }.exact[1]"),
                1e-6);
        JsonPath growing = derived(Map.of(
                        "sizeRun",
                        run,
                        "sizeTable",
                        TABLE,
                        "ease",
                        Map.of("policy", "growing", "perSize", 0.2),
                        "length",
                        Map.of("policy", "stated", "perSize", 0.5),
                        "grid",
                        "0.01 mm"))
                .extract()
                .jsonPath();
        assertEquals(
                28.33 - 29.45 - 0.2, growing.getDouble("derivations.find { it.dimension == 'bicep' }.exact[1]"), 1e-6);
        assertEquals(0.5, growing.getDouble("grade.length"), 1e-9);
    }

    @Test
    void aLengthThatIsToBeHeldDoesNotGrowByAGivenRule() {
        Map<String, Object> run = gown("cm");
        run.put("grade", Map.of("length", 0.5));
        JsonPath held = derived(Map.of("sizeRun", run, "sizeTable", TABLE, "length", Map.of("policy", "held")))
                .extract()
                .jsonPath();
        assertFalse(held.getMap("grade").containsKey("length"), held.prettify());
        JsonPath left =
                derived(Map.of("sizeRun", run, "sizeTable", TABLE)).extract().jsonPath();
        assertEquals(0.5, left.getDouble("grade.length"), 1e-9);
    }

    @Test
    void givenRulesStayWhereNothingIsDerived() {
        Map<String, Object> run = gown("cm");
        run.put("grade", Map.of("overlayLength", 1.1, "bicep", 9));
        JsonPath rules =
                derived(Map.of("sizeRun", run, "sizeTable", TABLE)).extract().jsonPath();
        assertEquals(1.1, rules.getDouble("grade.overlayLength"), 1e-9);
        assertTrue(rules.getDouble("grade.bicep[0]") < 2);
        assertFalse(rules.getMap("grade").isEmpty());
    }

    @Test
    void gapsAreFilledFromTheSurveyAndMarkedOrRefused() {
        Map<String, Object> run = gown("cm");
        run.put("sizes", List.of("40", "46", "107-113"));
        JsonPath filled = derived(Map.of("sizeRun", run, "sizeTable", TABLE))
                .statusCode(200)
                .extract()
                .jsonPath();
        assertEquals(List.of("107-113"), filled.getList("derivations.find { it.dimension == 'bicep' }.estimated"));
        derived(Map.of("sizeRun", run, "sizeTable", TABLE, "gaps", "refuse"))
                .statusCode(422)
                .body("violations[0].field", equalTo("/sizeTable"))
                .body("violations[0].reason", containsString("107-113"));
    }

    @Test
    void namesEverythingThatIsWrongAtOnce() {
        Map<String, Object> run = gown("cm");
        run.put("layout", "heap");
        given().contentType("application/json")
                .body(JSON.writeValueAsString(Map.of(
                        "sizeRun",
                        run,
                        "sizeTable",
                        "no-such",
                        "ease",
                        Map.of("policy", "growing"),
                        "length",
                        Map.of("policy", "held", "perSize", 1),
                        "grid",
                        "1 ell",
                        "capEase",
                        "none")))
                .post(RunningService.address() + "/v1/grade-rules")
                .then()
                .statusCode(422)
                .body(
                        "violations.field",
                        containsInAnyOrder(
                                "/sizeRun/layout",
                                "/sizeTable",
                                "/ease/perSize",
                                "/length/perSize",
                                "/grid",
                                "/capEase"));
    }

    /** Where the cap height follows from the cap ease in every size, it has no rule of its own. */
    @Test
    void leavesOutWhatFollowsFromTheCapEase() {
        Map<String, Object> run = gown("cm");
        @SuppressWarnings("unchecked")
        Map<String, Object> sleeve = new LinkedHashMap<>((Map<String, Object>) run.get("sleeve"));
        sleeve.remove("capHeight");
        sleeve.put("capEase", "4%");
        run.put("sleeve", sleeve);
        JsonPath rules = derived(Map.of("sizeRun", run, "sizeTable", TABLE))
                .statusCode(200)
                .extract()
                .jsonPath();
        assertFalse(rules.getMap("grade").containsKey("capHeight"));
        assertTrue(rules.getMap("grade").containsKey("armhole"));
        graded(run, rules);
    }

    @Test
    void needsBodiesAndABicep() {
        Map<String, Object> run = gown("cm");
        derived(Map.of("sizeRun", run)).statusCode(422).body("violations.field", equalTo(List.of("/sizeTable")));
        @SuppressWarnings("unchecked")
        Map<String, Object> sleeve = new LinkedHashMap<>((Map<String, Object>) run.get("sleeve"));
        sleeve.remove("bicep");
        sleeve.put("capEase", "4%");
        run.put("sleeve", sleeve);
        derived(Map.of("sizeRun", run, "sizeTable", TABLE))
                .statusCode(422)
                .body("violations.field", equalTo(List.of("/sizeRun/sleeve/bicep")));
    }
}
