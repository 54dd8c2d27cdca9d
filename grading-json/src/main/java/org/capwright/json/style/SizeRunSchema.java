package org.capwright.json.style;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.capwright.draft.CapEase;
import org.capwright.draft.ElbowShaping;
import org.capwright.draft.pleat.PleatPlan;
import org.capwright.json.problem.RequestPlaces;
import org.capwright.json.schema.FieldType;
import org.capwright.json.schema.RequestSchema;
import org.capwright.json.schema.SchemaField;
import org.capwright.json.tables.TableSchema;
import org.capwright.measure.Dimension;
import org.capwright.pattern.Allowances;
import org.capwright.pattern.LayerThickness;
import org.capwright.pattern.PatternOptions;
import org.capwright.report.Paper;

/** The body of {@code POST /v1/size-runs}. The reader and the API description both come from here. */
public final class SizeRunSchema {

    static final int MOST_SIZES = 40;
    /** Greatest number of characters in the name of a size. */
    public static final int LONGEST_LABEL = 20;

    /** A picture in Base64, so that the whole body stays within its bound. */
    private static final int LONGEST_PICTURE = 200_000;

    private static final double GREATEST_JUMP = 200;

    private static final FieldType EASE = new FieldType.Ease(
            new FieldType.Length(-300, 300), new FieldType.Ratio(CapEase.LEAST_SHARE, CapEase.GREATEST_SHARE));
    private static final FieldType.Length ALLOWANCE = new FieldType.Length(0, Allowances.WIDEST);
    private static final String INSTEAD =
            " A length, or a percentage of the armhole such as \"4%\". Cap line less armhole; the cap is then fitted"
                    + " to it.";

    static final RequestSchema FRONT = RequestSchema.of(
            "FrontHalf",
            "The front half of the sleeve, where it differs from the back.",
            List.of(
                    SchemaField.of(Dimension.FRONT_WIDTH, "Half of the bicep if left out."),
                    SchemaField.of(Dimension.FRONT_CAP_OUTWARD, "As the whole sleeve's if left out."),
                    SchemaField.of(Dimension.FRONT_CAP_INWARD, "As the whole sleeve's if left out."),
                    SchemaField.of(Dimension.FRONT_ARMHOLE, "Half of the armhole if left out."),
                    SchemaField.optional(
                            "capEase",
                            EASE,
                            "Ease over the front armhole." + INSTEAD
                                    + " Needs the back's as well; cap height and front width then follow from the"
                                    + " bicep.")));

    static final RequestSchema BACK = RequestSchema.of(
            "BackHalf",
            "The back half of the sleeve, where it differs from the front.",
            List.of(
                    SchemaField.of(Dimension.BACK_CAP_OUTWARD, "As the whole sleeve's if left out."),
                    SchemaField.of(Dimension.BACK_CAP_INWARD, "As the whole sleeve's if left out."),
                    SchemaField.optional(
                            "armhole",
                            new FieldType.Length(Dimension.FRONT_ARMHOLE.least(), Dimension.FRONT_ARMHOLE.greatest()),
                            "Length of the back armhole seam line, shoulder point to underarm point. What the front"
                                    + " leaves of the armhole if left out."),
                    SchemaField.optional("capEase", EASE, "Ease over the back armhole." + INSTEAD)));

    static final RequestSchema SLEEVE = RequestSchema.of(
            "Sleeve",
            "The base sleeve: bicep line and cap. Of bicep, cap height and cap ease two are given and the third"
                    + " follows.",
            List.of(
                    SchemaField.of(Dimension.BICEP, "Left out where it follows from cap height and cap ease.")
                            .example(36),
                    SchemaField.of(Dimension.LENGTH, "Needed with an under-sleeve, refused without.")
                            .example(60),
                    SchemaField.of(Dimension.CAP_HEIGHT, "Left out where it follows from bicep and cap ease.")
                            .example(13.5),
                    SchemaField.of(
                                    Dimension.CAP_OUTWARD,
                                    "Half of the greatest that the cap can take if left out (common practice).")
                            .example(1.9),
                    SchemaField.of(
                                    Dimension.CAP_INWARD,
                                    "0.35 of the greatest that the cap can take if left out (common practice).")
                            .example(1.2),
                    SchemaField.of(Dimension.ARMHOLE, "Needed with an overlay or a cap ease.")
                            .example(45),
                    SchemaField.optional(
                            "capEase",
                            EASE,
                            "Ease over the whole armhole." + INSTEAD
                                    + " Exactly one of bicep and capHeight is then left out and follows, in every"
                                    + " size."),
                    SchemaField.optional("front", new FieldType.Nested(FRONT), FRONT.meaning()),
                    SchemaField.optional("back", new FieldType.Nested(BACK), BACK.meaning())));

