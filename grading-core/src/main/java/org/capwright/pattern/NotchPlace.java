package org.capwright.pattern;

import java.util.Optional;
import org.capwright.geometry.Point;

/**
 * Where a notch is wanted.
 *
 * @param kind what it tells
 * @param edge name of the edge
 * @param distance arc length from the start of the edge, mm
 * @param outward unit vector to the cut line along which it is snipped; square to the seam line where nothing is said
 */
record NotchPlace(NotchKind kind, String edge, double distance, Optional<Point> outward) {

    NotchPlace(NotchKind kind, String edge, double distance) {
        this(kind, edge, distance, Optional.empty());
    }

    /** Its place on the seam line. */
    Point at(PieceEdge on) {
        return on.curve().pointAtLength(distance);
    }

    /** The notch, snipped square to the seam line. */
    Notch on(PieceEdge on) {
        Point at = at(on);
        Point tangent = on.curve().tangentAtLength(distance);
        return new Notch(kind, edge, distance, at, EdgeOffset.beside(at, tangent, on.allowance()), tangent.left());
    }
}
