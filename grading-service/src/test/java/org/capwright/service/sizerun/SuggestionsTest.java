package org.capwright.service.sizerun;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.capwright.json.problem.FieldViolation;
import org.capwright.json.problem.RefusedRequestException;
import org.capwright.json.style.SizeRunReader;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;

/** What a refusal says would work is sent back as a caller would send it, each end of each range, the other fields that were complained of set to what is nearest: it must be taken, in every size of the run. {@code -Drequests=20000} tries as many, {@code -Dfrom=20000} others. */
class SuggestionsTest {

    private static final int FEW = 12;
    private static final int MANY = 600;

    private final List<String> failed = new ArrayList<>();
    private int refused;
    private int tried;
    private int taken;
    private int unnamed;

    private static List<FieldViolation> refused(JsonNode body) {
        try {
            SizeRunService.draft(SizeRunReader.read(body));
            return List.of();
        } catch (RefusedRequestException e) {
            return e.violations();
        }
    }

    @Test
    void valuesThatAreSaidToWorkWork() {
        int requests = Integer.getInteger("requests", Boolean.getBoolean("capwright.thorough") ? MANY : FEW);
        long from = Long.getLong("from", 0);
        for (long seed = from; seed < from + requests; seed++) {
            JsonNode body = RandomRequests.of(seed);
            List<FieldViolation> violations = refused(body);
            refused += violations.isEmpty() ? 0 : 1;
            violations.forEach(violation -> unnamed += bounds(violation).isEmpty() ? 1 : 0);
            sendBack(seed, body, violations);
        }
        String figures = requests + " requests, " + refused + " refused, " + tried + " values, " + taken + " taken, "
                + unnamed + " complaints without a value that works";
        System.out.println(figures);
        assertTrue(tried > requests / 4 && taken >= 0.99 * tried, () -> figures + failed);
    }

    /**
     * An ease at the very end of its range may be refused again, by rounding: it is moved in, and what is then found wrong as well is mended too (136). Pleats that no depth lets lie on what the nearest ends of the
     * other ranges leave of the seam: those are passed (100310). A depth that is in range again
     * once there are more pleats: what was asked for is tried again (400132).
     */
    @ParameterizedTest
    @ValueSource(longs = {136, 100310, 400132})
    void valuesAreMovedInUntilTheyWork(long seed) {
        JsonNode body = RandomRequests.of(seed);
        List<FieldViolation> violations = refused(body);
        violations.forEach(violation -> assertTrue(!bounds(violation).isEmpty(), violation::toString));
        sendBack(seed, body, violations);
        assertTrue(tried > 0 && taken == tried, failed::toString);
    }

