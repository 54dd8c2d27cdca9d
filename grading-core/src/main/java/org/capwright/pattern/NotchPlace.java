package org.capwright.pattern;

import java.util.Optional;
import org.capwright.geometry.Curve;
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
        Curve.Heading heading = on.curve().headingAtLength(distance);
        Point onCut = EdgeOffset.beside(heading.at(), heading.tangent(), on.allowance());
        return new Notch(
                kind, edge, distance, heading.at(), onCut, heading.tangent().left());
    }
}
