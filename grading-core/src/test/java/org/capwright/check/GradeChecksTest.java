package org.capwright.check;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.capwright.grade.SpecTable;
import org.capwright.quantity.Unit;
import org.junit.jupiter.api.Test;

class GradeChecksTest {

    /** The workshop's own grade is fit to cut as it stands. */
    @Test
    void choirGownHasNoStop() {
        List<Finding> found = GradeChecks.run(ChoirGown.grade(), Thresholds.usual());
        assertTrue(
                found.stream().noneMatch(f -> f.severity() == Severity.STOP),
                () -> found.stream().map(f -> f.text(Unit.MILLIMETRE)).toList().toString());
        assertTrue(found.stream().anyMatch(f -> f.code().equals("cap-ease-drift")));
    }

    /** Somebody's spec table, without draft or lines, is checked as well: its figures alone give the same findings, but for those of halves, lines and layers. */
    @Test
    void aSpecTableIsEnough() {
        CheckedGrade table =
                CheckedGrade.of(SpecTable.of(ChoirGown.run())).against(BodyReference.of(ChoirGown.women()));
        List<Finding> drafted = GradeChecks.run(ChoirGown.grade(), Thresholds.usual()).stream()
                .filter(f -> !f.code().equals("pleat-layers"))
                .toList();
        assertEquals(drafted, GradeChecks.run(table, Thresholds.usual()));
    }

    @Test
    void nothingIsSaidOfWhatIsNotKnown() {
        CheckedGrade empty = CheckCases.sizes(3, i -> new CheckedSize("size " + i, Map.of()));
        assertEquals(List.of(), GradeChecks.run(empty, Thresholds.usual()));
        CheckedGrade single = new CheckedGrade(
                List.of(ChoirGown.grade().baseSize()), 0, Optional.of(BodyReference.of(ChoirGown.women())));
        assertTrue(GradeChecks.run(single, Thresholds.usual()).stream().allMatch(f -> f.severity() != Severity.STOP));
    }

    @Test
    void everyFindingIsComplete() {
        for (long seed = 1; seed <= 70; seed++) {
            SeededFaults.Kind kind = SeededFaults.Kind.values()[(int) (seed % 5)];
            CheckedGrade grade = SeededFaults.fault(
                            kind, CheckedGrade.of(CleanRuns.of(seed)), new java.util.Random(seed))
                    .grade();
            for (Finding finding : GradeChecks.run(grade, Thresholds.usual())) {
                String said = "seed " + seed + ": " + finding;
                assertTrue(finding.sizes().size() == 1 || finding.sizes().size() == 2, said);
                assertTrue(Double.isFinite(finding.value().orElse(0)), said);
                assertTrue(Double.isFinite(finding.expected().least().orElse(0)), said);
                assertTrue(Double.isFinite(finding.expected().greatest().orElse(0)), said);
                assertTrue(
                        !finding.source().toString().isBlank()
                                && !finding.remedy().toString().isBlank()
                                && !finding.subject().code().isBlank(),
                        said);
                assertTrue(!finding.text(Unit.INCH).contains("NaN"), said);
            }
        }
    }

    @Test
    void figuresThatAreNoNumbersAreRefused() {
        IllegalArgumentException refused = assertThrows(
                IllegalArgumentException.class, () -> new CheckedSize("40", Map.of(CheckedMeasure.BICEP, Double.NaN)));
        assertTrue(refused.getMessage().contains("40") && refused.getMessage().contains("bicep"));
        assertThrows(IllegalArgumentException.class, () -> new CheckedGrade(List.of(), 0, Optional.empty()));
    }

    @Test
    void aFigureTakenOutStaysOut() {
        CheckedSize size = new CheckedSize(
                "40",
                Map.of(CheckedMeasure.CAP_LINE, 480.0, CheckedMeasure.ARMHOLE, 450.0, CheckedMeasure.BICEP, 360.0));
        assertEquals(30, size.value(CheckedMeasure.CAP_EASE).orElseThrow());
        CheckedSize without = size.without(CheckedMeasure.CAP_EASE);
        assertTrue(without.value(CheckedMeasure.CAP_EASE).isEmpty());
        assertEquals(480, without.value(CheckedMeasure.CAP_LINE).orElseThrow());
        assertTrue(without.labelled("42").value(CheckedMeasure.CAP_EASE).isEmpty());
        assertEquals(
                40,
                size.with(CheckedMeasure.CAP_LINE, 490)
                        .value(CheckedMeasure.CAP_EASE)
                        .orElseThrow());
    }

    @Test
    void aFindingReadsAsOneLine() {
        Finding drift = GradeChecks.run(ChoirGown.grade(), Thresholds.usual()).stream()
                .filter(f -> f.code().equals("cap-ease-drift"))
                .findFirst()
                .orElseThrow();
        assertTrue(
                drift.text(Unit.CENTIMETRE)
                        .startsWith("CAUTION 36-46 capEase: 1.77, expected 0 to 0.5 cm: the armhole grows"),
                drift.text(Unit.CENTIMETRE));
    }
}
