package org.capwright.check;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;
import org.capwright.tables.BodyDimension;
import org.capwright.tables.survey.ConfidenceInterval;
import org.capwright.tables.survey.Regression;
import org.capwright.words.Text;

/**
 * How much a survey's people grow from one size of a table to another.
 *
 * @param fit the line through the people
 * @param step how much the body of the table grows in each predictor of the line, mm
 * @param mean growth of the mean body, mm, with its confidence interval
 * @param extrapolated whether one of the sizes lies beyond the people surveyed, so that the line is carried on past them
 */
public record SurveyedGrowth(
        Regression fit, Map<BodyDimension, Double> step, ConfidenceInterval mean, boolean extrapolated) {

    /**
     * Copies the step, keeping its order.
     *
     * @param fit the line through the people
     * @param step how much the body of the table grows in each predictor of the line, mm
     * @param mean growth of the mean body, mm, with its confidence interval
     * @param extrapolated whether one of the sizes lies beyond the people surveyed, so that the line is carried on past them
     */
    public SurveyedGrowth {
        step = Collections.unmodifiableMap(new LinkedHashMap<>(step));
    }

    /**
     * What was compared with what.
     *
     * @return for example {@code upperArmGirth on bustGirth}
     */
    public Text line() {
        return Text.of("{measure} on {steps}")
                .with("measure", Text.of(fit.response().id()))
                .with("steps", steps());
    }

    Text steps() {
        return step.keySet().stream()
                .map(dimension -> Text.of(dimension.id()))
                .reduce((first, second) ->
                        Text.of("{first} and {second}").with("first", first).with("second", second))
                .orElse(Text.name(""));
    }

    /** What is said of an extrapolated line, as the end of a sentence. */
    static final Text BEYOND = Text.of(
            "; the size lies beyond the people surveyed, so that their line is extrapolated and no more than a hint");

    Text doubt() {
        return extrapolated ? BEYOND : Text.name("");
    }
}
