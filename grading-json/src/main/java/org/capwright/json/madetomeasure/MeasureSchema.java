package org.capwright.json.madetomeasure;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.capwright.json.schema.FieldType;
import org.capwright.json.schema.RequestSchema;
import org.capwright.json.schema.SchemaField;
import org.capwright.json.style.SizeRunSchema;
import org.capwright.tables.BodyDimension;
import org.capwright.tables.survey.Survey;

/** The body of {@code POST /v1/made-to-measure}. What it shares with a size run is declared there. */
public final class MeasureSchema {

    /** The size of the run where the order has no name. */
    static final String DEFAULT_LABEL = "made to measure";

    /** For wearers whom no survey describes, such as children. */
    static final String NO_SURVEY = "none";

    /** The surveys that were measured on the relaxed arm, which alone have every girth of the sleeve; the first is the usual one. */
    static final List<Survey> SURVEYS = List.of(Survey.ANSUR_1988_WOMEN, Survey.ANSUR_1988_MEN);

    /** Wide enough for a gown and narrow enough for a knit. Common practice, no source. */
    private static final FieldType.Ease EASE =
            new FieldType.Ease(new FieldType.Length(-100, 1000), new FieldType.Ratio(-0.3, 3));

    private static final String OF_BODY = " A length, or a percentage of the body measurement such as \"15%\".";

    static final RequestSchema WEARER = RequestSchema.of(
            "Wearer",
            "Body measurements of one wearer, by the names of ISO 8559-1. What the sleeve needs and is not here is"
                    + " estimated from what is. None of it is logged, and it is stored with an order on a kept style"
                    + " alone.",
            wearer());

    /** What the finished sleeve measures more than the body. */
    public static final RequestSchema EASE_POLICY = RequestSchema.of(
            "MadeToMeasureEase",
            "What the finished sleeve measures more than the body.",
            List.of(
                    SchemaField.required("bicep", EASE, "Bicep less upper-arm girth." + OF_BODY)
                            .example(8),
                    SchemaField.optional(
                                    "elbow",
                                    EASE,
                                    "Width at the elbow less elbow girth." + OF_BODY
                                            + " If left out, the sides run straight from bicep to wrist.")
                            .example("25%"),
                    SchemaField.optional(
                                    "wrist",
                                    EASE,
                                    "Width at the wrist less wrist girth." + OF_BODY + " Needed with an under-sleeve.")
                            .example(6),
                    SchemaField.optional("length", EASE, "Sleeve length less arm length." + OF_BODY + " 0 if left out.")
                            .example(1),
                    SchemaField.optional(
                                    "armhole",
                                    EASE,
                                    "Armhole of the garment less armscye girth." + OF_BODY
                                            + " Needed where sleeve/armhole is not given.")
                            .example(6),
                    new SchemaField(
                                    "capEase",
                                    sleeve("capEase").kind(),
                                    "Cap line less armhole; a length, or a percentage of the armhole. The cap height is"
                                            + " fitted to it. Left out where sleeve/capHeight is given.",
                                    java.util.Optional.empty(),
                                    false)
                            .example("4%")));

    static final RequestSchema SLEEVE = RequestSchema.of(
            "MadeToMeasureSleeve",
            "What of the base sleeve does not follow from wearer and ease.",
            Stream.of("capHeight", "capOutward", "capInward", "armhole", "front", "back")
                    .map(MeasureSchema::sleeve)
                    .toList());

    static final RequestSchema UNDER_SLEEVE = RequestSchema.of(
            "MadeToMeasureUnderSleeve",
            "What of the under-sleeve does not follow from wearer and ease; an empty object for a plain one.",
            Stream.of("elbowLevel", "shaping", "elbowDart", "elbowDartLength", "elbowEase", "handGirth")
                    .map(name -> nested("underSleeve").field(name))
                    .toList());

    /** Fields that are read as in a size run. */
    static final List<String> SHARED = List.of(
            "name",
            "revision",
            "overlay",
            "seamAllowance",
            "corners",
            "turnOfCloth",
            "interfacingOverlap",
            "halves",
            "pleatNotches",
            "drillHoles",
            "strips",
            "pleatInterfacing",
            "thickness",
            "align",
            "layout",
            "paper",
            "plotter",
            "rounding");

    /** The whole body. */
    public static final RequestSchema REQUEST = RequestSchema.of(
            "MadeToMeasureRequest",
            "One wearer, a style and its ease. Lengths are numbers in the unit named by units, or texts such as"
                    + " \"36.5\" or \"3 1/2\". A field that is null counts as left out; an unknown field is refused.",
            request());

    private MeasureSchema() {}

    private static RequestSchema nested(String field) {
        return ((FieldType.Nested) SizeRunSchema.REQUEST.field(field).kind()).schema();
    }

    private static SchemaField sleeve(String field) {
        return nested("sleeve").field(field);
    }

    private static List<SchemaField> wearer() {
        List<SchemaField> fields = new ArrayList<>();
        for (BodyDimension dimension : BodyDimension.values()) {
            String clause = dimension
                    .isoClause()
                    .map(number -> " ISO 8559-1, " + number + ".")
                    .orElse("");
            fields.add(SchemaField.optional(
                    dimension.id(),
                    new FieldType.Length(
                            dimension.plausible().lower(), dimension.plausible().upper()),
                    dimension.definition() + clause));
        }
        return List.copyOf(fields);
    }

    private static List<SchemaField> request() {
        List<SchemaField> fields = new ArrayList<>();
        fields.add(SizeRunSchema.REQUEST.field("units"));
        fields.add(SchemaField.optional(
                        "order",
                        SizeRunSchema.REQUEST.field("baseSize").kind(),
                        "Name of the order, written on every piece where a size run has the size. \"" + DEFAULT_LABEL
                                + "\" if left out. A number will do; no name of a person is needed.")
                .example("order 1207"));
        fields.add(SchemaField.required("wearer", new FieldType.Nested(WEARER), WEARER.meaning()));
        fields.add(SchemaField.optional(
                        "confirmed",
                        new FieldType.Words(Stream.of(BodyDimension.values())
                                .map(BodyDimension::id)
                                .toList()),
                        "Measurements that were taken again and are right; they are not questioned. None if left out.")
                .example(List.of("upperArmGirth")));
        fields.add(SchemaField.optional(
                "survey",
                FieldType.Choice.of(Stream.concat(SURVEYS.stream().map(Survey::id), Stream.of(NO_SURVEY))
                        .toArray(String[]::new)),
                "The survey by which measurements are questioned, all together, and missing ones estimated; none for a"
                        + " wearer whom neither describes, such as a child: then only what no body has is questioned. "
                        + SURVEYS.get(0).id() + " if left out."));
        fields.add(SchemaField.optional(
                        "sizeTable",
                        SizeRunSchema.REQUEST.field("sizeTable").kind(),
                        "Id of a published size table of bodies (GET /v1/size-tables), or a table of your own. JSON"
                                + " then names its nearest size and what departs from it. None if left out.")
                .example("women-en-13402-3-bust"));
        fields.add(SchemaField.required("ease", new FieldType.Nested(EASE_POLICY), EASE_POLICY.meaning()));
        fields.add(SchemaField.optional("sleeve", new FieldType.Nested(SLEEVE), SLEEVE.meaning()));
        fields.add(SchemaField.optional("underSleeve", new FieldType.Nested(UNDER_SLEEVE), UNDER_SLEEVE.meaning()));
        for (String shared : SHARED) {
            fields.add(SizeRunSchema.REQUEST.field(shared));
        }
        return List.copyOf(fields);
    }
}
