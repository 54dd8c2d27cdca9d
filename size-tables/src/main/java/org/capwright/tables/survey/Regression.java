package org.capwright.tables.survey;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.CholeskyDecomposition;
import org.apache.commons.math3.linear.RealMatrix;
import org.apache.commons.math3.linear.RealVector;
import org.capwright.quantity.InvalidMeasuresException;
import org.capwright.quantity.Violation;
import org.capwright.tables.BodyDimension;
import org.capwright.tables.Interval;
import org.capwright.tables.TableSubject;
import org.capwright.words.Text;

/**
 * Ordinary least squares of one body dimension on one or more others, over the people of a survey.
 *
 * <p>With S the matrix of centred sums of products of the predictors, C its inverse and s the residual standard deviation
 * on n - p - 1 degrees of freedom: slopes b = C S_xy; standard error of a slope s sqrt(C_jj); leverage of a new point
 * h = 1/n + (x - mean)' C (x - mean). Source: Draper and Smith, Applied Regression Analysis, chapters 1, 3 and 5 (from
 * memory for the chapters; the formulas are common to the handbooks).
 */
public final class Regression {

    /**
     * How much wider people scatter about the line beyond the surveyed range than within it. The women of 2012 with a bust of 1120 mm or more scatter 1.4 to 1.5
     * times as far about the girths that the lines of 1988 give them; {@code JointDistributionTest} measures it.
     */
    public static final double SCATTER_BEYOND = 1.5;

    private final Survey survey;
    private final BodyDimension response;
    private final List<BodyDimension> predictors;
    private final int people;
    private final double[] means;
    private final RealMatrix inverse;
    private final RealVector slopes;
    private final double intercept;
    private final double residualSd;
    private final double rSquared;
    private final StudentT student;

    Regression(Survey survey, BodyDimension response, List<BodyDimension> predictors) {
        SufficientStatistics statistics = survey.statistics();
        int p = predictors.size();
        this.survey = survey;
        this.response = response;
        this.predictors = predictors;
        this.people = statistics.people();
        this.means = new double[p];
        double[][] products = new double[p][p];
        double[] withResponse = new double[p];
        for (int a = 0; a < p; a++) {
            means[a] = statistics.mean(predictors.get(a));
            withResponse[a] = statistics.centredProduct(predictors.get(a), response);
            for (int b = 0; b < p; b++) {
                products[a][b] = statistics.centredProduct(predictors.get(a), predictors.get(b));
            }
        }
        this.inverse = new CholeskyDecomposition(new Array2DRowRealMatrix(products, false))
                .getSolver()
                .getInverse();
        RealVector moments = new ArrayRealVector(withResponse, false);
        this.slopes = inverse.operate(moments);
        double total = statistics.centredProduct(response, response);
        double residual = total - slopes.dotProduct(moments);
        this.residualSd = Math.sqrt(residual / degreesOfFreedom());
        this.rSquared = 1 - residual / total;
        this.student = new StudentT(degreesOfFreedom());
        this.intercept = statistics.mean(response) - slopes.dotProduct(new ArrayRealVector(means, false));
    }

    /**
     * The survey the fit is made on.
     *
     * @return the survey
     */
    public Survey survey() {
        return survey;
    }

    /**
     * The dimension that is explained.
     *
     * @return the response
     */
    public BodyDimension response() {
        return response;
    }

    /**
     * How many people the fit is made on.
     *
     * @return n
     */
    public int people() {
        return people;
    }

    /**
     * Degrees of freedom of the residuals.
     *
     * @return n minus the number of predictors minus one
     */
    public int degreesOfFreedom() {
        return people - predictors.size() - 1;
    }

    /**
     * The value of the fitted line at predictors of zero; of use in the formula only.
     *
     * @return the intercept in millimetres
     */
    public double intercept() {
        return intercept;
    }

    /**
     * The slope on one predictor, the other one held.
     *
     * @param predictor a predictor of this fit
     * @return slope and standard error
     * @throws InvalidMeasuresException when it is no predictor of this fit
     */
    public Slope slope(BodyDimension predictor) {
        int i = index("predictor", predictor);
        return new Slope(predictor, slopes.getEntry(i), residualSd * Math.sqrt(inverse.getEntry(i, i)));
    }

