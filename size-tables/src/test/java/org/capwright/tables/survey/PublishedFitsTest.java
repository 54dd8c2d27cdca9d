package org.capwright.tables.survey;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.capwright.tables.BodyDimension;
import org.capwright.tables.SizeTable;
import org.capwright.tables.SizeTables;
import org.capwright.tables.ViolationException;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

class PublishedFitsTest {

    static java.util.List<PublishedFit> fits() {
        return PublishedFits.all();
    }

    /** With one predictor t^2 = (n - 2) R^2 / (1 - R^2), so slope, its error, R^2 and n check one another. */
    @ParameterizedTest
    @MethodSource("fits")
    void slopeErrorAndExplainedShareAgreeWithOneAnother(PublishedFit fit) {
        assertFalse(fit.source().isBlank());
        double t = fit.slope() / fit.standardError();
        double fromT = t * t / (t * t + fit.people() - 2);
        // R^2 has four digits, the standard error down to three figures.
        assertEquals(fit.rSquared(), fromT, 0.006 * fit.rSquared() + 0.0001, fit.toString());
        ConfidenceInterval growth = fit.growthOfMean(40, 0.95);
        assertEquals(40 * fit.slope(), growth.estimate(), 1e-12);
        assertTrue(growth.interval().contains(growth.estimate()));
    }

    /** Source: growth per 40 mm of chest and per 80 mm of stature as the survey folder's increment list states it. */
    @ParameterizedTest
    @CsvSource({
        "ansur-1988-men, upperArmGirth, bustGirth, 40, 12.96",
        "ansur-1988-men, armLength, stature, 80, 28.89",
        "ansur-1988-men, armscyeGirth, bustGirth, 40, 12.77",
        "ansur-2012-men, upperArmGirthFlexed, bustGirth, 40, 12.46",
        "ansur-2012-men, upperArmLength, stature, 80, 16.23",
        "nhanes-2015-women, upperArmGirth, stature, 80, 8.91",
        "nhanes-2015-women, upperArmLength, stature, 80, 17.29",
        "college-2021-women, upperArmGirth, chestGirthSixthRib, 40, 8.66",
        "active-women-2003, upperArmGirthFlexed, bustGirth, 40, 14.33",
        "active-women-2003, wristGirth, bustGirth, 40, 3.52",
    })
    void growthEqualsTheListedIncrements(
            String survey, String response, String predictor, double step, double expected) {
        PublishedFit fit = PublishedFits.all().stream()
                .filter(f -> f.survey().equals(survey)
                        && f.response().id().equals(response)
                        && f.predictor().id().equals(predictor))
                .findFirst()
                .orElseThrow();
        assertEquals(expected, fit.growthOfMean(step, 0.95).estimate(), 0.0051);
        assertThrows(ViolationException.class, () -> fit.growthOfMean(Double.NaN, 0.95));
        assertThrows(ViolationException.class, () -> fit.growthOfMean(40, 1));
    }

    /** The men's fits run through the middle of the men's class means. */
    @ParameterizedTest
    @CsvSource({"ansur-1988-men, upperArmGirth, 4", "ansur-2012-men, upperArmGirthFlexed, 4"})
    void fitPassesNearTheClassMeansOfTheSameSurvey(String survey, String response, double tolerance) {
        PublishedFit fit = PublishedFits.all().stream()
                .filter(f -> f.survey().equals(survey)
                        && f.response().id().equals(response)
                        && f.predictor() == BodyDimension.BUST_GIRTH)
                .findFirst()
                .orElseThrow();
        SizeTable table = SizeTables.find(survey + "-by-bust").orElseThrow();
        for (String size : table.sizes()) {
            if (table.people().get(size) < 200) {
                continue;
            }
            double line = fit.intercept() + fit.slope() * Double.parseDouble(size);
            assertEquals(table.value(size, fit.response()).orElseThrow().millimetres(), line, tolerance, size);
        }
    }
}