    static final RequestSchema FLAT_ZONE = RequestSchema.of(
            "FlatZone",
            "Seam without folds at the two ends.",
            List.of(
                    SchemaField.optional("front", new FieldType.Length(0, 700), "At the front end. None if left out."),
                    SchemaField.optional("back", new FieldType.Length(0, 700), "At the back end. None if left out.")));

    static final RequestSchema PLEATS = RequestSchema.of(
            "Pleats",
            "The pleats that take up the top edge. Exactly one of count, depth and greatestDepth is given and the rest"
                    + " follows; or count and depth, where the rise follows from them.",
            List.of(
                    SchemaField.optional(
                                    "count",
                                    new FieldType.Whole(1, PleatPlan.GREATEST_COUNT),
                                    "Number of pleats over both halves; a box or inverted pleat counts once. The depth"
                                            + " follows.")
                            .example(8),
                    SchemaField.of(
                            Dimension.PLEAT_DEPTH,
                            "The whole number of pleats is taken whose depth comes nearest in the base size, and kept"
                                    + " in all sizes; their depth then follows exactly. With count and without rise or"
                                    + " fullness, the rise is found that gives just these pleats, the mean of front and"
                                    + " back."),
                    SchemaField.optional(
                            "greatestDepth",
                            new FieldType.Length(Dimension.PLEAT_DEPTH.least(), Dimension.PLEAT_DEPTH.greatest()),
                            "The fewest pleats are taken of which none is deeper; graded as pleatDepth."),
                    SchemaField.optional(
                                    "kind",
                                    FieldType.Choice.of("knife", "box", "inverted"),
                                    "Kind of pleat. Knife if left out.")
                            .example("knife"),
                    SchemaField.optional(
                            "direction",
                            FieldType.Choice.of("front", "back", "apex", "away"),
                            "Where the folds of knife pleats point: to the front or back underarm, to the apex or away"
                                    + " from it. Away from the apex if left out; refused for box and inverted pleats."),
                    SchemaField.optional(
                            "flatZone",
                            new FieldType.LengthOrNested(new FieldType.Length(0, 700), FLAT_ZONE),
                            "Finished seam without folds at each end: one length, or front and back apart. None if left"
                                    + " out.")));

    static final RequestSchema OVERLAY = RequestSchema.of(
            "Overlay",
            "The raised overlay, sewn to a part of the armhole.",
            List.of(
                    SchemaField.of(
                                    Dimension.RISE,
                                    "Left out where it follows from fullness, or from pleats of given count and depth.")
                            .example(14),
                    SchemaField.optional(
                            "fullness",
                            new FieldType.Ratio(1, 20),
                            "Flat top edge to the armhole it is sewn to, instead of rise: the rise then follows, in"
                                    + " every size."),
                    SchemaField.of(Dimension.OVERLAY_LENGTH, "").needed().example(34),
                    SchemaField.optional(
                                    "hem",
                                    FieldType.Choice.of("vee", "bowed", "level"),
                                    "Shape of the hem. Vee if left out.")
                            .example("vee"),
                    SchemaField.of(Dimension.HEM_SAGITTA, "Needed with a bowed hem, refused with another."),
                    SchemaField.of(
                            Dimension.SIDE_DEPTH,
                            "0 if left out; with a level hem it is length less cap height and need not be given."),
                    SchemaField.of(Dimension.EXTRA_WIDTH, "0 if left out."),
                    SchemaField.optional(
                            "join",
                            new FieldType.Ratio(0.1, 1),
                            "Where the raised line joins the cap line, as a share of the slanted guide line from the"
                                    + " apex to the underarm point. 0.75, the third division, if left out."),
                    SchemaField.of(Dimension.FRONT_GAP, "").needed().example(6),
                    SchemaField.of(Dimension.BACK_GAP, "").needed().example(6),
                    SchemaField.optional(
                            "pleats",
                            new FieldType.Nested(PLEATS),
                            PLEATS.meaning() + " If left out, the surplus of the edge is only reported.")));

