package org.capwright.service.sizerun;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import org.capwright.json.problem.FieldViolation;
import org.capwright.json.problem.FoundViolations;
import org.capwright.json.problem.RefusedRequestException;
import org.capwright.json.problem.RequestPlaces;
import org.capwright.json.style.SizeRunReader;
import org.capwright.json.style.SizeRunRequest;
import org.capwright.quantity.InvalidMeasuresException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;

/** Requests broken at random: whatever comes in, the answer is a run without a hole, or violations that hold what they promise. */
class BrokenRequestsTest {

    /** Values tried for each seed; {@code -Pthorough} tries more. */
    private static final int TRIES = Boolean.getBoolean("capwright.thorough") ? 80 : 10;

    private static final String[] JUNK = {
        "null",
        "true",
        "0",
        "-1",
        "1e308",
        "1e999",
        "-0.0",
        "0.00001",
        "7",
        "36",
        "500",
        "99999",
        "\"\"",
        "\"NaN\"",
        "\"3 1/2\"",
        "\"-1/2\"",
        "\"4%\"",
        "\"1 mm\"",
        "\"vee\"",
        "\"level\"",
        "\"bowed\"",
        "\"40\"",
        "\"\\u0000\"",
        "\"\\ud800\"",
        "[]",
        "{}",
        "[1,2,3,4]",
        "[\"a\",\"b\"]",
        "{\"front\":1}",
        "[[[[1]]]]",
        "{\"depth\":2}",
        "{\"greatestDepth\":1}"
    };

    private static List<String> refused(JsonNode body, List<FieldViolation> into) {
        SizeRunRequest order;
        try {
            order = SizeRunReader.read(body);
        } catch (RefusedRequestException e) {
            into.addAll(e.violations());
            return fields(into);
        }
        try {
            String json =
                    new String(new JsonFormat(Requests.MAPPER).render(SizeRunResult.of(order)), StandardCharsets.UTF_8);
            assertFalse(json.contains(":NaN") || json.contains("[NaN") || json.contains("Infinity"), body::toString);
        } catch (InvalidMeasuresException e) {
            FoundViolations found = new FoundViolations(order.unit());
            found.addAll(e.violations(), RequestPlaces.of(order.style()));
            into.addAll(found.list());
        }
        return fields(into);
    }

