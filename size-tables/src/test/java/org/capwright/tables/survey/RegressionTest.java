package org.capwright.tables.survey;

import static org.capwright.tables.BodyDimension.ARM_LENGTH;
import static org.capwright.tables.BodyDimension.BUST_GIRTH;
import static org.capwright.tables.BodyDimension.ELBOW_GIRTH;
import static org.capwright.tables.BodyDimension.STATURE;
import static org.capwright.tables.BodyDimension.UPPER_ARM_GIRTH;
import static org.capwright.tables.BodyDimension.UPPER_ARM_GIRTH_FLEXED;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.apache.commons.math3.distribution.TDistribution;
import org.apache.commons.math3.stat.regression.OLSMultipleLinearRegression;
import org.apache.commons.math3.stat.regression.SimpleRegression;
import org.capwright.quantity.InvalidMeasuresException;
import org.capwright.tables.BodyDimension;
import org.capwright.tables.TableSubject;
import org.capwright.tables.TestCsv;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.MethodSource;

class RegressionTest {

    private static final List<Survey> WITH_PEOPLE =
            Stream.of(Survey.values()).filter(Survey::hasPeople).toList();

    private static BodyDimension[] dimensions(String plusSeparated) {
        return Arrays.stream(plusSeparated.split("\\+"))
                .map(id -> BodyDimension.find(id).orElseThrow())
                .toArray(BodyDimension[]::new);
    }

    /**
     * Source: summary files of ANSUR 1988 (NATICK/TR-89/044) and ANSUR II 2012 (NATICK/TR-15/007), fitted by other
     * software. Ours must round to every digit that the summary holds.
     */
    @Test
    void equalsTheSummariesToEveryDigitTheyHold() {
        int checked = 0;
        for (Map<String, String> line : TestCsv.read("survey/expected-regressions.csv")) {
            Regression fit = Survey.find(line.get("survey"))
                    .orElseThrow()
                    .regression(
                            BodyDimension.find(line.get("response")).orElseThrow(), dimensions(line.get("predictors")));
            String statistic = line.get("statistic");
            BigDecimal expected = new BigDecimal(line.get("value"));
            double actual;
            if (statistic.startsWith("slope:")) {
                actual = fit.slope(dimensions(statistic.substring(6))[0]).value();
            } else if (statistic.startsWith("se_slope:")) {
                actual = fit.slope(dimensions(statistic.substring(9))[0]).standardError();
            } else {
                actual = switch (statistic) {
                    case "intercept" -> fit.intercept();
                    case "r2" -> fit.rSquared();
                    case "residual_sd" -> fit.residualSd();
                    case "n" -> fit.people();
                    default -> throw new AssertionError(statistic);
                };
            }
            double halfDigit = 0.5 * Math.pow(10, -expected.scale());
            assertEquals(expected.doubleValue(), actual, halfDigit * (1 + 1e-6), line.toString());
            checked++;
        }
        assertTrue(checked > 200, "only " + checked);
    }

    static Stream<Arguments> pairs() {
        List<Arguments> pairs = new ArrayList<>();
        for (Survey survey : WITH_PEOPLE) {
            for (BodyDimension response : survey.dimensions()) {
                for (BodyDimension predictor : List.of(BUST_GIRTH, STATURE)) {
                    if (response != predictor) {
                        pairs.add(Arguments.of(survey, response, predictor));
                    }
                }
            }
        }
        return pairs.stream();
    }

    /** Source: Commons Math, SimpleRegression over the people. */
    @ParameterizedTest
    @MethodSource("pairs")
    void onePredictorEqualsSimpleRegressionOverThePeople(
            Survey survey, BodyDimension response, BodyDimension predictor) {
        SimpleRegression expected = new SimpleRegression();
        TestCsv.read("survey/" + survey.id() + ".csv.gz")
                .forEach(p -> expected.addData(
                        Double.parseDouble(p.get(predictor.id())), Double.parseDouble(p.get(response.id()))));
        Regression fit = survey.regression(response, predictor);
        relative(expected.getSlope(), fit.slope(predictor).value());
        relative(expected.getSlopeStdErr(), fit.slope(predictor).standardError());
        relative(expected.getIntercept(), fit.intercept());
        relative(Math.sqrt(expected.getMeanSquareError()), fit.residualSd());
        relative(expected.getRSquare(), fit.rSquared());
        ConfidenceInterval growth = fit.growthOfMean(Map.of(predictor, 40.0), 0.95);
        relative(
                40 * expected.getSlopeConfidenceInterval(0.05),
                growth.interval().width() / 2);
        relative(expected.getSignificance(), fit.departureOfJump(Map.of(predictor, 40.0), 0));
    }

