package org.capwright.check;

import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.capwright.tables.BodyDimension;
import org.capwright.tables.Interval;
import org.capwright.tables.SizeTable;
import org.capwright.tables.TableKind;
import org.capwright.tables.TableValue;
import org.capwright.tables.survey.PredictionInterval;
import org.capwright.tables.survey.Regression;
import org.capwright.tables.survey.Survey;
import org.capwright.words.Text;

/**
 * The bodies that a grade is compared with.
 *
 * @param table a body table whose sizes are ordered by a body dimension
 * @param survey the survey that gives a second opinion, if any
 * @param sizes size of the table by label of the grade; a label that is not here is looked up under its own name
 * @param confidence of the survey's intervals, between 0 and 1
 */
public record BodyReference(SizeTable table, Optional<Survey> survey, Map<String, String> sizes, double confidence) {

    /** What the growth of the arm goes with. */
    private static final List<BodyDimension> CARRIERS = List.of(BodyDimension.BUST_GIRTH, BodyDimension.STATURE);

    /**
     * Checks the table.
     *
     * @param table a body table whose sizes are ordered by a body dimension
     * @param survey the survey that gives a second opinion, if any
     * @param sizes size of the table by label of the grade; a label that is not here is looked up under its own name
     * @param confidence of the survey's intervals, between 0 and 1
     * @throws IllegalArgumentException if the table is not of bodies, has no key, or the confidence is no probability
     */
    public BodyReference {
        sizes = Map.copyOf(sizes);
        if (table.info().kind() != TableKind.BODY || table.info().key().isEmpty()) {
            throw new IllegalArgumentException(
                    "table: " + table.id() + " is not a table of bodies whose sizes a body dimension orders");
        }
        if (!(confidence > 0 && confidence < 1)) {
            throw new IllegalArgumentException("confidence: " + confidence + " is not between 0 and 1");
        }
    }

    private static final Pattern EUROPEAN = Pattern.compile("(?i)(?:EU|EUR|DE|D|EN)\\.? ?(\\d{1,3})");
    private static final Pattern CHILDREN = Pattern.compile(
            "\\b(boys?|girls?|child|children|kids?|infants?|babies|toddlers?|teens?|youths?|juniors?)\\b");
    private static final Pattern WOMEN = Pattern.compile("\\b(women|woman|misses|missy|ladies|lady|female|females)\\b");
    private static final Pattern MEN = Pattern.compile("\\b(men|man|male|males|gentlemen)\\b");

    /**
     * A table of women or of men with the survey of 1988 beside it, which has the relaxed arm, at 95 % confidence; a table of children, or one that does not say whom it is made for, stands
     * alone.
     *
     * @param table a body table whose sizes are ordered by a body dimension; its figure type and population say whom it is made for
     * @return the reference
     */
    public static BodyReference of(SizeTable table) {
        String made = (table.info().figureType() + " " + table.info().population()).toLowerCase(Locale.ROOT);
        Optional<Survey> survey = CHILDREN.matcher(made).find()
                ? Optional.empty()
                : WOMEN.matcher(made).find()
                        ? Optional.of(Survey.ANSUR_1988_WOMEN)
                        : MEN.matcher(made).find() ? Optional.of(Survey.ANSUR_1988_MEN) : Optional.empty();
        return new BodyReference(table, survey, Map.of(), 0.95);
    }

    /** The same bodies, with labels such as EU 38 looked up under their number where the table has only that. */
    BodyReference named(List<String> labels) {
        Map<String, String> names = new HashMap<>(sizes);
        for (String label : labels) {
            Matcher european = EUROPEAN.matcher(label.strip());
            if (european.matches()
                    && table.size(label).isEmpty()
                    && table.size(european.group(1)).isPresent()) {
                names.putIfAbsent(label, european.group(1));
            }
        }
        return new BodyReference(table, survey, names, confidence);
    }

    /**
     * The dimension that orders the sizes.
     *
     * @return bust girth, stature or another
     */
    public BodyDimension key() {
        return table.info().key().orElseThrow();
    }

    /**
     * The body dimension that a measure is compared with: the flexed arm where the table has no relaxed one.
     *
     * @param measure a measure of the garment
     * @return the dimension, or empty for measures that no body has
     */
    public Optional<BodyDimension> counterpart(CheckedMeasure measure) {
        boolean flexed = table.row(BodyDimension.UPPER_ARM_GIRTH).isEmpty()
                && table.row(BodyDimension.UPPER_ARM_GIRTH_FLEXED).isPresent();
        return measure.body()
                .map(dimension -> flexed && dimension == BodyDimension.UPPER_ARM_GIRTH
                        ? BodyDimension.UPPER_ARM_GIRTH_FLEXED
                        : dimension);
    }

