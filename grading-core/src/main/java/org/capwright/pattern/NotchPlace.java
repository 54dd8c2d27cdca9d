package org.capwright.pattern;

import org.capwright.geometry.Point;

/**
 * Where a notch is wanted.
 *
 * @param kind what it tells
 * @param edge name of the edge
 * @param distance arc length from the start of the edge, mm
 */
record NotchPlace(NotchKind kind, String edge, double distance) {

    /** The notch, snipped square to the seam line. */
    Notch on(PieceEdge on) {
        Point at = on.curve().pointAtLength(distance);
        Point tangent = on.curve().tangentAtLength(distance);
        return new Notch(kind, edge, distance, at, EdgeOffset.beside(at, tangent, on.allowance()), tangent.left());
    }
}
