package org.capwright.service.sizerun;

import io.swagger.v3.oas.annotations.media.Schema;
import java.util.List;
import java.util.Optional;

/**
 * Something worth a look before cutting.
 *
 * @param severity {@code info} or {@code warning}
 * @param sizes the size, or the pair of neighbouring sizes, that it is about; empty for the whole run
 * @param dimension what it is about
 * @param value what was found
 * @param expected what would be expected
 * @param unit unit of value and expected, where they are lengths
 * @param source where the expectation comes from
 * @param message what it means and what to change
 */
@Schema(description = "Something worth a look before cutting.")
record Finding(
        @Schema(
                description = "How grave it is.",
                allowableValues = {"info", "warning"},
                example = "warning")
        String severity,

        @Schema(
                description = "The size, or the pair of neighbouring sizes, that it is about; empty for the whole run.",
                example = "[\"38\",\"40\"]")
        List<String> sizes,

        @Schema(description = "What it is about.", example = "bicep")
        String dimension,

        @Schema(description = "What was found.", example = "0.8")
        Optional<Double> value,

        @Schema(description = "What would be expected.", example = "1.12")
        Optional<Double> expected,

        @Schema(
                description = "Unit of value and expected, where they are lengths.",
                allowableValues = {"mm", "cm", "in"},
                example = "cm")
        Optional<String> unit,

        @Schema(description = "Where the expectation comes from.")
        String source,

        @Schema(description = "What it means and what to change.")
        String message) {}
