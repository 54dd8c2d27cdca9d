package org.capwright.contract;

import static io.restassured.RestAssured.given;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.greaterThan;
import static org.hamcrest.Matchers.hasItem;
import static org.hamcrest.Matchers.hasItems;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.atlassian.oai.validator.restassured.OpenApiValidationFilter;
import io.restassured.response.Response;
import io.restassured.specification.RequestSpecification;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** An order from the measuring tape to the cut cloth, every request and answer compared with the description. */
class OrdersIT {

    private static final String SINGER = """
        {"reference":"order 7","wearer":{"bustGirth":96,"stature":168,"upperArmGirth":31.43219,"armLength":59},
         "ease":{"bicep":7,"wrist":6,"length":1,"armhole":"14%","capEase":"4%"}}
        """;

    private static OpenApiValidationFilter described;

    @TempDir
    Path folder;

    @BeforeAll
    static void readTheDescription() {
        described = Described.filter();
        described()
                .contentType("application/json")
                .body(Requests.choirGown())
                .put("/v1/styles/ordered-gown")
                .then()
                .statusCode(201);
    }

    private static RequestSpecification described() {
        return given().filter(described).baseUri(RunningService.address());
    }

    private static Response order(String body) {
        return described().contentType("application/json").body(body).post("/v1/styles/ordered-gown/orders");
    }

    private static Response change(String id, String state) {
        return described()
                .contentType("application/json")
                .body("{\"state\":\"" + state + "\"}")
                .post("/v1/orders/" + id + "/states");
    }

    @Test
    void anOrderIsTakenPrintedCutAndErased() throws Exception {
        Response taken = order(SINGER);
        taken.then().statusCode(201).body("order.state", equalTo("taken")).body("files.format", hasItems("pdf", "dxf"));
        String id = taken.path("order.id");
        described().get("/v1/orders/" + id).then().statusCode(200).body("history.state", hasItem("taken"));
        described()
                .get("/v1/orders?reference=order 7&state=taken")
                .then()
                .statusCode(200)
                .body("orders.id", hasItem(id));
        described().get("/v1/orders/" + id + "/measurements").then().statusCode(200);
        Path pdf = folder.resolve("order.pdf");
        Files.write(pdf, described().get("/v1/orders/" + id + "/files/pdf").asByteArray());
        String printed = Tool.run("poppler-utils", List.of("pdftotext", "-layout", pdf.toString(), "-"));
        assertTrue(printed.contains("order 7"), "the shop's own name is on the pieces");
        Path zip = folder.resolve("order.zip");
        Files.write(zip, described().get("/v1/orders/" + id + "/files/zip").asByteArray());
        String tested = Tool.run("python3", List.of("python3", "-m", "zipfile", "-t", zip.toString()));
        assertTrue(tested.contains("Done testing"), tested);
        change(id, "cut").then().statusCode(200).body("history.state", equalTo(List.of("taken", "cut")));
        change(id, "cancelled").then().statusCode(409);
        described()
                .delete("/v1/orders/" + id + "/measurements")
                .then()
                .statusCode(200)
                .body("files.size()", equalTo(0));
        described().get("/v1/orders/" + id + "/files/pdf").then().statusCode(404);
        described().get("/v1/audit").then().statusCode(200).body("entries.subject", hasItem(id));
        described().delete("/v1/styles/ordered-gown").then().statusCode(200).body("archived", equalTo(true));
        order(SINGER).then().statusCode(409);
        given().baseUri(RunningService.address())
                .contentType("application/json")
                .header("If-Match", "*")
                .body(Requests.choirGown())
                .put("/v1/styles/ordered-gown")
                .then()
                .statusCode(200);
        assertFalse(RunningService.log().contains("43219"), "no measurement in the log");
    }

    @Test
    void aSlipOfTheTapeHoldsTheOrder() {
        Response held = order(SINGER.replace("31.43219", "22"));
        held.then()
                .statusCode(201)
                .body("order.state", equalTo("questioned"))
                .body("questions.field", equalTo(List.of("/wearer/upperArmGirth")))
                .body("questions[0].minimum", greaterThan(22.0));
        String id = held.path("order.id");
        described().get("/v1/orders/" + id + "/files/pdf").then().statusCode(409);
        change(id, "confirmed").then().statusCode(200);
        assertEquals(200, described().get("/v1/orders/" + id + "/files/svg").statusCode());
    }
}
