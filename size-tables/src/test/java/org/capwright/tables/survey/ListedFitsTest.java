package org.capwright.tables.survey;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.capwright.tables.BodyDimension;
import org.capwright.tables.SizeTable;
import org.capwright.tables.SizeTables;
import org.capwright.tables.TestCsv;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Fits of other surveys, known by their summaries only (the men of both army surveys and three studies of women; sources in the file), beside the tables and fits of ours. */
class ListedFitsTest {

    private static final List<Map<String, String>> FITS = TestCsv.read("survey/published-regressions.csv");

    private static double number(Map<String, String> line, String name) {
        return Double.parseDouble(line.get(name));
    }

    private static Map<String, String> fit(String survey, String response, String predictor) {
        return FITS.stream()
                .filter(f -> f.get("survey").equals(survey)
                        && f.get("response").equals(response)
                        && f.get("predictor").equals(predictor))
                .findFirst()
                .orElseThrow(() -> new AssertionError(survey + " " + response + " on " + predictor));
    }

    /** With one predictor t^2 = (n - 2) R^2 / (1 - R^2), so slope, its error, R^2 and n check one another: no digit is mistyped. */
    @Test
    void slopeErrorAndExplainedShareAgreeWithOneAnother() {
        for (Map<String, String> fit : FITS) {
            double t = number(fit, "slope") / number(fit, "standardError");
            double fromT = t * t / (t * t + number(fit, "people") - 2);
            // R^2 has four digits, the standard error down to three figures.
            double rSquared = number(fit, "rSquared");
            assertEquals(rSquared, fromT, 0.006 * rSquared + 0.0001, fit.toString());
        }
    }

    /** Source: the list of growth per step and explained share that stands beside the surveys, all of its rows. */
    @Test
    void growthAndExplainedShareEqualTheListedOnes() {
        int checked = 0;
        for (Map<String, String> line : TestCsv.read("survey/implied-increments.csv")) {
            double step = number(line, "step");
            boolean growth = line.get("statistic").equals("growth");
            Optional<Survey> survey = Survey.find(line.get("survey"));
            double actual;
            if (survey.isPresent()) {
                BodyDimension predictor =
                        BodyDimension.find(line.get("predictor")).orElseThrow();
                Regression ours = survey.get()
                        .regression(BodyDimension.find(line.get("response")).orElseThrow(), predictor);
                actual = growth
                        ? ours.growthOfMean(Map.of(predictor, step), 0.95).estimate()
                        : ours.rSquared();
            } else {
                Map<String, String> fit = fit(line.get("survey"), line.get("response"), line.get("predictor"));
                actual = growth ? step * number(fit, "slope") : number(fit, "rSquared");
            }
            // Half the last listed digit, and half the last digit of a slope known to five decimals times the step.
            double tolerance = growth ? 0.005 + 0.000005 * step : 0.0005 + 0.00005;
            assertEquals(number(line, "value"), actual, tolerance + 1e-9, line.toString());
            checked++;
        }
        assertEquals(144, checked);
    }

    /** The men's fits run through the middle of the men's class means. */
    @ParameterizedTest
    @CsvSource({"ansur-1988-men, upperArmGirth", "ansur-2012-men, upperArmGirthFlexed"})
    void fitPassesNearTheClassMeansOfTheSameSurvey(String survey, String response) {
        Map<String, String> fit = fit(survey, response, "bustGirth");
        BodyDimension dimension = BodyDimension.find(response).orElseThrow();
        SizeTable table = SizeTables.find(survey + "-by-bust").orElseThrow();
        for (String size : table.sizes()) {
            if (table.people().get(size) < 200) {
                continue;
            }
            double line = number(fit, "intercept") + number(fit, "slope") * Double.parseDouble(size);
            assertEquals(table.value(size, dimension).orElseThrow().millimetres(), line, 4, size);
        }
    }
}
