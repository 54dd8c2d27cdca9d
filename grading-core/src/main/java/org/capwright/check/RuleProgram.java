package org.capwright.check;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.apache.commons.math3.optim.MaxIter;
import org.apache.commons.math3.optim.linear.LinearConstraint;
import org.apache.commons.math3.optim.linear.LinearConstraintSet;
import org.apache.commons.math3.optim.linear.LinearObjectiveFunction;
import org.apache.commons.math3.optim.linear.NonNegativeConstraint;
import org.apache.commons.math3.optim.linear.Relationship;
import org.apache.commons.math3.optim.linear.SimplexSolver;
import org.apache.commons.math3.optim.nonlinear.scalar.GoalType;
import org.capwright.draft.BaseSleeve;
import org.capwright.grade.SizeRun;
import org.capwright.measure.Dimension;
import org.capwright.measure.Dimensions;
import org.capwright.quantity.Subject;
import org.capwright.tables.BodyDimension;

/**
 * The linear program of {@link WhatIf}. Unknown is the change of each increment, split into a positive and a negative part so that their sum is its absolute value; one more pair of
 * unknowns is the least cap ease of the run. Everything is written for the total change from the rules as they were; the current change is where the cap ease is linearised.
 */
final class RuleProgram {

    /** Kept from every limit, so that what is left of the linearisation does not cross it, mm. */
    private static final double MARGIN = 0.02;

    private final WhatIf question;
    private final Demand demand;
    private final CheckedGrade grade;
    private final SizeRun current;
    private final double[][] change;
    private final List<Finding> stops;
    private final int intervals;
    private final int unknowns;
    private final List<LinearConstraint> constraints = new ArrayList<>();

    /** What is asked of the sizes. */
    enum Demand {
        /** All that the checks ask. */
        ALL,
        /** What can be asked where the base size itself stops the grade: growth, and ease against that of the base size, but no least ease. */
        AGAINST_THE_BASE
    }

    RuleProgram(WhatIf question, SizeRun current, double[][] change, List<Finding> stops, Demand demand) {
        this.demand = demand;
        this.question = question;
        this.current = current;
        this.grade = question.grade(current);
        this.change = change;
        this.stops = stops;
        this.intervals = grade.intervals();
        this.unknowns = 2 * question.freeDimensions().size() * intervals + 2;
    }

    double[][] solve() {
        jumps();
        easeOverBody();
        proportion();
        evenness();
        if (question.capEaseIsFree()) {
            capEase();
        }
        double[] cost = new double[unknowns];
        for (int d = 0; d < change.length; d++) {
            for (int k = 0; k < intervals; k++) {
                double weight = question.weight(question.freeDimensions().get(d));
                cost[place(d, k)] = weight;
                cost[place(d, k) + 1] = weight;
            }
        }
        double[] solution = new SimplexSolver()
                .optimize(
                        new MaxIter(20_000),
                        new LinearObjectiveFunction(cost, 0),
                        new LinearConstraintSet(constraints),
                        GoalType.MINIMIZE,
                        new NonNegativeConstraint(true))
                .getPoint();
        double[][] total = new double[change.length][intervals];
        for (int d = 0; d < change.length; d++) {
            for (int k = 0; k < intervals; k++) {
                total[d][k] = solution[place(d, k)] - solution[place(d, k) + 1];
            }
        }
        return total;
    }

    private int place(int dimension, int interval) {
        return 2 * (dimension * intervals + interval);
    }

    private int free(CheckedMeasure measure) {
        Dimension dimension = switch (measure) {
            case BICEP -> Dimension.BICEP;
            case LENGTH -> Dimension.LENGTH;
            case CAP_HEIGHT -> Dimension.CAP_HEIGHT;
            case ARMHOLE -> Dimension.ARMHOLE;
            case ELBOW -> Dimension.ELBOW;
            default -> Dimension.WRIST;
        };
        return question.freeDimensions().indexOf(dimension);
    }

    /** A linear form in the changes. */
    private final class Form {
        private final double[] coefficients = new double[unknowns];
        private double constant;

