package org.capwright.contract;

import static io.restassured.RestAssured.given;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.atlassian.oai.validator.restassured.OpenApiValidationFilter;
import io.restassured.path.json.JsonPath;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tools.jackson.databind.json.JsonMapper;

/** The grade that a check proposes is put back into the request as a label would do it. */
class WhatIfIT {

    private static final JsonMapper JSON = JsonMapper.builder().build();

    private static OpenApiValidationFilter described;

    @BeforeAll
    static void readTheDescription() {
        described = Described.filter();
    }

    private static JsonPath checked(Object run) {
        return given().filter(described)
                .contentType("application/json")
                .body(JSON.writeValueAsString(Map.of("sizeRun", run)))
                .post(RunningService.address() + "/v1/checks")
                .then()
                .statusCode(200)
                .extract()
                .jsonPath();
    }

    @SuppressWarnings("unchecked")
    private static Map<String, Object> request(String text) {
        return JSON.readValue(text, Map.class);
    }

    private static Map<String, Object> putBack(Map<String, Object> run, JsonPath answer) {
        Map<String, Object> proposed = new java.util.LinkedHashMap<>(run);
        proposed.put("grade", answer.getMap("whatIf.grade"));
        return proposed;
    }

    @Test
    void proposesNothingWhereNothingIsAmiss() {
        Map<String, Object> run =
                request(Requests.choirGown().replace("\"bicep\": 1.3", "\"bicep\": [1.3, 1.3, 1.3, 1.3, 1.4]"));
        JsonPath clean = checked(run);
        assertEquals(0, clean.getInt("summary.stop") + clean.getInt("summary.caution"), clean.getString("findings"));
        assertNull(clean.get("whatIf"));
    }

    /** The figures of the cure are those of the request: one rule for all jumps, one figure, and both ends of its range pass as the proposal does. */
    @ParameterizedTest
    @CsvSource({"bicep, 1.3, 3.0", "wrist, 0.5, 3", "length, 0.5, '[.5, -1.5, .5, .5, .5]'"})
    void oneFigureIsEnoughForOneSlip(String rule, String meant, String slip) {
        String figures = slip.replace("[.", "[0.").replace(" .", " 0.");
        Map<String, Object> run =
                request(Requests.choirGown().replace("\"" + rule + "\": " + meant, "\"" + rule + "\": " + figures));
        JsonPath amiss = checked(run);
        assertTrue(amiss.getBoolean("whatIf.clears"), amiss.getString("whatIf"));
        List<Map<String, Object>> cures = amiss.getList("whatIf.cures");
        assertEquals(1, cures.size(), cures.toString());
        assertEquals(rule, cures.get(0).get("dimension"));
        double proposed = ((Number) cures.get(0).get("new")).doubleValue();
        double least = ((Number) cures.get(0).get("least")).doubleValue();
        double greatest = ((Number) cures.get(0).get("greatest")).doubleValue();
        assertTrue(least <= proposed && proposed <= greatest, cures.toString());
        int stops = amiss.getInt("summary.stop");
        int cautions = amiss.getInt("summary.caution");
        for (double value : new double[] {proposed, least, greatest}) {
            JsonPath mended = checked(request(Requests.choirGown()
                    .replace(
                            "\"" + rule + "\": " + meant,
                            "\"" + rule + "\": " + figures.replaceAll("-1.5|^3(\\.0)?$", "" + value))));
            assertEquals(0, mended.getInt("summary.stop"), value + mended.getString("findings"));
            assertTrue(mended.getInt("summary.caution") <= cautions, value + mended.getString("findings"));
            assertTrue(stops + cautions > mended.getInt("summary.caution"));
        }
    }

    @Test
    void theProposedGradeHasNoStop() {
        Map<String, Object> run =
                request(Requests.choirGown().replace("\"bicep\": 1.3", "\"bicep\": [1.3, 1.3, 4, 1.3, 1.3]"));
        JsonPath stopped = checked(run);
        assertTrue(stopped.getInt("summary.stop") > 0);
        assertTrue(stopped.getBoolean("whatIf.clears"));
        assertTrue(stopped.getList("whatIf.remaining").isEmpty());
        List<Map<String, Object>> changes = stopped.getList("whatIf.changes");
        assertFalse(changes.isEmpty());
        // Every change stands in the grade, and the old figure is that of the request.
        Map<String, Object> bicep = changes.stream()
                .filter(change -> change.get("dimension").equals("bicep")
                        && change.get("from").equals("40"))
                .findFirst()
                .orElseThrow();
        assertEquals("42", bicep.get("to"));
        assertEquals(4.0, ((Number) bicep.get("old")).doubleValue(), 1e-9);
        assertEquals(
                ((Number) bicep.get("new")).doubleValue(), stopped.getDouble("whatIf.grade.bicep[2]"), 1e-9, "in list");
        // What the proposal leaves alone is still there.
        assertEquals(1.1, stopped.getDouble("whatIf.grade.overlayLength"), 1e-9);

        JsonPath mended = checked(putBack(run, stopped));
        assertEquals(0, mended.getInt("summary.stop"));
        assertTrue(mended.getInt("summary.caution") <= stopped.getInt("summary.caution"));
    }

    /** The same in inches, whose increments have no short decimal in millimetres. */
    @Test
    void worksInInches() {
        String inches = """
            {"units":"in","baseSize":"40","sizes":["36","38","40","42","44"],
             "sleeve":{"bicep":"14 1/4","length":"23 1/2","capHeight":"5 1/4","armhole":"17 1/2"},
             "underSleeve":{"elbow":12,"wrist":9},
             "grade":{"bicep":"1/8","capHeight":"1/8","armhole":"5/8","length":"1/4"},
             "sizeTable":"women-en-13402-3-bust"}
            """;
        Map<String, Object> run = request(inches);
        JsonPath stopped = checked(run);
        assertTrue(stopped.getInt("summary.stop") > 0, stopped.getString("findings"));
        assertNotNull(stopped.get("whatIf"));
        assertTrue(stopped.getBoolean("whatIf.clears"), stopped.getString("whatIf"));
        assertEquals(0, checked(putBack(run, stopped)).getInt("summary.stop"));
    }

    /** A base size that is narrower than the arm stays so under any grade. */
    @Test
    void saysWhatNoGradeCanMend() {
        Map<String, Object> run = request(Requests.choirGown().replace("\"bicep\": 36", "\"bicep\": 29"));
        JsonPath answer = checked(run);
        assertTrue(answer.getInt("summary.stop") > 0);
        assertFalse(answer.getBoolean("whatIf.clears"));
        assertTrue(answer.getList("whatIf.remaining.check").contains("bicep-ease"), answer.getString("whatIf"));
        answer.getList("whatIf.remaining.severity").forEach(severity -> assertEquals("stop", severity));
        // What remains is what a check of the proposal finds.
        JsonPath again = checked(putBack(run, answer));
        assertEquals(answer.getList("whatIf.remaining").size(), again.getInt("summary.stop"));
    }
}
