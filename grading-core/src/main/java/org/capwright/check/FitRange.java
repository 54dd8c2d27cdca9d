package org.capwright.check;

import org.capwright.tables.Interval;

/**
 * When a size fits somebody.
 *
 * @param bicepEase bicep of the sleeve less girth of the arm, mm
 * @param lengthBeyondArm length of the sleeve less length of the arm, mm; above 0 where the sleeve falls over the hand
 */
public record FitRange(Interval bicepEase, Interval lengthBeyondArm) {

    /**
     * The fit of the base size on the body of its size, give or take something.
     *
     * @param grade a grade compared with bodies that have arm girth and length of the base size
     * @param girthSlack how much looser or tighter still fits, mm, 0 or more
     * @param lengthSlack how much longer or shorter still fits, mm, 0 or more
     * @return the range
     * @throws IllegalArgumentException if the grade is compared with no bodies, or they or the sleeve lack a figure
     */
    public static FitRange aboutBase(CheckedGrade grade, double girthSlack, double lengthSlack) {
        double ease = over(grade, CheckedMeasure.BICEP);
        double beyond = over(grade, CheckedMeasure.LENGTH);
        return new FitRange(
                new Interval(ease - girthSlack, ease + girthSlack),
                new Interval(beyond - lengthSlack, beyond + lengthSlack));
    }

    private static double over(CheckedGrade grade, CheckedMeasure measure) {
        BodyReference body =
                grade.body().orElseThrow(() -> new IllegalArgumentException("grade: it is compared with no bodies"));
        return WhatIf.difference(
                        grade.value(grade.base(), measure),
                        body.value(grade.label(grade.base()), JumpBounds.dimension(body, measure)))
                .orElseThrow(() -> new IllegalArgumentException(
                        "grade: " + measure.code() + " of sleeve or body is missing in the base size"));
    }
}
