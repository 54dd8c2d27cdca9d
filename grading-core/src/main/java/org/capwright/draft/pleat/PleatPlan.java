package org.capwright.draft.pleat;

import org.capwright.quantity.InvalidMeasuresException;

/**
 * How a top edge is to be pleated.
 *
 * @param kind knife, box or inverted
 * @param direction which way knife pleats lie; without meaning for box and inverted pleats
 * @param sizing count, depth or greatest depth
 * @param flatZoneFront finished seam without folds at the front end, mm, 0 or more, less than the front span
 * @param flatZoneBack finished seam without folds at the back end, mm, 0 or more, less than the back span
 */
public record PleatPlan(
        PleatKind kind, PleatDirection direction, PleatSizing sizing, double flatZoneFront, double flatZoneBack) {

    /** The most pleats one edge may have. */
    public static final int GREATEST_COUNT = 200;

    /**
     * Distributes the pleats over an attach span. Front and back are reckoned apart, so that the apex of the edge lands on the shoulder point: each half takes
     * up its own surplus of edge over span, with folds of one depth. The count is shared in proportion to the surplus; an odd count puts one pleat on the
     * apex where that makes the depths of the halves more alike. Folds are spread evenly between flat zone and shoulder point, half a spacing from each.
     *
     * <p>A pleat on the apex takes from both halves. Knife pleats that lie one way have a single fold there; those that mirror about the apex have two folds of
     * half the depth: inverted if they lie toward the apex, a box if they lie away from it.
     *
     * @param span the seam the edge is sewn to
     * @param edgeFront arc length of the flat edge from its front end to the apex, mm
     * @param edgeBack arc length of the flat edge from the apex to its back end, mm
     * @return the layout; without folds where edge and span are equally long
     * @throws InvalidMeasuresException if a half of the edge is shorter than its span, or a measure of this plan is out of its range
     */
    public PleatLayout layOut(AttachSpan span, double edgeFront, double edgeBack) {
        return new PleatPlacing(this, span, edgeFront, edgeBack).layout();
    }
}
