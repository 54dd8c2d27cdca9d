package org.capwright.service.rules;

import java.util.List;
import org.capwright.json.schema.FieldType;
import org.capwright.json.schema.RequestSchema;
import org.capwright.json.schema.SchemaField;
import org.capwright.json.style.SizeRunSchema;
import org.capwright.json.tables.TableSchema;

/** The body of {@code POST /v1/grade-rules}. The style is declared as in a size run. */
public final class RulesSchema {

    static final String CONSTANT = "constant";
    static final String PERCENT = "percent";
    static final String GROWING = "growing";
    static final String HELD = "held";
    static final String AS_THE_ARM = "asTheArm";
    static final String STATED = "stated";

    /** Bounds of {@link org.capwright.grade.derive.EasePolicy.Growing}, mm. */
    private static final double GREATEST_EASE_GROWTH = 30;

    /** Bounds of {@link org.capwright.grade.derive.LengthPolicy.Stated}, mm. */
    private static final double GREATEST_LENGTH_GROWTH = 50;

    static final RequestSchema EASE = RequestSchema.of(
            "EaseOverSizes",
            "How the ease over the body goes with the size, at bicep, armhole, elbow and wrist.",
            List.of(
                    SchemaField.required(
                                    "policy",
                                    FieldType.Choice.of(CONSTANT, PERCENT, GROWING),
                                    "The same length in every size; the same share of the body in every size; or a"
                                            + " length that grows from size to size.")
                            .example(CONSTANT),
                    SchemaField.optional(
                                    "perSize",
                                    new FieldType.Length(-GREATEST_EASE_GROWTH, GREATEST_EASE_GROWTH),
                                    "How much the ease grows from each size to the next; needed with growing, refused"
                                            + " without. Negative for less ease in larger sizes.")
                            .example(0.2)));

    static final RequestSchema LENGTH = RequestSchema.of(
            "LengthOverSizes",
            "How the sleeve length goes with the size.",
            List.of(
                    SchemaField.required(
                                    "policy",
                                    FieldType.Choice.of(HELD, AS_THE_ARM, STATED),
                                    "The same in every size; as the arm length of the table, with its chance ups and"
                                            + " downs; or a stated growth.")
                            .example(STATED),
                    SchemaField.optional(
                                    "perSize",
                                    new FieldType.Length(-GREATEST_LENGTH_GROWTH, GREATEST_LENGTH_GROWTH),
                                    "Growth from each size to the next; needed with stated, refused without.")
                            .example(0.5)));

    /** The whole body. */
    public static final RequestSchema REQUEST = RequestSchema.of(
            "GradeRulesRequest",
            "A style in its base size, bodies, and how the ease goes with the size.",
            List.of(
                    SchemaField.required(
                            "sizeRun",
                            new FieldType.Nested(SizeRunSchema.REQUEST),
                            "The style in its base size. Rules in its grade for dimensions that are derived are"
                                    + " replaced, the others stay."),
                    SchemaField.optional(
                                    "sizeTable",
                                    TableSchema.ID_OR_TABLE,
                                    "Id of the size table of bodies (GET /v1/size-tables), or a table of your own."
                                            + " That of the size run if left out.")
                            .example("women-en-13402-3-bust"),
                    SchemaField.optional("ease", new FieldType.Nested(EASE), EASE.meaning() + " Constant if left out."),
                    SchemaField.optional(
                            "length",
                            new FieldType.Nested(LENGTH),
                            LENGTH.meaning()
                                    + " If left out, as the arm where stature orders the table, else as the size run has it: arm length"
                                    + " follows stature and hardly the bust."),
                    SchemaField.optional(
                            "capEase",
                            FieldType.Choice.of("length", "share"),
                            "What of the base size's cap ease is kept in every size: the length, or the share of the"
                                    + " armhole. The cap height is fitted to it. Length if left out."),
                    SchemaField.optional(
                            "gaps",
                            FieldType.Choice.of("survey", "refuse"),
                            "Where the table has no figure: taken from the public survey of women and marked as"
                                    + " estimated, if the table is of women; or refused. Survey if left out."),
                    SchemaField.optional(
                            "increments",
                            FieldType.Choice.of("even", "bySize"),
                            "Even: one increment on the grid that breaks only where the bodies or the checks demand"
                                    + " it, all rules together under the checks that judge them. By size: the growth of"
                                    + " every size rounded by itself, never off by more than half a step, with the table's"
                                    + " chance ups and downs. Even if left out."),
                    SchemaField.optional(
                                    "grid",
                                    new FieldType.Step(0.01, 100),
                                    "Grid of the growth from the base size, with its unit: \"1 mm\", \"0.5 cm\", \"1/8"
                                            + " in\". 1 mm, 0.1 cm or 1/8"
                                            + " in, as the units are, if left out.")
                            .example("1 mm")));

    private RulesSchema() {}
}