    /**
     * All slopes, in the order of the predictors.
     *
     * @return as many slopes as predictors
     */
    public List<Slope> slopes() {
        return predictors.stream().map(this::slope).toList();
    }

    /**
     * The spread of people about the fitted line.
     *
     * @return residual standard deviation in millimetres, on {@link #degreesOfFreedom()}
     */
    public double residualSd() {
        return residualSd;
    }

    /**
     * The share of the response's variance that the predictors explain.
     *
     * @return R squared, 0 to 1
     */
    public double rSquared() {
        return rSquared;
    }

    /**
     * The mean of all people with the given predictors: line value plus or minus t s sqrt(h).
     *
     * @param person value in millimetres of every predictor, within the surveyed range; other dimensions are not used
     * @param confidence between 0 and 1, such as 0.95
     * @return the mean with its confidence interval
     * @throws InvalidMeasuresException when a predictor is missing or out of range, or the confidence is
     */
    public ConfidenceInterval mean(Map<BodyDimension, Double> person, double confidence) {
        RealVector deviation = deviation(person);
        return confidenceInterval(estimate(deviation), residualSd * Math.sqrt(leverage(deviation)), confidence);
    }

    /**
     * A new person with the given predictors: line value plus or minus t s sqrt(1 + h).
     *
     * @param person value in millimetres of every predictor, within the surveyed range; other dimensions are not used
     * @param probability between 0 and 1, such as 0.95
     * @return the new person's response with its prediction interval
     * @throws InvalidMeasuresException when a predictor is missing or out of range, or the probability is
     */
    public PredictionInterval newPerson(Map<BodyDimension, Double> person, double probability) {
        RealVector deviation = deviation(person);
        return predictionInterval(estimate(deviation), residualSd * Math.sqrt(1 + leverage(deviation)), probability);
    }

    /**
     * A new person whose predictors may lie beyond the surveyed range: there the line is run on and the scatter taken {@value #SCATTER_BEYOND} times as wide. Nobody
     * of that size was measured, so whoever uses it has to say so; within the range it is {@link #newPerson}.
     *
     * @param person value in millimetres of every predictor, finite; other dimensions are not used
     * @param probability between 0 and 1, such as 0.95
     * @return the new person's response with its prediction interval
     * @throws InvalidMeasuresException when a predictor is missing or not finite, or the probability is out of range
     */
    public PredictionInterval newPersonBeyond(Map<BodyDimension, Double> person, double probability) {
        RealVector deviation = deviationBeyond(person);
        return predictionInterval(estimate(deviation), scatter(person, deviation), probability);
    }

    /**
     * How far a person's response lies from what the predictors let expect, in standard errors of a new person; beyond the surveyed range as {@link #newPersonBeyond}.
     *
     * @param person value in millimetres of the response and of every predictor, finite
     * @return above 0 where the response is larger than expected
     * @throws InvalidMeasuresException when the response or a predictor is missing or not finite
     */
    public double departure(Map<BodyDimension, Double> person) {
        RealVector deviation = deviationBeyond(person);
        return (finite(person, response) - estimate(deviation)) / scatter(person, deviation);
    }

    /**
     * How rare a departure is.
     *
     * @param departure in standard errors of a new person, finite
     * @return share of people who depart at least as far, to either side; 0 to 1
     */
    public double rarity(double departure) {
        return student.departure(departure);
    }

    private double scatter(Map<BodyDimension, Double> person, RealVector deviation) {
        boolean beyond = predictors.stream()
                .anyMatch(predictor -> !survey.range(predictor).contains(finite(person, predictor)));
        return residualSd * Math.sqrt(1 + leverage(deviation)) * (beyond ? SCATTER_BEYOND : 1);
    }

    private RealVector deviationBeyond(Map<BodyDimension, Double> person) {
        double[] deviation = new double[means.length];
        for (int i = 0; i < means.length; i++) {
            deviation[i] = finite(person, predictors.get(i)) - means[i];
        }
        return new ArrayRealVector(deviation, false);
    }

    static double finite(Map<BodyDimension, Double> person, BodyDimension dimension) {
        Double value = person.get(dimension);
        if (value == null || !Double.isFinite(value)) {
            throw new InvalidMeasuresException(
                    Violation.other(dimension, value == null ? "none" : value + " mm", "a finite length in mm"));
        }
        return value;
    }

