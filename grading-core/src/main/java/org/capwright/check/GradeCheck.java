package org.capwright.check;

import java.util.List;

/** One thing to look at in a grade. Implementations are stateless. */
public interface GradeCheck {

    /**
     * The name of the check, which is also the name of its page in the documentation.
     *
     * @return kebab-case
     */
    String code();

    /**
     * Looks at a grade.
     *
     * @param grade the grade; figures may be missing
     * @param thresholds the limits the label has set
     * @return what was found, smaller sizes first; empty when all is well or nothing can be compared
     */
    List<Finding> check(CheckedGrade grade, Thresholds thresholds);
}
