package org.capwright.service.sizerun;

import java.util.List;
import java.util.Random;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;

/** Seeded random requests over the whole space that the interface takes: most can be drafted, many are refused for one reason or another. */
final class RandomRequests {

    private static final String[] HEMS = {"vee", "bowed", "level"};
    private static final String[] KINDS = {"knife", "knife", "box", "inverted"};
    private static final String[] DIRECTIONS = {"front", "back", "apex", "away"};
    private static final String[] SHAPINGS = {"tapered", "elbowDart", "easedSeam"};

    private final Random random;
    private final ObjectNode body = Requests.MAPPER.createObjectNode();
    private final double bicep;

    private RandomRequests(long seed) {
        random = new Random(seed * 0x9E3779B97F4A7C15L);
        random.nextLong(); // the first values of neighbouring seeds are alike
        bicep = between(24, 60);
    }

    /** The request of a seed, in centimetres. */
    static JsonNode of(long seed) {
        return new RandomRequests(seed).drawn();
    }

    private double between(double low, double high) {
        return Math.round((low + (high - low) * random.nextDouble()) * 100) / 100.0;
    }

    private boolean one(int in) {
        return random.nextInt(in) == 0;
    }

    private String of(String... words) {
        return words[random.nextInt(words.length)];
    }

    private JsonNode drawn() {
        body.put("units", "cm");
        List<String> labels = List.of("36", "38", "40", "42", "44", "46", "48");
        int first = random.nextInt(3);
        List<String> sizes = labels.subList(first, first + 1 + random.nextInt(5));
        ArrayNode given = body.putArray("sizes");
        sizes.forEach(given::add);
        body.put("baseSize", sizes.get(random.nextInt(sizes.size())));
        double capHeight = bicep * between(0.2, 0.5);
        double armhole = bicep * between(1.08, 1.34);
        sleeve(capHeight, armhole);
        if (!one(5)) {
            overlay(capHeight, armhole);
        }
        if (one(2)) {
            underSleeve(capHeight);
        }
        finish();
        if (!one(4)) {
            grade(sizes.size() - 1);
        }
        return body;
    }

    private void sleeve(double capHeight, double armhole) {
        ObjectNode sleeve = body.putObject("sleeve");
        sleeve.put("bicep", bicep);
        sleeve.put("capHeight", capHeight);
        sleeve.put("armhole", armhole);
        double limit = Math.hypot(bicep / 2, capHeight) / 4 * capHeight / (bicep / 2);
        if (!one(4)) {
            sleeve.put("capOutward", limit * between(0.28, 0.7));
            sleeve.put("capInward", limit * between(0.28, 0.7));
        }
        if (one(4)) {
            sleeve.remove(one(2) ? "bicep" : "capHeight");
            if (one(2)) {
                sleeve.put("capEase", between(-1, 4));
            } else {
                sleeve.put("capEase", between(-2, 12) + "%");
            }
        } else if (one(40)) {
            sleeve.remove("capHeight");
            sleeve.putObject("front").put("capEase", between(0, 2)).put("armhole", armhole * between(0.46, 0.54));
            sleeve.putObject("back").put("capEase", between(0, 2));
        } else if (one(5)) {
            sleeve.putObject("front").put("width", bicep * between(0.44, 0.56));
        }
    }

