package org.capwright.check;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import org.capwright.quantity.Quantity;
import org.capwright.tables.BodyDimension;
import org.capwright.words.Text;

/** Jumps of the garment against the jumps of a body table: ease must neither shrink nor balloon from size to size. */
final class BodyJumpCheck implements GradeCheck {

    @Override
    public String code() {
        return "body-jump";
    }

    @Override
    public List<Finding> check(CheckedGrade grade, Thresholds thresholds) {
        if (grade.body().isEmpty()) {
            return List.of();
        }
        BodyReference body = grade.body().get();
        List<Finding> found = new ArrayList<>();
        for (JumpBounds.Limits limits : JumpBounds.LIMITS) {
            if (neverGrows(grade, limits.measure())) {
                flat(grade, body, limits, thresholds, found);
                easeLoss(grade, body, limits, thresholds, found);
                continue;
            }
            found.addAll(jumps(grade, body, limits, thresholds));
            easeLoss(grade, body, limits, thresholds, found);
        }
        return List.copyOf(found);
    }

    private static boolean neverGrows(CheckedGrade grade, CheckedMeasure measure) {
        Optional<Extremes> extremes = Extremes.of(grade, measure);
        return grade.intervals() > 1 && extremes.isPresent() && extremes.get().spread() < 0.05;
    }

    /** A row without any growth is told of once, by its largest shortfall. */
    private void flat(
            CheckedGrade grade,
            BodyReference body,
            JumpBounds.Limits limits,
            Thresholds thresholds,
            List<Finding> found) {
        List<Finding> each = jumps(grade, body, limits, thresholds);
        each.stream()
                .filter(finding -> finding.code().equals(code()))
                .max(Comparator.comparing(Finding::severity)
                        .thenComparingDouble(
                                finding -> finding.expected().least().orElse(0)))
                .ifPresentOrElse(
                        worst -> found.add(new Finding(
                                worst.code(),
                                worst.severity(),
                                List.of(grade.label(0), grade.label(grade.intervals())),
                                worst.subject(),
                                worst.quantity(),
                                worst.value(),
                                worst.expected(),
                                Text.of("the row does not grow at all, while the body does; {jump}")
                                        .with("jump", worst.message()),
                                worst.source(),
                                worst.remedy())),
                        () -> found.addAll(each));
    }

    /**
     * Every jump, and where figures are rounded every growth over several sizes as well: a jump of rounded figures may be off by a whole step, but so may the growth over the whole run, and no more. What
     * lies about a finding is not told of again.
     */
    private List<Finding> jumps(
            CheckedGrade grade, BodyReference body, JumpBounds.Limits limits, Thresholds thresholds) {
        List<Finding> found = new ArrayList<>();
        List<Optional<JumpBounds>> bounds = new ArrayList<>();
        boolean[] told = new boolean[grade.intervals()];
        for (int i = 0; i < grade.intervals(); i++) {
            Optional<JumpBounds> own = JumpBounds.of(body, limits, grade.label(i), grade.label(i + 1), thresholds);
            bounds.add(own);
            OptionalDouble jump = grade.jump(i, limits.measure());
            if (own.isEmpty() && jump.isPresent()) {
                found.add(missing(body, limits.measure(), grade.pair(i), jump.getAsDouble()));
            }
        }
        for (int many = 1; many <= grade.intervals(); many++) {
            for (int from = 0; from + many <= grade.intervals(); from++) {
                int to = from + many;
                double leeway = grade.leeway(from, limits.measure()) + grade.leeway(to, limits.measure());
                List<Optional<JumpBounds>> over = bounds.subList(from, to);
                OptionalDouble growth = grade.growth(from, to, limits.measure());
                boolean asked = growth.isPresent()
                        && over.stream().allMatch(Optional::isPresent)
                        && (many == 1 || leeway > 0 && IntStream.range(from, to).noneMatch(i -> told[i]));
                if (!asked) {
                    continue;
                }
                JumpBounds all = over.stream()
                        .map(Optional::orElseThrow)
                        .reduce(JumpBounds::plus)
                        .orElseThrow()
                        .widened(leeway);
                Optional<Finding> finding = judged(
                        List.of(grade.label(from), grade.label(to)), limits, all, growth.getAsDouble(), thresholds);
                if (finding.isPresent() && (many == 1 || finding.get().severity() != Severity.INFO)) {
                    found.add(finding.get());
                    for (int i = from; i < to; i++) {
                        told[i] |= finding.get().severity() != Severity.INFO;
                    }
                }
            }
        }
        return found;
    }

