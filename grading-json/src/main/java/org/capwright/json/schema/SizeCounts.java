package org.capwright.json.schema;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.capwright.json.problem.RequestPlaces;
import org.capwright.words.Text;
import tools.jackson.databind.JsonNode;

/** Reads a whole number for each of some sizes. */
final class SizeCounts {

    private SizeCounts() {}

    /** The numbers that are right, in the order of the sizes. */
    static Map<String, Integer> read(Given given, FieldType.PerSize kind, List<String> sizes) {
        JsonNode value = given.node();
        if (!value.isObject() || value.isEmpty()) {
            given.refuse("must be an object with a whole number per size, such as {\"40\": 2}");
            return Map.of();
        }
        for (Map.Entry<String, JsonNode> entry : value.properties()) {
            // Where the sizes themselves are wrong, nothing is known of their names.
            if (!sizes.isEmpty() && !sizes.contains(entry.getKey())) {
                given.found()
                        .add(
                                given.where() + "/" + RequestPlaces.escaped(Texts.shortened(entry.getKey())),
                                Text.of("must be one of the sizes {sizes}").with("sizes", Text.names(sizes)));
            }
        }
        Map<String, Integer> right = new LinkedHashMap<>();
        for (String size : sizes) {
            JsonNode number = value.get(size);
            if (number != null && !number.isNull()) {
                Given one = new Given(number, given.where() + "/" + RequestPlaces.escaped(size), given.found());
                Numbers.whole(one, kind.count()).ifPresent(count -> right.put(size, count));
            }
        }
        return right;
    }
}
