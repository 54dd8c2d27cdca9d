package org.capwright.json.tables;

import java.util.ArrayList;
import java.util.List;
import org.capwright.json.schema.FieldType;
import org.capwright.json.schema.RequestSchema;
import org.capwright.json.schema.SchemaField;
import org.capwright.tables.BodyDimension;
import org.capwright.tables.GarmentDimension;

/** A size table of the caller's own: the body of {@code POST /v1/size-tables}, and {@code sizeTable} wherever an id is taken. */
public final class TableSchema {

    static final int MOST_SIZES = 100;
    static final int LONGEST_LABEL = 32;
    private static final int MOST_ROWS = 40;
    private static final int LONGEST_TEXT = 500;
    private static final int LONGEST_ID = 64;

    /** What is said where a caller says nothing. */
    static final String NOT_STATED = "not stated";

    static final String DEFAULT_ID = "own-table";
    static final String DEFAULT_TITLE = "Own size table";

    static final RequestSchema ROW = RequestSchema.of(
            "OwnSizeTableRow",
            "One dimension over the sizes.",
            List.of(
                    SchemaField.required(
                                    "dimension",
                                    new FieldType.Choice(dimensions()),
                                    "The dimension; each once in a table.")
                            .example("upperArmGirth"),
                    SchemaField.required(
                                    "values",
                                    new FieldType.Gapped(MOST_SIZES),
                                    "One value per size, smallest size first, in the unit of the table; null for a"
                                            + " gap.")
                            .example(List.of(27.5, 28.5, 29.5))));

    /** The table. */
    public static final RequestSchema TABLE = RequestSchema.of(
            "OwnSizeTable",
            "A size table of the caller's own. It is checked (units, plausible ranges, growth that must be monotone,"
                    + " dimensions that must exceed one another) and used for this one answer; nothing of it is kept.",
            List.of(
                    SchemaField.optional(
                                    "id",
                                    new FieldType.Text(LONGEST_ID),
                                    "Short name of small letters, digits and hyphens that no published table has. \""
                                            + DEFAULT_ID + "\" if left out.")
                            .example("workshop-women"),
                    SchemaField.optional("title", text(), "Title for people. \"" + DEFAULT_TITLE + "\" if left out."),
                    SchemaField.required(
                                    "source", text(), "Where the figures come from; it stands beside every figure.")
                            .example("Measured in the workshop, 2024 to 2026"),
                    SchemaField.optional(
                            "licence", text(), "Under what terms the figures may be used. Not stated if left out."),
                    SchemaField.optional(
                                    "figureType",
                                    text(),
                                    "Whom the sizes are made for. Where it has the word women, the public survey of"
                                            + " women gives a second opinion. Not stated if left out.")
                            .example("adult women"),
                    SchemaField.optional("population", text(), "Who was measured or is meant. Not stated if left out."),
                    SchemaField.required(
                                    "unit", FieldType.Choice.of("mm", "cm", "in"), "Unit of every value of the table.")
                            .example("cm"),
                    SchemaField.optional(
                            "kind",
                            FieldType.Choice.of("body", "garment"),
                            "Measurements of the body, or finished measurements of a garment. Body if left out; only a"
                                    + " table of bodies can be compared with a grade."),
                    SchemaField.required(
                                    "key",
                                    new FieldType.Choice(bodyDimensions()),
                                    "The dimension that orders the sizes; one of the rows, without gaps.")
                            .example("bustGirth"),
                    SchemaField.required(
                                    "sizes",
                                    new FieldType.Labels(MOST_SIZES, LONGEST_LABEL),
                                    "Names of the sizes, smallest first, all different, as the size run names them.")
                            .example(List.of("38", "40", "42")),
                    SchemaField.required(
                                    "rows", new FieldType.Objects(ROW, MOST_ROWS), "The rows, each dimension once.")
                            .example(List.of(
                                    java.util.Map.of("dimension", "bustGirth", "values", List.of(88, 92, 96)),
                                    java.util.Map.of(
                                            "dimension", "upperArmGirth", "values", List.of(28.2, 29.4, 30.6))))));

    /** The field {@code sizeTable} of a request: an id, or a table of the caller's own. */
    public static final FieldType ID_OR_TABLE = new FieldType.TextOrNested(LONGEST_ID, TABLE);

    private TableSchema() {}

    private static FieldType text() {
        return new FieldType.Text(LONGEST_TEXT);
    }

    private static List<String> bodyDimensions() {
        List<String> ids = new ArrayList<>();
        for (BodyDimension dimension : BodyDimension.values()) {
            ids.add(dimension.id());
        }
        return List.copyOf(ids);
    }

    private static List<String> dimensions() {
        List<String> ids = new ArrayList<>(bodyDimensions());
        for (GarmentDimension dimension : GarmentDimension.values()) {
            ids.add(dimension.id());
        }
        return List.copyOf(ids);
    }
}
