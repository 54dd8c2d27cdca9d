package org.capwright.check;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.capwright.tables.SizeTables;
import org.junit.jupiter.api.Test;

/** Body figures: ANSUR 1988 women (NATICK/TR-89/044) on the bust classes of EN 13402-3:2004, as in the table women-en-13402-3-bust: upper arm 270.9, 283.3, 294.5, 307.4, 320.1, 333.9. */
class BodyJumpCheckTest {

    private final BodyJumpCheck check = new BodyJumpCheck();

    private List<Finding> bicep(double... values) {
        return CheckCases.of(check, CheckCases.gownWith(CheckedMeasure.BICEP, values)).stream()
                .filter(f -> f.subject().code().equals("bicep"))
                .toList();
    }

    @Test
    void aBicepThatGrowsAsTheArmPasses() {
        assertEquals(List.of(), bicep(330.9, 343.3, 354.5, 367.4, 380.1, 393.9));
    }

    /** The class means jump by 11.2 to 13.8 mm by chance of sampling; 12 mm is within the survey's 11.9 to 12.7 mm per 40 mm of bust. */
    @Test
    void twelveMillimetresAreExplainedAndNoStop() {
        List<Finding> found = bicep(336, 348, 360, 372, 384, 396);
        assertEquals(4, found.size());
        assertEquals(
                List.of(List.of("36", "38"), List.of("40", "42"), List.of("42", "44"), List.of("44", "46")),
                found.stream().map(Finding::sizes).toList());
        assertTrue(found.subList(0, 3).stream().allMatch(f -> f.severity() == Severity.INFO));
        assertTrue(found.get(0).message().toString().contains("within what the survey knows"));
        // The class 102-107 is 45 mm above its neighbour, so the arm grows by more there.
        assertEquals(Severity.CAUTION, found.get(3).severity());
        assertTrue(found.get(3).source().toString().contains("EN 13402-3")
                && found.get(3).source().toString().contains("NATICK/TR-89/044"));
    }

    @Test
    void aBicepThatGrowsFarTooLittleStops() {
        List<Finding> found = bicep(336, 348, 360, 365, 377, 391);
        assertTrue(found.stream()
                .anyMatch(f -> f.severity() == Severity.STOP && f.sizes().equals(List.of("40", "42"))));
    }

    @Test
    void aBicepThatBalloonsIsCautionedAndThenStopped() {
        // Body 12.9 (or 12.7 by the survey) + 4 mm of ease growth = 16.9; beyond 26.9 it stops.
        assertEquals(
                Severity.CAUTION,
                bicep(330.9, 343.3, 354.5, 372.5, 385.2, 399).get(0).severity());
        assertEquals(
                Severity.STOP,
                bicep(330.9, 343.3, 354.5, 385, 397.7, 411.5).get(0).severity());
        CheckedGrade wide = CheckCases.gownWith(CheckedMeasure.BICEP, 330.9, 343.3, 354.5, 372.5, 385.2, 399);
        assertTrue(check.check(wide, Thresholds.usual().with(Threshold.BICEP_EASE_GROWTH, 6)).stream()
                .noneMatch(f -> f.subject().code().equals("bicep")));
    }

    @Test
    void smallLossesAddUp() {
        // 8.4 mm per size is within the limit of a single jump, but from 40 to 46 the arm gains 39.4 mm.
        List<Finding> found =
                CheckCases.of(check, CheckCases.gownWith(CheckedMeasure.BICEP, 343, 351.5, 360, 368.5, 377, 387));
        assertTrue(found.stream()
                .anyMatch(f -> f.code().equals("ease-loss")
                        && f.sizes().equals(List.of("40", "46"))
                        && f.severity() == Severity.STOP));
    }

    private List<Finding> elbow(BodyReference body) {
        return CheckCases.of(check, CheckedGrade.of(ChoirGown.run()).against(body)).stream()
                .filter(f -> f.subject().code().equals("elbow"))
                .toList();
    }

    @Test
    void aGapInTheTableIsSaidAndNotFilled() {
        List<Finding> elbow = elbow(new BodyReference(
                SizeTables.find("women-en-13402-3-bust-2012").orElseThrow(), Optional.empty(), Map.of(), 0.95));
        assertEquals(5, elbow.size());
        assertTrue(
                elbow.stream().allMatch(f -> f.code().equals("body-figure-missing") && f.severity() == Severity.INFO));
    }

    /** The survey of 2012 has no elbow; that of 1988 says how much it grows over the same step. */
    @Test
    void aGapInTheTableIsAskedOfTheSurvey() {
        List<Finding> elbow = elbow(
                BodyReference.of(SizeTables.find("women-en-13402-3-bust-2012").orElseThrow()));
        assertEquals(1, elbow.size());
        assertEquals(Severity.CAUTION, elbow.get(0).severity());
        assertTrue(
                elbow.get(0).source().toString().contains("elbowGirth on bustGirth"),
                elbow.get(0).source().toString());
    }

    @Test
    void withoutBodiesNothingIsSaid() {
        assertEquals(List.of(), CheckCases.of(check, CheckedGrade.of(ChoirGown.run())));
    }
}
