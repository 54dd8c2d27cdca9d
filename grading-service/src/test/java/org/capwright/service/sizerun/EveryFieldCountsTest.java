package org.capwright.service.sizerun;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import java.io.IOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import org.capwright.json.schema.FieldType;
import org.capwright.json.schema.RequestSchema;
import org.capwright.json.schema.SchemaField;
import org.capwright.json.style.SizeRunReader;
import org.capwright.json.style.SizeRunRequest;
import org.capwright.json.style.SizeRunSchema;
import org.capwright.json.style.SizeRunWriter;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.parallel.Execution;
import org.junit.jupiter.api.parallel.ExecutionMode;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import tools.jackson.databind.JsonNode;

/** No field of a request is ignored: another value gives other bytes in at least one form of the answer, and what was read is read again from what is written. */
@Execution(ExecutionMode.CONCURRENT)
class EveryFieldCountsTest {

    /** Two merge patches on the demo per field that differ in that field alone; both must be accepted. */
    private static final Map<String, List<String>> PAIRS = new LinkedHashMap<>();

    private static void pair(String field, String one, String other) {
        PAIRS.put(field, List.of(one, other));
    }

    /** Values at the field alone, upon what else the field needs. */
    private static void values(String field, String base, String one, String other) {
        pair(field, with(base, field, one), with(base, field, other));
    }

    private static String with(String base, String field, String value) {
        String[] path = field.substring(1).split("/");
        StringBuilder patch = new StringBuilder();
        for (String step : path) {
            patch.append("{\"").append(step).append("\":");
        }
        patch.append(value).append("}".repeat(path.length));
        return Requests.merged(Requests.MAPPER.readTree(base), Requests.MAPPER.readTree(patch.toString()))
                .toString();
    }

