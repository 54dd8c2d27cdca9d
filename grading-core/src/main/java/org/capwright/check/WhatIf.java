package org.capwright.check;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import org.apache.commons.math3.exception.TooManyIterationsException;
import org.apache.commons.math3.optim.linear.NoFeasibleSolutionException;
import org.apache.commons.math3.optim.linear.UnboundedSolutionException;
import org.capwright.draft.CapFit;
import org.capwright.grade.GradeRule;
import org.capwright.grade.GradedSize;
import org.capwright.grade.SizeRun;
import org.capwright.measure.Dimension;
import org.capwright.measure.Dimensions;
import org.capwright.quantity.InvalidMeasuresException;
import org.capwright.quantity.Rounding;
import org.capwright.quantity.Subject;
import org.capwright.tables.Interval;

/**
 * The smallest change of the grade rules that leaves no finding as grave as the gravest, and creates none.
 *
 * <p>Figures are changed one by one first ({@link CureSearch}): one if one is enough. Where that does not clear all stops, a linear program changes all increments at once, minimising the weighted sum
 * of their absolute changes. Jumps, loss of ease and proportion are linear in the increments; the cap ease is not, so it is linearised at each size, the run drafted anew and the program set up again
 * until the checks are clear.
 */
public final class WhatIf {

    private static final int ROUNDS = 12;

    /** The linearisation needs a few rounds to settle; after these, stops that stay as they were will not go. */
    private static final int FRUITLESS = 3;

    /**
     * One rule before and after.
     *
     * @param dimension which
     * @param before the rule as it was; no growth where there was none
     * @param after the rule proposed
     */
    public record Change(Dimension dimension, GradeRule before, GradeRule after) {}

    /**
     * One figure to change.
     *
     * @param place the dimension of a rule, or the measure of a sheet
     * @param sizes two sizes, where the jump from the first to the second is meant, or all jumps from the smallest to the largest; one, where the figure of that size is meant
     * @param before what stood there, mm
     * @param after what is proposed, mm
     * @param passing the values that pass as well, mm, both ends tried
     * @param cured the findings that go with it
     * @param isWholeRule whether one figure stands for all jumps of the rule
     */
    public record Cure(
            Subject place,
            List<String> sizes,
            double before,
            double after,
            Interval passing,
            List<Finding> cured,
            boolean isWholeRule) {

        /**
         * Copies the lists.
         *
         * @param place the dimension of a rule, or the measure of a sheet
         * @param sizes two sizes, where the jump from the first to the second is meant, or all jumps from the smallest to the largest; one, where the figure of that size is meant
         * @param before what stood there, mm
         * @param after what is proposed, mm
         * @param passing the values that pass as well, mm, both ends tried
         * @param cured the findings that go with it
         * @param isWholeRule whether one figure stands for all jumps of the rule
         */
        public Cure {
            sizes = List.copyOf(sizes);
            cured = List.copyOf(cured);
        }

        static Cure of(CureSearch.Step step, CheckedGrade grade) {
            int first = step.cell().first();
            int last = step.cell().last();
            return new Cure(
                    step.cell().place(),
                    first == last ? List.of(grade.label(first)) : List.of(grade.label(first), grade.label(last)),
                    step.old(),
                    step.proposed(),
                    step.passing(),
                    step.cured(),
                    last - first > 1);
        }
    }

    /**
     * What is proposed.
     *
     * @param changes rules that change; empty when there was nothing to clear, or nothing helps
     * @param cures the same figure by figure, the most telling first; empty where all rules had to be changed at once
     * @param run the run drafted with the new rules
     * @param remaining findings as grave as the gravest that are left, because no change of these rules clears them
     */
    public record Proposal(List<Change> changes, List<Cure> cures, SizeRun run, List<Finding> remaining) {

        /**
         * Copies the lists.
         *
         * @param changes rules that change; empty when there was nothing to clear, or nothing helps
         * @param cures the same figure by figure, the most telling first; empty where all rules had to be changed at once
         * @param run the run drafted with the new rules
         * @param remaining findings as grave as the gravest that are left, because no change of these rules clears them
         */
        public Proposal {
            changes = List.copyOf(changes);
            cures = List.copyOf(cures);
            remaining = List.copyOf(remaining);
        }

