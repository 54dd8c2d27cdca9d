package org.capwright;

import java.io.IOException;
import java.io.OutputStream;
import java.util.List;
import java.util.Optional;
import java.util.function.UnaryOperator;
import org.capwright.exchange.table.SpecCsv;
import org.capwright.grade.Alignment;
import org.capwright.grade.GradePoint;
import org.capwright.grade.GradePoints;
import org.capwright.grade.GradedSize;
import org.capwright.grade.Sizes;
import org.capwright.grade.SpecTable;
import org.capwright.measure.Dimensions;
import org.capwright.pattern.PatternDrafter;
import org.capwright.pattern.PatternOptions;
import org.capwright.pattern.PatternSet;
import org.capwright.quantity.InvalidMeasuresException;
import org.capwright.quantity.Rounding;

/** A style drafted in every size. Immutable. */
public final class SizeRun {

    private final PatternSet.Title title;
    private final Dimensions given;
    private final org.capwright.grade.SizeRun run;

    SizeRun(PatternSet.Title title, Dimensions given, org.capwright.grade.SizeRun run) {
        this.title = title;
        this.given = given;
        this.run = run;
    }

    /**
     * The spec table: points of measure, each taken from the drafted lines of every size, mm.
     *
     * @return the table
     */
    public SpecTable specTable() {
        return SpecTable.of(run);
    }

    /**
     * The spec table as comma-separated values. No piece is drafted for it.
     *
     * @param out where the file goes; it is not closed
     * @throws IOException if it cannot be written
     */
    public void writeCsv(OutputStream out) throws IOException {
        writeCsv(Optional.empty(), out);
    }

    /**
     * The spec table as comma-separated values, its figures rounded. No piece is drafted for it.
     *
     * @param grid the grid of the figures
     * @param out where the file goes; it is not closed
     * @throws IOException if it cannot be written
     */
    public void writeCsv(Rounding grid, OutputStream out) throws IOException {
        writeCsv(Optional.of(grid), out);
    }

    private void writeCsv(Optional<Rounding> grid, OutputStream out) throws IOException {
        out.write(SpecCsv.write(title, specTable(), grid));
    }

    /**
     * How every named point moves from the base size, for rooms that grade by points.
     *
     * @param alignment the point on which the sizes lie over one another
     * @return the points with their moves, mm
     */
    public List<GradePoint> gradePoints(Alignment alignment) {
        return GradePoints.of(run, alignment);
    }

    /**
     * The pieces with usual allowances: 10 mm all round, mitred corners, lining 2 mm shorter, interfacing cut net. Common practice, no source.
     *
     * @return the pieces of every size
     * @throws InvalidMeasuresException if a piece has no valid outline
     */
    public Pieces pieces() {
        return pieces(PatternOptions.usual());
    }

    /**
     * The pieces with allowances of one's own.
     *
     * @param finish gives allowances and corners, in the unit of the style
     * @return the pieces of every size
     * @throws InvalidMeasuresException if an allowance or the turn of cloth is out of range or leaves a piece without a valid outline; with the greatest value that works
     */
    public Pieces pieces(UnaryOperator<PieceStep> finish) {
        return pieces(finish.apply(PieceStep.usual(title.unit())).options());
    }

    /**
     * The pieces with options that are known already.
     *
     * @param options allowances, corners, turn of cloth and overlap of the interfacing
     * @return the pieces of every size
     * @throws InvalidMeasuresException if an option is out of range or leaves a piece without a valid outline; with the greatest value that works
     */
    public Pieces pieces(PatternOptions options) {
        try {
            return Pieces.of(PatternDrafter.draft(title, run, options));
        } catch (InvalidMeasuresException e) {
            Sizes sizes = new Sizes(run.sizes().stream().map(GradedSize::label).toList(), run.base());
            throw WorkingValues.instead(e, new Attempt(title, run.style(), given, run.rules(), sizes, options));
        }
    }
}
