package org.capwright.service.tables;

import java.util.ArrayList;
import java.util.List;
import org.capwright.service.shape.Field;
import org.capwright.service.shape.Kind;
import org.capwright.service.shape.Shape;
import org.capwright.tables.BodyDimension;
import org.capwright.tables.GarmentDimension;

/** A size table of the caller's own: the body of {@code POST /v1/size-tables}, and {@code sizeTable} wherever an id is taken. */
public final class TableShape {

    static final int MOST_SIZES = 100;
    static final int LONGEST_LABEL = 32;
    private static final int MOST_ROWS = 40;
    private static final int LONGEST_TEXT = 500;
    private static final int LONGEST_ID = 64;

    /** What is said where a caller says nothing. */
    static final String NOT_STATED = "not stated";

    static final String DEFAULT_ID = "own-table";
    static final String DEFAULT_TITLE = "Own size table";

    static final Shape ROW = Shape.of(
            "OwnSizeTableRow",
            "One dimension over the sizes.",
            List.of(
                    Field.required("dimension", new Kind.Choice(dimensions()), "The dimension; each once in a table.")
                            .example("upperArmGirth"),
                    Field.required(
                                    "values",
                                    new Kind.Gapped(MOST_SIZES),
                                    "One value per size, smallest size first, in the unit of the table; null for a gap.")
                            .example(List.of(27.5, 28.5, 29.5))));

    /** The table. */
    public static final Shape TABLE = Shape.of(
            "OwnSizeTable",
            "A size table of the caller's own. It is checked (units, plausible ranges, growth that must be monotone, dimensions that must"
                    + " exceed one another) and used for this one answer; nothing of it is kept.",
            List.of(
                    Field.optional(
                                    "id",
                                    new Kind.Text(LONGEST_ID),
                                    "Short name of small letters, digits and hyphens that no published table has. \""
                                            + DEFAULT_ID + "\" if left out.")
                            .example("workshop-women"),
                    Field.optional("title", text(), "Title for people. \"" + DEFAULT_TITLE + "\" if left out."),
                    Field.required("source", text(), "Where the figures come from; it stands beside every figure.")
                            .example("Measured in the workshop, 2024 to 2026"),
                    Field.optional(
                            "licence", text(), "Under what terms the figures may be used. Not stated if left out."),
                    Field.optional(
                                    "figureType",
                                    text(),
                                    "Whom the sizes are made for. Where it has the word women, the public survey of women gives a"
                                            + " second opinion. Not stated if left out.")
                            .example("adult women"),
                    Field.optional("population", text(), "Who was measured or is meant. Not stated if left out."),
                    Field.required("unit", Kind.Choice.of("mm", "cm", "in"), "Unit of every value of the table.")
                            .example("cm"),
                    Field.optional(
                            "kind",
                            Kind.Choice.of("body", "garment"),
                            "Measurements of the body, or finished measurements of a garment. Body if left out; only a table of"
                                    + " bodies can be held against a grade."),
                    Field.required(
                                    "key",
                                    new Kind.Choice(bodyDimensions()),
                                    "The dimension that orders the sizes; one of the rows, without gaps.")
                            .example("bustGirth"),
                    Field.required(
                                    "sizes",
                                    new Kind.Labels(MOST_SIZES, LONGEST_LABEL),
                                    "Names of the sizes, smallest first, all different, as the size run names them.")
                            .example(List.of("38", "40", "42")),
                    Field.required("rows", new Kind.Objects(ROW, MOST_ROWS), "The rows, each dimension once.")
                            .example(List.of(
                                    java.util.Map.of("dimension", "bustGirth", "values", List.of(88, 92, 96)),
                                    java.util.Map.of(
                                            "dimension", "upperArmGirth", "values", List.of(28.2, 29.4, 30.6))))));

    /** The field {@code sizeTable} of a request: an id, or a table of the caller's own. */
    public static final Kind ID_OR_TABLE = new Kind.TextOrNested(LONGEST_ID, TABLE);

    private TableShape() {}

    private static Kind text() {
        return new Kind.Text(LONGEST_TEXT);
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
