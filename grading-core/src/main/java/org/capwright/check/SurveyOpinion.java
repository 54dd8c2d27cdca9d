package org.capwright.check;

import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.DoubleStream;
import org.capwright.quantity.Violation;
import org.capwright.tables.BodyDimension;
import org.capwright.tables.Interval;
import org.capwright.tables.survey.PredictionInterval;
import org.capwright.tables.survey.Regression;
import org.capwright.tables.survey.Survey;
import org.capwright.words.Text;

/**
 * What a survey says of one wearer: whether the measurements go together, which of them to take again, and what those are likely to be that were not taken.
 *
 * <p>Nobody is questioned for being large: the bust girth (or the first girth there is) and the stature are taken as the size of the wearer, and all the others are judged together,
 * given that size, and each by itself, given all the rest. Where they do not go together, the measurement is questioned that departs most from what all the others let expect: without it
 * the squared distance of what is left is the least. It is set aside, and the rest is judged anew. Size itself is questioned only below the smallest person surveyed, and a stature
 * above the tallest too, as no others are that tall.
 */
public final class SurveyOpinion {

    /** Estimates and expected ranges hold this share of people alike. */
    public static final double ESTIMATE_PROBABILITY = 0.95;

    /**
     * So many true wearers would be questioned if measurements spread as the normal distribution does. Their tails are heavier: it is 1 in 100 of the women surveyed in 1988, and 5 in
     * 100 of those of 2012, whose biceps was flexed harder. Common practice, no source.
     */
    public static final double QUESTIONED = 0.005;

    /** The least that is named of what is expected, where the others are rare already. */
    private static final double LIKELIEST = 0.1;

    private final Survey survey;
    private final Map<BodyDimension, Double> given;
    private final Set<BodyDimension> confirmed;
    private final List<BodyDimension> together;
    private final List<Question> questions = new ArrayList<>();

    /**
     * The opinion on one wearer.
     *
     * @param survey people of the wearer's kind
     * @param given the wearer's measurements, mm
     * @param confirmed what was measured again and is not questioned; may be empty
     */
    public SurveyOpinion(Survey survey, Map<BodyDimension, Double> given, Set<BodyDimension> confirmed) {
        this.survey = survey;
        EnumMap<BodyDimension, Double> copy = new EnumMap<>(BodyDimension.class);
        copy.putAll(given);
        this.given = Collections.unmodifiableMap(copy);
        this.confirmed = Set.copyOf(confirmed);
        this.together = judge();
    }

    /**
     * The survey that was asked.
     *
     * @return people of the wearer's kind
     */
    public Survey survey() {
        return survey;
    }

    /**
     * What has to be measured again.
     *
     * @param dimension which
     * @param violation why, and what would be expected
     */
    public record Question(BodyDimension dimension, Violation violation) {}

    /**
     * A measurement beside all the others.
     *
     * @param dimension which
     * @param value the wearer's, mm
     * @param others what it is compared with
     * @param range what {@link #ESTIMATE_PROBABILITY} of people with the others measure, mm
     */
    public record Expectation(BodyDimension dimension, double value, List<BodyDimension> others, Interval range) {

        /**
         * Copies the list.
         *
         * @param dimension which
         * @param value the wearer's, mm
         * @param others what it is compared with
         * @param range what most people with the others measure, mm
         */
        public Expectation {
            others = List.copyOf(others);
        }
    }

    /**
     * What has to be measured again, most doubtful first.
     *
     * @return a question for each, with the range that is expected in the light of the others; empty when all goes together
     */
    public List<Question> questions() {
        return List.copyOf(questions);
    }

    /**
     * What goes together.
     *
     * @return the measurements that were compared with one another and neither questioned nor set aside as confirmed against the others; may be empty
     */
    public List<BodyDimension> together() {
        return together;
    }

    /**
     * How rare a wearer is whose measurements go together so, given size and stature.
     *
     * @return share of people alike whose other measurements lie at least as far out, all together; 1 where there are none
     */
    public double rarity() {
        return together.isEmpty() ? 1 : survey.joint(together).rarity(given, carriers(together));
    }

