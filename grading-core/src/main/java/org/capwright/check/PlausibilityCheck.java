package org.capwright.check;

import java.util.List;
import org.capwright.measure.SleeveSubject;
import org.capwright.quantity.Subject;

/** A check that looks for figures that cannot be meant so, and keeps them from the checks after it, which would only tell of their consequences. */
interface PlausibilityCheck extends GradeCheck {

    /** The measures whose growth tells sizes apart. */
    List<CheckedMeasure> GROWING = List.of(
            CheckedMeasure.BICEP,
            CheckedMeasure.CAP_LINE,
            CheckedMeasure.ARMHOLE,
            CheckedMeasure.CAP_HEIGHT,
            CheckedMeasure.LENGTH,
            CheckedMeasure.ELBOW,
            CheckedMeasure.WRIST);

    /** What is said of a finding that concerns all figures of a size. */
    Subject WHOLE_SIZE = SleeveSubject.Option.WHOLE_SIZE;

    /**
     * What was found and what is left to check.
     *
     * @param found what was found
     * @param rest the grade with the doubtful figures left out
     */
    record Sifted(List<Finding> found, CheckedGrade rest) {}

    /**
     * Looks at a grade and takes out what is doubtful.
     *
     * @param grade the grade
     * @param thresholds the limits the label has set
     * @return findings and rest
     */
    Sifted sift(CheckedGrade grade, Thresholds thresholds);

    @Override
    default List<Finding> check(CheckedGrade grade, Thresholds thresholds) {
        return sift(grade, thresholds).found();
    }
}
