package org.capwright.draft.pleat;

/**
 * The three lines of one fold.
 *
 * @param of the fold
 * @param fold the visible crease
 * @param middle the inner crease
 * @param placement where the visible crease is laid
 * @param depth the depth as folded: from the fold line, square to it, to where the inner crease meets the seam, mm
 */
public record FoldLines(PleatFold of, PleatLine fold, PleatLine middle, PleatLine placement, double depth) {

    /** The mirror image about x = 0, which are the lines of another fold. */
    FoldLines mirrored(PleatFold image) {
        return new FoldLines(image, fold.mirrored(), middle.mirrored(), placement.mirrored(), depth);
    }
}
