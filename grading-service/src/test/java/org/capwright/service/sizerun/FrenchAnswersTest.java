package org.capwright.service.sizerun;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;
import org.capwright.json.problem.RefusedRequestException;
import org.capwright.json.style.SizeRunReader;
import org.capwright.json.style.SizeRunRequest;
import org.capwright.service.http.JsonMapping;
import org.capwright.words.Language;
import org.junit.jupiter.api.Test;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;

/** Whatever a request asks for, what is said to a French reader has no English sentence in it. */
class FrenchAnswersTest {

    private static final Language FRENCH = Language.find("fr").orElseThrow();

    /** Words that no French sentence of ours has. */
    private static final Pattern ENGLISH = Pattern.compile(
            "(?i)\\b(the|of|and|with|which|than|must|sleeve|seam|pleats|missing|would|between|each|give|leave)\\b");

    /** Names that stay as they are: of sources, of fields that a request has. */
    private static final Pattern NAMES =
            Pattern.compile("connus ici\u00a0: .*|les champs .*|l’un de\u00a0: [^;]*|vouliez-vous dire \\S+");

    /** Fields of an answer that people read. */
    private static final Set<String> READ =
            Set.of("message", "remedy", "sewingOrder", "cautions", "definition", "words", "label");

    private static final JsonMapper MAPPER = JsonMapping.mapper();

    @Test
    void noEnglishSentenceIsSaidToAFrenchReader() throws Exception {
        JsonNode gown = MAPPER.readTree(Files.readString(Path.of("../examples/choir-gown.json")));
        Set<String> english = new TreeSet<>();
        Set<String> said = new TreeSet<>();
        int drafted = 0;
        for (int seed = 0; seed < Integer.getInteger("requests", 160); seed++) {
            ObjectNode request = (ObjectNode) gown.deepCopy();
            request.put("name", "Aube");
            Random random = new Random(seed);
            // Some are left as they are, but for a table to be compared with, so that there is something to draw.
            request.put("sizeTable", "women-en-13402-3-bust");
            for (int i = seed % 32 == 0 ? -1 : random.nextInt(4); i >= 0; i--) {
                change(request, random);
            }
            try {
                SizeRunRequest order = SizeRunReader.read(request).in(FRENCH);
                // Most are refused before anything is drawn; of the others a part is drawn.
                if (seed % 16 == 0) {
                    read(MAPPER.valueToTree(SizeRunService.answer(SizeRunService.draft(order))), "", said);
                    drafted++;
                } else {
                    SizeRunService.draft(order);
                }
            } catch (RefusedRequestException e) {
                e.violations()
                        .forEach(violation ->
                                said.add(violation.in(FRENCH).reason().toString()));
            }
        }
        for (String text : said) {
            if (ENGLISH.matcher(NAMES.matcher(text).replaceAll("")).find()) {
                english.add(text);
            }
        }
        assertEquals(Set.of(), english);
        assertTrue(drafted > 2 && said.size() > 80, drafted + " drafted, " + said.size() + " texts");
    }

    private static void read(JsonNode node, String name, Set<String> into) {
        if (node.isString() && READ.contains(name)) {
            into.add(node.stringValue());
        }
        if (node.isArray()) {
            node.forEach(item -> read(item, name, into));
        }
        node.properties().forEach(entry -> read(entry.getValue(), entry.getKey(), into));
    }

    /** Changes, spoils or takes away one value somewhere in the request. */
    private static void change(ObjectNode request, Random random) {
        JsonNode at = request;
        while (true) {
            List<String> names = new ArrayList<>(at.propertyNames());
            if (at instanceof ArrayNode list) {
                list.set(random.nextInt(list.size()), random.nextBoolean() ? list.get(0) : MAPPER.valueToTree(-7));
                return;
            }
            if (names.isEmpty()) {
                return;
            }
            names.remove("name");
            String name = names.get(random.nextInt(names.size()));
            JsonNode value = at.get(name);
            if (value.isContainer() && !value.isEmpty() && random.nextInt(6) > 0) {
                at = value;
                continue;
            }
            ObjectNode object = (ObjectNode) at;
            switch (random.nextInt(9)) {
                case 0 -> object.remove(name);
                case 1 -> object.put(name, "quelque chose");
                case 2 -> object.set(name, MAPPER.createArrayNode());
                case 3 -> object.put(name + "x", 1);
                default -> {
                    if (value.isNumber()) {
                        object.put(
                                name,
                                value.asDouble() * (random.nextInt(5) == 0 ? 9 : 0.3 + 1.4 * random.nextDouble()));
                    } else {
                        object.putNull(name);
                    }
                }
            }
            return;
        }
    }
}
