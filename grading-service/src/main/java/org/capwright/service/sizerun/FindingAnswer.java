package org.capwright.service.sizerun;

import io.swagger.v3.oas.annotations.media.Schema;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.capwright.check.Finding;
import org.capwright.quantity.Quantity;
import org.capwright.quantity.Unit;
import org.capwright.words.Language;

/**
 * Something worth a look before cutting.
 *
 * @param check which check found it
 * @param severity how grave it is
 * @param sizes the size, or the first and the last of the sizes, that it is about; empty for the whole run
 * @param dimension what it is about
 * @param value what was found
 * @param least least value that passes
 * @param greatest greatest value that passes
 * @param unit unit of the figures, where they are lengths
 * @param source where the expectation comes from
 * @param message what is the matter
 * @param remedy what to change
 */
@Schema(name = "Finding", description = "Something worth a look before cutting.")
public record FindingAnswer(
        @Schema(description = "Which check found it.", example = "body-jump")
        String check,

        @Schema(
                description =
                        "How grave it is: worth knowing; look at it before cutting; do not cut before it is mended or"
                                + " meant.",
                allowableValues = {"info", "caution", "stop"},
                example = "caution")
        String severity,

        @Schema(
                description =
                        "The size, or the first and the last of the sizes, that it is about; empty for the whole run.",
                example = "[\"38\",\"40\"]")
        List<String> sizes,

        @Schema(description = "What it is about: a code of the spec table, or a field.", example = "bicep")
        String dimension,

        @Schema(description = "What was found.", example = "0.8")
        Optional<Double> value,

        @Schema(description = "Least value that passes.", example = "1.12")
        Optional<Double> least,

        @Schema(description = "Greatest value that passes.", example = "1.6")
        Optional<Double> greatest,

        @Schema(
                description = "Unit of the figures, where they are lengths.",
                allowableValues = {"mm", "cm", "in"},
                example = "cm")
        Optional<String> unit,

        @Schema(description = "Where the expectation comes from.")
        String source,

        @Schema(description = "What is the matter.") String message,

        @Schema(description = "What to change.") String remedy) {

    /**
     * Findings as they are answered.
     *
     * @param findings what was found
     * @param unit unit of the answer
     * @param language what they are said in
     * @return the same, lengths in the unit
     */
    public static List<FindingAnswer> of(List<Finding> findings, Unit unit, Language language) {
        UnitFormat shown = new UnitFormat(unit, language);
        return findings.stream().map(finding -> answer(finding, shown)).toList();
    }

    private static FindingAnswer answer(Finding finding, UnitFormat shown) {
        boolean length = finding.quantity() == Quantity.LENGTH;
        return new FindingAnswer(
                finding.code(),
                UnitFormat.word(finding.severity()),
                finding.sizes(),
                finding.subject().code(),
                figure(finding.value(), length, shown),
                figure(finding.expected().least(), length, shown),
                figure(finding.expected().greatest(), length, shown),
                length ? Optional.of(shown.unit().symbol()) : Optional.empty(),
                shown.say(finding.source()),
                shown.say(finding.sentence()),
                shown.say(finding.remedy()));
    }

    private static Optional<Double> figure(OptionalDouble figure, boolean length, UnitFormat shown) {
        if (figure.isEmpty() || !Double.isFinite(figure.getAsDouble())) {
            return Optional.empty();
        }
        return Optional.of(length ? shown.length(figure.getAsDouble()) : UnitFormat.ratio(figure.getAsDouble()));
    }
}