    static final RequestSchema UNDER_SLEEVE = RequestSchema.of(
            "UnderSleeve",
            "The long under-sleeve, set into the whole armhole.",
            List.of(
                    SchemaField.of(Dimension.ELBOW, "If left out, the sides run straight from bicep to wrist.")
                            .example(28),
                    SchemaField.of(Dimension.WRIST, "").needed().example(19),
                    SchemaField.of(Dimension.ELBOW_LEVEL, "Half way from bicep line to wrist if left out."),
                    SchemaField.optional(
                            "shaping",
                            new FieldType.Choice(Stream.of(ElbowShaping.values())
                                    .map(ElbowShaping::label)
                                    .toList()),
                            "How it is shaped at the elbow: tapered, both sides alike; turned forward with a dart on"
                                    + " the back seam; or turned forward with the back seam eased to the front one."
                                    + " Tapered if left out."),
                    SchemaField.of(Dimension.ELBOW_DART, "For elbowDart; a usual width if left out."),
                    SchemaField.of(Dimension.ELBOW_DART_LENGTH, "For elbowDart; a usual length if left out."),
                    SchemaField.of(Dimension.ELBOW_EASE, "For easedSeam; a usual ease if left out."),
                    SchemaField.of(
                            Dimension.HAND_GIRTH,
                            "Where the wrist is narrower, an opening is marked on the seam. Nothing is marked if left"
                                    + " out.")));

    /** The field {@code grade}. */
    public static final RequestSchema GRADE = RequestSchema.of(
            "Grade",
            "Growth per dimension: one increment for every interval, or a list with one increment per interval between"
                    + " neighbouring sizes, smallest first. Negative where the dimension shrinks. Values build outward"
                    + " from the base size.",
            growth());

    static final RequestSchema SEAM_ALLOWANCE = RequestSchema.of(
            "SeamAllowance",
            "Allowances by kind of edge; 10 mm each where left out.",
            List.of(
                    SchemaField.optional("armhole", ALLOWANCE, "Along the cap of the under-sleeve."),
                    SchemaField.optional("attachedEdge", ALLOWANCE, "Along the top edge of the overlay."),
                    SchemaField.optional("sideSeam", ALLOWANCE, "Along the side and underarm seams."),
                    SchemaField.optional("hem", ALLOWANCE, "Along the hems.")));

    private static final FieldType.Length THICK = new FieldType.Length(0.01, LayerThickness.GREATEST);

    static final RequestSchema THICKNESS = RequestSchema.of(
            "Thickness",
            "How thick the cloths are, pressed flat; with all three, the bulk of the closed pleats is told as a"
                    + " length.",
            List.of(
                    SchemaField.optional("main", THICK, "Of the main cloth."),
                    SchemaField.optional("lining", THICK, "Of the lining."),
                    SchemaField.optional("interfacing", THICK, "Of the interfacing.")));

    static final RequestSchema PAPER = RequestSchema.of(
            "Paper",
            "For PDF: what is printed on, at true scale. A4 sheets with all sizes if left out.",
            List.of(
                    SchemaField.optional(
                                    "format",
                                    FieldType.Choice.of("a4", "a3", "a0", "letter", "roll", "projector"),
                                    "Sheets that are glued together, paper from a roll, or one page for a projector"
                                            + " over the cutting table: thick lines, a grid of 10 cm, and 50 cm each way"
                                            + " to set the projector by. A4 if left out.")
                            .example("a4"),
                    SchemaField.optional(
                                    "ground",
                                    FieldType.Choice.of("dark", "light"),
                                    "What projected lines stand on; for the projector only. dark if left out.")
                            .example("dark"),
                    SchemaField.optional(
                            "width",
                            new FieldType.Length(Paper.LEAST, Paper.GREATEST),
                            "Width of the paper on the roll, needed with one; or of the table under the projector,"
                                    + " 1500 mm if left out. Refused with sheets."),
                    SchemaField.optional(
                            "sizes",
                            new FieldType.Labels(MOST_SIZES, LONGEST_LABEL),
                            "The sizes to print, or to draw as SVG, in the order of the run. All if left out.")));

