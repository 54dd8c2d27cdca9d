package org.capwright.json.schema;

import org.capwright.json.problem.FoundViolations;
import org.capwright.words.Text;
import tools.jackson.databind.JsonNode;

/**
 * A value of a request, and where it stands.
 *
 * @param node the value, not null
 * @param where a JSON pointer
 * @param found gathers what is wrong
 */
record Given(JsonNode node, String where, FoundViolations found) {

    /** One value of this list. */
    Given item(int place) {
        return new Given(node.get(place), where + "/" + place, found);
    }

    void refuse(String reason) {
        refuse(Text.of(reason));
    }

    void refuse(Text reason) {
        Texts.shown(node).ifPresentOrElse(shown -> found.add(where, reason, shown), () -> found.add(where, reason));
    }
}