        /** Adds the change of a dimension at a size, counted from the base size, times a factor. */
        void addChange(int dimension, int size, double factor) {
            if (dimension < 0) {
                return;
            }
            for (int k = Math.min(size, grade.base()); k < Math.max(size, grade.base()); k++) {
                addIncrement(dimension, k, size > grade.base() ? factor : -factor);
            }
        }

        void addIncrement(int dimension, int interval, double factor) {
            if (dimension >= 0) {
                coefficients[place(dimension, interval)] += factor;
                coefficients[place(dimension, interval) + 1] -= factor;
                constant -= factor * change[dimension][interval];
            }
        }

        void addLeastEase(double factor) {
            coefficients[unknowns - 2] += factor;
            coefficients[unknowns - 1] -= factor;
        }

        /** {@code current value + form >= bound}. */
        void atLeast(double value, double bound) {
            constraints.add(new LinearConstraint(coefficients, Relationship.GEQ, bound + MARGIN - value - constant));
        }

        /** {@code current value + form <= bound}. */
        void atMost(double value, double bound) {
            constraints.add(new LinearConstraint(coefficients, Relationship.LEQ, bound - MARGIN - value - constant));
        }
    }

    private void jumps() {
        if (question.body().isEmpty()) {
            return;
        }
        BodyReference body = question.body().get();
        for (JumpBounds.Limits limits : JumpBounds.LIMITS) {
            for (int k = 0; k < intervals; k++) {
                OptionalDouble jump = grade.jump(k, limits.measure());
                Optional<JumpBounds> bounds =
                        JumpBounds.of(body, limits, grade.label(k), grade.label(k + 1), question.thresholds());
                if (jump.isPresent() && bounds.isPresent()) {
                    Form form = new Form();
                    form.addIncrement(free(limits.measure()), k, 1);
                    form.atLeast(jump.getAsDouble(), bounds.get().stopLeast());
                    form.atMost(jump.getAsDouble(), bounds.get().stopGreatest());
                }
            }
        }
    }

    private void easeOverBody() {
        if (question.body().isEmpty()) {
            return;
        }
        BodyReference body = question.body().get();
        for (JumpBounds.Limits limits : JumpBounds.LIMITS) {
            BodyDimension dimension = JumpBounds.dimension(body, limits.measure());
            OptionalDouble atBase = ease(body, limits.measure(), dimension, grade.base());
            for (int i = 0; i < grade.sizes().size(); i++) {
                OptionalDouble ease = ease(body, limits.measure(), dimension, i);
                if (i == grade.base() || ease.isEmpty()) {
                    continue;
                }
                Form form = new Form();
                form.addChange(free(limits.measure()), i, 1);
                if (limits.easeLossStop().isPresent() && atBase.isPresent()) {
                    double loss =
                            question.thresholds().get(limits.easeLossStop().get());
                    form.atLeast(ease.getAsDouble(), atBase.getAsDouble() - loss);
                }
                if (demand == Demand.ALL) {
                    BodyEaseCheck.ALL.stream()
                            .filter(check -> check.measure() == limits.measure())
                            .forEach(check -> form.atLeast(
                                    ease.getAsDouble(), question.thresholds().get(check.stop())));
                }
            }
        }
    }

    private OptionalDouble ease(BodyReference body, CheckedMeasure measure, BodyDimension dimension, int size) {
        return WhatIf.difference(grade.value(size, measure), body.value(grade.label(size), dimension));
    }

