package org.capwright.service.sizerun;

import java.util.Map;
import org.capwright.service.http.JsonMapping;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ObjectNode;

/** Requests to start from. The style is invented. */
final class Requests {

    static final JsonMapper MAPPER = JsonMapping.mapper();

    static final String DEMO = """
            {"units":"cm","baseSize":"40","sizes":["36","38","40","42","44"],
             "sleeve":{"bicep":36,"length":60,"capHeight":13.5,"capOutward":1.9,"capInward":1.2,"armhole":45},
             "overlay":{"rise":14,"length":34,"hem":"vee","frontGap":6,"backGap":6,"pleats":{"count":8,"kind":"knife"}},
             "underSleeve":{"elbow":28,"wrist":19},
             "grade":{"bicep":1.2,"length":0.5,"capHeight":0.4,"armhole":[1.6,1.6,1.8,1.8]},
             "sizeTable":null,"seamAllowance":1.0,"align":"underarm"}
            """;

    private Requests() {}

    static JsonNode demo() {
        return MAPPER.readTree(DEMO);
    }

    /** The demo changed by a merge patch, RFC 7396: null takes away, anything else replaces. */
    static JsonNode patched(String patch) {
        return merged(demo(), MAPPER.readTree(patch));
    }

    static JsonNode merged(JsonNode target, JsonNode patch) {
        if (!patch.isObject()) {
            return patch;
        }
        ObjectNode result = target.isObject() ? ((ObjectNode) target).deepCopy() : MAPPER.createObjectNode();
        for (Map.Entry<String, JsonNode> entry : patch.properties()) {
            if (entry.getValue().isNull()) {
                result.remove(entry.getKey());
            } else {
                JsonNode old = result.path(entry.getKey());
                result.set(entry.getKey(), merged(old, entry.getValue()));
            }
        }
        return result;
    }
}