    private Optional<Finding> judged(
            List<String> pair, JumpBounds.Limits limits, JumpBounds bounds, double jump, Thresholds thresholds) {
        boolean length = limits.measure() == CheckedMeasure.LENGTH;
        // Past the people surveyed nothing is sure enough to stop a grade.
        Severity gravest = bounds.extrapolated() ? Severity.CAUTION : Severity.STOP;
        Severity severity;
        String message;
        String remedy;
        if (jump < bounds.least() - 1e-6) {
            severity = jump < bounds.stopLeast() - 1e-6 ? gravest : Severity.CAUTION;
            message = length
                    ? "the sleeve grows less than the arm, so that it gets short"
                    : bounds.body().isPresent()
                            ? "the garment grows less than the body, also in the light of the survey, so that ease"
                                    + " shrinks"
                            : "the garment grows less than the survey's arms do over the step of the table, so that"
                                    + " ease shrinks";
            remedy = "Raise the increment to the lower bound or more.";
        } else if (jump > bounds.greatest() + 1e-6) {
            severity = jump > bounds.stopGreatest() + 1e-6 ? gravest : Severity.CAUTION;
            message = length
                    ? "the sleeve grows more than the arm and the stated growth, so that it gets long"
                    : "the garment grows more than the body and the stated growth of ease, so that it balloons";
            remedy = "Lower the increment to the upper bound or less, or state a larger growth of ease.";
        } else if (bounds.body().isPresent() && jump < bounds.body().getAsDouble() - 1e-6 && !length) {
            severity = Severity.INFO;
            message = "a little less than the table's jump, but within what the survey knows of the body's growth";
            remedy = "Nothing has to be done.";
        } else {
            return Optional.empty();
        }
        return Optional.of(new Finding(
                code(),
                severity,
                pair,
                limits.measure(),
                Quantity.LENGTH,
                OptionalDouble.of(jump),
                Expected.between(bounds.least(), bounds.greatest()),
                bounds.extrapolated()
                        ? Text.joined(List.of(Text.of(message), SurveyedGrowth.BEYOND), "")
                        : Text.of(message),
                Text.of("{source}; growth of ease: {limit}")
                        .with("source", bounds.source())
                        .with("limit", Text.of(thresholds.source(limits.easeGrowth()))),
                Text.of(remedy)));
    }

    /** Nothing is known of how the body grows here. */
    private static Finding missing(BodyReference body, CheckedMeasure measure, List<String> pair, double jump) {
        String dimension = JumpBounds.dimension(body, measure).id();
        boolean row = body.table().row(JumpBounds.dimension(body, measure)).isPresent();
        Text why = Text.of(
                        row
                                ? "the table has no {measure} for one of these sizes, so the jump is not checked"
                                        + " against body measurements"
                                : body.survey().isPresent()
                                        ? "the table has no {measure}, and no step that the survey could be asked for,"
                                                + " so the jump is not checked against body measurements"
                                        : "the table has no {measure}, and no survey of such people's arms is at hand:"
                                                + " those there are, are of women and of men, so the jump is not"
                                                + " checked against body measurements")
                .with("measure", Text.of(dimension));
        return new Finding(
                "body-figure-missing",
                Severity.INFO,
                pair,
                measure,
                Quantity.LENGTH,
                OptionalDouble.of(jump),
                Expected.ANYTHING,
                why,
                Text.name(body.table().info().title()),
                Text.of("Choose a table that has the figure, or name the sizes as the table does. A table of your own"
                        + " can say in its figure type that it is of women or of men."));
    }

    private void easeLoss(
            CheckedGrade grade,
            BodyReference body,
            JumpBounds.Limits limits,
            Thresholds thresholds,
            List<Finding> found) {
        if (limits.easeLossStop().isEmpty()) {
            return;
        }
        Threshold stop = limits.easeLossStop().get();
        BodyDimension dimension = JumpBounds.dimension(body, limits.measure());
        OptionalDouble base = ease(grade, body, grade.base(), limits.measure(), dimension);
        for (int i = 0; base.isPresent() && i < grade.sizes().size(); i++) {
            OptionalDouble ease = ease(grade, body, i, limits.measure(), dimension);
            double least = base.orElse(0)
                    - thresholds.get(stop)
                    - grade.leeway(grade.base(), limits.measure())
                    - grade.leeway(i, limits.measure());
            if (ease.isPresent() && ease.getAsDouble() < least - 1e-6) {
                found.add(new Finding(
                        "ease-loss",
                        Severity.STOP,
                        List.of(grade.label(grade.base()), grade.label(i)),
                        limits.measure(),
                        Quantity.LENGTH,
                        ease,
                        Expected.atLeast(least),
                        Text.of("jump by jump this size has lost more of the base size's ease than is allowed"),
                        Text.of("{source}; limit: {limit}")
                                .with("source", JumpBounds.source(body, dimension, Optional.empty()))
                                .with("limit", Text.of(thresholds.source(stop))),
                        Text.of("Raise the increments between the two sizes; several small ones add up.")));
            }
        }
    }

    private static OptionalDouble ease(
            CheckedGrade grade, BodyReference body, int size, CheckedMeasure measure, BodyDimension dimension) {
        OptionalDouble garment = grade.value(size, measure);
        OptionalDouble figure = body.value(grade.label(size), dimension);
        return garment.isPresent() && figure.isPresent()
                ? OptionalDouble.of(garment.getAsDouble() - figure.getAsDouble())
                : OptionalDouble.empty();
    }
}
