package org.capwright.check;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.capwright.tables.BodyDimension;
import org.capwright.tables.Interval;
import org.capwright.tables.survey.Coverage;
import org.capwright.tables.survey.SizeInterval;
import org.capwright.tables.survey.Survey;

/** How many of the people surveyed find a size of a grade whose sleeve fits arm girth and arm length both. */
public final class RunCoverage {

    private RunCoverage() {}

    /**
     * Counts the people.
     *
     * @param grade the grade; sizes without bicep or length fit nobody
     * @param fit when a size fits
     * @param survey the survey
     * @param girth relaxed or flexed upper arm, as far as the survey has it
     * @return the share, and what no size fits
     * @throws IllegalArgumentException if no size has bicep and length
     * @throws org.capwright.tables.ViolationException if the survey lacks the girth
     */
    public static Coverage of(CheckedGrade grade, FitRange fit, Survey survey, BodyDimension girth) {
        List<SizeInterval> run = new ArrayList<>();
        for (CheckedSize size : grade.sizes()) {
            OptionalDouble bicep = size.value(Measure.BICEP);
            OptionalDouble length = size.value(Measure.LENGTH);
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
