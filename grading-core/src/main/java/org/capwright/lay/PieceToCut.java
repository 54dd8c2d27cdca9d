package org.capwright.lay;

import org.capwright.measure.SleeveSubject;
import org.capwright.pattern.Piece;
import org.capwright.quantity.InvalidMeasuresException;
import org.capwright.quantity.Quantity;
import org.capwright.quantity.Violation;

/**
 * A piece and for how many pairs of sleeves it is cut.
 *
 * @param piece the piece; its cut instruction says how many a pair needs
 * @param pairs pairs of sleeves, 1 to 1000
 */
public record PieceToCut(Piece piece, int pairs) {

    /** More pairs than this are not laid at once. */
    static final int MOST_PAIRS = 1000;

    /**
     * Checks the number of pairs.
     *
     * @param piece the piece
     * @param pairs 1 to 1000
     * @throws InvalidMeasuresException if it is out of range
     */
    public PieceToCut {
        checkPairs(piece.size(), pairs, 1);
    }

    /**
     * A piece for one pair of sleeves.
     *
     * @param piece the piece
     * @return the piece, for one pair
     */
    public static PieceToCut onePair(Piece piece) {
        return new PieceToCut(piece, 1);
    }

    /** How many of the piece are needed in all. */
    int needed() {
        return piece.cut().count() * pairs;
    }

    static void checkPairs(String size, int pairs, int least) {
        if (pairs < least || pairs > MOST_PAIRS) {
            throw new InvalidMeasuresException(Violation.outside(
                    new SleeveSubject.PairsOf(size),
                    "the number of pairs ordered is out of range",
                    Quantity.COUNT,
                    pairs,
                    least,
                    MOST_PAIRS));
        }
    }
}
