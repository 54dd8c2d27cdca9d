package org.capwright.tables.survey;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.capwright.tables.BodyDimension;
import org.capwright.tables.SizeTable;
import org.capwright.tables.SizeTables;
import org.capwright.tables.TestCsv;
import org.capwright.tables.ViolationException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

class PublishedFitsTest {

    static List<PublishedFit> fits() {
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

    /** Source: the list of growth per step and explained share that stands beside the surveys, all of its rows. */
    @Test
    void growthAndExplainedShareEqualTheListedOnes() {
        int checked = 0;
        for (Map<String, String> line : TestCsv.read("survey/implied-increments.csv")) {
            double step = Double.parseDouble(line.get("step"));
            boolean growth = line.get("statistic").equals("growth");
            BodyDimension response = BodyDimension.find(line.get("response")).orElseThrow();
            BodyDimension predictor = BodyDimension.find(line.get("predictor")).orElseThrow();
            Optional<Survey> survey = Survey.find(line.get("survey"));
            double actual;
            if (survey.isPresent()) {
                Regression fit = survey.get().regression(response, predictor);
                actual =
                        growth ? fit.growthOfMean(Map.of(predictor, step), 0.95).estimate() : fit.rSquared();
            } else {
                PublishedFit fit = PublishedFits.all().stream()
                        .filter(f -> f.survey().equals(line.get("survey"))
                                && f.response() == response
                                && f.predictor() == predictor)
                        .findFirst()
                        .orElseThrow(() -> new AssertionError(line.toString()));
                actual = growth ? fit.growthOfMean(step, 0.95).estimate() : fit.rSquared();
            }
            // Half the last listed digit, and half the last digit of a slope known to five decimals times the step.
            double tolerance = growth ? 0.005 + 0.000005 * step : 0.0005 + 0.00005;
            assertEquals(Double.parseDouble(line.get("value")), actual, tolerance + 1e-9, line.toString());
            checked++;
        }
        assertEquals(144, checked);
    }

    @Test
    void refusesAStepOrAConfidenceThatIsNone() {
        PublishedFit fit = PublishedFits.all().get(0);
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