    static Stream<Arguments> responses() {
        return WITH_PEOPLE.stream()
                .flatMap(survey -> survey.dimensions().stream()
                        .filter(d -> d != BUST_GIRTH && d != STATURE)
                        .map(d -> Arguments.of(survey, d)));
    }

    /** Source: Commons Math, OLSMultipleLinearRegression over the people, with its own QR decomposition. */
    @ParameterizedTest
    @MethodSource("responses")
    void twoPredictorsEqualMultipleRegressionOverThePeople(Survey survey, BodyDimension response) {
        List<Map<String, String>> people = TestCsv.read("survey/" + survey.id() + ".csv.gz");
        double[] y = new double[people.size()];
        double[][] x = new double[people.size()][2];
        for (int i = 0; i < y.length; i++) {
            y[i] = Double.parseDouble(people.get(i).get(response.id()));
            x[i][0] = Double.parseDouble(people.get(i).get("bustGirth"));
            x[i][1] = Double.parseDouble(people.get(i).get("stature"));
        }
        OLSMultipleLinearRegression expected = new OLSMultipleLinearRegression();
        expected.newSampleData(y, x);
        double[] beta = expected.estimateRegressionParameters();
        double[] errors = expected.estimateRegressionParametersStandardErrors();
        double s = expected.estimateRegressionStandardError();
        Regression fit = survey.regression(response, BUST_GIRTH, STATURE);
        relative(beta[0], fit.intercept());
        relative(beta[1], fit.slope(BUST_GIRTH).value());
        relative(beta[2], fit.slope(STATURE).value());
        relative(errors[1], fit.slope(BUST_GIRTH).standardError());
        relative(errors[2], fit.slope(STATURE).standardError());
        relative(s, fit.residualSd());
        relative(expected.calculateRSquared(), fit.rSquared());

        // Leverage with the intercept as a column of the design, (1, x)' (X'X)^-1 (1, x): another way to the same h.
        double[] point = {1, 1040, 1560};
        double[][] covariance = expected.estimateRegressionParametersVariance();
        double h = 0;
        double line = 0;
        for (int a = 0; a < 3; a++) {
            line += beta[a] * point[a];
            for (int b = 0; b < 3; b++) {
                h += point[a] * covariance[a][b] * point[b];
            }
        }
        double t = new TDistribution(people.size() - 3).inverseCumulativeProbability(0.975);
        Map<BodyDimension, Double> person = Map.of(BUST_GIRTH, 1040.0, STATURE, 1560.0);
        ConfidenceInterval mean = fit.mean(person, 0.95);
        PredictionInterval next = fit.newPerson(person, 0.95);
        relative(line, mean.estimate());
        relative(line, next.estimate());
        // The covariance of the parameters comes without the error variance.
        double meanHalf = t * s * Math.sqrt(h);
        double nextHalf = t * s * Math.sqrt(1 + h);
        relative(meanHalf, mean.interval().width() / 2);
        relative(nextHalf, next.interval().width() / 2);
    }

    private static void relative(double expected, double actual) {
        assertEquals(expected, actual, 1e-6 * Math.abs(expected) + 1e-12);
    }

    /**
     * The claim of a prediction interval, compared with the people themselves: the stated share of them lies inside. With
     * two predictors and some 2000 people in-sample and out-of-sample shares hardly differ. A confidence interval of the
     * mean put in its place would hold a few per cent.
     */
    @ParameterizedTest
    @EnumSource(value = Survey.class, names = ".*_WOMEN", mode = EnumSource.Mode.MATCH_ALL)
    void predictionIntervalHoldsTheStatedShareOfThePeople(Survey survey) {
        BodyDimension girth = survey == Survey.ANSUR_1988_WOMEN ? UPPER_ARM_GIRTH : UPPER_ARM_GIRTH_FLEXED;
        List<Map<String, String>> people = TestCsv.read("survey/" + survey.id() + ".csv.gz");
        for (BodyDimension response : List.of(girth, ARM_LENGTH)) {
            Regression fit = survey.regression(response, BUST_GIRTH, STATURE);
            for (double probability : new double[] {0.5, 0.9, 0.95}) {
                int inside = 0;
                for (Map<String, String> p : people) {
                    Map<BodyDimension, Double> person = Map.of(
                            BUST_GIRTH, Double.valueOf(p.get("bustGirth")), STATURE, Double.valueOf(p.get("stature")));
                    double value = Double.parseDouble(p.get(response.id()));
                    if (fit.newPerson(person, probability).interval().contains(value)) {
                        inside++;
                    }
                }
                // Three standard errors of a share over some 2000 people are 0.033 at one half; residuals are not
                // exactly normal, hence 0.04.
                assertEquals(probability, (double) inside / people.size(), 0.04, survey + " " + response);
            }
        }
    }