    /**
     * Each measurement that goes together with the others, beside what the others let expect.
     *
     * @return one for each, or none where there are less than two
     */
    public List<Expectation> expectations() {
        return together.size() < 2
                ? List.of()
                : together.stream()
                        .map(dimension -> {
                            List<BodyDimension> others = without(together, dimension);
                            Interval range = fit(dimension, others)
                                    .newPersonBeyond(given, ESTIMATE_PROBABILITY)
                                    .interval();
                            return new Expectation(dimension, measured(dimension), others, range);
                        })
                        .toList();
    }

    /**
     * What lies beyond the people surveyed, so that all that follows from it is extrapolated.
     *
     * @return dimensions of the survey
     */
    public List<BodyDimension> beyond() {
        return comparable().stream().filter(this::isBeyond).toList();
    }

    /**
     * What was given and could not be compared with anything.
     *
     * @return dimensions that the survey lacks, or that lie too far beyond it, or that stand alone
     */
    public List<BodyDimension> unquestioned() {
        List<BodyDimension> comparable = comparable();
        boolean alone = comparable.size() == 1 && carriers(comparable).isEmpty();
        return given.keySet().stream()
                .filter(dimension -> alone || !comparable.contains(dimension))
                .toList();
    }

    /**
     * The estimate from everything that was measured and that the survey has.
     *
     * @param missing what was not measured
     * @return the estimate; empty where the survey lacks the dimension or nothing usable was given
     */
    public Optional<Estimate> estimate(BodyDimension missing) {
        List<BodyDimension> known = comparable();
        if (!survey.dimensions().contains(missing) || known.isEmpty() || known.contains(missing)) {
            return Optional.empty();
        }
        PredictionInterval prediction = fit(missing, known).newPersonBeyond(given, ESTIMATE_PROBABILITY);
        return Optional.of(new Estimate(missing, known, beyond(), prediction));
    }

    private List<BodyDimension> judge() {
        List<BodyDimension> left = new ArrayList<>(comparable());
        Set<BodyDimension> doubted = new LinkedHashSet<>();
        for (BodyDimension carrier : carriers(left)) {
            if (isUnusualSize(carrier) && !confirmed.contains(carrier)) {
                doubted.add(carrier);
            }
        }
        for (BodyDimension dimension : given.keySet()) {
            if (isTooFar(dimension) && !confirmed.contains(dimension)) {
                doubted.add(dimension);
            }
        }
        left.removeAll(doubted);
        while (!goTogether(left, given)) {
            BodyDimension worst = mostDeparting(left);
            left.remove(worst);
            if (!confirmed.contains(worst)) {
                doubted.add(worst);
            }
        }
        doubted.forEach(dimension -> questions.add(new Question(dimension, question(dimension, left))));
        return List.copyOf(left);
    }

    private boolean goesWith(List<BodyDimension> others, BodyDimension dimension, double value) {
        List<BodyDimension> all = given.keySet().stream()
                .filter(each -> each == dimension || others.contains(each))
                .toList();
        Map<BodyDimension, Double> measured = new EnumMap<>(given);
        measured.put(dimension, value);
        return goTogether(all, measured);
    }

    private boolean goTogether(List<BodyDimension> dimensions, Map<BodyDimension, Double> measured) {
        List<BodyDimension> carriers = carriers(dimensions);
        List<BodyDimension> asked =
                dimensions.stream().filter(d -> !carriers.contains(d)).toList();
        if (asked.isEmpty()) {
            return true;
        }
        if (survey.joint(dimensions).rarity(measured, carriers) < QUESTIONED / 2) {
            return false;
        }
        // Bonferroni: with m at 0.0025 / m each, all hold together for all but 0.0025.
        return dimensions.size() < 2
                || asked.stream().allMatch(dimension -> {
                    Regression fit = fit(dimension, without(dimensions, dimension));
                    return fit.rarity(fit.departure(measured)) >= QUESTIONED / 2 / asked.size();
                });
    }

