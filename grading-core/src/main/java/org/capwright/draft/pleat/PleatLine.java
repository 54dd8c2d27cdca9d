package org.capwright.draft.pleat;

import org.capwright.geometry.Point;

/**
 * A straight line drawn on the piece for one fold, from the trued edge into the piece. The lines of one fold are parallel: perpendicular to the chord between
 * its fold mark and its placement mark.
 *
 * @param kind what is done at the line
 * @param from on the trued edge
 * @param to inside the piece
 */
public record PleatLine(Kind kind, Point from, Point to) {

    /** What is done at a line of a pleat. */
    public enum Kind {
        /** The visible crease: folded, the right side outward. */
        FOLD,
        /** The inner crease beneath. */
        MIDDLE,
        /** Not folded: the visible crease is laid on it. */
        PLACEMENT
    }
}