    private void overlay(double capHeight, double armhole) {
        ObjectNode overlay = body.putObject("overlay");
        if (one(4)) {
            overlay.put("fullness", between(1, 3));
        } else {
            overlay.put("rise", one(6) ? 0 : between(0, 30));
        }
        overlay.put("length", capHeight + between(-2, 40));
        String hem = of(HEMS);
        overlay.put("hem", hem);
        if (hem.equals("bowed")) {
            overlay.put("hemSagitta", between(-6, 8));
        }
        if (!hem.equals("level") && one(2)) {
            overlay.put("sideDepth", between(0, 12));
        }
        if (one(3)) {
            overlay.put("extraWidth", between(0, 6));
        }
        if (one(3)) {
            overlay.put("join", between(0.3, 1));
        }
        overlay.put("frontGap", one(6) ? 0 : armhole * between(0, 0.4));
        overlay.put("backGap", one(6) ? 0 : armhole * between(0, 0.4));
        if (!one(4)) {
            ObjectNode pleats = overlay.putObject("pleats");
            switch (random.nextInt(4)) {
                case 0 -> pleats.put("depth", between(0.1, 6));
                case 1 -> pleats.put("greatestDepth", between(0.1, 6));
                default -> pleats.put("count", 1 + random.nextInt(16));
            }
            String kind = of(KINDS);
            pleats.put("kind", kind);
            if (kind.equals("knife") && !one(3)) {
                pleats.put("direction", of(DIRECTIONS));
            }
            if (one(4)) {
                pleats.put("flatZone", between(0, 20));
            } else if (one(6)) {
                pleats.putObject("flatZone").put("front", between(0, 20)).put("back", between(0, 10));
            }
            if (overlay.has("rise") && pleats.has("count") && one(6)) {
                overlay.remove("rise");
                pleats.put("depth", between(0.3, 6));
            }
        }
    }

    private void underSleeve(double capHeight) {
        ObjectNode sleeve = (ObjectNode) body.get("sleeve");
        sleeve.put("length", capHeight + between(10, 60));
        ObjectNode under = body.putObject("underSleeve");
        double wrist = bicep * between(0.4, 1);
        under.put("wrist", wrist);
        if (one(2)) {
            under.put("elbow", wrist + between(-2, 10));
        }
        if (one(3)) {
            under.put("elbowLevel", between(2, 40));
        }
        if (one(3)) {
            under.put("handGirth", between(12, 30));
        }
        String shaping = of(SHAPINGS);
        under.put("shaping", shaping);
        if (shaping.equals("elbowDart") && one(2)) {
            under.put("elbowDart", between(0.3, 8));
            if (one(2)) {
                under.put("elbowDartLength", between(2, 20));
            }
        }
        if (shaping.equals("easedSeam") && one(2)) {
            under.put("elbowEase", between(0.2, 4));
        }
    }

    private void finish() {
        switch (random.nextInt(4)) {
            case 0 -> body.put("seamAllowance", one(4) ? between(2, 10) : between(0, 2));
            case 1 ->
                body.putObject("seamAllowance")
                        .put("hem", between(0, 6))
                        .put("attachedEdge", between(0, 2))
                        .put("sideSeam", between(0, 2.5));
            default -> {}
        }
        if (one(2)) {
            body.put("corners", of("mitred", "bevelled", "squared"));
        }
        if (one(4)) {
            body.put("turnOfCloth", between(0, 2));
        }
        if (one(4)) {
            body.put("interfacingOverlap", between(0, 2));
        }
        if (one(4)) {
            body.put("strips", "pieces");
        }
        if (one(4)) {
            body.put("pleatInterfacing", "cutAway");
        }
    }

    private void grade(int intervals) {
        ObjectNode grade = body.putObject("grade");
        JsonNode sleeve = body.get("sleeve");
        if (sleeve.has("bicep")) {
            growth(grade, "bicep", 0.5, 2, intervals);
        }
        if (sleeve.has("capHeight")) {
            growth(grade, "capHeight", 0, 0.8, intervals);
        }
        growth(grade, "armhole", 0.5, 2.4, intervals);
        if (body.has("overlay")) {
            for (String name : List.of("rise", "frontGap", "backGap", "sideDepth", "extraWidth", "hemSagitta")) {
                if (body.get("overlay").has(name) && one(3)) {
                    growth(grade, name, name.equals("rise") ? -0.3 : -0.1, 0.6, intervals);
                }
            }
            if (body.at("/overlay/pleats").has("depth") && one(3)) {
                growth(grade, "pleatDepth", -0.1, 0.2, intervals);
            }
        }
        if (body.has("underSleeve")) {
            growth(grade, "wrist", 0, 1, intervals);
            growth(grade, "length", 0, 1, intervals);
        }
    }

    private void growth(ObjectNode grade, String name, double low, double high, int intervals) {
        if (one(3) && intervals > 0) {
            ArrayNode list = grade.putArray(name);
            for (int i = 0; i < intervals; i++) {
                list.add(between(low, high));
            }
        } else {
            grade.put(name, between(low, high));
        }
    }
}
