package org.capwright.service.material;

import java.util.List;
import org.capwright.service.shape.Field;
import org.capwright.service.shape.Kind;
import org.capwright.service.shape.Shape;

/** The field {@code materials} of a size run: what the pieces are to be laid on. */
public final class MaterialShape {

    /** The most pairs of an order: more are cut in several layers, or in several orders. */
    static final int MOST_PAIRS = 500;

    private static final int MOST_CLOTHS = 12;
    private static final Kind.Length STEP = new Kind.Length(1, 10_000);
    private static final Kind.Ratio SHARE = new Kind.Ratio(0, 1);

    static final Shape FABRIC = Shape.of(
            "Fabric",
            "A cloth as it lies on the shelf, and how it is laid for cutting.",
            List.of(
                    Field.required(
                                    "material",
                                    Kind.Choice.of("main", "lining", "interfacing"),
                                    "What is cut from it. Several widths of one material may be compared.")
                            .example("main"),
                    Field.required("width", new Kind.Length(100, 10_000), "From selvedge edge to selvedge edge.")
                            .example(140),
                    Field.optional(
                                    "laying",
                                    Kind.Choice.of("open", "folded"),
                                    "One layer, or folded lengthwise, right sides together. Folded if left out.")
                            .example("folded"),
                    Field.optional(
                            "nap",
                            Kind.Choice.of("with", "without"),
                            "With the nap every piece points the same way. Without if left out."),
                    Field.optional(
                                    "shrinkageLengthwise",
                                    new Kind.Ratio(0, 0.5),
                                    "Share of the length as bought that is lost before cutting. 0 if left out.")
                            .example(0.03),
                    Field.optional(
                            "shrinkageCrosswise",
                            new Kind.Ratio(0, 0.5),
                            "Share of the width as bought that is lost before cutting. 0 if left out."),
                    Field.optional("waste", SHARE, "Share added for flaws, ends and squaring up. 0 if left out."),
                    Field.optional(
                            "selvedge",
                            new Kind.Length(0, 4500),
                            "Width of each selvedge, which is not cut into. 10 mm if left out."),
                    Field.optional(
                            "gap",
                            new Kind.Length(0, 100),
                            "Least distance of neighbouring cut lines. 5 mm if left out."),
                    Field.optional("step", STEP, "The shop sells whole multiples of this length. 50 mm if left out.")));

    static final Shape TRIMMING = Shape.of(
            "Trimming",
            "How trimming for hem and attached edge of the overlay is bought.",
            List.of(
                    Field.optional("waste", SHARE, "Share added for joins and turned-in ends. 0.05 if left out."),
                    Field.optional(
                            "step", STEP, "The shop sells whole multiples of this length. 100 mm if left out.")));

    /** The whole field. */
    public static final Shape REQUEST = Shape.of(
            "MaterialsRequest",
            "What the pieces are laid on, to learn what to buy. The lays take a moment to find.",
            List.of(
                    Field.required(
                            "fabrics",
                            new Kind.Objects(FABRIC, MOST_CLOTHS),
                            "The cloths; a material that is not among them is not reckoned."),
                    Field.optional("trimming", new Kind.Nested(TRIMMING), TRIMMING.meaning()),
                    Field.optional(
                                    "order",
                                    new Kind.PerSize(new Kind.Whole(0, MOST_PAIRS)),
                                    "Pairs of sleeves per size, " + MOST_PAIRS
                                            + " at most in all: they are laid together, in the PDF and here. One pair of each size, laid"
                                            + " by itself, if left out.")
                            .example(java.util.Map.of("38", 2, "40", 3))));

    private MaterialShape() {}
}
