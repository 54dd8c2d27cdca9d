package org.capwright.check;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.apache.commons.math3.distribution.TDistribution;
import org.capwright.tables.BodyDimension;
import org.capwright.tables.survey.Slope;
import org.capwright.tables.survey.Survey;
import org.junit.jupiter.api.Test;

class SurveyJumpCheckTest {

    private final SurveyJumpCheck check = new SurveyJumpCheck();

    private Finding bicep(double jump) {
        return CheckCases.of(
                        check,
                        CheckCases.gownWith(
                                CheckedMeasure.BICEP,
                                360 - 2 * jump,
                                360 - jump,
                                360,
                                360 + jump,
                                360 + 2 * jump,
                                360 + 3 * jump))
                .stream()
                .filter(f -> f.subject().code().equals("bicep"))
                .findFirst()
                .orElseThrow();
    }

    /** Interval and probability against Student's t from Commons Math and the slope of ANSUR 1988 (12.32 mm per 40 mm of bust). */
    @Test
    void statesTheIntervalOfTheMeanGrowthAndItsProbability() {
        Slope slope = Survey.ANSUR_1988_WOMEN
                .regression(BodyDimension.UPPER_ARM_GIRTH, BodyDimension.BUST_GIRTH)
                .slope(BodyDimension.BUST_GIRTH);
        TDistribution student = new TDistribution(2206);
        double half = student.inverseCumulativeProbability(0.975) * slope.standardError() * 40;
        Finding twelve = bicep(12);
        assertEquals(12.32 - half, twelve.expected().least().orElseThrow(), 0.006);
        assertEquals(12.32 + half, twelve.expected().greatest().orElseThrow(), 0.006);
        double t = (12 - 40 * slope.value()) / (40 * slope.standardError());
        double p = 2 * student.cumulativeProbability(-Math.abs(t));
        assertTrue(
                twelve.message().toString().contains(String.format(java.util.Locale.ROOT, "%.3f", p)),
                twelve.message().toString());
        assertTrue(twelve.message().toString().startsWith("within what bodies do"));
        assertEquals(List.of("36", "44"), twelve.sizes());
    }

    @Test
    void saysWhenBodiesDoNotGrowSo() {
        assertTrue(bicep(16).message().toString().startsWith("more than bodies grow"));
        assertTrue(bicep(8).message().toString().startsWith("less than bodies grow"));
        assertTrue(bicep(8).message().toString().contains("below 0.001"));
        assertEquals(Severity.INFO, bicep(8).severity());
    }

    @Test
    void withoutSurveyNothingIsSaid() {
        CheckedGrade gown = CheckedGrade.of(ChoirGown.run())
                .against(new BodyReference(ChoirGown.women(), java.util.Optional.empty(), java.util.Map.of(), 0.95));
        assertEquals(List.of(), CheckCases.of(check, gown));
    }
}
