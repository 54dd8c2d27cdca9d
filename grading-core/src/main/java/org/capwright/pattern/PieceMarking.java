package org.capwright.pattern;

/**
 * How pieces are drawn and marked for the ones who cut and sew.
 *
 * @param halves how a piece is drawn whose left is the mirror image of its right
 * @param pleatNotches whether the cut edge is snipped at pleat lines
 * @param drillHoles whether inner ends of pleats and darts are marked by holes
 */
public record PieceMarking(Halves halves, PleatNotches pleatNotches, DrillHoles drillHoles) {

    /**
     * Usual marks: halves on the fold, snips at pleat lines, no holes. Common practice, no source.
     *
     * @return the marking
     */
    public static PieceMarking usual() {
        return new PieceMarking(Halves.ON_FOLD, PleatNotches.CUT_EDGE, DrillHoles.NONE);
    }
}
