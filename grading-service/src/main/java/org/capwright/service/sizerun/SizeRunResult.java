package org.capwright.service.sizerun;

import java.io.IOException;
import java.io.OutputStream;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.concurrent.atomic.DoubleAdder;
import java.util.function.DoubleConsumer;
import org.capwright.Pieces;
import org.capwright.check.Finding;
import org.capwright.check.Thresholds;
import org.capwright.grade.SizeRun;
import org.capwright.grade.SpecTable;
import org.capwright.json.style.SizeRunRequest;
import org.capwright.lay.Materials;
import org.capwright.pattern.PatternSet;
import org.capwright.quantity.InvalidMeasuresException;
import org.capwright.quantity.Violation;
import org.capwright.service.http.load.Presence;

/** A drafted and graded run. What follows from it is worked out once, when a form of the answer first needs it: the pieces, then the lays. */
public final class SizeRunResult {

    private final SizeRunRequest order;
    private final org.capwright.SizeRun graded;
    private Optional<Pieces> drawn = Optional.empty();
    private Optional<Materials> laid = Optional.empty();
    private OptionalInt pages = OptionalInt.empty();

    private SizeRunResult(SizeRunRequest order, org.capwright.SizeRun graded) {
        this.order = order;
        this.graded = graded;
    }

    /**
     * Drafts every size, but no piece yet.
     *
     * @param order what is asked for
     * @return the run
     * @throws InvalidMeasuresException if a size cannot be drafted, with everything that is wrong
     */
    static SizeRunResult graded(SizeRunRequest order) {
        return new SizeRunResult(order, order.graded());
    }

    /**
     * Drafts every size and its pieces.
     *
     * @param order what is asked for
     * @return the run
     * @throws InvalidMeasuresException if a size cannot be drafted or a cloth or the roll of the plotter is too narrow for it, with everything that is wrong
     */
    static SizeRunResult of(SizeRunRequest order) {
        SizeRunResult result = graded(order);
        result.drawn();
        return result;
    }

    /** Writes the spec table, for which no piece is needed. */
    void writeCsv(OutputStream out) throws IOException {
        if (order.rounding().isPresent()) {
            graded.writeCsv(order.rounding().get(), out);
        } else {
            graded.writeCsv(out);
        }
    }

    private synchronized Pieces drawn() {
        if (drawn.isPresent()) {
            return drawn.get();
        }
        Pieces pieces = order.pieces(graded);
        order.materials().ifPresent(asked -> asked.check(pieces.patterns()));
        OptionalDouble plotter = order.plotterWidth();
        Pieces made = plotter.isPresent() ? onPlotter(pieces, plotter.getAsDouble()) : pieces;
        drawn = Optional.of(made);
        return made;
    }

    /** Where the roll of the plotter is refused, paper that is refused as well is told with it. */
    private static Pieces onPlotter(Pieces pieces, double width) {
        List<Violation> found = new ArrayList<>();
        try {
            return pieces.onPlotter(width);
        } catch (InvalidMeasuresException plotter) {
            found.addAll(plotter.violations());
        }
        try {
            pieces.pages();
        } catch (InvalidMeasuresException paper) {
            found.addAll(paper.violations());
        }
        throw new InvalidMeasuresException(found);
    }

    /**
     * One size of the run by itself, as if it were a run of that size alone; without cloths to lay and a table to compare jumps with.
     *
     * @param label name of a size of the run
     * @return the request for it
     */
    public SizeRunRequest alone(String label) {
        return order.alone(run().sizes().get(order.sizes().indexOf(label)));
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
     * @throws InvalidMeasuresException if a piece has no valid outline
     */
    public PatternSet patterns() {
        return drawn().patterns();
    }

    /** The pieces as they are written, with what to buy where it was asked for. */
    Pieces pieces() {
        Pieces pieces = drawn();
        return materials().map(pieces::withMaterials).orElse(pieces);
    }

    /** Writes the PDF, which tells how many pages it has. */
    synchronized void writePdf(OutputStream out) throws IOException {
        pages = OptionalInt.of(pieces().writePdf(out));
    }

    /** How many pages the PDF has. */
    synchronized int pages() {
        if (pages.isEmpty()) {
            pages = OptionalInt.of(pieces().pages());
        }
        return pages.getAsInt();
    }

    /**
     * What to buy.
     *
     * @return the needs, where they were asked for
     */
    Optional<Materials> materials() {
        return materials(done -> {});
    }

    private synchronized Optional<Materials> materials(DoubleConsumer progress) {
        if (laid.isEmpty()) {
            laid = order.materials().map(asked -> {
                PatternSet patterns = patterns();
                DoubleAdder done = new DoubleAdder();
                return Presence.whileThere(
                        givenUp -> asked.needs(patterns, more -> {
                            done.add(more);
                            return !givenUp.getAsBoolean();
                        }),
                        () -> progress.accept(done.sum()));
            });
        }
        return laid;
    }

    /**
     * What to buy as it is answered, with the lays drawn.
     *
     * @param progress is told from time to time how far the search for lays is, 0 to 1, in this thread
     * @return the needs, where they were asked for
     */
    public Optional<MaterialAnswer> toBuy(DoubleConsumer progress) {
        return materials(progress).map(needs -> Buying.pictured(needs, new UnitFormat(order.unit(), order.language())));
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
        return drawn().check(order.sizeTable(), Thresholds.usual());
    }

    /**
     * The spec table of the run, measured anew.
     *
     * @return points of measure
     */
    public SpecTable specTable() {
        return graded.specTable();
    }
}