    /** Growth of the mean over the bust step of EN 13402-3. */
    @Test
    void tellsTheGrowthOfTheMean() {
        Regression fit = Survey.ANSUR_1988_WOMEN.regression(UPPER_ARM_GIRTH, BUST_GIRTH);
        Map<BodyDimension, Double> step = Map.of(BUST_GIRTH, 40.0);
        ConfidenceInterval mean = fit.growthOfMean(step, 0.95);
        assertEquals(12.32, mean.estimate(), 0.005);
        // Standard error of the slope 0.00491 x 40 mm x 1.961.
        assertEquals(0.385, mean.interval().width() / 2, 0.001);
        assertTrue(fit.departureOfJump(step, 12.0) > 0.05, "12 mm is within what the mean does");
        assertTrue(fit.departureOfJump(step, 8.0) < 1e-6, "8 mm is not");
        assertEquals(0.05, fit.departureOfJump(step, mean.interval().upper()), 1e-9);
        assertEquals(1, fit.departureOfJump(step, mean.estimate()), 1e-9);
    }

    @Test
    void holdsTheOtherPredictorWhenItIsLeftOutOfTheStep() {
        Regression fit = Survey.ANSUR_2012_WOMEN.regression(ARM_LENGTH, BUST_GIRTH, STATURE);
        // Source: ANSUR II summary: with stature held the arm grows by 0.01340 x 40 mm = 0.5 mm per class.
        assertEquals(0.536, fit.growthOfMean(Map.of(BUST_GIRTH, 40.0), 0.95).estimate(), 0.0003);
        assertEquals(
                fit.growthOfMean(Map.of(BUST_GIRTH, 40.0, STATURE, 0.0), 0.95),
                fit.growthOfMean(Map.of(BUST_GIRTH, 40.0), 0.95));
    }

    @Test
    void refusesWhatTheSurveyCannotSay() {
        Survey survey = Survey.ANSUR_2012_WOMEN;
        InvalidMeasuresException lacking =
                assertThrows(InvalidMeasuresException.class, () -> survey.regression(ELBOW_GIRTH, BUST_GIRTH));
        assertEquals(
                new TableSubject.Argument("response"),
                lacking.violations().get(0).subject());
        assertTrue(lacking.violations().get(0).reason().toString().contains("upperArmGirthFlexed"));
        assertThrows(InvalidMeasuresException.class, () -> survey.regression(ARM_LENGTH));
        assertThrows(InvalidMeasuresException.class, () -> survey.regression(ARM_LENGTH, ARM_LENGTH));
        assertThrows(InvalidMeasuresException.class, () -> survey.regression(ARM_LENGTH, STATURE, STATURE));
        Regression fit = survey.regression(ARM_LENGTH, BUST_GIRTH, STATURE);
        InvalidMeasuresException range = assertThrows(
                InvalidMeasuresException.class,
                () -> fit.newPerson(Map.of(BUST_GIRTH, 2000.0, STATURE, Double.NaN), 0.95));
        assertEquals(2, range.violations().size());
        assertEquals(BUST_GIRTH, range.violations().get(0).subject());
        assertThrows(InvalidMeasuresException.class, () -> fit.mean(Map.of(BUST_GIRTH, 900.0), 0.95));
        assertThrows(InvalidMeasuresException.class, () -> fit.growthOfMean(Map.of(ELBOW_GIRTH, 1.0), 0.95));
        assertThrows(InvalidMeasuresException.class, () -> fit.growthOfMean(Map.of(STATURE, Double.NaN), 0.95));
        assertThrows(InvalidMeasuresException.class, () -> fit.departureOfJump(Map.of(), 3));
        assertThrows(InvalidMeasuresException.class, () -> fit.departureOfJump(Map.of(STATURE, 80.0), Double.NaN));
        for (double confidence : new double[] {0, 1, 95, Double.NaN}) {
            assertThrows(InvalidMeasuresException.class, () -> fit.growthOfMean(Map.of(STATURE, 80.0), confidence));
        }
    }
}
