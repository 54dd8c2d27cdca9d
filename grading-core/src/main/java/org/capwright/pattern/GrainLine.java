package org.capwright.pattern;

import org.capwright.geometry.Curve;
import org.capwright.geometry.Point;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Polygon;

/** Places the grain line: parallel to the fold, a little way into the piece, clear of its edges. */
final class GrainLine {

    /** Distance from the fold as a share of the width of the half, so that it is not taken for the fold line and leaves room for the label. */
    private static final double PLACE = 0.14;

    private GrainLine() {}

    static MarkLine in(Polygon area, PieceDraft draft) {
        Envelope box = area.getEnvelopeInternal();
        double x = draft.onFold() ? PLACE * box.getMaxX() : PLACE * box.getMinX();
        Geometry chord = area.intersection(Outline.PLANE.createLineString(
                new Coordinate[] {new Coordinate(x, box.getMinY() - 1), new Coordinate(x, box.getMaxY() + 1)}));
        Geometry longest = chord;
        for (int i = 0; i < chord.getNumGeometries(); i++) {
            Geometry part = chord.getGeometryN(i);
            if (i == 0 || part.getLength() > longest.getLength()) {
                longest = part;
            }
        }
        Envelope span = longest.getEnvelopeInternal();
        double inset = 0.1 * span.getHeight();
        return new MarkLine(
                MarkKind.GRAIN,
                "grain line",
                Curve.line(new Point(x, span.getMinY() + inset), new Point(x, span.getMaxY() - inset)));
    }
}
