package org.capwright.contract;

import static io.restassured.RestAssured.given;
import static org.hamcrest.Matchers.containsInAnyOrder;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.everyItem;
import static org.hamcrest.Matchers.hasItem;
import static org.junit.jupiter.api.Assertions.assertEquals;

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

/** A size table of the caller's own, alone and within other requests. */
class OwnTableIT {

    private static final JsonMapper JSON = JsonMapper.builder().build();

    private static OpenApiValidationFilter described;

    @BeforeAll
    static void readTheDescription() {
        described = Described.filter();
    }

    @SuppressWarnings("unchecked")
    private static Map<String, Object> object(String json) {
        return JSON.readValue(json, LinkedHashMap.class);
    }

    private static Map<String, Object> table() {
        return object(Requests.sizeTable());
    }

    private static ValidatableResponse post(String path, Object body) {
        return given().filter(described)
                .contentType("application/json")
                .body(JSON.writeValueAsString(body))
                .post(RunningService.address() + path)
                .then();
    }

    @Test
    void isAnsweredAsAPublishedOne() {
        JsonPath answer = post("/v1/size-tables?units=cm", table())
                .statusCode(200)
                .extract()
                .jsonPath();
        assertEquals("workshop-women", answer.getString("info.id"));
        assertEquals("cm", answer.getString("unit"));
        assertEquals(
                List.of(27.1, 28.3, 29.5, 30.7, 32.0, 33.4),
                answer.getList("rows.find { it.dimension == 'upperArmGirth' }.values.value"));
        List<Double> growth =
                answer.getList("rows.find { it.dimension == 'upperArmGirth' }.increments.growth", Double.class);
        assertEquals(5, growth.size());
        assertEquals(1.2, growth.get(0), 1e-9);
        assertEquals(1.4, growth.get(4), 1e-9);
        // A gap stays a gap.
        assertEquals(
                5,
                answer.getList("rows.find { it.dimension == 'armLength' }.values")
                        .size());
        post("/v1/size-tables", table())
                .statusCode(200)
                .body("unit", equalTo("mm"))
                .body("rows[0].values[0].value", equalTo(840.0))
                .body("rows.values.flatten().provenance", everyItem(equalTo("user-supplied")));
    }

    @Test
    void isKeptNowhere() {
        post("/v1/size-tables", table()).statusCode(200);
        given().get(RunningService.address() + "/v1/size-tables/workshop-women")
                .then()
                .statusCode(404);
    }

    @Test
    void namesEverythingThatIsWrongAtOnce() {
        String wrong = """
            {"id":"Workshop Women","unit":"cm","key":"bustGirth","colour":"blue",
             "sizes":["38","40","42"],
             "rows":[
              {"dimension":"bustGirth","values":[88,92,91]},
              {"dimension":"upperArmGirth","values":[283,29.5,30.7]},
              {"dimension":"wristGirth","values":[15,15.2]},
              {"dimension":"elbowGirt","values":[23.5,24,24.6]},
              {"dimension":"armscyeGirth","values":["a",37.4,null]}]}
            """;
        given().contentType("application/json")
                .body(wrong)
                .post(RunningService.address() + "/v1/size-tables")
                .then()
                .statusCode(422)
                .body(
                        "violations.field",
                        containsInAnyOrder(
                                "/id",
                                "/colour",
                                "/source",
                                "/rows/0/values/2",
                                "/rows/1/values/0",
                                "/rows/2/values",
                                "/rows/3/dimension",
                                "/rows/4/values/0",
                                "/rows/1/values/1"))
                .body(
                        "violations.find { it.field == '/rows/3/dimension' }.reason",
                        containsString("did you mean elbowGirth?"));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {"[] | 422", "{} | 422", "3 | 422", "{\"rows\":[]} | 422", "{\"rows\":[[]]} | 422", "{ | 400"})
    void refusesWhatIsNoTable(String body, int status) {
        given().contentType("application/json")
                .body(body)
                .post(RunningService.address() + "/v1/size-tables")
                .then()
                .statusCode(status)
                .contentType("application/problem+json");
    }

    /** The workshop's table is the published one rounded, and so are the jumps that the grade is compared with. */
    @Test
    void standsInForAnIdInChecks() {
        Map<String, Object> run = object(Requests.choirGown());
        run.put("sizeTable", table());
        JsonPath within = post("/v1/checks", Map.of("sizeRun", run))
                .statusCode(200)
                .extract()
                .jsonPath();
        assertEquals("workshop-women", within.getString("sizeTable"));
        assertEquals(1.2, within.getDouble("jumps.find { it.measure == 'bicep' && it.from == '38' }.body"), 1e-9);
        JsonPath beside = post("/v1/checks", Map.of("sizeRun", object(Requests.choirGown()), "sizeTable", table()))
                .statusCode(200)
                .extract()
                .jsonPath();
        assertEquals(within.getList("findings"), beside.getList("findings"));
    }

    @Test
    void standsInForAnIdInSizeRunsMadeToMeasureAndGradeRules() {
        Map<String, Object> run = object(Requests.choirGown());
        run.put("sizeTable", table());
        post("/v1/size-runs", run).statusCode(200).body("findings.source.flatten()", hasItem(containsString("1988")));

        Map<String, Object> order = object(Requests.madeToMeasure());
        order.put("sizeTable", table());
        post("/v1/made-to-measure", order).statusCode(200).body("nearestSize.sizeTable", equalTo("workshop-women"));

        run.remove("grade");
        run.remove("sizeTable");
        post("/v1/grade-rules", Map.of("sizeRun", run, "sizeTable", table(), "grid", "0.1 mm", "increments", "bySize"))
                .statusCode(200)
                .body("sizeTable", equalTo("workshop-women"))
                .body("grade.bicep", equalTo(List.of(1.2, 1.2, 1.2, 1.3, 1.4)));
    }

    @Test
    void isRefusedWhereItStands() {
        Map<String, Object> table = table();
        table.put("unit", "mm");
        Map<String, Object> run = object(Requests.choirGown());
        run.put("sizeTable", table);
        given().contentType("application/json")
                .body(JSON.writeValueAsString(Map.of("sizeRun", run, "sizeTable", table)))
                .post(RunningService.address() + "/v1/checks")
                .then()
                .statusCode(422)
                .body("violations.field", hasItem("/sizeRun/sizeTable/rows/0/values/0"))
                .body("violations.field", hasItem("/sizeTable/rows/5/values/4"));
    }

    @Test
    void garmentsAreNoBodies() {
        Map<String, Object> table = table();
        table.put("kind", "garment");
        given().contentType("application/json")
                .body(JSON.writeValueAsString(Map.of("sizeRun", object(Requests.choirGown()), "sizeTable", table)))
                .post(RunningService.address() + "/v1/checks")
                .then()
                .statusCode(422)
                .body("violations.field", equalTo(List.of("/sizeTable/kind")));
    }
}
