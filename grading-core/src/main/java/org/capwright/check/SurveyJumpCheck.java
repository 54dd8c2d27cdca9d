package org.capwright.check;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.capwright.quantity.Quantity;
import org.capwright.tables.BodyDimension;
import org.capwright.tables.survey.ConfidenceInterval;
import org.capwright.tables.survey.Regression;

/**
 * A second opinion on the jumps: whether a survey's people grow so. What a jump between classes is compared with is the growth of the class mean, so the interval is the confidence
 * interval of the slope times the step, and the probability is that of the two-sided t test on the slope. Single people differ far more; that is no matter of the grade.
 */
final class SurveyJumpCheck implements GradeCheck {

    @Override
    public String code() {
        return "survey-jump";
    }

    @Override
    public List<Finding> check(CheckedGrade grade, Thresholds thresholds) {
        if (grade.body().isEmpty()) {
            return List.of();
        }
        BodyReference body = grade.body().get();
        List<Finding> found = new ArrayList<>();
        for (JumpBounds.Limits limits : JumpBounds.LIMITS) {
            BodyDimension dimension = JumpBounds.dimension(body, limits.measure());
            Optional<Regression> fit = body.fit(dimension);
            int first = 0;
            while (fit.isPresent() && first < grade.intervals()) {
                int last = lastAlike(grade, body, limits.measure(), first);
                OptionalDouble jump = grade.jump(first, limits.measure());
                OptionalDouble step = step(grade, body, first);
                if (jump.isPresent() && step.isPresent() && step.getAsDouble() != 0) {
                    found.add(finding(
                            grade,
                            body,
                            limits.measure(),
                            first,
                            last,
                            fit.get(),
                            step.getAsDouble(),
                            jump.getAsDouble()));
                }
                first = last + 1;
            }
        }
        return List.copyOf(found);
    }

    /** Neighbouring intervals with the same step and jump are told of once. */
    private static int lastAlike(CheckedGrade grade, BodyReference body, CheckedMeasure measure, int first) {
        int last = first;
        while (last + 1 < grade.intervals()
                && alike(grade.jump(first, measure), grade.jump(last + 1, measure))
                && alike(step(grade, body, first), step(grade, body, last + 1))) {
            last++;
        }
        return last;
    }

    private static boolean alike(OptionalDouble a, OptionalDouble b) {
        return a.isPresent() == b.isPresent() && Math.abs(a.orElse(0) - b.orElse(0)) < 0.005;
    }

    private static OptionalDouble step(CheckedGrade grade, BodyReference body, int interval) {
        return body.jump(grade.label(interval), grade.label(interval + 1), body.key());
    }

    private Finding finding(
            CheckedGrade grade,
            BodyReference body,
            CheckedMeasure measure,
            int first,
            int last,
            Regression fit,
            double step,
            double jump) {
        ConfidenceInterval growth = fit.growthOfMean(Map.of(body.key(), step), body.confidence());
        double probability = fit.departureOfJump(Map.of(body.key(), step), jump);
        boolean inside = growth.interval().contains(jump);
        String which = jump > growth.interval().upper() ? "more" : "less";
        String message = (inside
                        ? "within what bodies do"
                        : which + " than bodies grow, so that ease " + (which.equals("more") ? "grows" : "shrinks"))
                + String.format(
                        Locale.ROOT,
                        ": if the mean body grew by exactly this jump, a survey of %d people would come out as far from it as this one with probability %s",
                        fit.people(),
                        probability < 0.001 ? "below 0.001" : String.format(Locale.ROOT, "%.3f", probability));
        return new Finding(
                code(),
                Severity.INFO,
                List.of(grade.label(first), grade.label(last + 1)),
                measure,
                Quantity.LENGTH,
                OptionalDouble.of(jump),
                Expected.between(growth.interval().lower(), growth.interval().upper()),
                message,
                fit.survey().source() + "; " + fit.response().id() + " on "
                        + body.key().id() + ", confidence " + body.confidence(),
                inside
                        ? "Nothing has to be done."
                        : "Keep it if the ease is meant to change with the size; the check of the jumps against the table says where that goes too far.");
    }
}
