package org.capwright.json.style;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import org.capwright.draft.Overlay;
import org.capwright.draft.pleat.PleatLayout;
import org.capwright.grade.GradedSize;
import org.capwright.json.StrictJson;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ObjectNode;

/** A garment ordered in a size is cut from the pieces that the size has in its run: the number of pleats that follows from a depth is that of the base size, or holds in every size. */
class SizeAloneTest {

    private static final JsonMapper MAPPER = StrictJson.mapper().build();

    @ParameterizedTest
    @ValueSource(strings = {"{\"depth\":2.2}", "{\"greatestDepth\":2.2}"})
    void aSizeByItselfHasThePleatsOfItsRun(String pleats) throws IOException {
        ObjectNode body = (ObjectNode) MAPPER.readTree(Path.of("..", "examples", "choir-gown.json"));
        ((ObjectNode) body.get("overlay")).set("pleats", MAPPER.readTree(pleats));
        ((ObjectNode) body.get("grade")).put("rise", 0.9);
        SizeRunRequest whole = SizeRunReader.read(body);
        for (GradedSize size : drafted(whole)) {
            GradedSize alone = drafted(whole.alone(size)).get(0);
            assertEquals(layout(size), layout(alone), size.label());
        }
    }

    private static List<GradedSize> drafted(SizeRunRequest request) {
        return request.pieces(request.graded()).patterns().run().sizes();
    }

    private static PleatLayout layout(GradedSize size) {
        return size.draft().overlay().flatMap(Overlay::pleats).orElseThrow();
    }
}
