package org.capwright.contract;

import static io.restassured.RestAssured.given;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.startsWith;
import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.atlassian.oai.validator.restassured.OpenApiValidationFilter;
import io.restassured.path.json.JsonPath;
import io.restassured.response.Response;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A check on paper, as a nest and as a share of the population. */
class CheckReportIT {

    private static final String JUMPING = "{\"sizeRun\":"
            + Requests.choirGown().replace("\"bicep\": 1.3", "\"bicep\": [1.3, 1.3, 4, 1.3, 1.3]") + "}";

    private static OpenApiValidationFilter described;

    @BeforeAll
    static void readTheDescription() {
        described = Described.filter();
    }

    private static Response post(String body, String accept, String parameters) {
        return given().filter(described)
                .header("Accept", accept)
                .contentType("application/json")
                .body(body)
                .post(RunningService.address() + "/v1/checks" + parameters);
    }

    @Test
    void theReportTellsWhatJsonTells(@TempDir Path folder) throws Exception {
        JsonPath json = post(JUMPING, "application/json", "").jsonPath();
        Response report = post(JUMPING, "application/pdf", "");
        report.then().statusCode(200).contentType("application/pdf");
        assertArrayEquals(
                report.asByteArray(), post(JUMPING, "application/pdf", "").asByteArray());
        Path file = folder.resolve("report.pdf");
        Files.write(file, report.asByteArray());
        Tool.run("qpdf", List.of("qpdf", "--check", file.toString()));
        Path text = folder.resolve("report.txt");
        Tool.run("poppler-utils", List.of("pdftotext", file.toString(), text.toString()));
        String words = Files.readString(text).replaceAll("\\s+", " ");
        for (String message : json.getList("findings.message", String.class)) {
            assertTrue(words.contains(message.replaceAll("\\s+", " ")), message);
        }
        assertTrue(words.contains("no stop is left"), words);
        assertTrue(words.contains(json.getInt("coverage.covered") + " of 2208"), words);
    }

    /** A nest of caps in which the larger sizes have lower caps: every neighbour crosses. */
    @Test
    void theNestMarksCrossings(@TempDir Path folder) throws Exception {
        String crossing =
                "{\"sizeRun\":" + Requests.choirGown().replace("\"capHeight\": 0.4", "\"capHeight\": -0.8") + "}";
        String picture = post(crossing, "image/svg+xml", "?picture=nest")
                .then()
                .statusCode(200)
                .extract()
                .asString();
        assertTrue(picture.contains("class=\"crossing\""));
        assertTrue(picture.contains("size 38 dips "));
        Path file = folder.resolve("nest.svg");
        Files.writeString(file, picture);
        Tool.run("libxml2-utils", List.of("xmllint", "--nonet", "--noout", file.toString()));
        String clean = post("{\"sizeRun\":" + Requests.choirGown() + "}", "image/svg+xml", "?picture=nest")
                .asString();
        assertTrue(clean.contains("class=\"line\""));
    }

    @Test
    void otherPicturesAreRefused() {
        given().contentType("application/json")
                .body(JUMPING)
                .post(RunningService.address() + "/v1/checks?picture=cat")
                .then()
                .statusCode(400)
                .contentType(startsWith("application/problem+json"))
                .body("violations[0].field", equalTo("picture"));
    }

    /** Population: ANSUR 1988 women, n = 2208. */
    @Test
    void coverageCountsPeopleAndGaps() {
        JsonPath answer = post("{\"sizeRun\":" + Requests.choirGown() + "}", "application/json", "")
                .jsonPath();
        assertEquals(2208, answer.getInt("coverage.people"));
        assertEquals(6, answer.getList("coverage.sizes").size());
        double share = answer.getDouble("coverage.share");
        assertEquals(answer.getInt("coverage.covered") / 2208.0, share, 1e-12);
        assertTrue(answer.getDouble("coverage.least") < share && share < answer.getDouble("coverage.greatest"));
        // Half of the greatest jump of the arm among the sizes: 30.74 to 33.39 by way of 32.01, so 1.38 cm.
        assertEquals(0.69, answer.getDouble("coverage.girthSlack"), 1e-9);
        assertTrue(answer.getList("coverage.gaps.dimension").contains("armLength"));
        String without = Requests.choirGown().replace("\"women-en-13402-3-bust\"", "null");
        assertNull(post("{\"sizeRun\":" + without + "}", "application/json", "")
                .jsonPath()
                .get("coverage"));
    }
}
