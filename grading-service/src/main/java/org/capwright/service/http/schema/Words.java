package org.capwright.service.http.schema;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import tools.jackson.databind.JsonNode;

/** Reads one or some of the words that a field may hold. */
final class Words {

    private Words() {}

    static Optional<String> one(Given given, List<String> words) {
        JsonNode value = given.node();
        if (value.isString() && words.contains(value.stringValue())) {
            return Optional.of(value.stringValue());
        }
        String near = value.isString()
                ? NearestWord.to(value.stringValue(), words)
                        .map(word -> "; did you mean " + word + "?")
                        .orElse("")
                : "";
        given.refuse("must be one of " + String.join(", ", words) + near);
        return Optional.empty();
    }

    /** Those that are right, in the order given. */
    static List<String> some(Given given, List<String> words) {
        JsonNode value = given.node();
        if (!value.isArray() || value.size() > words.size()) {
            given.refuse("must be a list of some of " + String.join(", ", words) + ", each once");
            return List.of();
        }
        List<String> right = new ArrayList<>();
        for (int i = 0; i < value.size(); i++) {
            Given word = given.item(i);
            if (!word.node().isString() || !words.contains(word.node().stringValue())) {
                given.found().add(word.where(), "must be one of " + String.join(", ", words));
            } else if (right.contains(word.node().stringValue())) {
                word.refuse("is listed twice");
            } else {
                right.add(word.node().stringValue());
            }
        }
        return right;
    }
}
