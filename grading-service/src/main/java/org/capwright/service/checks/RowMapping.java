package org.capwright.service.checks;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.capwright.gradeimport.ForeignOptions;
import org.capwright.json.problem.FieldViolation;
import org.capwright.json.schema.FieldType;
import org.capwright.json.schema.RequestObject;
import org.capwright.json.schema.SchemaField;
import org.capwright.words.Text;
import tools.jackson.core.JacksonException;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** What the sender says of rows or columns of a spec table whose names are not known, or not clear. */
final class RowMapping {

    static final String MAPPING = "mapping";

    private static final FieldType.Dictionary KIND = new FieldType.Dictionary(100, 120, 60);

    private static final String WANTED =
            "must be the code of a point of measure such as bicep, length, capHeight, capLine, armhole, elbow or"
                    + " wrist; a name of the trade such as half bicep, full bicep or bicep (in); or ignore";

    static final SchemaField FIELD = SchemaField.optional(
                    MAPPING,
                    KIND,
                    "What rows or columns of a spec table are, by the names they have there: the code of a point of"
                            + " measure, a name of the trade such as half bicep or bicep (in), or ignore for what is no"
                            + " part of the sleeve.")
            .example(Map.of("Armloch", "armhole"));

    private RowMapping() {}

    /** The mapping of a form. */
    static Map<String, String> of(RequestObject object) {
        Map<String, String> mapping = object.dictionary(MAPPING);
        mapping.forEach((name, meaning) -> {
            if (!ForeignOptions.isMeaning(meaning)) {
                object.refuse(
                        MAPPING,
                        Text.of("{wanted}, not {meaning}")
                                .with("wanted", Text.of(WANTED))
                                .with("meaning", meaning));
            }
        });
        return mapping;
    }

    /** The mapping of a parameter, a JSON object. */
    static Map<String, String> of(Optional<String> parameter, JsonMapper mapper, List<FieldViolation> wrong) {
        Map<String, String> mapping = new LinkedHashMap<>();
        if (parameter.isEmpty()) {
            return mapping;
        }
        JsonNode tree;
        try {
            tree = mapper.readTree(parameter.get());
        } catch (JacksonException e) {
            tree = mapper.nullNode();
        }
        boolean right = tree.isObject()
                && tree.size() <= KIND.most()
                && tree.properties().stream()
                        .allMatch(entry -> !entry.getKey().isBlank()
                                && entry.getKey().length() <= KIND.longestName()
                                && entry.getValue().isString());
        if (!right) {
            wrong.add(FieldViolation.of(
                    MAPPING,
                    Text.of("must be a JSON object of at most {most} texts, such as {\"Armloch\": \"armhole\"}")
                            .with("most", KIND.most()),
                    Optional.empty()));
            return mapping;
        }
        tree.properties().forEach(entry -> {
            String meaning = entry.getValue().stringValue();
            if (meaning.length() > KIND.longestText() || !ForeignOptions.isMeaning(meaning)) {
                wrong.add(FieldViolation.of(MAPPING, WANTED, Optional.of(ForeignBodies.shown(meaning))));
            }
            mapping.put(entry.getKey(), meaning);
        });
        return mapping;
    }
}