    private void proportion() {
        double height = grade.value(grade.base(), CheckedMeasure.CAP_HEIGHT).orElseThrow();
        double ratio = height / grade.value(grade.base(), CheckedMeasure.BICEP).orElseThrow();
        double leeway = question.thresholds().get(Threshold.PROPORTION_STOP);
        for (int i = 0; i < grade.sizes().size(); i++) {
            if (i != grade.base()) {
                double h = grade.value(i, CheckedMeasure.CAP_HEIGHT).orElseThrow();
                double b = grade.value(i, CheckedMeasure.BICEP).orElseThrow();
                for (int side = -1; side <= 1; side += 2) {
                    double limit = ratio + side * leeway;
                    Form form = new Form();
                    form.addChange(free(CheckedMeasure.CAP_HEIGHT), i, 1);
                    form.addChange(free(CheckedMeasure.BICEP), i, -limit);
                    if (side > 0) {
                        form.atMost(h - limit * b, 0);
                    } else {
                        form.atLeast(h - limit * b, 0);
                    }
                }
            }
        }
    }

    /** Rows that stop the grade because a size is off: their second differences are kept below the limit. */
    private void evenness() {
        double limit = question.thresholds().get(Threshold.UNEVEN_STOP);
        List<Subject> rows = stops.stream()
                .filter(stop -> stop.code().equals("uneven-jump"))
                .map(Finding::subject)
                .distinct()
                .toList();
        for (CheckedMeasure measure : PlausibilityCheck.GROWING) {
            if (!rows.contains(measure) || measure == CheckedMeasure.CAP_LINE) {
                continue;
            }
            for (int k = 1; k < intervals; k++) {
                OptionalDouble bend = WhatIf.difference(grade.jump(k, measure), grade.jump(k - 1, measure));
                if (bend.isPresent()) {
                    Form form = new Form();
                    form.addIncrement(free(measure), k, 1);
                    form.addIncrement(free(measure), k - 1, -1);
                    form.atLeast(bend.getAsDouble(), -limit);
                    form.atMost(bend.getAsDouble(), limit);
                }
            }
        }
    }

    private void capEase() {
        Thresholds limits = question.thresholds();
        double margin = limits.get(Threshold.CAP_EASE_STOP_MARGIN);
        double least = limits.get(Threshold.CAP_EASE_LEAST) - margin;
        double greatest = limits.get(Threshold.CAP_EASE_GREATEST) + margin;
        double drift = limits.get(Threshold.CAP_EASE_DRIFT_STOP);
        for (int i = 0; i < grade.sizes().size(); i++) {
            double ease = grade.value(i, CheckedMeasure.CAP_EASE).orElseThrow();
            Form low = easeForm(i);
            low.addLeastEase(-1);
            low.atLeast(ease, 0);
            Form high = easeForm(i);
            high.addLeastEase(-1);
            high.atMost(ease, drift);
            if (i != grade.base() && demand == Demand.ALL) {
                Form form = easeForm(i);
                form.atLeast(ease, least);
                form.atMost(ease, greatest);
            }
        }
    }

    /** The cap ease of a size, linear about the current rules. */
    private Form easeForm(int size) {
        Dimensions dimensions = current.sizes().get(size).draft().dimensions();
        Form form = new Form();
        form.addChange(free(CheckedMeasure.BICEP), size, slope(dimensions, Dimension.BICEP));
        form.addChange(free(CheckedMeasure.CAP_HEIGHT), size, slope(dimensions, Dimension.CAP_HEIGHT));
        form.addChange(free(CheckedMeasure.ARMHOLE), size, -1);
        return form;
    }

    /** Change of the cap line per change of a dimension, by central differences over a tenth of a millimetre. */
    private static double slope(Dimensions dimensions, Dimension dimension) {
        double step = 0.05;
        return (capLength(dimensions, dimension, step) - capLength(dimensions, dimension, -step)) / (2 * step);
    }

    private static double capLength(Dimensions dimensions, Dimension dimension, double step) {
        Dimensions moved = dimensions.with(dimension, dimensions.get(dimension) + step);
        if (dimension == Dimension.BICEP && dimensions.has(Dimension.FRONT_WIDTH)) {
            double share = dimensions.get(Dimension.FRONT_WIDTH) / dimensions.get(Dimension.BICEP);
            moved = moved.with(Dimension.FRONT_WIDTH, dimensions.get(Dimension.FRONT_WIDTH) + share * step);
        }
        return BaseSleeve.draft(moved).capLength();
    }
}