    private static List<String> fields(List<FieldViolation> violations) {
        return violations.stream().map(FieldViolation::field).toList();
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8})
    void nothingBreaksTheService(long seed) {
        Random random = new Random(seed);
        for (int i = 0; i < 150; i++) {
            JsonNode body = Requests.demo();
            int changes = 1 + random.nextInt(3);
            for (int c = 0; c < changes; c++) {
                change(body, random);
            }
            List<FieldViolation> violations = new ArrayList<>();
            try {
                refused(body, violations);
            } catch (RuntimeException e) {
                throw new AssertionError("seed " + seed + ", turn " + i + ": " + body, e);
            }
            for (FieldViolation violation : violations) {
                assertFalse(violation.reason().toString().isBlank());
                assertTrue(violation.field().isEmpty() || violation.field().startsWith("/"), violation::toString);
                assertTrue(
                        Double.isFinite(violation.minimum().orElse(0.0))
                                && Double.isFinite(violation.maximum().orElse(0.0))
                                && !violation.value().equals(Optional.of(Double.NaN)),
                        violation::toString);
            }
        }
    }

    private static void change(JsonNode body, Random random) {
        List<JsonNode> containers = new ArrayList<>();
        gather(body, containers);
        JsonNode container = containers.get(random.nextInt(containers.size()));
        JsonNode junk = Requests.MAPPER.readTree(JUNK[random.nextInt(JUNK.length)]);
        if (container instanceof ObjectNode object && !object.isEmpty()) {
            List<String> names = new ArrayList<>(object.propertyNames());
            String name = names.get(random.nextInt(names.size()));
            if (random.nextInt(4) == 0) {
                object.remove(name);
            } else {
                object.set(name, junk);
            }
        } else if (container instanceof ArrayNode array && !array.isEmpty()) {
            array.set(random.nextInt(array.size()), junk);
        }
    }

    private static void gather(JsonNode node, List<JsonNode> into) {
        if (node.isContainer()) {
            into.add(node);
            node.values().forEach(child -> gather(child, into));
        }
    }

    @Test
    void aCapThatNoArmholeTakesIsRefused() {
        for (String patch : List.of(
                "{\"sleeve\":{\"capHeight\":26},\"overlay\":{\"length\":50}}",
                "{\"sleeve\":{\"capHeight\":4,\"capOutward\":null,\"capInward\":null,\"armhole\":70},\"overlay\":null,\"grade\":null}")) {
            List<FieldViolation> violations = new ArrayList<>();
            refused(Requests.patched(patch), violations);
            assertEquals("/sleeve/capHeight", violations.get(0).field(), violations::toString);
            FieldViolation violation = violations.get(0);
            double works = patch.contains("26")
                    ? violation.maximum().orElseThrow()
                    : violation.minimum().orElseThrow();
            List<FieldViolation> again = new ArrayList<>();
            refused(
                    set(
                            Requests.merged(Requests.patched(patch), Requests.MAPPER.readTree("{\"grade\":null}")),
                            "/sleeve/capHeight",
                            works),
                    again);
            assertTrue(again.isEmpty(), again::toString);
        }
    }

    /** A bound that a violation names must work: set to it, the field is no longer complained of. */
    @ParameterizedTest
    @ValueSource(longs = {11, 12, 13, 14})
    void boundsThatAreNamedWork(long seed) {
        Random random = new Random(seed);
        String[] fields = {
            "/sleeve/bicep", "/sleeve/capHeight", "/sleeve/capOutward", "/sleeve/capInward", "/overlay/frontGap",
                    "/overlay/length",
            "/overlay/hemSagitta", "/underSleeve/wrist", "/underSleeve/elbowLevel", "/sleeve/armhole", "/turnOfCloth",
                    "/overlay/rise"
        };
        int tried = 0;
        for (int i = 0; i < TRIES; i++) {
            String field = fields[random.nextInt(fields.length)];
            double value = Math.exp(random.nextDouble() * Math.log(400)) * (random.nextInt(5) == 0 ? -1 : 1);
            // One size: bounds of a run are those of the size that is named, not of the base size.
            JsonNode start = Requests.patched("{\"sizes\":[\"40\"],\"grade\":null"
                    + (field.endsWith("Sagitta") ? ",\"overlay\":{\"hem\":\"bowed\"}" : "") + "}");
            JsonNode body = set(start, field, value);
            List<FieldViolation> violations = new ArrayList<>();
            refused(body, violations);
            for (FieldViolation violation : violations) {
                if (!violation.field().equals(field) || !violation.unit().equals(Optional.of("cm"))) {
                    continue;
                }
                for (double bound : bounds(violation)) {
                    tried++;
                    List<FieldViolation> again = new ArrayList<>();
                    refused(set(start, field, bound), again);
                    assertFalse(
                            again.stream()
                                    .anyMatch(v -> v.field().equals(field)
                                            && v.reason()
                                                    .toString()
                                                    .startsWith(firstWords(
                                                            violation.reason().toString()))),
                            () -> "seed " + seed + ": " + violation + " then " + again);
                }
            }
        }
        assertTrue(tried > TRIES / 4, "only " + tried + " bounds were tried");
    }

    private static String firstWords(String reason) {
        return reason.contains(":") ? reason.substring(0, reason.indexOf(':')) : reason;
    }

    private static List<Double> bounds(FieldViolation violation) {
        List<Double> bounds = new ArrayList<>();
        violation.minimum().ifPresent(bounds::add);
        violation.maximum().ifPresent(bounds::add);
        return bounds;
    }

    private static JsonNode set(JsonNode body, String field, double value) {
        String[] path = field.substring(1).split("/");
        ObjectNode patch = Requests.MAPPER.createObjectNode();
        ObjectNode at = patch;
        for (int i = 0; i < path.length - 1; i++) {
            at = at.putObject(path[i]);
        }
        at.put(path[path.length - 1], value);
        return Requests.merged(body, patch);
    }

    @ParameterizedTest
    @ValueSource(strings = {"mm", "cm", "in"})
    void theSameStyleGivesTheSameSleeveInEveryUnit(String unit) {
        Map<String, Double> millimetres = Map.of("mm", 1.0, "cm", 10.0, "in", 25.4);
        double factor = 10 / millimetres.get(unit);
        SizeRunAnswer centimetres = answer(Requests.demo());
        SizeRunAnswer other = answer(scaled(Requests.demo(), unit, factor));
        for (int i = 0; i < centimetres.specTable().rows().size(); i++) {
            double[] here = centimetres.specTable().rows().get(i).values();
            double[] there = other.specTable().rows().get(i).values();
            for (int s = 0; s < here.length; s++) {
                assertEquals(
                        here[s] * factor,
                        there[s],
                        1e-7,
                        centimetres.specTable().rows().get(i).code());
            }
        }
        double[][] cut = centimetres.sizes().get(0).pieces().get(0).cutLine();
        double[][] cutThere = other.sizes().get(0).pieces().get(0).cutLine();
        assertEquals(cut.length, cutThere.length);
        for (int p = 0; p < cut.length; p++) {
            assertEquals(cut[p][0] * factor, cutThere[p][0], 2e-5);
            assertEquals(cut[p][1] * factor, cutThere[p][1], 2e-5);
        }
    }

    private static SizeRunAnswer answer(JsonNode body) {
        return JsonFormat.answer(SizeRunResult.of(SizeRunReader.read(body)));
    }

    private static JsonNode scaled(JsonNode body, String unit, double factor) {
        ObjectNode scaled = (ObjectNode) body;
        for (String group : List.of("sleeve", "overlay", "underSleeve", "grade")) {
            ObjectNode object = (ObjectNode) scaled.get(group);
            for (String name : List.copyOf(object.propertyNames())) {
                JsonNode value = object.get(name);
                if (value.isNumber()) {
                    object.put(name, value.asDouble() * factor);
                } else if (value instanceof ArrayNode array) {
                    for (int i = 0; i < array.size(); i++) {
                        array.set(
                                i,
                                Requests.MAPPER
                                        .getNodeFactory()
                                        .numberNode(array.get(i).asDouble() * factor));
                    }
                }
            }
        }
        scaled.put("seamAllowance", factor);
        scaled.put("units", unit);
        return scaled;
    }
}
