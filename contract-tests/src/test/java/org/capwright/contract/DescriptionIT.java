package org.capwright.contract;

import static io.restassured.RestAssured.given;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.atlassian.oai.validator.report.MessageResolver;
import com.atlassian.oai.validator.report.ValidationReport;
import com.atlassian.oai.validator.schema.SchemaValidator;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import io.swagger.v3.oas.models.media.Schema;
import io.swagger.v3.parser.OpenAPIV3Parser;
import io.swagger.v3.parser.core.models.SwaggerParseResult;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.BiConsumer;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** The description as programs read it that make clients from it. What they stumble over was found by running them, see {@link GeneratedClientsIT}. */
class DescriptionIT {

    private static final ObjectMapper MAPPER = new ObjectMapper();

    private static String served;
    private static JsonNode description;

    @BeforeAll
    static void read() throws Exception {
        served = given().get(RunningService.address() + "/v3/api-docs").asString();
        description = MAPPER.readTree(served);
    }

    /** Another reader than those that make clients has nothing to say against it. */
    @Test
    void aParserReadsItWithoutAWord() {
        SwaggerParseResult read = new OpenAPIV3Parser().readContents(served);
        assertEquals(List.of(), read.getMessages());
    }

    /** A choice of schemas becomes a class that does not compile, or an empty one; a list of different entries a set without an order. */
    @Test
    void thereIsNothingThatGeneratorsStumbleOver() {
        List<String> found = new ArrayList<>();
        everywhere(description, "", (path, node) -> {
            for (String word : List.of("oneOf", "anyOf", "not", "uniqueItems")) {
                if (node.has(word)) {
                    found.add(path + "/" + word);
                }
            }
        });
        assertEquals(List.of(), found);
    }

    /** Two types of body on one path make one method: parts of a form stand on a path of their own. */
    @Test
    void aFormWithItsPartsStandsAlone() {
        Set<String> forms = new TreeSet<>();
        description
                .get("paths")
                .properties()
                .forEach(path -> path.getValue().forEach(call -> {
                    JsonNode content = call.path("requestBody").path("content");
                    if (content.path("multipart/form-data").path("schema").has("$ref")) {
                        forms.add(path.getKey());
                        assertEquals(1, content.size(), path.getKey());
                    }
                }));
        assertEquals(Set.of("/v1/checks/uploads"), forms);
        assertTrue(
                description.at("/paths/~1v1~1checks/post/requestBody/content").has("multipart/form-data"));
    }

    /** The class of an answer is made for the first type of its content. */
    @Test
    void filesAreBytesInTheFirstType() {
        int files = 0;
        for (Map.Entry<String, JsonNode> path : description.get("paths").properties()) {
            if (path.getKey().endsWith("/files/{format}")) {
                JsonNode call = path.getValue().elements().next();
                JsonNode first =
                        call.at("/responses/200/content").elements().next().get("schema");
                assertEquals("binary", first.path("format").asText(), path.getKey());
                files++;
            }
        }
        assertEquals(4, files);
    }

    @Test
    void whatMayBeOfSeveralTypesHasAName() {
        Set<String> titles = new TreeSet<>();
        everywhere(description.at("/components/schemas"), "", (path, node) -> {
            if (node.path("title").isTextual() && !node.has("type")) {
                titles.add(node.get("title").asText());
            }
        });
        assertEquals(
                Set.of(
                        "Ease",
                        "FlatZoneOrLength",
                        "Increment",
                        "Length",
                        "LengthOrNull",
                        "OwnSizeTableOrId",
                        "SeamAllowanceOrLength",
                        "SizeName",
                        "SizeNameTo32"),
                titles);
        for (String title : titles) {
            JsonNode schema = description.at("/components/schemas/" + title);
            assertFalse(schema.has("type"), title);
            assertFalse(schema.get("description").asText().isBlank(), title);
        }
    }

    @Test
    void itNamesTheServerThatServesIt() {
        assertEquals(RunningService.address(), description.at("/servers/0/url").asText());
    }

    /** Every example of a body fits its schema, by a validator that we did not write; every problem has one. */
    @Test
    void examplesFitTheirSchemas() {
        SwaggerParseResult read = new OpenAPIV3Parser().readContents(served);
        SchemaValidator validator = new SchemaValidator(read.getOpenAPI(), new MessageResolver());
        List<String> wrong = new ArrayList<>();
        int[] counts = new int[2];
        everywhere(description.get("paths"), "", (path, node) -> {
            if (!node.has("schema")) {
                return;
            }
            List<JsonNode> examples = new ArrayList<>();
            if (node.has("example") && !path.contains("/parameters/")) {
                examples.add(node.get("example"));
            }
            node.path("examples").forEach(example -> examples.add(example.get("value")));
            for (JsonNode example : examples) {
                Schema<?> schema = MAPPER.convertValue(node.get("schema"), Schema.class);
                ValidationReport report = validator.validate(example.toString(), schema, "example");
                report.getMessages().forEach(message -> wrong.add(path + ": " + message.getMessage()));
                counts[path.endsWith("application/problem+json") ? 0 : 1]++;
            }
            if (path.endsWith("application/problem+json") && examples.isEmpty()) {
                wrong.add(path + " has no example");
            }
        });
        assertEquals(List.of(), wrong);
        assertTrue(counts[0] > 100 && counts[1] > 10, counts[0] + " problems, " + counts[1] + " others");
    }

    private static void everywhere(JsonNode node, String path, BiConsumer<String, JsonNode> visitor) {
        if (node.isObject()) {
            visitor.accept(path, node);
            node.properties().forEach(member -> {
                if (!member.getKey().equals("example") && !member.getKey().equals("examples")) {
                    everywhere(member.getValue(), path + "/" + member.getKey(), visitor);
                }
            });
        } else if (node.isArray()) {
            for (int i = 0; i < node.size(); i++) {
                everywhere(node.get(i), path + "/" + i, visitor);
            }
        }
    }
}
