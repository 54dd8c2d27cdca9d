package org.capwright.service.check;

import java.util.List;
import java.util.stream.Stream;
import org.capwright.check.Threshold;
import org.capwright.measure.Quantity;
import org.capwright.service.shape.Field;
import org.capwright.service.shape.Kind;
import org.capwright.service.shape.Shape;
import org.capwright.service.sizerun.SizeRunShape;

/** The JSON body of {@code POST /v1/checks}. */
public final class CheckShape {

    static final Shape THRESHOLDS = Shape.of(
            "CheckThresholds",
            "Limits of the label, lengths in the unit of the size run. The usual limit where one is left out.",
            Stream.of(Threshold.values()).map(CheckShape::field).toList());

    /** The whole body. */
    public static final Shape REQUEST = Shape.of(
            "CheckRequest",
            "A grade to be checked.",
            List.of(
                    Field.required("sizeRun", new Kind.Nested(SizeRunShape.REQUEST), SizeRunShape.REQUEST.meaning()),
                    Field.optional("thresholds", new Kind.Nested(THRESHOLDS), THRESHOLDS.meaning()),
                    Field.optional(
                                    "sizeTable",
                                    SizeRunShape.REQUEST.field("sizeTable").kind(),
                                    "Id of the size table of bodies (GET /v1/size-tables) to hold the jumps against. That of the size"
                                            + " run if left out.")
                            .example("women-en-13402-3-bust")));

    /** What is answered as JSON. */
    public static final Class<?> ANSWER = CheckAnswer.class;

    private CheckShape() {}

    private static Field field(Threshold threshold) {
        return Field.optional(
                threshold.key(),
                threshold.quantity() == Quantity.LENGTH
                        ? new Kind.Length(threshold.least(), threshold.greatest())
                        : new Kind.Ratio(threshold.least(), threshold.greatest()),
                "Usual limit: " + threshold.usual() + (threshold.quantity() == Quantity.LENGTH ? " mm" : "")
                        + ". Source: " + threshold.source() + ".");
    }
}
