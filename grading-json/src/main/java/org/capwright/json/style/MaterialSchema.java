package org.capwright.json.style;

import java.util.List;
import org.capwright.json.schema.FieldType;
import org.capwright.json.schema.RequestSchema;
import org.capwright.json.schema.SchemaField;

/** The field {@code materials} of a size run: what the pieces are to be laid on. */
public final class MaterialSchema {

    /** The most pairs of an order: more are cut in several layers, or in several orders. */
    static final int MOST_PAIRS = 500;

    private static final int MOST_CLOTHS = 12;
    private static final FieldType.Length STEP = new FieldType.Length(1, 10_000);
    private static final FieldType.Ratio SHARE = new FieldType.Ratio(0, 1);

    static final RequestSchema FABRIC = RequestSchema.of(
            "Fabric",
            "A cloth as it lies on the shelf, and how it is laid for cutting.",
            List.of(
                    SchemaField.required(
                                    "material",
                                    FieldType.Choice.of("main", "lining", "interfacing"),
                                    "What is cut from it. Several widths of one material may be compared.")
                            .example("main"),
                    SchemaField.required(
                                    "width", new FieldType.Length(100, 10_000), "From selvedge edge to selvedge edge.")
                            .example(140),
                    SchemaField.optional(
                                    "laying",
                                    FieldType.Choice.of("open", "folded"),
                                    "One layer, or folded lengthwise, right sides together. Folded if left out.")
                            .example("folded"),
                    SchemaField.optional(
                            "nap",
                            FieldType.Choice.of("with", "without"),
                            "With the nap every piece points the same way. Without if left out."),
                    SchemaField.optional(
                                    "shrinkageLengthwise",
                                    new FieldType.Ratio(0, 0.5),
                                    "Share of the length as bought that is lost before cutting. 0 if left out.")
                            .example(0.03),
                    SchemaField.optional(
                            "shrinkageCrosswise",
                            new FieldType.Ratio(0, 0.5),
                            "Share of the width as bought that is lost before cutting. 0 if left out."),
                    SchemaField.optional("waste", SHARE, "Share added for flaws, ends and squaring up. 0 if left out."),
                    SchemaField.optional(
                            "selvedge",
                            new FieldType.Length(0, 4500),
                            "Width of each selvedge, which is not cut into. 10 mm if left out."),
                    SchemaField.optional(
                            "gap",
                            new FieldType.Length(0, 100),
                            "Least distance of neighbouring cut lines. 5 mm if left out."),
                    SchemaField.optional(
                            "step", STEP, "The shop sells whole multiples of this length. 50 mm if left out.")));

    static final RequestSchema TRIMMING = RequestSchema.of(
            "Trimming",
            "How trimming for hem and attached edge of the overlay is bought.",
            List.of(
                    SchemaField.optional("waste", SHARE, "Share added for joins and turned-in ends. 0.05 if left out."),
                    SchemaField.optional(
                            "step", STEP, "The shop sells whole multiples of this length. 100 mm if left out.")));

    /** The whole field. */
    public static final RequestSchema REQUEST = RequestSchema.of(
            "MaterialsRequest",
            "What the pieces are laid on, to learn what to buy. The lays take a moment to find.",
            List.of(
                    SchemaField.required(
                            "fabrics",
                            new FieldType.Objects(FABRIC, MOST_CLOTHS),
                            "The cloths; a material that is not among them is not reckoned."),
                    SchemaField.optional("trimming", new FieldType.Nested(TRIMMING), TRIMMING.meaning()),
                    SchemaField.optional(
                                    "order",
                                    new FieldType.PerSize(new FieldType.Whole(0, MOST_PAIRS)),
                                    "Pairs of sleeves per size, " + MOST_PAIRS
                                            + " at most in all: they are laid together, in the PDF and here. One pair"
                                            + " of each size, laid by itself, if left out.")
                            .example(java.util.Map.of("38", 2, "40", 3)),
                    SchemaField.optional(
                            "effort",
                            FieldType.Choice.of("quick", "usual", "thorough"),
                            "How long good lays are looked for. All lays of a request, one per size and cloth, share"
                                    + " it: about a second of one processor for quick, ten for usual, a hundred for"
                                    + " thorough. Usual if left out.")));

    private MaterialSchema() {}
}
