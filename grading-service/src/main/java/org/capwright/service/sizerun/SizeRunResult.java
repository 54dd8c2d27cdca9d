package org.capwright.service.sizerun;

import org.capwright.grade.SizeRun;
import org.capwright.grade.SpecTable;
import org.capwright.pattern.PatternDrafter;
import org.capwright.pattern.PatternSet;

/**
 * A drafted and graded run with its pieces.
 *
 * @param order what was asked for
 * @param patterns run and pieces
 */
public record SizeRunResult(SizeRunOrder order, PatternSet patterns) {

    /**
     * Drafts a run. The pieces are drafted whatever the form of the answer, so that a request is right or wrong in all forms alike.
     *
     * @param order what is asked for
     * @return the run with its pieces
     * @throws org.capwright.measure.InvalidMeasuresException if a size cannot be drafted, with everything that is wrong
     */
    static SizeRunResult of(SizeRunOrder order) {
        PatternSet.Title title = new PatternSet.Title(order.name(), order.revision(), order.unit());
        SizeRun run = order.graded();
        CapBounds.check(run);
        return new SizeRunResult(order, PatternDrafter.draft(title, run, order.options()));
    }

    /**
     * The graded run.
     *
     * @return the run
     */
    public SizeRun run() {
        return patterns.run();
    }

    /**
     * The spec table of the run, measured anew.
     *
     * @return points of measure
     */
    public SpecTable specTable() {
        return SpecTable.of(run());
    }
}