        /**
         * Whether the checks of the new run are free of findings as grave as the gravest was.
         *
         * @return true if none of them is left
         */
        public boolean cleared() {
            return remaining.isEmpty();
        }
    }

    /**
     * A grade made elsewhere with some figures changed.
     *
     * @param cures the figures, the most telling first
     * @param grade the grade with all of them changed
     * @param remaining stops and cautions that are left, because no figure clears them
     */
    public record Mended(List<Cure> cures, CheckedGrade grade, List<Finding> remaining) {

        /**
         * Copies the lists.
         *
         * @param cures the figures, the most telling first
         * @param grade the grade with all of them changed
         * @param remaining stops and cautions that are left, because no figure clears them
         */
        public Mended {
            cures = List.copyOf(cures);
            remaining = List.copyOf(remaining);
        }
    }

    private final SizeRun run;
    private final Optional<BodyReference> body;
    private final Thresholds thresholds;
    private final Map<Dimension, Double> weights;
    private final Dimensions base;
    private final List<Dimension> free;

    private WhatIf(SizeRun run, Optional<BodyReference> body, Thresholds thresholds, Map<Dimension, Double> weights) {
        this.run = run;
        this.body = body;
        this.thresholds = thresholds;
        this.weights = weights;
        this.base = run.baseSize().draft().dimensions();
        this.free = free();
    }

    /**
     * Looks for the smallest change.
     *
     * @param run the run as it is
     * @param body the bodies it is compared with, if any
     * @param thresholds limits of the label
     * @param grid the room's grid, on which figures are proposed where one there passes
     * @return the proposal, already drafted and checked; nothing changes where there is neither a stop nor a caution
     */
    public static Proposal smallest(SizeRun run, Optional<BodyReference> body, Thresholds thresholds, Rounding grid) {
        ChangeableRules start = new ChangeableRules(run, body);
        List<Finding> findings = GradeChecks.judged(start.grade(), thresholds);
        Severity gravest = findings.stream()
                .map(Finding::severity)
                .max(Severity::compareTo)
                .orElse(Severity.INFO);
        if (gravest == Severity.INFO || run.sizes().size() < 2) {
            return new Proposal(List.of(), List.of(), run, asGrave(findings, run, gravest));
        }
        CureSearch.Outcome found = new CureSearch(thresholds, grid, gravest, findings).search(start);
        SizeRun cured = ((ChangeableRules) found.changed()).run();
        Proposal byFigures = new Proposal(
                changes(run, cured),
                found.steps().stream().map(step -> Cure.of(step, start.grade())).toList(),
                cured,
                asGrave(found.left(), cured, gravest));
        if (byFigures.cleared() || gravest != Severity.STOP) {
            return byFigures;
        }
        Proposal atOnce = clearingStops(run, body, thresholds, Map.of(), grid);
        return atOnce.remaining().size() < byFigures.remaining().size() ? atOnce : byFigures;
    }

    /**
     * The fewest of somebody's own figures, written or measured, whose change leaves neither a stop nor a caution, and creates none.
     *
     * @param grade the grade as it was read, with the bodies it is compared with, if any
     * @param thresholds limits of the label
     * @param grid the room's grid
     * @return the figures, the most telling first, each with what was likely meant and the range that passes as well; none where there is neither a stop nor a caution, or no figure helps
     */
    public static Mended mended(CheckedGrade grade, Thresholds thresholds, Rounding grid) {
        Changeable start = new ChangeableFigures(grade);
        List<Finding> findings = GradeChecks.judged(grade, thresholds);
        if (findings.stream().allMatch(finding -> finding.severity() == Severity.INFO)) {
            return new Mended(List.of(), grade, List.of());
        }
        CureSearch.Outcome found = new CureSearch(thresholds, grid, Severity.CAUTION, findings).search(start);
        return new Mended(
                found.steps().stream().map(step -> Cure.of(step, grade)).toList(),
                found.changed().grade(),
                found.left());
    }

    /** What is as grave, and a caution at least: of the grade, and of what lies in the pieces whatever the rules are. */
    private static List<Finding> asGrave(List<Finding> ofGrade, SizeRun run, Severity gravest) {
        return Stream.concat(ofGrade.stream(), PieceFindings.of(run).stream())
                .filter(finding -> finding.severity() != Severity.INFO
                        && finding.severity().compareTo(gravest) >= 0)
                .toList();
    }

