package org.capwright.service.styles;

import java.util.ArrayList;
import java.util.List;
import org.capwright.json.madetomeasure.MeasureSchema;
import org.capwright.json.order.StyleDocument;
import org.capwright.json.schema.FieldType;
import org.capwright.json.schema.RequestSchema;
import org.capwright.json.schema.SchemaField;
import org.capwright.json.style.SizeRunSchema;

/** The body of a style. */
final class StyleSchema {

    static final RequestSchema STYLE = RequestSchema.of(
            "Style",
            "A style as it is kept: the body of POST /v1/size-runs, and the ease by which it is made to measure. Where"
                    + " it has no revision of its own, the number of its revision stands on every file.",
            fields());

    private StyleSchema() {}

    private static List<SchemaField> fields() {
        List<SchemaField> fields =
                new ArrayList<>(SizeRunSchema.REQUEST.fields().values());
        fields.add(SchemaField.optional(
                StyleDocument.EASE,
                new FieldType.Nested(MeasureSchema.EASE_POLICY),
                MeasureSchema.EASE_POLICY.meaning()
                        + " Orders by measurements use it; one that gives an ease of its own uses that. None"
                        + " if left out."));
        return List.copyOf(fields);
    }
}
