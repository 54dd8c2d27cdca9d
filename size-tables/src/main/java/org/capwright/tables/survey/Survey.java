package org.capwright.tables.survey;

import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import org.capwright.quantity.InvalidMeasuresException;
import org.capwright.quantity.Violation;
import org.capwright.tables.BodyDimension;
import org.capwright.tables.Interval;
import org.capwright.tables.TableSubject;
import org.capwright.words.Text;

/** A public survey of soldiers. All are works of the US Government, public domain. Of the women every person is with the library, of the men means, deviations and correlations. */
public enum Survey {
    /** The women of 1988, with the relaxed upper arm, elbow, armscye and scye depth. */
    ANSUR_1988_WOMEN(
            "ansur-1988-women",
            "1988 Anthropometric Survey of U.S. Army Personnel (ANSUR), report NATICK/TR-89/044, 1989; women"),
    /** The women of 2012; the upper arm was measured flexed only, and elbow, armscye and scye depth are missing. */
    ANSUR_2012_WOMEN(
            "ansur-2012-women",
            "2012 Anthropometric Survey of U.S. Army Personnel (ANSUR II), report NATICK/TR-15/007, 2014; women"),
    /** The men of 1988; a summary, with the same dimensions as of the women. */
    ANSUR_1988_MEN(
            "ansur-1988-men",
            "1988 Anthropometric Survey of U.S. Army Personnel (ANSUR), report NATICK/TR-89/044, 1989; men"),
    /** The men of 2012; a summary, with the same dimensions as of the women. */
    ANSUR_2012_MEN(
            "ansur-2012-men",
            "2012 Anthropometric Survey of U.S. Army Personnel (ANSUR II), report NATICK/TR-15/007, 2014; men");

    /** A line through the people, which is the same at every call. */
    private record Fitted(Survey survey, BodyDimension response, List<BodyDimension> predictors) {}

    private static final Map<Fitted, Regression> FITS = new ConcurrentHashMap<>();

    private final String id;
    private final String source;

    Survey(String id, String source) {
        this.id = id;
        this.source = source;
    }

    /**
     * The short name.
     *
     * @return the id in kebab-case
     */
    public String id() {
        return id;
    }

    /**
     * The publication.
     *
     * @return title, report number and year
     */
    public String source() {
        return source;
    }

    /**
     * Whether the rows of the single people are with the library, so that people can be counted.
     *
     * @return false where only a summary is kept; regressions are the same to its digits
     */
    public boolean hasPeople() {
        return this == ANSUR_1988_WOMEN || this == ANSUR_2012_WOMEN;
    }

    /**
     * How many people were measured.
     *
     * @return the number of rows
     */
    public int people() {
        return statistics().people();
    }

    /**
     * What was measured of everybody.
     *
     * @return the dimensions, in the order of the columns
     */
    public List<BodyDimension> dimensions() {
        return statistics().dimensions();
    }

    /**
     * The smallest and the largest of the people measured.
     *
     * @param dimension a dimension of the survey
     * @return the range in millimetres
     * @throws InvalidMeasuresException when the survey lacks the dimension
     */
    public Interval range(BodyDimension dimension) {
        return statistics().range(required("dimension", dimension));
    }

    /**
     * Fits a response on one or more predictors by ordinary least squares.
     *
     * @param response the dimension to explain, such as the upper-arm girth
     * @param predictors other dimensions of the survey, one at least, such as bust girth and stature
     * @return the fit
     * @throws InvalidMeasuresException when the survey lacks a dimension or one is given twice
     */
    public Regression regression(BodyDimension response, BodyDimension... predictors) {
        required("response", response);
        if (predictors.length == 0) {
            throw new InvalidMeasuresException(
                    Violation.other(new TableSubject.Argument("predictors"), "none", "one or more predictors"));
        }
        Set<BodyDimension> once = EnumSet.noneOf(BodyDimension.class);
        for (BodyDimension predictor : predictors) {
            required("predictors", predictor);
            if (!once.add(predictor)) {
                throw new InvalidMeasuresException(Violation.other(
                        new TableSubject.Argument("predictors"), predictor.id(), "each predictor once"));
            }
            if (predictor == response) {
                throw new InvalidMeasuresException(Violation.other(
                        new TableSubject.Argument("predictors"),
                        predictor.id(),
                        "a dimension other than the response"));
            }
        }
        // Of one or two predictors there are few; of more, as many as there are wearers.
        return predictors.length > 2
                ? new Regression(this, response, List.of(predictors))
                : FITS.computeIfAbsent(
                        new Fitted(this, response, List.of(predictors)),
                        fitted -> new Regression(this, response, fitted.predictors));
    }

    /**
     * How some dimensions of the people go together.
     *
     * @param dimensions dimensions of the survey, one or more, each once
     * @return their joint distribution
     * @throws InvalidMeasuresException when the survey lacks a dimension, one is given twice or none is given
     */
    public JointDistribution joint(List<BodyDimension> dimensions) {
        Set<BodyDimension> once = EnumSet.noneOf(BodyDimension.class);
        for (BodyDimension dimension : dimensions) {
            if (!once.add(required("dimensions", dimension))) {
                throw new InvalidMeasuresException(Violation.other(
                        new TableSubject.Argument("dimensions"), dimension.id(), "each dimension once"));
            }
        }
        if (dimensions.isEmpty()) {
            throw new InvalidMeasuresException(
                    Violation.other(new TableSubject.Argument("dimensions"), "none", "one or more dimensions"));
        }
        return new JointDistribution(this, dimensions);
    }

    /**
     * Finds a survey by its short name.
     *
     * @param id the id
     * @return the survey, or empty when there is none of that id
     */
    public static Optional<Survey> find(String id) {
        for (Survey survey : values()) {
            if (survey.id.equals(id)) {
                return Optional.of(survey);
            }
        }
        return Optional.empty();
    }

    BodyDimension required(String field, BodyDimension dimension) {
        if (!dimensions().contains(dimension)) {
            throw new InvalidMeasuresException(Violation.other(
                    new TableSubject.Argument(field),
                    dimension.id(),
                    Text.of("a dimension of {source}: {names}")
                            .with("source", id)
                            .with(
                                    "names",
                                    Text.names(dimensions().stream()
                                            .map(BodyDimension::id)
                                            .toList()))));
        }
        return dimension;
    }

    SufficientStatistics statistics() {
        return SufficientStatistics.of(this);
    }
}
