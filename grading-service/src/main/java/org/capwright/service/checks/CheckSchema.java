package org.capwright.service.checks;

import java.util.List;
import java.util.stream.Stream;
import org.capwright.check.Threshold;
import org.capwright.json.schema.FieldType;
import org.capwright.json.schema.RequestSchema;
import org.capwright.json.schema.SchemaField;
import org.capwright.json.style.SizeRunSchema;
import org.capwright.quantity.Quantity;

/** The JSON body of {@code POST /v1/checks}. */
public final class CheckSchema {

    static final RequestSchema THRESHOLDS = RequestSchema.of(
            "CheckThresholds",
            "Limits of the label, lengths in the unit of the size run. The usual limit where one is left out.",
            Stream.of(Threshold.values()).map(CheckSchema::field).toList());

    /** The whole body. */
    public static final RequestSchema REQUEST = RequestSchema.of(
            "CheckRequest",
            "A grade to be checked.",
            List.of(
                    SchemaField.required(
                            "sizeRun", new FieldType.Nested(SizeRunSchema.REQUEST), SizeRunSchema.REQUEST.meaning()),
                    SchemaField.optional("thresholds", new FieldType.Nested(THRESHOLDS), THRESHOLDS.meaning()),
                    SchemaField.optional(
                                    "sizeTable",
                                    SizeRunSchema.REQUEST.field("sizeTable").kind(),
                                    "Id of the size table of bodies (GET /v1/size-tables) to hold the jumps against,"
                                            + " or a table of your own. That of the size run if left out.")
                            .example("women-en-13402-3-bust")));

    /** The part {@code request} of a form with files. */
    public static final RequestSchema UPLOAD = RequestSchema.of(
            "CheckUpload",
            "What is said of the files. Each field may be left out; a file that states a unit or a base size is"
                    + " believed.",
            List.of(
                    SchemaField.optional(
                                    "name",
                                    new FieldType.Text(80),
                                    "Name of the style. Spec table or Outlines if left out.")
                            .example("Choir gown, bell shoulder"),
                    SchemaField.optional(
                                    "units",
                                    FieldType.Choice.of("mm", "cm", "in"),
                                    "Unit of the answer and of the limits. fileUnits, or else mm, if left out.")
                            .example("cm"),
                    SchemaField.optional(
                            "fileUnits",
                            FieldType.Choice.of("mm", "cm", "in"),
                            "Unit of the lengths of a spec table that states none, or one in which its figures are"
                                    + " those of no sleeve; of outlines, before what the drawing states."),
                    RowMapping.FIELD,
                    SchemaField.optional(
                                    "baseSize",
                                    SizeRunSchema.REQUEST.field("baseSize").kind(),
                                    "The base size, where the files do not name it.")
                            .example("40"),
                    SchemaField.optional(
                                    "sizeTable",
                                    SizeRunSchema.REQUEST.field("sizeTable").kind(),
                                    "Id of the size table of bodies (GET /v1/size-tables) to hold the jumps against,"
                                            + " or a table of your own. None if left out.")
                            .example("women-en-13402-3-bust"),
                    SchemaField.optional("thresholds", new FieldType.Nested(THRESHOLDS), THRESHOLDS.meaning())));

    private CheckSchema() {}

    private static SchemaField field(Threshold threshold) {
        return SchemaField.optional(
                threshold.key(),
                threshold.quantity() == Quantity.LENGTH
                        ? new FieldType.Length(threshold.least(), threshold.greatest())
                        : new FieldType.Ratio(threshold.least(), threshold.greatest()),
                "Usual limit: " + threshold.usual() + (threshold.quantity() == Quantity.LENGTH ? " mm" : "")
                        + ". Source: " + threshold.source() + ".");
    }
}
