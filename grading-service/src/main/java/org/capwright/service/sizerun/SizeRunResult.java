package org.capwright.service.sizerun;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.capwright.Pieces;
import org.capwright.check.Finding;
import org.capwright.check.Thresholds;
import org.capwright.grade.SizeRun;
import org.capwright.grade.SpecTable;
import org.capwright.lay.Materials;
import org.capwright.pattern.PatternSet;

/** A drafted and graded run with its pieces. */
public final class SizeRunResult {

    private final SizeRunRequest order;
    private final Pieces pieces;

    /** Lays are found once, when a form of the answer first shows them: the nest alone is drawn a hundred times as fast. */
    private Optional<Materials> laid = Optional.empty();

    private SizeRunResult(SizeRunRequest order, Pieces pieces) {
        this.order = order;
        this.pieces = pieces;
    }

    /**
     * Drafts a run. The pieces are drafted whatever the form of the answer, so that a request is right or wrong in all forms alike.
     *
     * @param order what is asked for
     * @return the run with its pieces
     * @throws org.capwright.quantity.InvalidMeasuresException if a size cannot be drafted or a cloth or the roll of the plotter is too narrow for it, with everything that is wrong
     */
    static SizeRunResult of(SizeRunRequest order) {
        Pieces pieces = order.pieces();
        order.materials().ifPresent(asked -> asked.check(pieces.patterns()));
        OptionalDouble plotter = order.plotterWidth();
        return new SizeRunResult(order, plotter.isPresent() ? pieces.onPlotter(plotter.getAsDouble()) : pieces);
    }

    /**
     * What was asked for.
     *
     * @return the order
     */
    public SizeRunRequest order() {
        return order;
    }

    /**
     * The pieces in every size.
     *
     * @return run and pieces
     */
    public PatternSet patterns() {
        return pieces.patterns();
    }

    /** The pieces as they are written, with what to buy where it was asked for. */
    Pieces pieces() {
        return materials().map(pieces::withMaterials).orElse(pieces);
    }

    /**
     * What to buy.
     *
     * @return the needs, where they were asked for
     */
    synchronized Optional<Materials> materials() {
        if (laid.isEmpty()) {
            laid = order.materials().map(asked -> asked.needs(patterns()));
        }
        return laid;
    }

    /**
     * What to buy as it is answered, with the lays drawn.
     *
     * @return the needs, where they were asked for
     */
    public Optional<MaterialAnswer> toBuy() {
        return materials().map(needs -> Buying.pictured(needs, new UnitFormat(order.unit())));
    }

    /**
     * The graded run.
     *
     * @return the run
     */
    public SizeRun run() {
        return patterns().run();
    }

    /**
     * What is worth a look before cutting.
     *
     * @return findings, check by check; empty when all is well
     */
    public List<Finding> findings() {
        return pieces.check(order.sizeTable(), Thresholds.usual());
    }

    /**
     * The spec table of the run, measured anew.
     *
     * @return points of measure
     */
    public SpecTable specTable() {
        return pieces.specTable();
    }
}
