package org.capwright.gradeimport;

import java.util.List;
import org.capwright.check.CheckedGrade;
import org.capwright.check.CheckedSize;

/**
 * A grade made elsewhere, ready to be checked, and how it was read.
 *
 * @param grade the sizes with what can be judged of them, smallest first
 * @param traces what was found, assumed and left out, in the order of the reading
 * @param read the sizes with all figures as they were read, in question or not
 * @param questions what only the sender knows
 * @param unread rows whose names are not known
 */
public record ForeignGrade(
        CheckedGrade grade,
        List<ImportNote> traces,
        List<CheckedSize> read,
        List<OpenQuestion> questions,
        List<UnreadRow> unread) {

    /**
     * Copies the lists.
     *
     * @param grade the sizes with what can be judged of them, smallest first
     * @param traces what was found, assumed and left out, in the order of the reading
     * @param read the sizes with all figures as they were read, in question or not
     * @param questions what only the sender knows
     * @param unread rows whose names are not known
     */
    public ForeignGrade {
        traces = List.copyOf(traces);
        read = List.copyOf(read);
        questions = List.copyOf(questions);
        unread = List.copyOf(unread);
    }

    /**
     * A grade without questions.
     *
     * @param grade the sizes with what is known of them, smallest first
     * @param traces what was found, assumed and left out, in the order of the reading
     */
    public ForeignGrade(CheckedGrade grade, List<ImportNote> traces) {
        this(grade, traces, grade.sizes(), List.of(), List.of());
    }
}
