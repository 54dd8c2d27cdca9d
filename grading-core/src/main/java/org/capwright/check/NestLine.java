package org.capwright.check;

import java.util.List;
import org.capwright.geometry.Point;
import org.capwright.geometry.Points;

/**
 * A line of one size as it lies in the nest.
 *
 * @param kind which line
 * @param points in mm, origin at fold line x bicep line, y up, front half at negative x; from the front end over the middle to the back end; two or more
 */
public record NestLine(Kind kind, List<Point> points) {

    /** Which line of a sleeve. */
    public enum Kind {
        /** Cap seam line, front underarm point over the apex to the back underarm point. */
        CAP_LINE,
        /** Top edge of the overlay, front underarm point over the raised apex to the back underarm point. */
        OVERLAY_EDGE,
        /** Hem of the overlay, front end over the hem point to the back end. */
        OVERLAY_HEM
    }

    /**
     * Copies the points.
     *
     * @param kind which line
     * @param points in mm, origin at fold line x bicep line, y up, front half at negative x; from the front end over the middle to the back end; two or more
     */
    public NestLine {
        points = Points.of(points);
    }
}
