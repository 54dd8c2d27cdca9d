package org.capwright.check;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.capwright.quantity.Unit;
import org.capwright.quantity.Violation;
import org.capwright.tables.BodyDimension;
import org.capwright.tables.Interval;
import org.capwright.tables.survey.PredictionInterval;
import org.capwright.tables.survey.Survey;

/** What a survey says of one wearer: which measurements are unusual, and what those are likely to be that were not taken. */
public final class SurveyOpinion {

    /** An estimate is shown with the range that holds this share of people alike. */
    public static final double ESTIMATE_PROBABILITY = 0.95;

    /** This share of true wearers is questioned at most, however many measurements are given. Common practice, no source. */
    public static final double QUESTIONED = 0.01;

    /** Size and height carry the rest; they are what the others are questioned by. */
    private static final List<BodyDimension> CARRIERS = List.of(BodyDimension.BUST_GIRTH, BodyDimension.STATURE);

    private final Survey survey;
    private final Map<BodyDimension, Double> given;

    /**
     * The opinion on one wearer.
     *
     * @param survey people of the wearer's kind
     * @param given the wearer's measurements, mm
     */
    public SurveyOpinion(Survey survey, Map<BodyDimension, Double> given) {
        this.survey = survey;
        this.given = Collections.unmodifiableMap(new LinkedHashMap<>(given));
    }

    /**
     * The measurements outside their prediction interval. The intervals are those of Bonferroni: with m of them at 1 - 0.01 / m each, all hold together for
     * 99 of 100 wearers or more.
     *
     * @param confirmed what was measured again and is not questioned
     * @param unit unit of the figures that the reasons name
     * @return a question for each
     */
    public List<Violation> questions(Set<BodyDimension> confirmed, Unit unit) {
        List<BodyDimension> carriers = usable(CARRIERS);
        List<BodyDimension> asked = given.keySet().stream()
                .filter(dimension ->
                        !CARRIERS.contains(dimension) && survey.dimensions().contains(dimension))
                .toList();
        List<Violation> questions = new ArrayList<>();
        if (carriers.isEmpty()) {
            return questions;
        }
        double probability = 1 - QUESTIONED / Math.max(1, asked.size());
        for (BodyDimension dimension : asked) {
            double value = measured(dimension);
            Interval interval = predict(dimension, carriers, probability).interval();
            if (!confirmed.contains(dimension) && !interval.contains(value)) {
                questions.add(Violation.lengthOutside(
                        dimension,
                        "is unusual with " + named(carriers, unit) + " (prediction interval of "
                                + percent(probability) + " % in " + survey.id()
                                + "): measure again, or name it in confirmed",
                        value,
                        interval.lower(),
                        interval.upper()));
            }
        }
        return questions;
    }

    /**
     * What was given and could not be compared with anything.
     *
     * @return dimensions that the survey lacks, or all but bust girth and stature where those are not given or lie outside its range
     */
    public List<BodyDimension> unquestioned() {
        boolean none = usable(CARRIERS).isEmpty();
        return given.keySet().stream()
                .filter(dimension -> !CARRIERS.contains(dimension)
                        && (none || !survey.dimensions().contains(dimension)))
                .toList();
    }

    /**
     * The estimate with the narrowest interval that any one or two of the given measurements allow.
     *
     * @param missing what was not measured
     * @return the estimate; empty where the survey lacks the dimension or nothing usable was given
     */
    public Optional<Estimate> estimate(BodyDimension missing) {
        if (!survey.dimensions().contains(missing)) {
            return Optional.empty();
        }
        List<BodyDimension> known = usable(given.keySet().stream().toList());
        Optional<Estimate> best = Optional.empty();
        for (int i = 0; i < known.size(); i++) {
            for (int j = i; j < known.size(); j++) {
                List<BodyDimension> from = i == j ? List.of(known.get(i)) : List.of(known.get(i), known.get(j));
                PredictionInterval prediction = predict(missing, from, ESTIMATE_PROBABILITY);
                if (best.isEmpty()
                        || prediction.standardError() < best.get().prediction().standardError()) {
                    best = Optional.of(new Estimate(missing, from, prediction));
                }
            }
        }
        return best;
    }

    private PredictionInterval predict(BodyDimension response, List<BodyDimension> from, double probability) {
        return survey.regression(response, from.toArray(BodyDimension[]::new)).newPerson(given, probability);
    }

    /** Nothing is said outside the surveyed range. */
    private List<BodyDimension> usable(List<BodyDimension> dimensions) {
        return dimensions.stream()
                .filter(dimension -> given.containsKey(dimension)
                        && survey.dimensions().contains(dimension)
                        && survey.range(dimension).contains(measured(dimension)))
                .toList();
    }

    private double measured(BodyDimension dimension) {
        Double value = given.get(dimension);
        if (value == null) {
            throw new IllegalStateException(dimension + " was not given");
        }
        return value;
    }

    private String named(List<BodyDimension> dimensions, Unit unit) {
        return dimensions.stream()
                .map(dimension -> dimension.id() + " " + unit.format(measured(dimension)) + " " + unit.symbol())
                .collect(Collectors.joining(" and "));
    }

    private static String percent(double probability) {
        return new BigDecimal(100 * probability)
                .round(new MathContext(4))
                .stripTrailingZeros()
                .toPlainString();
    }
}
