package org.capwright.json.madetomeasure;

import static org.junit.jupiter.api.Assertions.assertDoesNotThrow;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.io.IOException;
import java.nio.file.Path;
import org.capwright.json.StrictJson;
import org.capwright.json.problem.FieldViolation;
import org.capwright.json.problem.RefusedRequestException;
import org.capwright.quantity.InvalidMeasuresException;
import org.junit.jupiter.api.Test;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ObjectNode;

/** A range that is told for an ease is put into that field again: what is refused is the sum of ease and measurement, and the field holds the ease alone. */
class EaseRangesTest {

    private static final JsonMapper MAPPER = StrictJson.mapper().build();

    private static ObjectNode order(String ease, double value) throws IOException {
        ObjectNode order = (ObjectNode) MAPPER.readTree(Path.of("..", "examples", "made-to-measure.json"));
        ((ObjectNode) order.get("wearer")).put("wristGirth", 16);
        ((ObjectNode) order.get("ease")).put(ease, value);
        return order;
    }

    private static void draft(ObjectNode order) {
        MeasureRequest read = MeasureReader.read(order);
        try {
            read.run().graded();
        } catch (InvalidMeasuresException e) {
            read.places().refuse(read.run().refused(e), read.run().unit());
        }
    }

    @Test
    void theGreatestWristEaseIsAnEaseAndWorks() throws IOException {
        RefusedRequestException refused = assertThrows(RefusedRequestException.class, () -> draft(order("wrist", 90)));
        FieldViolation wide = refused.violations().get(0);
        assertEquals("/ease/wrist", wide.field());
        assertEquals(90.0, wide.value().orElseThrow());
        // The elbow is 26 cm and 15 %, 29.9 cm; the wrist girth is 16 cm.
        assertEquals(13.9, wide.maximum().orElseThrow(), 1e-3);
        assertDoesNotThrow(() -> draft(order("wrist", wide.maximum().orElseThrow())));
    }
}
