package org.capwright.service.sizerun;

import io.swagger.v3.oas.annotations.media.ArraySchema;
import io.swagger.v3.oas.annotations.media.Schema;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * What to buy; lengths in the unit of the run.
 *
 * @param unit unit of every length
 * @param cloths per size, or for the order, and cloth
 * @param trimmings per size, or for the order
 */
@Schema(name = "Materials", description = "What to buy. Lengths are in the unit of the run, areas in its square.")
public record MaterialAnswer(
        @Schema(
                description = "Unit of every length.",
                allowableValues = {"mm", "cm", "in"},
                example = "cm")
        String unit,

        @ArraySchema(
                arraySchema =
                        @Schema(
                                description =
                                        "Cloth, size by size or for the order; without those that no piece is cut from."))
        List<ClothAnswer> cloths,

        @ArraySchema(
                arraySchema =
                        @Schema(description = "Trimming, size by size or for the order; none without an overlay."))
        List<TrimmingAnswer> trimmings) {

    /** Cloth to buy. */
    @Schema(name = "ClothNeed", description = "Cloth to buy, and the lay that shows it is enough.")
    record ClothAnswer(
            @Schema(description = "Pairs of sleeves per size.", example = "{\"40\":1}")
            Map<String, Integer> pairs,

            @Schema(
                    description = "What is cut from it.",
                    allowableValues = {"main", "lining", "interfacing"},
                    example = "main")
            String material,

            @Schema(
                    description = "The cloth in words.",
                    example = "Main cloth, 140 cm wide, folded lengthwise, without nap")
            String cloth,

            @Schema(description = "Width as bought.", example = "140")
            double width,

            @Schema(
                    description = "How it lies.",
                    allowableValues = {"open", "folded"},
                    example = "folded")
            String laying,

            @Schema(
                    description = "With the nap every piece points the same way.",
                    allowableValues = {"with", "without"},
                    example = "without")
            String nap,

            @Schema(description = "Whole pieces that are cut.", example = "4")
            int pieces,

            @Schema(description = "Area of all of them along their cut lines, unfolded.", example = "6120.5")
            double area,

            @Schema(description = "Width of one layer that pieces may cover.", example = "69")
            double usableWidth,

            @Schema(description = "Length of the shrunk cloth that the lay covers.", example = "61.3")
            double layLength,

            @Schema(description = "No lay is shorter: area on one layer by usable width.", example = "44.3")
            double areaBound,

            @Schema(description = "Share of the usable cloth of the lay that pieces cover.", example = "0.72")
            double utilisation,

            @Schema(description = "The lay length is multiplied by this for shrinkage.", example = "1.03")
            double shrinkageFactor,

            @Schema(description = "And by this for flaws and ends.", example = "1.05")
            double wasteFactor,

            @Schema(description = "What to buy: the product, rounded up to the step of the shop.", example = "70")
            double length,

            @Schema(description = "The lay as an SVG document; only where it is asked for on its own.")
            Optional<String> picture) {}

    /** Trimming to buy. */
    @Schema(name = "TrimmingNeed", description = "Trimming to buy for the overlays.")
    record TrimmingAnswer(
            @Schema(description = "Pairs of sleeves per size.", example = "{\"40\":1}")
            Map<String, Integer> pairs,

            @Schema(description = "Along the finished hems and the finished sides above them.", example = "118.2")
            double hem,

            @Schema(
                    description = "Along the attached edges as they are drawn, flat, before pleating.",
                    example = "142.8")
            double attachedEdge,

            @Schema(description = "Share of waste, plus one.", example = "1.05")
            double wasteFactor,

            @Schema(description = "What to buy.", example = "280")
            double length) {}
}
