package org.capwright.tables.survey;

import java.util.Map;
import org.capwright.tables.BodyDimension;
import org.capwright.tables.Interval;
import org.capwright.tables.Violation;
import org.capwright.tables.ViolationException;

/**
 * A least-squares fit on one predictor that is known by its summary only, without the people behind it.
 *
 * @param survey short name of the survey
 * @param source the publication, and what sets its measuring apart
 * @param response the dimension that is explained
 * @param predictor the dimension that explains it
 * @param slope growth in millimetres per millimetre
 * @param standardError standard error of the slope
 * @param intercept value of the line at zero, in millimetres
 * @param residualSd spread of people about the line, in millimetres
 * @param rSquared share of the variance explained, 0 to 1
 * @param people how many people
 */
public record PublishedFit(
        String survey,
        String source,
        BodyDimension response,
        BodyDimension predictor,
        double slope,
        double standardError,
        double intercept,
        double residualSd,
        double rSquared,
        int people) {

    /**
     * How much the mean response grows over a step of the predictor: slope times step, plus or minus t times the standard
     * error times the step, on n - 2 degrees of freedom.
     *
     * @param step step in millimetres of the predictor, finite
     * @param confidence between 0 and 1, such as 0.95
     * @return the growth with its confidence interval
     * @throws ViolationException when the confidence or the step is out of range
     */
    public ConfidenceInterval growthOfMean(double step, double confidence) {
        if (!Double.isFinite(step)) {
            throw new ViolationException(new Violation("step", Double.toString(step), "a finite length in mm"));
        }
        double error = standardError * Math.abs(step);
        double half = new StudentT(people - 2).twoSided("confidence", confidence) * error;
        double growth = slope * step;
        return new ConfidenceInterval(
                growth, new Interval(growth - half, growth + half), confidence, error, people - 2);
    }

    static PublishedFit parse(Map<String, String> line, String source) {
        return new PublishedFit(
                text(line, "survey"),
                source,
                dimension(text(line, "response")),
                dimension(text(line, "predictor")),
                Double.parseDouble(text(line, "slope")),
                Double.parseDouble(text(line, "standardError")),
                Double.parseDouble(text(line, "intercept")),
                Double.parseDouble(text(line, "residualSd")),
                Double.parseDouble(text(line, "rSquared")),
                Integer.parseInt(text(line, "people")));
    }

    private static String text(Map<String, String> line, String name) {
        String text = line.get(name);
        if (text == null) {
            throw new IllegalStateException("missing column " + name);
        }
        return text;
    }

    private static BodyDimension dimension(String id) {
        return BodyDimension.find(id).orElseThrow(() -> new IllegalStateException("unknown dimension " + id));
    }
}
