package org.capwright.json.schema;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.capwright.words.Text;
import tools.jackson.databind.JsonNode;

/** Reads one or some of the words that a field may hold. */
final class Words {

    private Words() {}

    static Optional<String> one(Given given, List<String> words) {
        JsonNode value = given.node();
        if (value.isString() && words.contains(value.stringValue())) {
            return Optional.of(value.stringValue());
        }
        Optional<String> near = value.isString() ? NearestWord.to(value.stringValue(), words) : Optional.empty();
        given.refuse(
                Text.of(near.isPresent() ? "must be one of {words}; did you mean {near}?" : "must be one of {words}")
                        .with("words", Text.names(words))
                        .with("near", near.orElse("")));
        return Optional.empty();
    }

    /** Those that are right, in the order given. */
    static List<String> some(Given given, List<String> words) {
        JsonNode value = given.node();
        if (!value.isArray() || value.size() > words.size()) {
            given.refuse(Text.of("must be a list of some of {words}, each once").with("words", Text.names(words)));
            return List.of();
        }
        List<String> right = new ArrayList<>();
        for (int i = 0; i < value.size(); i++) {
            Given word = given.item(i);
            if (!word.node().isString() || !words.contains(word.node().stringValue())) {
                given.found()
                        .add(word.where(), Text.of("must be one of {words}").with("words", Text.names(words)));
            } else if (right.contains(word.node().stringValue())) {
                word.refuse("is listed twice");
            } else {
                right.add(word.node().stringValue());
            }
        }
        return right;
    }
}