    static {
        String halves =
                "{\"sleeve\":{\"capHeight\":{},\"front\":{\"capEase\":\"4%\"},\"back\":{\"capEase\":\"4%\"}},\"grade\":{\"capHeight\":{}}}"
                        .replace("{}", "\"REMOVE\"");
        values("/name", "{}", "\"A\"", "\"B\"");
        values("/revision", "{}", "\"1\"", "\"2\"");
        values("/baseSize", "{}", "\"38\"", "\"40\"");
        values("/sizes", "{}", "[\"36\",\"38\",\"40\",\"42\",\"44\"]", "[\"35\",\"38\",\"40\",\"42\",\"44\"]");
        pair(
                "/units",
                "{}",
                "{\"units\":\"in\",\"sleeve\":{\"bicep\":14,\"length\":24,\"capHeight\":5,\"capOutward\":0.7,\"capInward\":0.5,\"armhole\":18},"
                        + "\"overlay\":{\"rise\":5,\"length\":13,\"frontGap\":2,\"backGap\":2},\"underSleeve\":{\"elbow\":11,\"wrist\":8},"
                        + "\"seamAllowance\":0.5,\"grade\":{\"bicep\":0.5,\"length\":0.2,\"capHeight\":0.1,\"armhole\":0.6}}");
        values("/sleeve/bicep", "{}", "36", "36.5");
        values("/sleeve/length", "{}", "60", "61");
        values("/sleeve/capHeight", "{}", "13.5", "13.6");
        values("/sleeve/capOutward", "{}", "1.9", "1.8");
        values("/sleeve/capInward", "{}", "1.2", "1.1");
        values("/sleeve/armhole", "{}", "45", "45.5");
        values(
                "/sleeve/capEase",
                "{\"sleeve\":{\"capHeight\":\"REMOVE\"},\"grade\":{\"capHeight\":\"REMOVE\"}}",
                "\"4%\"",
                "1");
        values("/sleeve/front/width", "{}", "17.5", "17.8");
        values("/sleeve/front/capOutward", "{}", "1.9", "1.7");
        values("/sleeve/front/capInward", "{}", "1.2", "1.3");
        values("/sleeve/front/armhole", "{}", "22", "22.5");
        values("/sleeve/front/capEase", halves, "\"4%\"", "1");
        values("/sleeve/back/capOutward", "{}", "1.9", "1.7");
        values("/sleeve/back/capInward", "{}", "1.2", "1.3");
        values("/sleeve/back/armhole", "{}", "22", "22.5");
        values("/sleeve/back/capEase", halves, "\"4%\"", "1");
        values("/overlay/rise", "{}", "14", "13");
        values("/overlay/fullness", "{\"overlay\":{\"rise\":\"REMOVE\"}}", "2", "1.9");
        values("/overlay/length", "{}", "34", "35");
        pair("/overlay/hem", "{}", "{\"overlay\":{\"hem\":\"level\"}}");
        values("/overlay/hemSagitta", "{\"overlay\":{\"hem\":\"bowed\"}}", "1", "2");
        values("/overlay/sideDepth", "{}", "0", "3");
        values("/overlay/extraWidth", "{}", "0", "2");
        values("/overlay/join", "{}", "0.75", "0.8");
        values("/overlay/frontGap", "{}", "6", "5");
        values("/overlay/backGap", "{}", "6", "5");
        values("/overlay/pleats/count", "{}", "8", "10");
        values("/overlay/pleats/depth", "{\"overlay\":{\"pleats\":{\"count\":\"REMOVE\"}}}", "2", "1.2");
        values("/overlay/pleats/greatestDepth", "{\"overlay\":{\"pleats\":{\"count\":\"REMOVE\"}}}", "2", "1.2");
        values("/overlay/pleats/kind", "{}", "\"knife\"", "\"box\"");
        values("/overlay/pleats/direction", "{}", "\"front\"", "\"back\"");
        values("/overlay/pleats/flatZone", "{}", "0", "1");
        values("/overlay/pleats/flatZone/front", "{}", "0", "1");
        values("/overlay/pleats/flatZone/back", "{}", "0", "1");
        values("/underSleeve/elbow", "{}", "28", "27");
        values("/underSleeve/wrist", "{}", "19", "18");
        values("/underSleeve/elbowLevel", "{}", "20", "22");
        values("/underSleeve/shaping", "{}", "\"tapered\"", "\"elbowDart\"");
        values("/underSleeve/elbowDart", "{\"underSleeve\":{\"shaping\":\"elbowDart\"}}", "1.5", "2");
        values("/underSleeve/elbowDartLength", "{\"underSleeve\":{\"shaping\":\"elbowDart\"}}", "6", "7");
        values("/underSleeve/elbowEase", "{\"underSleeve\":{\"shaping\":\"easedSeam\"}}", "0.8", "1");
        values("/underSleeve/handGirth", "{}", "21", "22");
        values("/sizeTable", "{}", "\"women-en-13402-3-bust\"", "\"ansur-2012-women-by-stature\"");
        values("/seamAllowance", "{}", "1", "1.5");
        values("/seamAllowance/armhole", "{\"seamAllowance\":{}}", "1", "1.5");
        values("/seamAllowance/attachedEdge", "{\"seamAllowance\":{}}", "1", "1.5");
        values("/seamAllowance/sideSeam", "{\"seamAllowance\":{}}", "1", "1.5");
        values("/seamAllowance/hem", "{\"seamAllowance\":{}}", "1", "1.5");
        values("/corners", "{}", "\"mitred\"", "\"bevelled\"");
        values("/turnOfCloth", "{}", "0.2", "0.3");
        values("/interfacingOverlap", "{}", "0", "0.2");
        values("/halves", "{}", "\"onFold\"", "\"whole\"");
        values("/pleatNotches", "{}", "\"cutEdge\"", "\"none\"");
        values("/drillHoles", "{}", "\"none\"", "\"pleatsAndDarts\"");
        values("/strips", "{}", "\"words\"", "\"pieces\"");
        values("/pleatInterfacing", "{}", "\"through\"", "\"cutAway\"");
        String thick = "{\"thickness\":{\"main\":0.05,\"lining\":0.02,\"interfacing\":0.03}}";
        values("/thickness/main", thick, "0.05", "0.06");
        values("/thickness/lining", thick, "0.02", "0.03");
        values("/thickness/interfacing", thick, "0.03", "0.04");
        values("/align", "{}", "\"apex\"", "\"underarm\"");
        values("/layout", "{}", "\"nest\"", "\"blocks\"");
        values("/rounding", "{}", "\"1 mm\"", "\"1 cm\"");
        values("/paper/format", "{}", "\"a4\"", "\"letter\"");
        values("/paper/width", "{\"paper\":{\"format\":\"roll\"}}", "90", "120");
        values("/paper/sizes", "{}", "[\"40\"]", "[\"40\",\"42\"]");
        values("/paper/ground", "{\"paper\":{\"format\":\"projector\"}}", "\"dark\"", "\"light\"");
        // Pictures of one dot, black and white.
        values(
                "/wornPicture",
                "{}",
                "\"iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAAAAAA6fptVAAAACklEQVR4nGNgAAAAAgABSK+kcQAAAABJRU5ErkJggg==\"",
                "\"iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAAAAAA6fptVAAAACklEQVR4nGP4DwABAQEAsTj2FAAAAABJRU5ErkJggg==\"");
        values("/plotter/width", "{}", "90", "120");
        materials();
        growth();
    }

    private static void materials() {
        pair(
                "/materials/fabrics",
                "{\"materials\":{\"fabrics\":[{\"material\":\"main\",\"width\":140}]}}",
                "{\"materials\":{\"fabrics\":[{\"material\":\"main\",\"width\":140},{\"material\":\"lining\",\"width\":140}]}}");
        fabric("material", "\"main\"", "\"lining\"");
        fabric("width", "140", "150");
        fabric("laying", "\"open\"", "\"folded\"");
        fabric("nap", "\"with\"", "\"without\"");
        fabric("shrinkageLengthwise", "0", "0.03");
        fabric("shrinkageCrosswise", "0", "0.03");
        fabric("waste", "0", "0.05");
        fabric("selvedge", "1", "2");
        fabric("gap", "0.5", "1");
        fabric("step", "5", "7");
        String cloth = "{\"materials\":{\"fabrics\":[{\"material\":\"interfacing\",\"width\":90}]}}";
        values("/materials/trimming/waste", cloth, "0.05", "0.2");
        values("/materials/trimming/step", cloth, "10", "7");
        values("/materials/order", cloth, "{\"40\":1}", "{\"40\":2}");
        String order = "{\"materials\":{\"fabrics\":[{\"material\":\"main\",\"width\":150,\"laying\":\"open\"}],"
                + "\"order\":{\"36\":1,\"40\":2,\"44\":2}}}";
        values("/materials/effort", order, "\"quick\"", "\"usual\"");
    }

