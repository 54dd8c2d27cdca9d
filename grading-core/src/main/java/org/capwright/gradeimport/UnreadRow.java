package org.capwright.gradeimport;

import java.util.List;
import org.capwright.check.CheckedMeasure;
import org.capwright.words.Text;

/**
 * A row or column of a sheet with figures whose name is not known.
 *
 * @param line line of the file, the first is 1
 * @param name the name as it is written
 * @param proposals what it may be, the likeliest first; none is used unless the sender says so
 */
public record UnreadRow(int line, String name, List<Proposal> proposals) {

    /**
     * What a row may be.
     *
     * @param measure the point of measure
     * @param why the likeness of words or figures that speaks for it
     */
    public record Proposal(CheckedMeasure measure, Text why) {}

    /**
     * Copies the proposals.
     *
     * @param line line of the file, the first is 1
     * @param name the name as it is written
     * @param proposals what it may be, the likeliest first
     */
    public UnreadRow {
        proposals = List.copyOf(proposals);
    }
}
