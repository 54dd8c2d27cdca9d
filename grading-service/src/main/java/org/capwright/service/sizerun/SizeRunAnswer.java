package org.capwright.service.sizerun;

import io.swagger.v3.oas.annotations.media.ArraySchema;
import io.swagger.v3.oas.annotations.media.Schema;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * The JSON answer to a size run. Every length is in the unit named by {@code unit}; y points up, the origin is where fold line and bicep line cross, the front
 * lies at negative x.
 *
 * @param name name of the style
 * @param revision revision of the style
 * @param unit unit of every length and coordinate
 * @param baseSize size that the rules start from
 * @param align point on which the nest lies
 * @param sizes the sizes, smallest first
 * @param specTable points of measure
 * @param gradePoints how named points move from size to size
 * @param findings what is worth a look before cutting
 * @param workroom cutting list, seams that are sewn together, sewing order
 * @param materials what to buy, where it was asked for
 * @param paper what the pieces would be printed on
 * @param cautions what to beware of when the garment is made and worn
 */
@Schema(
        description =
                "A drafted and graded size run. Every length is in the unit named by unit; y points up, the origin is"
                        + " where fold line and bicep line cross, the front lies at negative x.")
public record SizeRunAnswer(
        @Schema(description = "Name of the style.", example = "Choir gown, bell shoulder")
        String name,

        @Schema(description = "Revision of the style.", example = "3")
        String revision,

        @Schema(
                description = "Unit of every length and coordinate.",
                allowableValues = {"mm", "cm", "in"},
                example = "cm")
        String unit,

        @Schema(description = "The size that the grade rules start from.", example = "40")
        String baseSize,

        @Schema(
                description = "The point on which the sizes of the nest lie over one another.",
                allowableValues = {"underarm", "apex", "fold"},
                example = "underarm")
        String align,

        @ArraySchema(arraySchema = @Schema(description = "The sizes, smallest first."))
        List<GradedSizeAnswer> sizes,

        SpecTableAnswer specTable,

        @ArraySchema(
                arraySchema = @Schema(description = "How the named points move from size to size, aligned on align."))
        List<GradePointAnswer> gradePoints,

        @ArraySchema(arraySchema = @Schema(description = "What is worth a look before cutting; may be empty."))
        List<FindingAnswer> findings,

        WorkroomAnswer workroom,

        @Schema(description = "What to buy, where materials was asked for.")
        Optional<MaterialAnswer> materials,

        PaperAnswer paper,

        @Schema(description = "What to beware of when the garment is made and worn.")
        List<String> cautions) {

    /** What a PDF would be. */
    @Schema(name = "PaperUse", description = "What the PDF of this request is printed on.")
    record PaperAnswer(
            @Schema(
                    description = "The format.",
                    allowableValues = {"a4", "a3", "a0", "letter", "roll", "projector"},
                    example = "a4")
            String format,

            @Schema(description = "Pages, the cover among them.", example = "17")
            int pages) {}

    /** What the workroom needs beside the pieces. */
    @Schema(name = "Workroom", description = "What the workroom needs beside the pieces.")
    record WorkroomAnswer(
            @ArraySchema(arraySchema = @Schema(description = "What is cut, for one pair of sleeves in each size."))
            List<CutRowAnswer> cuttingList,

            @ArraySchema(
                    arraySchema =
                            @Schema(
                                    description =
                                            "Seam lines that are sewn together, both walked along the drafted lines."))
            List<SeamAnswer> seams,

            @ArraySchema(
                    arraySchema =
                            @Schema(
                                    description =
                                            "How bulky the closed top edge of the overlay is, per size; empty without"
                                                    + " one."))
            List<BulkAnswer> bulk,

            @Schema(description = "The steps of sewing, in order, with the lengths of the base size.")
            List<String> sewingOrder) {}

    /** Layers in the closed top edge. */
    @Schema(name = "Bulk", description = "The layers that lie on one another where the closed top edge is thickest.")
    record BulkAnswer(
            @Schema(description = "Name of the size.", example = "40")
            String size,

            @Schema(description = "Layers of main cloth.", example = "3")
            int main,

            @Schema(description = "Layers of lining.", example = "3")
            int lining,

            @Schema(description = "Layers of interfacing; one where it is cut away between the folds.", example = "1")
            int interfacing,

            @Schema(
                    description =
                            "All layers pressed on one another, where the thickness of all three cloths is given.",
                    example = "0.21")
            Optional<Double> thickness) {}

    /** One row of the cutting list. */
    @Schema(name = "CutRow", description = "One row of the cutting list.")
    record CutRowAnswer(
            @Schema(description = "Name of the size.", example = "40")
            String size,

            @Schema(description = "Which piece.", example = "overlay-main")
            String piece,

            @Schema(description = "How many are cut for one pair of sleeves.", example = "2")
            int count,

            @Schema(description = "How it is laid on the cloth.", example = "on fold")
            String laying,

            @Schema(description = "What it is cut from.", example = "main")
            String material,

            @Schema(
                    description = "Area of one piece as cut, unfolded, allowances included, in the square of the unit.",
                    example = "1520.4")
            double area) {}

    /** Two seam lines that are sewn together. */
    @Schema(name = "SeamPair", description = "Two seam lines that are sewn together.")
    record SeamAnswer(
            @Schema(description = "Name of the size.", example = "40")
            String size,

            @Schema(description = "What is sewn to what.", example = "cap to armhole")
            String name,

            @Schema(description = "The line that carries the ease.", example = "under-sleeve: cap")
            String first,

            @Schema(description = "Its length as it is sewn.", example = "47.4")
            double firstLength,

            @Schema(description = "The line or the place it is sewn to.", example = "armhole")
            String second,

            @Schema(description = "Its length.", example = "45")
            double secondLength,

            @Schema(description = "How much longer the first is meant to be.", example = "2.4")
            double ease,

            @Schema(description = "What the ease does not account for.", example = "0")
            double mismatch,

            @Schema(description = "False where the mismatch is above half a millimetre.", example = "true")
            boolean matches) {}

    /** One size. */
    @Schema(name = "GradedSize", description = "One size of the run.")
    record GradedSizeAnswer(
            @Schema(description = "Name of the size.", example = "40")
            String label,

            @Schema(
                    description =
                            "Dimensions by their names among grade rules, those included that follow from a cap ease.",
                    example = "{\"bicep\":36,\"capHeight\":13.5}")
            Map<String, Double> dimensions,

            @Schema(description = "Cap line less armhole, where an armhole is given.", example = "0.6")
            Optional<Double> capEase,

            @Schema(
                    description =
                            "How far the pieces of this size are moved in the nest, x and y, so that the alignment"
                                    + " points fall on one another. Strips are not moved.",
                    example = "[-0.6,0]")
            double[] nestShift,

            @Schema(description = "The pleats, where the style has them.")
            Optional<PleatsAnswer> pleats,

            List<PieceAnswer> pieces) {}

    /** Pleats of one size. */
    @Schema(name = "PleatLayout", description = "Where the top edge of the overlay is folded and where the folds land.")
    record PleatsAnswer(
            @Schema(
                    description = "Kind of pleat.",
                    allowableValues = {"knife", "box", "inverted"},
                    example = "knife")
            String kind,

            @Schema(description = "Number of pleats over both halves.", example = "8")
            int count,

            @Schema(description = "Length of the flat top edge.", example = "63.2")
            double edge,

            @Schema(description = "Length of the armhole that it is sewn to.", example = "33")
            double span,

            @Schema(description = "What the pleats take up: edge less span.", example = "30.2")
            double takeUp,

            @Schema(description = "Flat edge to finished seam, a ratio.", example = "1.9")
            double fullness,

            @Schema(description = "Depth of the shallowest fold, as folded.", example = "1.8")
            double leastDepth,

            @Schema(description = "Depth of the deepest fold, as folded.", example = "1.9")
            double greatestDepth,

            @Schema(description = "The most layers of cloth that lie on one another in the seam.", example = "3")
            int greatestLayers,

            @ArraySchema(arraySchema = @Schema(description = "The folds along the edge from its front end."))
            List<FoldAnswer> folds) {}

    /** One fold. */
    @Schema(name = "PleatFold", description = "One fold; the fold mark is brought onto the placement mark.")
    record FoldAnswer(
            @Schema(description = "Visible crease, along the flat edge from its front end.", example = "4.1")
            double foldMark,

            @Schema(description = "Where the fold is laid, along the flat edge from its front end.", example = "7.9")
            double placementMark,

            @Schema(description = "Where they meet on the finished seam, from its front end.", example = "2.1")
            double finished,

            @Schema(
                    description =
                            "As folded, square to the fold line: from it to where the fold beneath meets the seam.",
                    example = "1.9")
            double depth,

            @Schema(
                    description = "Which way the fold points.",
                    allowableValues = {"front", "back"},
                    example = "front")
            String lie) {}

    /** One piece. */
    @Schema(
            name = "Piece",
            description = "A pattern piece in the coordinates of the draft; outlines run counter-clockwise.")
    record PieceAnswer(
            @Schema(description = "Which piece it is.", example = "overlay-main")
            String id,

            @Schema(description = "Its name.", example = "Overlay")
            String name,

            @Schema(
                    description = "What it is cut from.",
                    allowableValues = {"main", "lining", "interfacing"},
                    example = "main")
            String material,

            CutAnswer cut,

            @ArraySchema(arraySchema = @Schema(description = "The seam lines, each ending where the next starts."))
            List<EdgeAnswer> edges,

            @Schema(
                    description = "Seam line as points [x, y], within 0.01 mm of the curves, first point not repeated.",
                    example = "[[0,14.5],[0.2,14.5]]")
            double[][] netLine,

            @Schema(
                    description = "Line to cut along as points [x, y], first point not repeated.",
                    example = "[[0,15.5],[0.2,15.5]]")
            double[][] cutLine,

            @Schema(
                    description = "Positions in cutLine, from 0, of true corners; the points between lie on curves.",
                    example = "[0,12]")
            List<Integer> turnPoints,

            List<NotchAnswer> notches,

            List<MarkAnswer> marks,

            @Schema(description = "The words on the piece, first line first.")
            List<String> label) {}

    /** How a piece is cut. */
    @Schema(name = "CutInstruction", description = "How often and how a piece is cut for one pair of sleeves.")
    record CutAnswer(
            @Schema(description = "How many are cut.", example = "2")
            int count,

            @Schema(
                    description =
                            "How it lies: the drawn half on the fold of the cloth, flat with half of them mirrored, or"
                                    + " flat.",
                    allowableValues = {"on-fold", "mirrored-pair", "flat"},
                    example = "on-fold")
            String laying,

            @Schema(description = "The instruction in words.", example = "cut 2 on the fold")
            String words) {}

    /** One edge. */
    @Schema(name = "Edge", description = "One edge of a piece: its seam line.")
    record EdgeAnswer(
            @Schema(description = "Name of the edge, unique in the piece.", example = "top edge")
            String name,

            @Schema(
                    description = "What it becomes.",
                    allowableValues = {"armhole", "attached-edge", "side-seam", "hem", "fold"},
                    example = "attached-edge")
            String kind,

            @Schema(description = "Length of the seam line.", example = "31.6")
            double length,

            @Schema(description = "Allowance outside the seam line.", example = "1")
            double allowance,

            @Schema(
                    description =
                            "The exact line: cubic Bézier segments of four points [x, y] each, start, two controls,"
                                    + " end.",
                    example = "[[[0,0],[1,0],[2,1],[3,1]]]")
            double[][][] segments) {}

    /** One notch. */
    @Schema(name = "Notch", description = "A notch on a seam line.")
    record NotchAnswer(
            @Schema(
                    description = "What it tells: single is the front, double the back.",
                    allowableValues = {
                        "single",
                        "double",
                        "apex",
                        "overlay-end",
                        "balance",
                        "clip",
                        "pleat",
                        "back-only"
                    },
                    example = "single")
            String kind,

            @Schema(description = "Name of the edge that carries it.", example = "top edge")
            String edge,

            @Schema(description = "Along that edge from its start.", example = "8.5")
            double distance,

            @Schema(description = "Place on the seam line, x and y.", example = "[8.5,3.2]")
            double[] at,

            @Schema(description = "Place on the cut line, x and y.", example = "[8.9,4.1]")
            double[] onCut,

            @Schema(description = "Direction from the cut line into the piece, a unit vector.", example = "[-0.4,-0.9]")
            double[] inward) {}

    /** One mark. */
    @Schema(name = "Mark", description = "A line drawn inside a piece: marked, not cut.")
    record MarkAnswer(
            @Schema(
                    description = "What it means.",
                    allowableValues = {
                        "grain",
                        "fold-line",
                        "centre-line",
                        "bicep-line",
                        "elbow-line",
                        "pleat-fold",
                        "pleat-placement",
                        "dart-leg",
                        "half",
                        "drill-hole"
                    },
                    example = "grain")
            String kind,

            @Schema(description = "Words for it, unique in the piece.", example = "grain line")
            String name,

            @Schema(
                    description = "The exact line: cubic Bézier segments of four points [x, y] each.",
                    example = "[[[0,0],[0,1],[0,2],[0,3]]]")
            double[][][] segments) {}

    /** The spec table. */
    @Schema(name = "SpecTable", description = "Points of measure, taken from the drafted lines of every size.")
    record SpecTableAnswer(
            @Schema(description = "Names of the sizes, smallest first.", example = "[\"36\",\"38\",\"40\"]")
            List<String> sizes,

            @Schema(description = "The base size.", example = "40")
            String baseSize,

            @Schema(
                    description = "Unit of every value.",
                    allowableValues = {"mm", "cm", "in"},
                    example = "cm")
            String unit,

            @Schema(description = "Grid of the rounded values.", example = "0.1")
            double roundedTo,

            List<RowAnswer> rows) {}

    /** One row. */
    @Schema(name = "PointOfMeasure", description = "One row of the spec table.")
    record RowAnswer(
            @Schema(description = "Short code, unique in the table.", example = "bicep")
            String code,

            @Schema(description = "What is measured.", example = "Bicep")
            String name,

            @Schema(description = "How it is measured.") String definition,

            @Schema(description = "Measured value per size, unrounded.", example = "[33.6,34.8,36]")
            double[] values,

            @Schema(description = "The same on the grid asked for.", example = "[33.6,34.8,36]")
            double[] rounded,

            @Schema(description = "Growth between neighbouring sizes, unrounded.", example = "[1.2,1.2]")
            double[] jumps,

            @Schema(description = "What the finished garment may be off by, plus or minus.", example = "1")
            double tolerance,

            @Schema(description = "Where the tolerance comes from.")
            String toleranceSource) {}

    /** One grade point. */
    @Schema(name = "GradePoint", description = "A named point and how it moves from size to size.")
    record GradePointAnswer(
            @Schema(description = "Part that it belongs to.", example = "overlay")
            String part,

            @Schema(description = "Name of the point.", example = "hem point")
            String name,

            @Schema(description = "Where it lies in the base size, x and y.", example = "[0,-20.5]")
            double[] base,

            @Schema(
                    description = "Per size, smallest first: [dx, dy] from its place in the base size.",
                    example = "[[0,0.2],[0,0.1],[0,0]]")
            double[][] deltas) {}
}
