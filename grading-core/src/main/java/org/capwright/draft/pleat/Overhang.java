package org.capwright.draft.pleat;

/**
 * How far under-layers reach beyond the ends of a seam, where they would hang out beside the piece.
 *
 * @param front beyond the front end, mm, 0 for most
 * @param back beyond the back end, mm, 0 for most
 */
public record Overhang(double front, double back) {

    /** All under-layers end with the seam or before. */
    public static final Overhang NONE = new Overhang(0, 0);

    boolean isNone() {
        return front == 0 && back == 0;
    }

    /** That of the mirror image. */
    Overhang mirrored() {
        return new Overhang(back, front);
    }

    /** That of both these and other under-layers. */
    Overhang or(Overhang other) {
        return other == NONE ? this : new Overhang(Math.max(front, other.front), Math.max(back, other.back));
    }
}
