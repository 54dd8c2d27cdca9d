package org.capwright.service.http.meters;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.UUID;
import java.util.regex.Pattern;
import org.capwright.service.KeptService;
import org.capwright.service.store.Databases;
import org.junit.jupiter.api.Test;

/** What whoever runs the service can watch. */
class MetersTest {

    /** A line of the Prometheus text format, version 0.0.4. */
    private static final Pattern LINE =
            Pattern.compile("# (HELP|TYPE) .*|[a-zA-Z_:][a-zA-Z0-9_:]*(\\{([a-zA-Z_][a-zA-Z0-9_]*=\"([^\"\\\\\\n"
                    + "]|\\\\.)*\",?)*})? \\S+( -?\\d+)?|");

    private static final String GOWN = """
        {"units":"cm","baseSize":"40","sizes":["38","40"],
         "sleeve":{"bicep":36.125,"length":60,"capHeight":13.5,"capOutward":1.9,"capInward":1.2},
         "underSleeve":{"wrist":19}}
        """;

    private final KeptService service = KeptService.on(Databases.EMBEDDED);

    private String said() {
        return service.get("/actuator/prometheus").text();
    }

    private double value(String meter) {
        return said().lines()
                .filter(line -> line.startsWith(meter + " "))
                .mapToDouble(line -> Double.parseDouble(line.substring(meter.length() + 1)))
                .sum();
    }

    /** Other tests draft at the same time, so counts are at least so much greater. */
    @Test
    void draftsRefusalsPagesAndOrdersAreCounted() {
        double sizes = value("capwright_drafted_sizes_total");
        double pages = value("capwright_pages_total");
        double refused = value("capwright_refused_total{reason=\"invalid-request\"}");
        double taken = value("capwright_orders_total{event=\"order.taken\"}");
        String style = "m-" + UUID.randomUUID();
        service.send("PUT", "/v1/styles/" + style, GOWN);
        service.send("POST", "/v1/styles/" + style + "/orders", "{\"size\":\"40\",\"reference\":\"" + style + "\"}");
        service.send("POST", "/v1/size-runs", "{}");
        assertTrue(value("capwright_drafted_sizes_total") >= sizes + 1);
        assertTrue(
                value("capwright_pages_total") >= pages + 2, "a sleeve takes more than one sheet of A4, and a cover");
        assertTrue(value("capwright_refused_total{reason=\"invalid-request\"}") >= refused + 1);
        assertTrue(value("capwright_orders_total{event=\"order.taken\"}") >= taken + 1);
        String said = said();
        said.lines().forEach(line -> assertTrue(LINE.matcher(line).matches(), line));
        assertFalse(said.contains(style) || said.contains("36.125"), "nothing of an order is told");
        assertTrue(said.contains("http_server_requests_seconds_count"), "the calls");
        assertTrue(said.contains("dbscheduler"), "the jobs");
    }

    @Test
    void aFormThatCannotBeReadIsARefusal() {
        double refused = value("capwright_refused_total{reason=\"bad-request\"}");
        assertEquals(
                400,
                service.send("POST", "/v1/checks", "no form", "Content-Type", "multipart/form-data; boundary=x")
                        .status());
        assertTrue(value("capwright_refused_total{reason=\"bad-request\"}") >= refused + 1, said());
    }

    @Test
    void saysThatItLivesIsReadyAndWhatItIs() {
        for (String probe : new String[] {"", "/liveness", "/readiness"}) {
            KeptService.Answer answer = service.get("/actuator/health" + probe);
            assertEquals(200, answer.status(), probe);
            assertEquals("UP", answer.json().get("status").stringValue());
        }
        assertEquals(
                "Capwright", service.get("/actuator/info").json().get("name").stringValue());
    }
}