    static final RequestSchema PLOTTER = RequestSchema.of(
            "Plotter",
            "For HP-GL: what the pen plotter draws on.",
            List.of(SchemaField.optional(
                            "width",
                            new FieldType.Length(Paper.LEAST, Paper.GREATEST),
                            "Width that the plotter can draw; every piece must fit, upright or turned. If left out"
                                    + " that of paper from a roll, else 900 mm, or wider where a piece needs it.")
                    .example(91.4)));

    /** The whole body. */
    public static final RequestSchema REQUEST = RequestSchema.of(
            "SizeRunRequest",
            "A style in its base size and how it grows. Lengths are numbers in the unit named by units, or texts such"
                    + " as \"36.5\" or \"3 1/2\". A field that is null counts as left out; an unknown field is refused.",
            List.of(
                    SchemaField.optional(
                                    "name",
                                    new FieldType.Text(80),
                                    "Name of the style, for files and labels. \"Sleeve\" if left out.")
                            .example("Choir gown, bell shoulder"),
                    SchemaField.optional(
                                    "revision", new FieldType.Text(20), "Revision of the style. \"1\" if left out.")
                            .example("3"),
                    SchemaField.required(
                                    "units",
                                    FieldType.Choice.of("mm", "cm", "in"),
                                    "Unit of every length, in request and answer.")
                            .example("cm"),
                    SchemaField.required(
                                    "baseSize",
                                    new FieldType.Label(LONGEST_LABEL),
                                    "The size that the dimensions are given for; one of sizes.")
                            .example("40"),
                    SchemaField.required(
                                    "sizes",
                                    new FieldType.Labels(MOST_SIZES, LONGEST_LABEL),
                                    "Names of the sizes, smallest first, all different; ascending where all are"
                                            + " numbers.")
                            .example(List.of("36", "38", "40", "42", "44")),
                    SchemaField.required("sleeve", new FieldType.Nested(SLEEVE), SLEEVE.meaning()),
                    SchemaField.optional("overlay", new FieldType.Nested(OVERLAY), OVERLAY.meaning()),
                    SchemaField.optional("underSleeve", new FieldType.Nested(UNDER_SLEEVE), UNDER_SLEEVE.meaning()),
                    SchemaField.optional("grade", new FieldType.Nested(GRADE), GRADE.meaning()),
                    SchemaField.optional(
                            "sizeTable",
                            TableSchema.ID_OR_TABLE,
                            "Id of a published size table of bodies (GET /v1/size-tables), or a table of your own. The"
                                    + " jumps are then compared with the growth of the body where the table has the sizes,"
                                    + " see findings. None if left out or null."),
                    SchemaField.optional(
                                    "seamAllowance",
                                    new FieldType.LengthOrNested(ALLOWANCE, SEAM_ALLOWANCE),
                                    "One allowance for every edge, or an object by kind of edge. 10 mm if left out.")
                            .example(1.0),
                    SchemaField.optional(
                            "corners",
                            FieldType.Choice.of("mitred", "bevelled", "squared"),
                            "How the cut line turns corners. Mitred if left out."),
                    SchemaField.optional(
                            "turnOfCloth",
                            new FieldType.Length(0, PatternOptions.GREATEST_TURN_OF_CLOTH),
                            "How much smaller the lining is than the main cloth along hem and sides. 2 mm if left"
                                    + " out."),
                    SchemaField.optional(
                            "interfacingOverlap",
                            new FieldType.Length(0, Allowances.WIDEST),
                            "How far the interfacing reaches into the allowances; 5 mm at most where it is cut away"
                                    + " between folds. 0, cut net, if left out."),
                    SchemaField.optional(
                            "halves",
                            FieldType.Choice.of("onFold", "whole"),
                            "How a piece is drawn whose left is the mirror image of its right: as a half on the fold"
                                    + " of the cloth, or whole, cut open, for a cutter. On the fold if left out."),
                    SchemaField.optional(
                            "pleatNotches",
                            FieldType.Choice.of("cutEdge", "none"),
                            "Snips where the fold and placement lines of pleats meet the cut edge, or none. On the cut"
                                    + " edge if left out."),
                    SchemaField.optional(
                            "drillHoles",
                            FieldType.Choice.of("none", "pleatsAndDarts"),
                            "Holes that mark the inner ends of pleat lines, 3 mm short of them, and the point of a"
                                    + " dart, 12.7 mm short of it. None if left out."),
                    SchemaField.optional(
                            "strips",
                            FieldType.Choice.of("words", "pieces"),
                            "The stay of the closed top edge, the stay of the sleeve head and the strip for the"
                                    + " armhole: told in the sewing order, or drawn as pieces. In words if left out."),
                    SchemaField.optional(
                            "pleatInterfacing",
                            FieldType.Choice.of("through", "cutAway"),
                            "Whether the interfacing runs through every layer of the pleats, or is cut away between"
                                    + " their folds. Through if left out."),
                    SchemaField.optional("thickness", new FieldType.Nested(THICKNESS), THICKNESS.meaning()),
                    SchemaField.optional(
                                    "align",
                                    FieldType.Choice.of("underarm", "apex", "fold"),
                                    "The point on which the sizes of the nest lie over one another and that keeps its"
                                            + " place in the grade points: the back underarm point, the apex, or where"
                                            + " fold line and bicep line cross. Fold if left out.")
                            .example("underarm"),
                    SchemaField.optional(
                            "layout",
                            FieldType.Choice.of("nest", "blocks"),
                            "For DXF: all sizes as a nest, or one block per piece and size. Nest if left out; other"
                                    + " media types are the same either way."),
                    SchemaField.optional("paper", new FieldType.Nested(PAPER), PAPER.meaning()),
                    SchemaField.optional(
                            "wornPicture",
                            new FieldType.Text(LONGEST_PICTURE),
                            "For PDF and ZIP: a picture of the base size as it is worn, a PNG file of up to 1600 dots"
                                    + " each way, in Base64. It is shown on the cover as a simulation that was sent, and"
                                    + " put into the archive. None if left out."),
                    SchemaField.optional("plotter", new FieldType.Nested(PLOTTER), PLOTTER.meaning()),
                    SchemaField.optional(
                            "materials",
                            new FieldType.Nested(MaterialSchema.REQUEST),
                            MaterialSchema.REQUEST.meaning() + " Nothing is reckoned if left out."),
                    SchemaField.optional(
                            "rounding",
                            new FieldType.Step(0.01, 100),
                            "Grid on which the spec table is also shown rounded, with its unit: \"1 mm\", \"0.5 cm\","
                                    + " \"1/8 in\". If left out 1 mm, 0.1 cm or 1/8 in, as the units are; JSON has the"
                                    + " unrounded values beside them. CSV is unrounded unless a rounding is given.")));

    private SizeRunSchema() {}

    private static List<SchemaField> growth() {
        List<SchemaField> fields = new ArrayList<>();
        for (Dimension dimension : Dimension.values()) {
            SchemaField field = SchemaField.optional(
                    dimension.gradeName(),
                    new FieldType.Growth(GREATEST_JUMP),
                    "Growth of " + RequestPlaces.USUAL.of(dimension) + " from size to size.");
            fields.add(
                    switch (dimension) {
                        case BICEP -> field.example(1.2);
                        case LENGTH -> field.example(0.5);
                        case CAP_HEIGHT -> field.example(0.4);
                        case ARMHOLE -> field.example(List.of(1.6, 1.6, 1.8, 1.8));
                        default -> field;
                    });
        }
        return List.copyOf(fields);
    }
}
