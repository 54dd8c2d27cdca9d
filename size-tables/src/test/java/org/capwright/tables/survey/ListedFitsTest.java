package org.capwright.tables.survey;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

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
            if (survey.isPresent() && !survey.get().hasPeople()) {
                // A correlation is listed to four digits; no deviation of a response is more than 0.6 of that of its
                // predictor.
                tolerance += growth ? 0.00005 * step : 0.0001;
            }
            assertEquals(number(line, "value"), actual, tolerance + 1e-9, line.toString());
            checked++;
        }
        assertEquals(144, checked);
    }

    /**
     * The men are known by means, deviations and correlations; their fits equal those that were computed from the men themselves, apart from this project, with slope, error, intercept,
     * spread and explained share. Source: the summaries of NATICK/TR-89/044 and NATICK/TR-15/007.
     */
    @Test
    void fitsOfTheMenEqualThoseOfTheSingleMen() {
        int checked = 0;
        for (Map<String, String> line : FITS) {
            Optional<Survey> survey = Survey.find(line.get("survey"));
            if (survey.isEmpty()) {
                continue;
            }
            BodyDimension predictor = BodyDimension.find(line.get("predictor")).orElseThrow();
            Regression fit = survey.get()
                    .regression(BodyDimension.find(line.get("response")).orElseThrow(), predictor);
            String of = line.toString();
            assertEquals(number(line, "people"), fit.people(), of);
            // A correlation of four digits and deviations of two decimals leave a slope good to a few units of its
            // fourth digit.
            assertEquals(number(line, "slope"), fit.slope(predictor).value(), 1e-4, of);
            assertEquals(number(line, "standardError"), fit.slope(predictor).standardError(), 2e-5, of);
            assertEquals(number(line, "residualSd"), fit.residualSd(), 0.02, of);
            assertEquals(number(line, "rSquared"), fit.rSquared(), 2e-4, of);
            checked++;
        }
        assertTrue(checked >= 24, "only " + checked);
    }

    /** With bust and stature together the two share what one alone carries. Source: the two-variable fits of the men's summaries. */
    @ParameterizedTest
    @CsvSource({
        "ansur-1988-men, upperArmGirth, 0.32856, 0.00555, -0.01518, 0.00574",
        "ansur-1988-men, armLength, 0.00349, 0.00687, 0.35999, 0.00710",
    })
    void fitsOnBustAndStatureEqualThoseOfTheSingleMen(
            String survey, String response, double bust, double bustError, double stature, double statureError) {
        Regression fit = Survey.find(survey)
                .orElseThrow()
                .regression(
                        BodyDimension.find(response).orElseThrow(), BodyDimension.BUST_GIRTH, BodyDimension.STATURE);
        assertEquals(bust, fit.slope(BodyDimension.BUST_GIRTH).value(), 2e-4);
        assertEquals(bustError, fit.slope(BodyDimension.BUST_GIRTH).standardError(), 3e-5);
        assertEquals(stature, fit.slope(BodyDimension.STATURE).value(), 2e-4);
        assertEquals(statureError, fit.slope(BodyDimension.STATURE).standardError(), 3e-5);
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