    private static List<Change> changes(SizeRun before, SizeRun after) {
        List<Change> changes = new ArrayList<>();
        for (GradeRule rule : after.rules()) {
            GradeRule old = before.rules().stream()
                    .filter(one -> one.dimension() == rule.dimension())
                    .findFirst()
                    .orElseGet(() -> GradeRule.uniform(
                            rule.dimension(), 0, before.sizes().size()));
            if (!old.equals(rule)) {
                changes.add(new Change(rule.dimension(), old, rule));
            }
        }
        return changes;
    }

    /**
     * Looks for the change of all increments at once that clears the stops.
     *
     * @param run the run as it is
     * @param body the bodies it is compared with, if any
     * @param thresholds limits of the label
     * @param weights how unwelcome a change of a dimension's rule is, above 0; 1 where nothing is said
     * @param grid the room's grid; changes are rounded up to it where the checks stay clear
     * @return the proposal, already drafted and checked
     * @throws IllegalArgumentException if a weight is not above 0
     */
    static Proposal clearingStops(
            SizeRun run,
            Optional<BodyReference> body,
            Thresholds thresholds,
            Map<Dimension, Double> weights,
            Rounding grid) {
        weights.forEach((dimension, weight) -> {
            if (!(weight > 0 && weight < 1e6)) {
                throw new IllegalArgumentException(
                        "weights: " + weight + " for " + dimension.gradeName() + " is not above 0 and below 1000000");
            }
        });
        return new WhatIf(run, body, thresholds, weights).propose(grid);
    }

    private List<Dimension> free() {
        CapFit fit = run.style().fit();
        List<Dimension> free = new ArrayList<>();
        for (Dimension dimension : List.of(
                Dimension.BICEP,
                Dimension.LENGTH,
                Dimension.CAP_HEIGHT,
                Dimension.ARMHOLE,
                Dimension.ELBOW,
                Dimension.WRIST)) {
            boolean follows = dimension == Dimension.BICEP && fit instanceof CapFit.BicepFor
                    || dimension == Dimension.CAP_HEIGHT
                            && (fit instanceof CapFit.CapHeightFor || fit instanceof CapFit.HalvesFor);
            if (base.has(dimension) && !follows) {
                free.add(dimension);
            }
        }
        return free;
    }

    private Proposal propose(Rounding grid) {
        List<Finding> stops = stops(run);
        if (stops.isEmpty() || run.sizes().size() < 2) {
            return new Proposal(List.of(), List.of(), run, stops);
        }
        return search(stops, RuleProgram.Demand.ALL, grid)
                .or(() -> search(stops, RuleProgram.Demand.AGAINST_THE_BASE, grid))
                .orElseGet(() -> new Proposal(List.of(), List.of(), run, stops));
    }

    /** Empty where the program has no solution, or none that leaves fewer stops. */
    private Optional<Proposal> search(List<Finding> atFirst, RuleProgram.Demand demand, Rounding grid) {
        double[][] change = new double[free.size()][run.sizes().size() - 1];
        SizeRun current = run;
        List<Finding> stops = atFirst;
        List<Finding> left = atFirst;
        List<String> before = List.of();
        for (int round = 0; round < ROUNDS; round++) {
            try {
                change = new RuleProgram(this, current, change, stops, demand).solve();
                current = regraded(change);
            } catch (NoFeasibleSolutionException
                    | UnboundedSolutionException
                    | TooManyIterationsException
                    | InvalidMeasuresException e) {
                return Optional.empty();
            }
            left = stops(current);
            if (left.isEmpty() || round >= FRUITLESS && places(left).equals(before)) {
                // Clear; or the same stops after another round, which no rule moves.
                break;
            }
            before = places(left);
            stops = union(stops, left);
        }
        return left.size() < atFirst.size() ? Optional.of(onGrid(change, current, left, grid)) : Optional.empty();
    }

    /** Which stops these are, whatever their values. */
    private static List<String> places(List<Finding> stops) {
        return stops.stream()
                .map(stop -> stop.code() + stop.sizes() + stop.subject().code())
                .toList();
    }

