package org.capwright.check;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import org.capwright.quantity.Quantity;
import org.capwright.tables.BodyDimension;
import org.capwright.tables.Interval;
import org.capwright.words.Text;

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
            List<Optional<SurveyedGrowth>> growths = growths(grade, body, limits.measure());
            int first = 0;
            while (first < grade.intervals()) {
                int last = lastAlike(grade, growths, limits.measure(), first);
                OptionalDouble jump = grade.jump(first, limits.measure());
                Optional<SurveyedGrowth> growth = growths.get(first);
                if (jump.isPresent() && growth.isPresent()) {
                    found.add(finding(
                            List.of(grade.label(first), grade.label(last + 1)),
                            limits.measure(),
                            growth.get(),
                            jump.getAsDouble()));
                }
                first = last + 1;
            }
        }
        return List.copyOf(found);
    }

    /** What the survey says of every interval. */
    private static List<Optional<SurveyedGrowth>> growths(
            CheckedGrade grade, BodyReference body, CheckedMeasure measure) {
        BodyDimension dimension = JumpBounds.dimension(body, measure);
        List<Optional<SurveyedGrowth>> growths = new ArrayList<>(grade.intervals());
        for (int i = 0; i < grade.intervals(); i++) {
            growths.add(body.growth(grade.label(i), grade.label(i + 1), dimension));
        }
        return growths;
    }

    /** Neighbouring intervals with the same step and jump are told of once. */
    private static int lastAlike(
            CheckedGrade grade, List<Optional<SurveyedGrowth>> growths, CheckedMeasure measure, int first) {
        int last = first;
        while (last + 1 < grade.intervals()
                && alike(grade.jump(first, measure), grade.jump(last + 1, measure))
                && alike(growths.get(first), growths.get(last + 1))) {
            last++;
        }
        return last;
    }

    private static boolean alike(OptionalDouble a, OptionalDouble b) {
        return a.isPresent() == b.isPresent() && Math.abs(a.orElse(0) - b.orElse(0)) < 0.005;
    }

    private static boolean alike(Optional<SurveyedGrowth> a, Optional<SurveyedGrowth> b) {
        return a.map(SurveyedGrowth::step).equals(b.map(SurveyedGrowth::step))
                && a.map(SurveyedGrowth::extrapolated).equals(b.map(SurveyedGrowth::extrapolated));
    }

    private Finding finding(List<String> sizes, CheckedMeasure measure, SurveyedGrowth growth, double jump) {
        Interval range = growth.mean().interval();
        double probability = growth.fit().departureOfJump(growth.step(), jump);
        boolean inside = range.contains(jump);
        Text message = Text.of(
                        inside
                                ? "within what bodies do: if the mean body grew by exactly this jump, a survey of"
                                        + " {people} people would come out as far from it as this one with probability"
                                        + " {probability}{doubt}"
                                : jump > range.upper()
                                        ? "more than bodies grow, so that ease grows: if the mean body grew by exactly"
                                                + " this jump, a survey of {people} people would come out as far from it"
                                                + " as this one with probability {probability}{doubt}"
                                        : "less than bodies grow, so that ease shrinks: if the mean body grew by"
                                                + " exactly this jump, a survey of {people} people would come out as far"
                                                + " from it as this one with probability {probability}{doubt}")
                .with("people", growth.fit().people())
                .with(
                        "probability",
                        probability < 0.001
                                ? Text.of("below {least}").with("least", Text.figures("0.001"))
                                : Text.figures(String.format(Locale.ROOT, "%.3f", probability)))
                .with("doubt", growth.doubt());
        return new Finding(
                code(),
                Severity.INFO,
                sizes,
                measure,
                Quantity.LENGTH,
                OptionalDouble.of(jump),
                Expected.between(range.lower(), range.upper()),
                message,
                Text.of("{survey}; {line}, confidence {confidence}")
                        .with("survey", growth.fit().survey().source())
                        .with("line", growth.line())
                        .with(
                                "confidence",
                                Text.figures(String.valueOf(growth.mean().confidence()))),
                Text.of(
                        inside
                                ? "Nothing has to be done."
                                : "Keep it if the ease is meant to change with the size; the check of the jumps against"
                                        + " the table says where that goes too far."));
    }
}
