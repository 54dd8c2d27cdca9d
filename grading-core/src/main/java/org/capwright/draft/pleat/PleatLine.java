package org.capwright.draft.pleat;

import org.capwright.geometry.Point;

/**
 * A straight line drawn on the piece for one fold, from the trued edge into the piece. The inner crease halves the chord between fold mark and placement mark squarely; fold line and
 * placement line are mirror images of one another about it, and equally long.
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

    /** The mirror image about x = 0. */
    PleatLine mirrored() {
        return new PleatLine(kind, from.mirrored(), to.mirrored());
    }
}
