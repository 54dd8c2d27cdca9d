package org.capwright.draft.pleat;

/**
 * One fold of a pleat. The fold mark is brought onto the placement mark; what lies between is turned under along the middle.
 *
 * @param foldMark where the visible crease is, arc length on the flat edge, mm
 * @param placementMark where the fold is laid, arc length on the flat edge, mm; 2 {@code depth} from the fold mark
 * @param lie which way the fold points
 * @param finished where fold and placement line meet the finished seam, mm from the front end of the attach span
 * @param depth how far the under-layers reach beneath the top layer, mm, above 0
 */
public record PleatFold(double foldMark, double placementMark, Lie lie, double finished, double depth) {

    /**
     * The mark nearer to the front end.
     *
     * @return arc length on the flat edge, mm
     */
    public double firstMark() {
        return Math.min(foldMark, placementMark);
    }

    /**
     * The mark nearer to the back end.
     *
     * @return arc length on the flat edge, mm
     */
    public double lastMark() {
        return Math.max(foldMark, placementMark);
    }

    /**
     * The middle between the marks, where the inner crease is on a straight edge.
     *
     * @return arc length on the flat edge, mm
     */
    public double middleMark() {
        return (foldMark + placementMark) / 2;
    }

    /**
     * The edge this fold takes up.
     *
     * @return 2 {@code depth}, mm
     */
    public double takeUp() {
        return 2 * depth;
    }

    /**
     * Where the under-layers begin on the finished seam.
     *
     * @return mm from the front end of the attach span; below 0 if they reach beyond it
     */
    public double reachFrom() {
        return lie == Lie.TO_BACK ? finished - depth : finished;
    }

    /**
     * Where the under-layers end on the finished seam.
     *
     * @return mm from the front end of the attach span; greater than the span if they reach beyond it
     */
    public double reachTo() {
        return lie == Lie.TO_BACK ? finished : finished + depth;
    }
}
