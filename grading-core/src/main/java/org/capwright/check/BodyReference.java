package org.capwright.check;

import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.capwright.tables.BodyDimension;
import org.capwright.tables.SizeTable;
import org.capwright.tables.TableKind;
import org.capwright.tables.TableValue;
import org.capwright.tables.survey.ConfidenceInterval;
import org.capwright.tables.survey.Regression;
import org.capwright.tables.survey.Survey;

/**
 * The bodies that a grade is held against.
 *
 * @param table a body table whose sizes are ordered by a body dimension
 * @param survey the survey that gives a second opinion, if any
 * @param sizes size of the table by label of the grade; a label that is not here is looked up under its own name
 * @param confidence of the survey's intervals, between 0 and 1
 */
public record BodyReference(SizeTable table, Optional<Survey> survey, Map<String, String> sizes, double confidence) {

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

    /**
     * A table of women with the survey of 1988 beside it, which has the relaxed arm, at 95 % confidence; a table of others stands alone, as the survey is one of
     * women.
     *
     * @param table a body table
     * @return the reference; labels are names of the table
     */
    public static BodyReference of(SizeTable table) {
        Optional<Survey> survey =
                table.info().figureType().contains("women") ? Optional.of(Survey.ANSUR_1988_WOMEN) : Optional.empty();
        return new BodyReference(table, survey, Map.of(), 0.95);
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
     * The body dimension that a measure is held against: the flexed arm where the table has no relaxed one.
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
     * What the survey says of the growth of the mean body over the same step of the key.
     *
     * @param from label of the smaller size
     * @param to label of the larger size
     * @param dimension which
     * @return the growth with its confidence interval, or empty without survey, without the dimension or without a step
     */
    public Optional<ConfidenceInterval> growth(String from, String to, BodyDimension dimension) {
        OptionalDouble step = jump(from, to, key());
        Optional<Regression> fit = fit(dimension);
        return step.isPresent() && step.getAsDouble() != 0 && fit.isPresent()
                ? Optional.of(fit.get().growthOfMean(Map.of(key(), step.getAsDouble()), confidence))
                : Optional.empty();
    }

    /**
     * The survey's fit of a dimension on the key of the table.
     *
     * @param dimension which
     * @return the fit, or empty where the survey has not both
     */
    public Optional<Regression> fit(BodyDimension dimension) {
        return survey.filter(s -> dimension != key()
                        && s.dimensions().contains(dimension)
                        && s.dimensions().contains(key()))
                .map(s -> s.regression(dimension, key()));
    }
}
