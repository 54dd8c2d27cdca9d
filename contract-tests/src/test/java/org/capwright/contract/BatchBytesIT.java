package org.capwright.contract;

import static io.restassured.RestAssured.given;
import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;

import io.restassured.RestAssured;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import org.capwright.batch.CutFile;
import org.capwright.batch.OrderCutter;
import org.capwright.batch.Outcome;
import org.junit.jupiter.api.Test;

/** The batch for clusters cuts an order as the service does: every file has the same bytes. */
class BatchBytesIT {

    private static final Path STYLE = RunningService.root().resolve("examples/choir-gown.json");

    @Test
    void anOrderHasTheSameFilesAsInTheService() throws Exception {
        given().contentType("application/json")
                .body(Files.readAllBytes(STYLE))
                .put(RunningService.address() + "/v1/styles/batch-gown")
                .then()
                .statusCode(201);
        OrderCutter cutter = new OrderCutter(Map.of("batch-gown", Files.readAllBytes(STYLE)), OrderCutter.FORMATS);
        String wearer = Files.readString(RunningService.root().resolve("examples/order.json"));
        for (String order : new String[] {
            wearer, wearer.replace("\"reference\":", "\"language\": \"fr\", \"reference\":"), "{\"size\": 42}"
        }) {
            String id = given().contentType("application/json")
                    .body(order)
                    .post(RunningService.address() + "/v1/styles/batch-gown/orders")
                    .then()
                    .statusCode(201)
                    .extract()
                    .path("order.id");
            Outcome.Cut cut = (Outcome.Cut) cutter.cut(order.replace('\n', ' ').getBytes(StandardCharsets.UTF_8));
            assertEquals(OrderCutter.FORMATS.size(), cut.files().size());
            for (CutFile file : cut.files()) {
                assertArrayEquals(
                        RestAssured.get(RunningService.address() + "/v1/orders/" + id + "/files/" + file.format())
                                .asByteArray(),
                        file.content(),
                        file.format());
            }
        }
    }
}
