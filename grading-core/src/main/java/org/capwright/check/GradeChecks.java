package org.capwright.check;

import java.util.ArrayList;
import java.util.List;

/** All checks of a grade. */
public final class GradeChecks {

    private static final List<GradeCheck> JUDGEMENTS =
            List.of(new BodyJumpCheck(), new SurveyJumpCheck(), new UnevenJumpCheck(), new CrossingLinesCheck());

    private GradeChecks() {}

    /**
     * The checks that are made.
     *
     * @return all checks, in the order of their findings
     */
    public static List<GradeCheck> all() {
        return JUDGEMENTS;
    }

    /**
     * Makes all checks.
     *
     * @param grade the grade
     * @param thresholds limits of the label
     * @return what was found, check by check; empty when all is well
     */
    public static List<Finding> run(CheckedGrade grade, Thresholds thresholds) {
        List<Finding> found = new ArrayList<>();
        for (GradeCheck check : JUDGEMENTS) {
            found.addAll(check.check(grade, thresholds));
        }
        return List.copyOf(found);
    }
}
