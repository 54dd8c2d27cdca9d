package org.capwright;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.capwright.grade.GradeRule;
import org.capwright.grade.Sizes;
import org.capwright.measure.Dimension;
import org.capwright.measure.SleeveSubject;
import org.capwright.quantity.InvalidMeasuresException;
import org.capwright.quantity.Unit;
import org.capwright.quantity.Violation;

/** Grade increments by dimension: how much each grows from a size to the next. What has no rule is the same in every size. Immutable. */
public final class GradeRules {

    private final Unit unit;
    private final Map<Dimension, List<Double>> increments;

    private GradeRules(Unit unit, Map<Dimension, List<Double>> increments) {
        this.unit = unit;
        this.increments = increments;
    }

    /**
     * No rules yet.
     *
     * @param unit unit of the increments
     * @return rules to add to
     */
    public static GradeRules in(Unit unit) {
        return new GradeRules(unit, Map.of());
    }

    /**
     * Rules that are known already, such as those derived from a size table.
     *
     * @param rules at most one per dimension
     * @return the same rules, in millimetres
     * @throws InvalidMeasuresException if two rules are for one dimension
     */
    public static GradeRules of(List<GradeRule> rules) {
        Map<Dimension, List<Double>> all = new EnumMap<>(Dimension.class);
        for (GradeRule rule : rules) {
            add(all, rule.dimension(), rule.increments());
        }
        return new GradeRules(Unit.MILLIMETRE, Collections.unmodifiableMap(all));
    }

    /**
     * These rules and one more.
     *
     * @param dimension what grows
     * @param perSize one increment for all jumps, or one per jump between neighbouring sizes, the smallest first; negative where the dimension shrinks
     * @return the rules
     * @throws InvalidMeasuresException if the dimension has a rule already
     */
    public GradeRules grow(Dimension dimension, double... perSize) {
        Map<Dimension, List<Double>> more = new EnumMap<>(Dimension.class);
        more.putAll(increments);
        add(
                more,
                dimension,
                Arrays.stream(perSize).map(unit::toMillimetres).boxed().toList());
        return new GradeRules(unit, Collections.unmodifiableMap(more));
    }

    private static void add(Map<Dimension, List<Double>> rules, Dimension dimension, List<Double> millimetres) {
        if (rules.put(dimension, millimetres) != null) {
            throw new InvalidMeasuresException(
                    Violation.of(new SleeveSubject.GradeOf(dimension), "has a rule already; give one per dimension"));
        }
    }

    /**
     * The rules over some sizes; a single increment holds for every jump.
     *
     * @param sizes the sizes
     * @return a rule for each dimension that grows
     * @throws InvalidMeasuresException if a list has not one increment per interval
     */
    public List<GradeRule> over(Sizes sizes) {
        List<GradeRule> rules = new ArrayList<>();
        increments.forEach((dimension, given) -> rules.add(
                given.size() == 1
                        ? GradeRule.uniform(
                                dimension, given.get(0), sizes.labels().size())
                        : new GradeRule(dimension, given)));
        return rules;
    }
}