    /**
     * A body figure of a size.
     *
     * @param label label in the grade
     * @param dimension which
     * @return millimetres, or empty where the table has no such size or a gap
     */
    public OptionalDouble value(String label, BodyDimension dimension) {
        Optional<TableValue> value = table.value(sizes.getOrDefault(label, label), dimension);
        return value.isPresent() ? OptionalDouble.of(value.get().millimetres()) : OptionalDouble.empty();
    }

    /**
     * How much the table grows from one size to another.
     *
     * @param from label of the smaller size
     * @param to label of the larger size
     * @param dimension which
     * @return millimetres, or empty where either figure is missing
     */
    public OptionalDouble jump(String from, String to, BodyDimension dimension) {
        OptionalDouble lower = value(from, dimension);
        OptionalDouble upper = value(to, dimension);
        return lower.isPresent() && upper.isPresent()
                ? OptionalDouble.of(upper.getAsDouble() - lower.getAsDouble())
                : OptionalDouble.empty();
    }

    /**
     * What the survey says of the growth of the mean body over the same step: on the key where the table itself has the dimension; where it has not, on bust girth and stature as far as the
     * table gives them, since the length of the arm follows the stature.
     *
     * @param from the smaller size
     * @param to the larger one
     * @param dimension what grows
     * @return the growth; empty where no survey stands beside the table, it has no such dimension, or the table does not say by how much the body grows
     */
    public Optional<SurveyedGrowth> growth(String from, String to, BodyDimension dimension) {
        if (survey.isEmpty() || !survey.get().dimensions().contains(dimension)) {
            return Optional.empty();
        }
        boolean keyAlone = hasRow(dimension) && survey.get().dimensions().contains(key());
        Map<BodyDimension, Double> step = new LinkedHashMap<>();
        boolean beyond = false;
        for (BodyDimension by : keyAlone ? List.of(key()) : CARRIERS) {
            OptionalDouble grown = jump(from, to, by);
            if (by != dimension
                    && grown.isPresent()
                    && survey.get().dimensions().contains(by)) {
                step.put(by, grown.getAsDouble());
                Interval surveyed = survey.get().range(by);
                beyond |= !surveyed.contains(value(from, by).orElseThrow())
                        || !surveyed.contains(value(to, by).orElseThrow());
            }
        }
        if (step.values().stream().allMatch(grown -> grown == 0)) {
            return Optional.empty();
        }
        Regression fit = survey.get().regression(dimension, step.keySet().toArray(BodyDimension[]::new));
        return Optional.of(new SurveyedGrowth(fit, step, fit.growthOfMean(step, confidence), beyond));
    }

    /**
     * A body figure of a size: the table's own, or where the table has no such row at all, that of the surveyed people with the bust girth and stature that it gives. People of one bust
     * differ, and a standard's bodies are not the survey's, so that one standard deviation of people is left to either side. A length needs the stature.
     *
     * @param label label in the grade
     * @param dimension which
     * @return the figure; empty where table and survey do not tell
     */
    Optional<BodyFigure> figure(String label, BodyDimension dimension) {
        OptionalDouble own = value(label, dimension);
        if (own.isPresent()) {
            return Optional.of(new BodyFigure(
                    own.getAsDouble(),
                    0,
                    Text.of("{table}, {measure}")
                            .with("table", table.info().title())
                            .with("measure", Text.of(dimension.id()))));
        }
        if (hasRow(dimension) || survey.isEmpty() || !survey.get().dimensions().contains(dimension)) {
            return Optional.empty();
        }
        Map<BodyDimension, Double> person = new LinkedHashMap<>();
        for (BodyDimension by : CARRIERS) {
            value(label, by).ifPresent(known -> person.put(by, known));
        }
        BodyDimension needed =
                dimension.family() == BodyDimension.Family.LENGTH ? BodyDimension.STATURE : BodyDimension.BUST_GIRTH;
        if (person.containsKey(dimension) || !person.containsKey(needed)) {
            return Optional.empty();
        }
        PredictionInterval prediction = survey.get()
                .regression(dimension, person.keySet().toArray(BodyDimension[]::new))
                .newPersonBeyond(person, confidence);
        return Optional.of(new BodyFigure(
                prediction.estimate(),
                prediction.standardError(),
                Text.of("{measure} of people with the bust and stature of {table}, which prints none, one standard"
                                + " deviation left free: {survey}")
                        .with("measure", Text.of(dimension.id()))
                        .with("table", table.info().title())
                        .with("survey", survey.get().source())));
    }

    /** Whether the table gives a dimension itself. */
    boolean hasRow(BodyDimension dimension) {
        return table.row(dimension).isPresent();
    }
}
