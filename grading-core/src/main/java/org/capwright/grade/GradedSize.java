package org.capwright.grade;

import org.capwright.draft.SleeveDraft;

/**
 * One size of a run.
 *
 * @param label name of the size, for example {@code 40}
 * @param draft the sleeve drafted in this size
 */
public record GradedSize(String label, SleeveDraft draft) {}
