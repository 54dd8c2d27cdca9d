package org.capwright.contract;

import static io.restassured.RestAssured.given;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasItem;
import static org.hamcrest.Matchers.hasItems;
import static org.hamcrest.Matchers.startsWith;

import com.atlassian.oai.validator.restassured.OpenApiValidationFilter;
import io.restassured.response.Response;
import io.restassured.specification.RequestSpecification;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** Styles on the shelf of the packaged service, every request and answer compared with the description. */
class StylesIT {

    private static final String STYLES = "/v1/styles";

    private static OpenApiValidationFilter described;

    @BeforeAll
    static void readTheDescription() {
        described = Described.filter();
    }

    private static RequestSpecification described() {
        return given().filter(described).baseUri(RunningService.address());
    }

    private static Response put(RequestSpecification request, String id, String body) {
        return request.contentType("application/json").body(body).put(STYLES + "/" + id);
    }

    @Test
    void aStyleIsKeptChangedComparedDraftedAndTakenAway() {
        String gown = Requests.choirGown();
        Response made = put(described(), "gown-it", gown);
        made.then().statusCode(201).body("revision", equalTo(1)).header("ETag", startsWith("\"1-"));
        String tag = made.header("ETag");
        described().get(STYLES + "/gown-it").then().statusCode(200).body("name", equalTo("Choir gown sleeve"));
        described().header("If-None-Match", tag).get(STYLES + "/gown-it").then().statusCode(304);
        String higher = gown.replace("\"capHeight\": 13.5", "\"capHeight\": 14");
        put(described(), "gown-it", higher).then().statusCode(428);
        put(described().header("If-Match", "\"x\""), "gown-it", higher).then().statusCode(412);
        put(described().header("If-Match", tag), "gown-it", higher)
                .then()
                .statusCode(200)
                .body("revision", equalTo(2));
        described()
                .get(STYLES + "/gown-it/changes")
                .then()
                .statusCode(200)
                .body("fields.field", hasItem("/sleeve/capHeight"))
                .body("pointsOfMeasure.code", hasItems("capHeight", "capLine"));
        described()
                .get(STYLES + "/gown-it/revisions")
                .then()
                .statusCode(200)
                .body("revisions.revision", hasItems(2, 1));
        described().get(STYLES + "/gown-it/revisions/1").then().statusCode(200);
        described().get(STYLES + "/gown-it/revisions/3").then().statusCode(404);
        described().get(STYLES).then().statusCode(200).body("styles.id", hasItem("gown-it"));
        described()
                .accept("application/pdf")
                .post(STYLES + "/gown-it/size-runs")
                .then()
                .statusCode(200)
                .contentType("application/pdf");
        described().post(STYLES + "/gown-it/size-runs").then().statusCode(200).body("unit", equalTo("cm"));
        Response exported = described().get("/v1/style-collection");
        exported.then().statusCode(200).body("styles.id", hasItem("gown-it"));
        described()
                .contentType("application/json")
                .body(exported.asString())
                .post("/v1/style-collection")
                .then()
                .statusCode(200)
                .body("revisions", equalTo(0));
        described().delete(STYLES + "/gown-it").then().statusCode(204);
        described().delete(STYLES + "/gown-it").then().statusCode(404);
    }
}
