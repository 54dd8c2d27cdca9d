package org.capwright.gradeimport;

import java.util.List;
import org.capwright.check.CheckedGrade;

/**
 * A grade made elsewhere, ready to be checked, and how it was read.
 *
 * @param grade the sizes with what is known of them, smallest first
 * @param traces what was found, assumed and left out, in the order of the reading
 */
public record ForeignGrade(CheckedGrade grade, List<ImportNote> traces) {

    /**
     * Copies the list.
     *
     * @param grade the sizes with what is known of them, smallest first
     * @param traces what was found, assumed and left out, in the order of the reading
     */
    public ForeignGrade {
        traces = List.copyOf(traces);
    }
}