    /** Stops seen in any round, so that a size that was mended stays mended. */
    private static List<Finding> union(List<Finding> before, List<Finding> now) {
        List<Finding> all = new ArrayList<>(before);
        all.addAll(now);
        return all;
    }

    /** On the room's grid where that leaves no more stops than the exact change does. */
    private Proposal onGrid(double[][] change, SizeRun drafted, List<Finding> left, Rounding grid) {
        double[][] rounded = new double[change.length][];
        for (int d = 0; d < change.length; d++) {
            rounded[d] = change[d].clone();
            for (int k = 0; k < rounded[d].length; k++) {
                double steps = Math.ceil(Math.abs(change[d][k]) / grid.step() - 1e-6);
                rounded[d][k] = Math.copySign(steps * grid.step(), change[d][k]);
            }
        }
        try {
            SizeRun readable = regraded(rounded);
            List<Finding> leftOnGrid = stops(readable);
            if (leftOnGrid.size() <= left.size()) {
                return new Proposal(changes(rounded), List.of(), readable, leftOnGrid);
            }
        } catch (InvalidMeasuresException e) {
            // The exact change is drafted already.
        }
        return new Proposal(changes(change), List.of(), drafted, left);
    }

    private List<Change> changes(double[][] change) {
        List<Change> changes = new ArrayList<>();
        for (int d = 0; d < free.size(); d++) {
            GradeRule before = rule(free.get(d));
            GradeRule after = changed(before, change[d], 1);
            if (!before.equals(after)) {
                changes.add(new Change(free.get(d), before, after));
            }
        }
        return changes;
    }

    private SizeRun regraded(double[][] change) {
        Map<Dimension, GradeRule> rules = new EnumMap<>(Dimension.class);
        run.rules().forEach(rule -> rules.put(rule.dimension(), rule));
        for (int d = 0; d < free.size(); d++) {
            Dimension dimension = free.get(d);
            GradeRule after = changed(rule(dimension), change[d], 1);
            if (rules.containsKey(dimension) || !after.equals(rule(dimension))) {
                rules.put(dimension, after);
            }
            if (dimension == Dimension.BICEP && base.has(Dimension.FRONT_WIDTH)) {
                // The halves keep their shares of what is added.
                double share = base.get(Dimension.FRONT_WIDTH) / base.get(Dimension.BICEP);
                rules.put(Dimension.FRONT_WIDTH, changed(rule(Dimension.FRONT_WIDTH), change[d], share));
            }
        }
        List<String> labels = run.sizes().stream().map(GradedSize::label).toList();
        return SizeRun.grade(run.style(), base, labels, run.base(), new ArrayList<>(rules.values()));
    }

    private static GradeRule changed(GradeRule rule, double[] change, double share) {
        List<Double> increments = new ArrayList<>(change.length);
        for (int k = 0; k < change.length; k++) {
            increments.add(rule.increments().get(k) + (Math.abs(change[k]) < 1e-7 ? 0 : share * change[k]));
        }
        return new GradeRule(rule.dimension(), increments);
    }

    private GradeRule rule(Dimension dimension) {
        return run.rules().stream()
                .filter(rule -> rule.dimension() == dimension)
                .findFirst()
                .orElseGet(() -> GradeRule.uniform(dimension, 0, run.sizes().size()));
    }

    private List<Finding> stops(SizeRun graded) {
        return GradeChecks.run(grade(graded), thresholds).stream()
                .filter(finding -> finding.severity() == Severity.STOP)
                .toList();
    }

    CheckedGrade grade(SizeRun graded) {
        CheckedGrade grade = CheckedGrade.of(graded);
        return body.map(grade::against).orElse(grade);
    }

    List<Dimension> freeDimensions() {
        return free;
    }

    Optional<BodyReference> body() {
        return body;
    }

    Thresholds thresholds() {
        return thresholds;
    }

    double weight(Dimension dimension) {
        return weights.getOrDefault(dimension, 1.0);
    }

    boolean capEaseIsFree() {
        return run.style().fit() instanceof CapFit.Given && base.has(Dimension.ARMHOLE);
    }

    static OptionalDouble difference(OptionalDouble a, OptionalDouble b) {
        return a.isPresent() && b.isPresent()
                ? OptionalDouble.of(a.getAsDouble() - b.getAsDouble())
                : OptionalDouble.empty();
    }
}
