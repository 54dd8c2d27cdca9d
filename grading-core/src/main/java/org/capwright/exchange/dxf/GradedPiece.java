package org.capwright.exchange.dxf;

import java.util.List;
import org.capwright.pattern.Piece;

/**
 * The base size of a piece with the grade rules of its points.
 *
 * @param base the piece in the base size
 * @param boundary cut line, counter-clockwise, first point not repeated
 * @param sewLine net line, counter-clockwise, first point not repeated
 * @param notches snips of the notches
 * @param lines marks and folds
 */
record GradedPiece(
        Piece base,
        List<GradedPoint> boundary,
        List<GradedPoint> sewLine,
        List<GradedPoint> notches,
        List<Line> lines) {

    /** A line inside the piece. */
    record Line(AstmLayer layer, List<GradedPoint> points) {}
}
