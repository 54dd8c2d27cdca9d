package org.capwright.pattern;

import java.util.List;
import org.capwright.geometry.Point;
import org.capwright.grade.Alignment;
import org.capwright.grade.SizeRun;
import org.capwright.quantity.Unit;
import org.capwright.words.Language;

/**
 * All pieces of a run in all sizes, with what a file must state about them. Guaranteed to be immutable.
 *
 * @param title what stands on every file
 * @param run the graded run
 * @param sizes pieces per size, in the order of the run; every size has the same kinds of piece in the same order
 * @param finishing what the inside is finished with
 */
public record PatternSet(Title title, SizeRun run, List<List<Piece>> sizes, Finishing finishing) {

    /**
     * Checks that there are pieces for every size.
     *
     * @param title what stands on every file
     * @param run the graded run
     * @param sizes pieces per size, in the order of the run
     * @param finishing what the inside is finished with
     * @throws IllegalArgumentException if there are more or fewer lists than sizes, or they differ in their kinds of piece
     */
    public PatternSet {
        sizes = sizes.stream().map(List::copyOf).toList();
        if (sizes.size() != run.sizes().size()) {
            throw new IllegalArgumentException("sizes: pieces of " + sizes.size() + " sizes for a run of "
                    + run.sizes().size());
        }
        for (List<Piece> pieces : sizes) {
            requireSameKinds(pieces, sizes.get(0));
        }
    }

    private static void requireSameKinds(List<Piece> pieces, List<Piece> others) {
        boolean same = pieces.size() == others.size();
        for (int i = 0; same && i < pieces.size(); i++) {
            same = pieces.get(i).kind() == others.get(i).kind();
        }
        if (!same) {
            throw new IllegalArgumentException("sizes: the kinds of piece are not the same in every size");
        }
    }

    /**
     * Pieces with usual finishing.
     *
     * @param title what stands on every file
     * @param run the graded run
     * @param sizes pieces per size, in the order of the run
     * @throws IllegalArgumentException if there are more or fewer lists than sizes, or they differ in their kinds of piece
     */
    public PatternSet(Title title, SizeRun run, List<List<Piece>> sizes) {
        this(title, run, sizes, Finishing.usual());
    }

    /**
     * What every file states.
     *
     * @param style name of the style, any script
     * @param revision revision of the style
     * @param unit unit in which figures are shown
     * @param language what is said beside them
     */
    public record Title(String style, String revision, Unit unit, Language language) {

        /**
         * What every file states, in English.
         *
         * @param style name of the style, any script
         * @param revision revision of the style
         * @param unit unit in which figures are shown
         */
        public Title(String style, String revision, Unit unit) {
            this(style, revision, unit, Language.ENGLISH);
        }
    }

    /**
     * One kind of piece in every size.
     *
     * @param position position of the kind in each size's list
     * @return the pieces, smallest size first
     */
    public List<Piece> acrossSizes(int position) {
        return sizes.stream().map(pieces -> pieces.get(position)).toList();
    }

    /**
     * How far a size of one kind of piece is moved in a nest. Strips have neither apex nor underarm: they lie on their middles.
     *
     * @param position position of the kind in each size's list
     * @param size position of the size
     * @param alignment the point on which the nest lies
     * @return a vector in mm; zero for the base size and for strips
     */
    public Point shift(int position, int size, Alignment alignment) {
        return sizes.get(size).get(position).kind().isStrip() ? Point.ORIGIN : run.shift(size, alignment);
    }
}
