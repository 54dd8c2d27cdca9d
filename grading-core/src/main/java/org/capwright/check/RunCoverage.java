package org.capwright.check;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.capwright.tables.BodyDimension;
import org.capwright.tables.Interval;
import org.capwright.tables.survey.Coverage;
import org.capwright.tables.survey.SizeInterval;
import org.capwright.tables.survey.Survey;

/** How many of the people surveyed find a size of a grade whose sleeve fits arm girth and arm length both. */
public final class RunCoverage {

    /** How much longer or shorter than on the body of the base size a sleeve may be and still fit, mm. Common practice, no source. */
    public static final double LENGTH_SLACK = 20;

    private RunCoverage() {}

    /**
     * Who finds a size.
     *
     * @param fit when a size fits
     * @param girthSlack how much looser or tighter than the base size on its body still fits, mm
     * @param lengthSlack how much longer or shorter still fits, mm
     * @param coverage the people counted
     */
    public record Covered(FitRange fit, double girthSlack, double lengthSlack, Coverage coverage) {}

    /**
     * Counts the people of the survey that a grade is compared with. A size fits as the base size fits its own body, give or take half the greatest jump of the arm from size to
     * size (so that sizes that grow as the arm does meet) and {@link #LENGTH_SLACK}.
     *
     * @param grade the grade
     * @return the count; empty where the grade is compared with no survey, or bicep or length of sleeve or body are not known
     */
    public static Optional<Covered> aboutBase(CheckedGrade grade) {
        Optional<BodyReference> body = grade.body();
        Optional<Survey> survey = body.flatMap(BodyReference::survey).filter(Survey::hasPeople);
        long names = grade.sizes().stream().map(CheckedSize::label).distinct().count();
        if (body.isEmpty() || survey.isEmpty() || names < grade.sizes().size() || !known(grade, body.get())) {
            return Optional.empty();
        }
        BodyDimension girth = JumpBounds.dimension(body.get(), CheckedMeasure.BICEP);
        double widest = 0;
        for (int i = 0; i < grade.intervals(); i++) {
            widest = Math.max(
                    widest,
                    body.get().jump(grade.label(i), grade.label(i + 1), girth).orElse(0));
        }
        if (widest <= 0 || !survey.get().dimensions().contains(girth)) {
            return Optional.empty();
        }
        FitRange fit = FitRange.aboutBase(grade, widest / 2, LENGTH_SLACK);
        return Optional.of(new Covered(fit, widest / 2, LENGTH_SLACK, of(grade, fit, survey.get(), girth)));
    }

    private static boolean known(CheckedGrade grade, BodyReference body) {
        for (CheckedMeasure measure : List.of(CheckedMeasure.BICEP, CheckedMeasure.LENGTH)) {
            if (grade.value(grade.base(), measure).isEmpty()
                    || body.value(grade.label(grade.base()), JumpBounds.dimension(body, measure))
                            .isEmpty()) {
                return false;
            }
        }
        return true;
    }

    /**
     * Counts the people.
     *
     * @param grade the grade; sizes without bicep or length fit nobody
     * @param fit when a size fits
     * @param survey the survey
     * @param girth relaxed or flexed upper arm, as far as the survey has it
     * @return the share, and what no size fits
     * @throws IllegalArgumentException if no size has bicep and length
     * @throws org.capwright.quantity.InvalidMeasuresException if the survey lacks the girth
     */
    public static Coverage of(CheckedGrade grade, FitRange fit, Survey survey, BodyDimension girth) {
        List<SizeInterval> run = new ArrayList<>();
        for (CheckedSize size : grade.sizes()) {
            OptionalDouble bicep = size.value(CheckedMeasure.BICEP);
            OptionalDouble length = size.value(CheckedMeasure.LENGTH);
            if (bicep.isPresent() && length.isPresent()) {
                run.add(new SizeInterval(
                        size.label(),
                        fitted(bicep.getAsDouble(), fit.bicepEase()),
                        fitted(length.getAsDouble(), fit.lengthBeyondArm())));
            }
        }
        if (run.isEmpty()) {
            throw new IllegalArgumentException("grade: no size has both bicep and length");
        }
        return Coverage.of(survey, girth, run);
    }

    private static Interval fitted(double garment, Interval beyond) {
        return new Interval(garment - beyond.upper(), garment - beyond.lower());
    }
}
