package org.capwright.service.sizerun;

import java.util.ArrayList;
import java.util.List;
import org.capwright.draft.pleat.PleatLayout;
import org.capwright.grade.GradedSize;
import org.capwright.grade.SizeRun;
import org.capwright.measure.InvalidMeasuresException;
import org.capwright.measure.Violation;
import org.capwright.pattern.PatternDrafter;
import org.capwright.pattern.PatternSet;
import org.capwright.service.problem.FoundViolations;

/**
 * A drafted and graded run with its pieces.
 *
 * @param order what was asked for
 * @param patterns run and pieces
 * @param pleats pleats per size; empty where the style has none
 */
public record SizeRunResult(SizeRunOrder order, PatternSet patterns, List<PleatLayout> pleats) {

    /**
     * Drafts a run.
     *
     * @param order what is asked for
     * @return the run with its pieces
     * @throws org.capwright.service.problem.ProblemException if a size cannot be drafted, with everything that is wrong
     */
    static SizeRunResult of(SizeRunOrder order) {
        try {
            SizeRun run = order.graded();
            PatternSet.Title title = new PatternSet.Title(order.name(), order.revision(), order.unit());
            List<PleatLayout> pleats = pleats(order, run);
            return new SizeRunResult(order, PatternDrafter.draft(title, run, order.options()), pleats);
        } catch (InvalidMeasuresException e) {
            FoundViolations found = new FoundViolations(order.unit());
            found.addAll(e.violations());
            found.refuse();
            throw e;
        }
    }

    private static List<PleatLayout> pleats(SizeRunOrder order, SizeRun run) {
        if (order.pleats().isEmpty()) {
            return List.of();
        }
        PleatOrder pleats = order.pleats().get();
        List<PleatLayout> layouts = new ArrayList<>(run.sizes().size());
        List<Violation> found = new ArrayList<>();
        for (GradedSize size : run.sizes()) {
            try {
                layouts.add(pleats.layOut(size.draft()));
            } catch (InvalidMeasuresException e) {
                for (Violation violation : e.violations()) {
                    Violation placed = pleats.placed(violation);
                    found.add(run.sizes().size() == 1 ? placed : placed.inSize(size.label()));
                }
            }
        }
        if (!found.isEmpty()) {
            throw new InvalidMeasuresException(found);
        }
        return List.copyOf(layouts);
    }

    /**
     * The graded run.
     *
     * @return the run
     */
    SizeRun run() {
        return patterns.run();
    }
}