    private static void fabric(String field, String one, String other) {
        String head = "{\"materials\":{\"fabrics\":[{\"material\":\"interfacing\",\"width\":90,\"" + field + "\":";
        String start = field.equals("material")
                ? "{\"materials\":{\"fabrics\":[{\"width\":140,\"material\":"
                : field.equals("width")
                        ? "{\"materials\":{\"fabrics\":[{\"material\":\"interfacing\",\"width\":"
                        : head;
        pair("/materials/fabrics/*/" + field, start + one + "}]}}", start + other + "}]}}");
    }

    private static void growth() {
        String halves = "{\"sleeve\":{\"front\":{\"width\":17.5,\"capOutward\":1.9,\"capInward\":1.2,\"armhole\":22}},"
                + "\"overlay\":{\"sideDepth\":3,\"hem\":\"bowed\",\"hemSagitta\":1,\"extraWidth\":2},\"underSleeve\":{\"elbowLevel\":20}}";
        String backs = "{\"sleeve\":{\"back\":{\"capOutward\":1.9,\"capInward\":1.2}}}";
        String depth = "{\"overlay\":{\"pleats\":{\"count\":\"REMOVE\",\"depth\":2}}}";
        String dart =
                "{\"underSleeve\":{\"shaping\":\"elbowDart\",\"elbowDart\":1.5,\"elbowDartLength\":7,\"handGirth\":22}}";
        String ease = "{\"underSleeve\":{\"shaping\":\"easedSeam\",\"elbowEase\":1}}";
        for (String name : SizeRunSchema.GRADE.fields().keySet()) {
            String base = switch (name) {
                case "backCapOutward", "backCapInward" -> backs;
                case "pleatDepth" -> depth;
                case "elbowDart", "elbowDartLength", "handGirth" -> dart;
                case "elbowEase" -> ease;
                default -> halves;
            };
            values("/grade/" + name, base, name.equals("pleatDepth") ? "0.4" : "0.1", "0");
        }
    }

    static Set<String> fields() {
        return PAIRS.keySet();
    }

    @Test
    void everyDeclaredFieldIsTried() {
        Set<String> declared = new TreeSet<>();
        collect(SizeRunSchema.REQUEST, "", declared);
        assertEquals(declared, new TreeSet<>(PAIRS.keySet()));
    }

    private static void collect(RequestSchema shape, String at, Set<String> into) {
        for (SchemaField field : shape.fields().values()) {
            String pointer = at + "/" + field.name();
            if (field.kind() instanceof FieldType.Nested nested) {
                collect(nested.schema(), pointer, into);
            } else {
                into.add(pointer);
                if (field.kind() instanceof FieldType.LengthOrNested either) {
                    collect(either.schema(), pointer, into);
                } else if (field.kind() instanceof FieldType.Objects list) {
                    collect(list.schema(), pointer + "/*", into);
                }
            }
        }
    }

    @ParameterizedTest
    @MethodSource("fields")
    void anotherValueGivesAnotherAnswer(String field) throws IOException {
        List<String> pair = PAIRS.get(field);
        SizeRunResult one = result(pair.get(0));
        SizeRunResult other = result(pair.get(1));
        List<SizeRunFormat> renderings = List.of(
                new PieceFormats().csvFormat(),
                new DxfFormat(),
                new JsonFormat(Requests.MAPPER),
                new PieceFormats().svgFormat(),
                new PieceFormats().pdfFormat(),
                new PieceFormats().hpglFormat());
        List<String> differing = new ArrayList<>();
        for (SizeRunFormat rendering : renderings) {
            if (!Arrays.equals(rendering.render(one), rendering.render(other))) {
                differing.add(rendering.extension());
                break;
            }
        }
        assertFalse(differing.isEmpty(), field);
    }

    private static SizeRunResult result(String patch) {
        JsonNode body = Requests.patched(patch.replace("\"REMOVE\"", "null"));
        SizeRunRequest read = SizeRunReader.read(body);
        assertEquals(read, again(read), () -> "written and read again: " + SizeRunWriter.written(read));
        return SizeRunResult.of(read);
    }

    private static SizeRunRequest again(SizeRunRequest read) {
        return SizeRunReader.read(
                Requests.MAPPER.readTree(Requests.MAPPER.writeValueAsString(SizeRunWriter.written(read))));
    }
}
