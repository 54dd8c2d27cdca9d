package org.capwright.service.sizerun;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import org.capwright.check.BodyReference;
import org.capwright.check.CheckedGrade;
import org.capwright.check.Expected;
import org.capwright.check.Finding;
import org.capwright.check.GradeChecks;
import org.capwright.check.Severity;
import org.capwright.check.Thresholds;
import org.capwright.measure.Quantity;
import org.capwright.measure.Unit;
import org.capwright.tables.SizeTable;
import org.capwright.tables.survey.Survey;

/** What is worth a look in a run before it is cut: the checks of the engine, and what this request leaves open. */
public final class Findings {

    /** How sure the survey's intervals are. */
    private static final double CONFIDENCE = 0.95;

    private static final String SIZE_TABLE = "size-table";

    /** Codes beside those of the engine's checks; docs/checks has a page for each. */
    static final List<String> CODES =
            Stream.concat(Stream.of(SIZE_TABLE), PieceFindings.CODES.stream()).toList();

    private Findings() {}

    static List<FindingAnswer> of(SizeRunResult result) {
        CheckedGrade grade = grade(result, result.order().sizeTable());
        return shown(found(result, grade, Thresholds.usual()), result.order().unit());
    }

    /**
     * A run as it is checked.
     *
     * @param result a drafted run
     * @param table the bodies it is held against, a table of bodies whose sizes a body dimension orders
     * @return figures and lines of every size
     */
    public static CheckedGrade grade(SizeRunResult result, Optional<SizeTable> table) {
        CheckedGrade drafted = CheckedGrade.of(result.run());
        return new CheckedGrade(drafted.sizes(), drafted.base(), table.map(Findings::bodies));
    }

    /**
     * What is worth a look in a run that was drafted here.
     *
     * @param result a drafted run
     * @param grade the same as it is checked
     * @param thresholds limits of the label
     * @return findings, check by check
     */
    public static List<Finding> found(SizeRunResult result, CheckedGrade grade, Thresholds thresholds) {
        List<Finding> findings = new ArrayList<>(found(grade, thresholds));
        findings.addAll(PieceFindings.of(result.patterns()));
        return findings;
    }

    /**
     * What is worth a look in a grade that was drafted elsewhere.
     *
     * @param grade what is known of it
     * @param thresholds limits of the label
     * @return findings, check by check
     */
    public static List<Finding> found(CheckedGrade grade, Thresholds thresholds) {
        List<Finding> findings = new ArrayList<>(GradeChecks.run(grade, thresholds));
        grade.body()
                .filter(reference -> nothingToCompare(grade, reference))
                .ifPresent(reference -> findings.add(unknownSizes(reference.table())));
        return findings;
    }

    /**
     * Findings as they are answered.
     *
     * @param findings what was found
     * @param unit unit of the answer
     * @return the same, lengths in the unit
     */
    public static List<FindingAnswer> shown(List<Finding> findings, Unit unit) {
        UnitFormat shown = new UnitFormat(unit);
        return findings.stream().map(finding -> answer(finding, shown)).toList();
    }

    /**
     * The bodies of a table. The survey that gives the second opinion is one of women; tables of others stand alone.
     *
     * @param table a table of bodies whose sizes a body dimension orders
     * @return the reference
     */
    public static BodyReference bodies(SizeTable table) {
        Optional<Survey> survey =
                table.info().figureType().contains("women") ? Optional.of(Survey.ANSUR_1988_WOMEN) : Optional.empty();
        return new BodyReference(table, survey, Map.of(), CONFIDENCE);
    }

    private static boolean nothingToCompare(CheckedGrade grade, BodyReference reference) {
        for (int i = 1; i < grade.sizes().size(); i++) {
            String from = grade.label(i - 1);
            String to = grade.label(i);
            if (reference.jump(from, to, reference.key()).isPresent()) {
                return false;
            }
        }
        return true;
    }

    private static Finding unknownSizes(SizeTable table) {
        String labels = table.labels().isEmpty()
                ? ""
                : ", also called " + String.join(", ", table.labels().keySet());
        return new Finding(
                SIZE_TABLE,
                Severity.INFO,
                List.of(),
                "sizeTable",
                Quantity.OTHER,
                OptionalDouble.empty(),
                Expected.ANYTHING,
                "No two neighbouring sizes of the run are in the table " + table.id()
                        + ", so nothing was compared with it.",
                table.info().source(),
                "Name the sizes as the table does: " + String.join(", ", table.sizes()) + labels + ".");
    }

    private static FindingAnswer answer(Finding finding, UnitFormat shown) {
        boolean length = finding.quantity() == Quantity.LENGTH;
        return new FindingAnswer(
                finding.code(),
                UnitFormat.word(finding.severity()),
                finding.sizes(),
                finding.measure(),
                figure(finding.value(), length, shown),
                figure(finding.expected().least(), length, shown),
                figure(finding.expected().greatest(), length, shown),
                length ? Optional.of(shown.unit().symbol()) : Optional.empty(),
                finding.source(),
                finding.sentence(),
                finding.remedy());
    }

    private static Optional<Double> figure(OptionalDouble figure, boolean length, UnitFormat shown) {
        if (figure.isEmpty() || !Double.isFinite(figure.getAsDouble())) {
            return Optional.empty();
        }
        return Optional.of(length ? shown.length(figure.getAsDouble()) : UnitFormat.ratio(figure.getAsDouble()));
    }
}
