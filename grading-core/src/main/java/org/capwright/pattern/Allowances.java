package org.capwright.pattern;

/**
 * Seam and hem allowances by kind of edge. A fold has none.
 *
 * @param armhole along a cap, mm, 0 to 100
 * @param attachedEdge along the top edge of an overlay, mm, 0 to 100
 * @param sideSeam along a side seam, mm, 0 to 100
 * @param hem along a hem, mm, 0 to 100
 */
public record Allowances(double armhole, double attachedEdge, double sideSeam, double hem) {

    /** The widest allowance that is drawn, mm. */
    public static final double WIDEST = 100;

    /**
     * The same allowance along every edge.
     *
     * @param width mm, 0 to 100
     * @return four equal allowances
     */
    public static Allowances all(double width) {
        return new Allowances(width, width, width, width);
    }

    /**
     * The allowance along a kind of edge.
     *
     * @param kind kind of edge
     * @return millimetres, 0 on the fold
     */
    public double along(EdgeKind kind) {
        return switch (kind) {
            case ARMHOLE -> armhole;
            case ATTACHED_EDGE -> attachedEdge;
            case SIDE_SEAM -> sideSeam;
            case HEM -> hem;
            case FOLD -> 0;
        };
    }

    /**
     * The widest of the four.
     *
     * @return millimetres
     */
    public double widest() {
        return Math.max(Math.max(armhole, attachedEdge), Math.max(sideSeam, hem));
    }

    /**
     * All four in proportion.
     *
     * @param factor 0 or more
     * @return the allowances times the factor
     */
    public Allowances times(double factor) {
        return new Allowances(armhole * factor, attachedEdge * factor, sideSeam * factor, hem * factor);
    }
}
