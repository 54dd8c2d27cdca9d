package org.capwright.check;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.capwright.tables.BodyDimension;
import org.capwright.tables.Interval;
import org.capwright.tables.survey.Coverage;
import org.capwright.tables.survey.CoverageGap;
import org.capwright.tables.survey.Survey;
import org.junit.jupiter.api.Test;

/** Population: ANSUR 1988 women, NATICK/TR-89/044, n = 2208; upper arm 289.3 mm on average. */
class RunCoverageTest {

    private static Coverage of(FitRange fit) {
        return RunCoverage.of(ChoirGown.grade(), fit, Survey.ANSUR_1988_WOMEN, BodyDimension.UPPER_ARM_GIRTH);
    }

    @Test
    void aGenerousRunFitsMostAndATightOneFew() {
        Coverage generous = of(FitRange.aboutBase(ChoirGown.grade(), 6, 60));
        Coverage tight = of(FitRange.aboutBase(ChoirGown.grade(), 2, 10));
        assertEquals(2208, generous.people());
        assertTrue(generous.share() > 0.75, "share " + generous.share());
        assertTrue(tight.share() < generous.share());
        assertEquals(6, generous.peopleBySize().size());
    }

    /** Biceps 12 mm apart that fit arms within 2 mm leave gaps of 8 mm between the sizes. */
    @Test
    void namesTheGapsBetweenSizes() {
        Coverage tight = of(FitRange.aboutBase(ChoirGown.grade(), 2, 60));
        var between = tight.gaps().stream()
                .filter(g -> g.dimension() == BodyDimension.UPPER_ARM_GIRTH && g.place() == CoverageGap.Place.BETWEEN)
                .toList();
        assertEquals(5, between.size());
        between.forEach(gap -> assertEquals(8, gap.range().width(), 1e-9));
        // Size 40 has 360 mm over an arm of 294.5 mm, so it fits 292.5 to 296.5 mm.
        assertEquals(296.5, between.get(2).range().lower(), 1e-9);
    }

    @Test
    void saysWhatIsMissing() {
        CheckedGrade noBodies = CheckedGrade.of(ChoirGown.run());
        assertThrows(IllegalArgumentException.class, () -> FitRange.aboutBase(noBodies, 6, 6));
        CheckedGrade noLength = CheckCases.row(CheckedMeasure.BICEP, 300, 312);
        FitRange fit = new FitRange(new Interval(40, 80), new Interval(0, 60));
        assertThrows(
                IllegalArgumentException.class,
                () -> RunCoverage.of(noLength, fit, Survey.ANSUR_1988_WOMEN, BodyDimension.UPPER_ARM_GIRTH));
    }
}