    /**
     * How much the mean response grows over a step of the predictors: slope times step, plus or minus
     * t s sqrt(d' C d). This is the body's growth from one class to the next.
     *
     * @param step step in millimetres by predictor; a predictor left out is held
     * @param confidence between 0 and 1, such as 0.95
     * @return the growth with its confidence interval
     * @throws InvalidMeasuresException when a dimension is no predictor of this fit, or the confidence is out of range
     */
    public ConfidenceInterval growthOfMean(Map<BodyDimension, Double> step, double confidence) {
        RealVector d = step(step);
        return confidenceInterval(slopes.dotProduct(d), residualSd * Math.sqrt(quadratic(d)), confidence);
    }

    /**
     * How far a jump is from the growth of the mean, in the light of the sampling alone.
     *
     * @param step step in millimetres by predictor, not all zero; a predictor left out is held
     * @param jump the jump in millimetres, finite
     * @return probability of an estimate at least this far from the jump if the jump were the true growth, 0 to 1
     * @throws InvalidMeasuresException when a dimension is no predictor of this fit, the step is nil or the jump not finite
     */
    public double departureOfJump(Map<BodyDimension, Double> step, double jump) {
        RealVector d = step(step);
        if (d.getNorm() == 0) {
            throw new InvalidMeasuresException(Violation.other(
                    new TableSubject.Argument("step"),
                    "0 mm",
                    Text.of("a step other than 0 mm of {names}").with("names", names())));
        }
        double distance = requireFinite("jump", jump) - slopes.dotProduct(d);
        return student.departure(distance / (residualSd * Math.sqrt(quadratic(d))));
    }

    private ConfidenceInterval confidenceInterval(double estimate, double standardError, double confidence) {
        double half = student.twoSided("confidence", confidence) * standardError;
        return new ConfidenceInterval(
                estimate,
                new Interval(estimate - half, estimate + half),
                confidence,
                standardError,
                degreesOfFreedom());
    }

    private PredictionInterval predictionInterval(double estimate, double standardError, double probability) {
        double half = student.twoSided("probability", probability) * standardError;
        return new PredictionInterval(
                estimate,
                new Interval(estimate - half, estimate + half),
                probability,
                standardError,
                degreesOfFreedom());
    }

    private double estimate(RealVector deviation) {
        double mean = intercept + slopes.dotProduct(new ArrayRealVector(means, false));
        return mean + slopes.dotProduct(deviation);
    }

    private double leverage(RealVector deviation) {
        return 1.0 / people + quadratic(deviation);
    }

    private double quadratic(RealVector d) {
        return inverse.operate(d).dotProduct(d);
    }

    private RealVector deviation(Map<BodyDimension, Double> person) {
        List<Violation> violations = new ArrayList<>();
        double[] deviation = new double[means.length];
        for (int i = 0; i < means.length; i++) {
            BodyDimension predictor = predictors.get(i);
            Interval range = survey.range(predictor);
            Double value = person.get(predictor);
            if (value == null || !range.contains(value)) {
                violations.add(Violation.other(
                        predictor,
                        value == null ? "none" : value + " mm",
                        Text.of("{least} to {greatest}, as surveyed")
                                .with("least", Text.figures(String.valueOf(range.lower())))
                                .with("greatest", Text.figures(range.upper() + " mm"))));
            } else {
                deviation[i] = value - means[i];
            }
        }
        if (!violations.isEmpty()) {
            throw new InvalidMeasuresException(violations);
        }
        return new ArrayRealVector(deviation, false);
    }

    private RealVector step(Map<BodyDimension, Double> step) {
        double[] d = new double[means.length];
        step.forEach((predictor, value) -> d[index("step", predictor)] = requireFinite(predictor.id(), value));
        return new ArrayRealVector(d, false);
    }

    private int index(String field, BodyDimension predictor) {
        int i = predictors.indexOf(predictor);
        if (i < 0) {
            throw new InvalidMeasuresException(
                    Violation.other(new TableSubject.Argument(field), predictor.id(), names()));
        }
        return i;
    }

    private String names() {
        return String.join(" or ", predictors.stream().map(BodyDimension::id).toList());
    }

    private static double requireFinite(String field, double value) {
        if (!Double.isFinite(value)) {
            throw new InvalidMeasuresException(
                    Violation.other(new TableSubject.Argument(field), Double.toString(value), "a finite length in mm"));
        }
        return value;
    }
}