    /** A value that no sleeve has, and a growth that makes one: the ranges are those of this style, and not all that the field takes in any. The figures beside the fields lie outside of what the served description says. */
    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '`', textBlock = """
        {"sleeve":{"bicep":3}}                                | /sleeve/bicep
        {"sleeve":{"capOutward":21}}                          | /sleeve/capOutward
        {"sleeve":{"armhole":151}}                            | /sleeve/armhole
        {"sleeve":{"capHeight":null,"capEase":"60%"},"grade":{"capHeight":null}} | /sleeve/capEase
        {"overlay":{"join":0.05}}                             | /overlay/join
        {"overlay":{"frontGap":71}}                           | /overlay/frontGap
        {"overlay":{"rise":null,"fullness":21}}               | /overlay/fullness
        {"overlay":{"pleats":{"count":0}}}                    | /overlay/pleats/count
        {"overlay":{"pleats":{"flatZone":71}}}                | /overlay/pleats/flatZone
        {"underSleeve":{"elbow":3}}                           | /underSleeve/elbow
        {"sleeve":{"front":{"armhole":81}}}                   | /sleeve/front/armhole
        {"sleeve":{"armhole":7,"front":{"armhole":22}}}       | /sleeve/armhole
        {"overlay":{"pleats":{"count":null,"greatestDepth":31}},"grade":{"pleatDepth":0.05}} | /overlay/pleats/greatestDepth
        {"seamAllowance":{"sideSeam":11}}                     | /seamAllowance/sideSeam
        {"grade":{"armhole":21}}                              | /grade/armhole
        {"grade":{"armhole":[1.6,1.6,1.8,210]}}               | /grade/armhole/3
        {"grade":{"frontGap":[0.1,14,14,0.1]}}             | /grade/frontGap/1
        {"grade":{"wrist":9}}                                 | /grade/wrist
        """)
    void valuesBeyondEverySleeveAreToldTheRangeOfThisOne(String patch, String field) {
        JsonNode body = Requests.patched(patch);
        List<FieldViolation> violations = refused(body);
        assertEquals(
                List.of(field),
                violations.stream().map(FieldViolation::field).distinct().toList());
        violations.forEach(violation -> assertTrue(!bounds(violation).isEmpty(), violation::toString));
        sendBack(0, body, violations);
        assertTrue(tried > 0 && taken == tried, failed::toString);
    }

    /** Armholes, gaps and pleats far from any sleeve, whose refusals once took from two seconds to a minute: a cap that no height gives, gaps that leave a hundred pleats the tenth of a millimetre. */
    @ParameterizedTest
    @ValueSource(strings = {"""
                {"units":"cm","baseSize":"36","sizes":["36","38","40","42","44"],
                 "sleeve":{"bicep":41.447,"armhole":48.834,"capOutward":2.33,"capInward":0.904,"capHeight":15.988},
                 "overlay":{"rise":13.325,"length":21.7,"frontGap":1.868,"backGap":28.66,"pleats":{"count":1,"kind":"box"}},
                 "grade":{"bicep":1.981,"armhole":1.769,"rise":0.173,"overlayLength":0.018},
                 "seamAllowance":{"sideSeam":1.067}}
                """, """
                {"units":"cm","baseSize":"40","sizes":["40"],
                 "sleeve":{"bicep":36,"length":60,"capHeight":13.5,"capOutward":1.9,"capInward":1.2,"armhole":150},
                 "overlay":{"rise":14,"length":34,"frontGap":6,"backGap":6,"pleats":{"count":8,"kind":"knife"}},
                 "underSleeve":{"elbow":28,"wrist":19}}
                """, """
                {"units":"cm","baseSize":"36","sizes":["36","38","40"],
                 "sleeve":{"bicep":40.773,"armhole":52.723,"capHeight":13.796},
                 "overlay":{"rise":10.567,"length":23.205,"frontGap":30.89,"backGap":7.264,"hem":"bowed","hemSagitta":0.859,
                  "pleats":{"count":2,"kind":"inverted"}},
                 "grade":{"bicep":1.449,"armhole":1.396},
                 "seamAllowance":{"armhole":1.687,"attachedEdge":9.445,"sideSeam":1.585}}
                """, """
                {"units":"cm","baseSize":"42","sizes":["36","38","40","42","44"],
                 "sleeve":{"bicep":31.84,"armhole":12.599,"capEase":1.5,"length":53.635},
                 "overlay":{"rise":16.095,"length":44.347,"frontGap":7.696,"backGap":5.733,"hem":"level",
                  "pleats":{"count":2,"kind":"inverted"}},
                 "underSleeve":{"elbow":29.158,"wrist":22.143},"grade":{"armhole":1.298,"rise":0.295,"elbow":0.635},
                 "seamAllowance":{"armhole":2.473,"sideSeam":1.413}}
                """})
    void refusalsOfFiguresFarFromAnySleeveNameValuesThatWork(String request) {
        JsonNode body = Requests.MAPPER.readTree(request);
        List<FieldViolation> violations = refused(body);
        violations.stream()
                .filter(violation -> violation.field().endsWith("/count"))
                .forEach(violation ->
                        assertTrue(violation.minimum().orElse(0.0) <= 60, "nobody lays more pleats: " + violation));
        sendBack(0, body, violations);
        assertTrue(tried > 0 && taken == tried, failed::toString);
    }

    /** Each of hundreds of tiny pleats lies within the allowance of its neighbours: no such line is drawn, which would take minutes. */
    @Test
    void hundredsOfPleatsWithinOneAnothersAllowanceAreRefused() {
        List<FieldViolation> violations = refused(Requests.MAPPER.readTree("""
            {"units":"mm","baseSize":"36","sizes":["36"],"sleeve":{"bicep":325.407,"armhole":374.872,"capEase":"6%"},
             "overlay":{"rise":214.309,"length":295.615,"frontGap":186.436,"backGap":122.298,"hem":"vee",
              "pleats":{"count":177,"kind":"inverted"}},
             "seamAllowance":{"armhole":6.046,"attachedEdge":10.889,"sideSeam":19.694,"hem":19.938},"corners":"squared"}
            """));
        assertTrue(
                violations.stream().anyMatch(violation -> violation.field().startsWith("/seamAllowance")),
                violations::toString);
    }

    /** Sends each end of each range, the other fields set to what is nearest. */
    private void sendBack(long seed, JsonNode body, List<FieldViolation> violations) {
        JsonNode mended = mended(body, violations);
        for (FieldViolation violation : violations) {
            for (double bound : bounds(violation)) {
                send(seed, set(mended, violation.field(), bound), violation, bound);
            }
        }
    }

    private void send(long seed, JsonNode body, FieldViolation violation, double bound) {
        tried++;
        List<FieldViolation> again = refused(body);
        if (again.isEmpty()) {
            taken++;
        } else {
            failed.add("\nseed " + seed + ": " + violation.field() + " " + violation.reason() + " -> " + bound + " -> "
                    + again.stream().map(v -> v.field() + " " + v.reason()).toList());
        }
    }

    /** The request with every field that is complained of set to the nearest value that is said to work. */
    private static JsonNode mended(JsonNode body, List<FieldViolation> violations) {
        JsonNode mended = body;
        for (FieldViolation violation : violations) {
            double value = violation
                    .value()
                    .map(v -> v instanceof Number n ? n.doubleValue() : 0.0)
                    .orElse(0.0);
            Optional<Double> nearest = violation
                    .minimum()
                    .filter(least -> value < least)
                    .or(violation::maximum)
                    .or(violation::minimum);
            if (nearest.isPresent()) {
                mended = set(mended, violation.field(), nearest.get());
            }
        }
        return mended;
    }

    private static List<Double> bounds(FieldViolation violation) {
        return Stream.of(violation.minimum(), violation.maximum())
                .flatMap(Optional::stream)
                .distinct()
                .toList();
    }

    private static JsonNode set(JsonNode body, String field, double value) {
        String[] path = field.substring(1).split("/");
        ObjectNode copy = (ObjectNode) body.deepCopy();
        ObjectNode at = copy;
        for (int i = 0; i < path.length - 1; i++) {
            if (at.get(path[i]) instanceof ArrayNode increments) {
                increments.set(Integer.parseInt(path[i + 1]), value);
                return copy;
            }
            at = at.get(path[i]) instanceof ObjectNode inner ? inner : at.putObject(path[i]);
        }
        if (value == Math.rint(value)) {
            at.put(path[path.length - 1], (long) value);
        } else {
            at.put(path[path.length - 1], value);
        }
        return copy;
    }
}