    private BodyDimension mostDeparting(List<BodyDimension> dimensions) {
        BodyDimension worst = dimensions.get(0);
        double most = -1;
        for (BodyDimension dimension : dimensions) {
            List<BodyDimension> others = without(dimensions, dimension);
            double departure =
                    others.isEmpty() ? 0 : Math.abs(fit(dimension, others).departure(given));
            if (departure > most) {
                most = departure;
                worst = dimension;
            }
        }
        return worst;
    }

    private Violation question(BodyDimension dimension, List<BodyDimension> left) {
        double value = measured(dimension);
        Interval surveyed = survey.range(dimension);
        if (left.isEmpty()
                || !surveyed.contains(value)
                        && left.stream().noneMatch(other -> other.family() == dimension.family())) {
            return doubt(
                    dimension,
                    Text.of(
                                    value < surveyed.lower()
                                            ? "is less than that of anybody in {survey}"
                                            : value > surveyed.upper()
                                                    ? "is more than that of anybody in {survey}"
                                                    : "does not go together with the other measurements")
                            .with("survey", survey.id()),
                    value,
                    surveyed);
        }
        // What is doubted because everything together is rare may lie within its own range, or have its ends questioned
        // as well: then less is named.
        Regression fit = fit(dimension, left);
        Interval range = DoubleStream.of(ESTIMATE_PROBABILITY, 0.5)
                .mapToObj(share -> fit.newPersonBeyond(given, share).interval())
                .filter(expected -> !expected.contains(value)
                        && goesWith(left, dimension, expected.lower())
                        && goesWith(left, dimension, expected.upper()))
                .findFirst()
                .orElseGet(() -> fit.newPersonBeyond(given, LIKELIEST).interval());
        return doubt(
                dimension,
                Text.of("does not go together with the other measurements ({survey}, of people with the same {others})")
                        .with("survey", survey.id())
                        .with(
                                "others",
                                Text.joined(
                                        left.stream()
                                                .map(each -> Text.of(each.id()))
                                                .toList(),
                                        ", ")),
                value,
                range);
    }

    private static Violation doubt(BodyDimension dimension, Text reason, double value, Interval range) {
        return Violation.lengthOutside(
                dimension,
                Text.of("{reason}: measure again, or name it in confirmed").with("reason", reason),
                value,
                range.lower(),
                range.upper());
    }

    private Regression fit(BodyDimension response, List<BodyDimension> from) {
        return survey.regression(response, from.toArray(BodyDimension[]::new));
    }

    /** What the survey has, and not so far beyond it that its lines could not be run on there. */
    private List<BodyDimension> comparable() {
        return given.keySet().stream()
                .filter(dimension -> survey.dimensions().contains(dimension) && !isTooFar(dimension))
                .toList();
    }

    private boolean isBeyond(BodyDimension dimension) {
        return !survey.range(dimension).contains(measured(dimension));
    }

    /** Further beyond the surveyed range than it is wide: nothing is run on so far. */
    private boolean isTooFar(BodyDimension dimension) {
        if (!survey.dimensions().contains(dimension)) {
            return false;
        }
        Interval range = survey.range(dimension);
        return measured(dimension) < range.lower() - range.width()
                || measured(dimension) > range.upper() + range.width();
    }

    private boolean isUnusualSize(BodyDimension carrier) {
        Interval range = survey.range(carrier);
        return measured(carrier) < range.lower()
                || carrier == BodyDimension.STATURE && measured(carrier) > range.upper();
    }

    /** What is taken as the size of the wearer: the bust, else the first girth there is, and the stature. */
    private static List<BodyDimension> carriers(List<BodyDimension> dimensions) {
        List<BodyDimension> carriers = new ArrayList<>();
        dimensions.stream()
                .filter(dimension -> dimension.family() == BodyDimension.Family.GIRTH)
                .findFirst()
                .ifPresent(carriers::add);
        if (dimensions.contains(BodyDimension.STATURE)) {
            carriers.add(BodyDimension.STATURE);
        }
        return carriers;
    }

    private static List<BodyDimension> without(List<BodyDimension> dimensions, BodyDimension one) {
        return dimensions.stream().filter(other -> other != one).toList();
    }

    private double measured(BodyDimension dimension) {
        Double value = given.get(dimension);
        if (value == null) {
            throw new IllegalStateException(dimension + " was not given");
        }
        return value;
    }
}
