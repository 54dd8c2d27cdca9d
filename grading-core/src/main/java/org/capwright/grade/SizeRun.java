package org.capwright.grade;

import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import org.capwright.draft.Overlay;
import org.capwright.draft.OverlayStyle;
import org.capwright.draft.SleeveDraft;
import org.capwright.draft.SleeveStyle;
import org.capwright.draft.pleat.PleatLayout;
import org.capwright.draft.pleat.PleatPlan;
import org.capwright.draft.pleat.PleatSizing;
import org.capwright.geometry.Point;
import org.capwright.measure.Dimension;
import org.capwright.measure.Dimensions;
import org.capwright.measure.SleeveSubject;
import org.capwright.quantity.InvalidMeasuresException;
import org.capwright.quantity.Violation;

/**
 * A style drafted in every size of a run. Guaranteed to be immutable.
 *
 * @param style what is the same in every size
 * @param sizes the sizes, smallest first
 * @param base position of the base size
 * @param rules the grade rules, at most one per dimension
 */
public record SizeRun(SleeveStyle style, List<GradedSize> sizes, int base, List<GradeRule> rules) {

    /**
     * Checks sizes and rules.
     *
     * @param style what is the same in every size
     * @param sizes the sizes, smallest first, all with different labels
     * @param base position of the base size
     * @param rules the grade rules, at most one per dimension, each with one increment per interval
     * @throws InvalidMeasuresException if a label is repeated, there is no base size at its position, two rules are for one dimension, or a rule has too few or too many
     *     increments
     */
    public SizeRun {
        sizes = List.copyOf(sizes);
        rules = List.copyOf(rules);
        List<Violation> wrong =
                wrong(rules, new Sizes(sizes.stream().map(GradedSize::label).toList(), base));
        if (!wrong.isEmpty()) {
            throw new InvalidMeasuresException(wrong);
        }
    }

    private static List<Violation> wrong(List<GradeRule> rules, Sizes sizes) {
        List<Violation> wrong = new ArrayList<>();
        Set<Dimension> seen = EnumSet.noneOf(Dimension.class);
        for (GradeRule rule : rules) {
            if (rule.increments().size() != sizes.intervals()) {
                wrong.add(violation(
                        rule,
                        "a rule needs one increment per interval between neighbouring sizes, here "
                                + sizes.intervals()));
            }
            if (!seen.add(rule.dimension())) {
                wrong.add(violation(rule, "has two rules; give one per dimension"));
            }
        }
        return wrong;
    }

    private static Violation violation(GradeRule rule, String reason) {
        return Violation.of(new SleeveSubject.GradeOf(rule.dimension()), reason);
    }

    /**
     * Grades a style.
     *
     * @param style what is the same in every size
     * @param baseDimensions dimensions of the base size
     * @param labels names of the sizes, smallest first, all different
     * @param base position of the base size among them
     * @param rules at most one per dimension, each with one increment per interval
     * @return the run, every size drafted anew
     * @throws InvalidMeasuresException if sizes or rules contradict each other, a size cannot be drafted, or its cap line is far too long or too short for its armhole; all such sizes are
     *     named
     */
    public static SizeRun grade(
            SleeveStyle style, Dimensions baseDimensions, List<String> labels, int base, List<GradeRule> rules) {
        List<Violation> wrong = wrong(rules, new Sizes(labels, base));
        for (GradeRule rule : rules) {
            if (!baseDimensions.has(rule.dimension())) {
                wrong.add(violation(rule, "the style has no such dimension, so that it cannot grow"));
            }
        }
        if (!wrong.isEmpty()) {
            throw new InvalidMeasuresException(wrong);
        }
        List<GradedSize> sizes = new ArrayList<>(labels.size());
        List<Violation> found = new ArrayList<>();
        for (int i = 0; i < labels.size(); i++) {
            Dimensions graded = graded(baseDimensions, rules, base, i);
            try {
                sizes.add(new GradedSize(labels.get(i), SleeveDraft.of(style, graded)));
            } catch (InvalidMeasuresException e) {
                for (Violation violation : e.violations()) {
                    found.add(i == base ? violation : violation.inSize(labels.get(i)));
                }
                if (i == base) {
                    throw e; // what is wrong with the base size is wrong with all
                }
            }
        }
        if (!found.isEmpty()) {
            throw new InvalidMeasuresException(found);
        }
        SizeRun run = new SizeRun(style, sizes, base, rules);
        CapBounds.check(run);
        OptionalInt number = numberOfPleats(run);
        return number.isEmpty()
                ? run
                : new SizeRun(
                        style,
                        grade(style.counted(number.getAsInt()), baseDimensions, labels, base, rules).sizes,
                        base,
                        rules);
    }

    /**
     * The number of pleats that all sizes get where it follows from a depth and would differ: a graded nest has the same pleats in every size. Of a depth it is the number of the base
     * size; of a greatest depth the greatest number, so that it holds in every size. A depth that is graded itself keeps its own number in each.
     */
    private static OptionalInt numberOfPleats(SizeRun run) {
        Optional<PleatPlan> plan = run.style.overlay().flatMap(OverlayStyle::pleats);
        boolean gradedDepth = run.rules.stream().anyMatch(rule -> rule.dimension() == Dimension.PLEAT_DEPTH);
        if (plan.isEmpty() || gradedDepth || plan.get().sizing() instanceof PleatSizing.ByCount) {
            return OptionalInt.empty();
        }
        List<Integer> counts = run.sizes.stream()
                .map(size -> size.draft()
                        .overlay()
                        .flatMap(Overlay::pleats)
                        .map(PleatLayout::count)
                        .orElse(0))
                .toList();
        if (counts.stream().distinct().count() < 2) {
            return OptionalInt.empty();
        }
        int number =
                plan.get().sizing() instanceof PleatSizing.ByDepth ? counts.get(run.base) : Collections.max(counts);
        return number == 0 ? OptionalInt.empty() : OptionalInt.of(number);
    }

    /**
     * The dimensions of one size.
     *
     * @param baseDimensions dimensions of the base size
     * @param rules grade rules
     * @param base position of the base size
     * @param size position of the size asked for
     * @return the graded dimensions; those of the base size unchanged
     */
    public static Dimensions graded(Dimensions baseDimensions, List<GradeRule> rules, int base, int size) {
        Map<Dimension, Double> graded = new EnumMap<>(Dimension.class);
        for (GradeRule rule : rules) {
            graded.put(rule.dimension(), rule.apply(baseDimensions.get(rule.dimension()), base, size));
        }
        return baseDimensions.with(graded);
    }

    /**
     * The base size.
     *
     * @return the size that the rules start from
     */
    public GradedSize baseSize() {
        return sizes.get(base);
    }

    /**
     * How far a size is moved so that its alignment point falls on that of the base size.
     *
     * @param size position of the size
     * @param alignment the point on which the nest lies
     * @return a vector in mm; zero for the base size
     */
    public Point shift(int size, Alignment alignment) {
        return alignment
                .of(baseSize().draft())
                .minus(alignment.of(sizes.get(size).draft()));
    }
}
