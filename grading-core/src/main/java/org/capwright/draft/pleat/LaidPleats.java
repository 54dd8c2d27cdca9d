package org.capwright.draft.pleat;

import org.capwright.geometry.Curve;
import org.capwright.quantity.InvalidMeasuresException;

/**
 * Pleats laid so that every under-layer ends within the seam: beyond its ends they would hang out beside the piece. Guaranteed to be immutable.
 *
 * @param layout where the edge is folded; further in than asked for where the flat zone leaves the outermost folds too little room
 * @param trued the edge as it is cut for these folds
 */
public record LaidPleats(PleatLayout layout, TruedEdge trued) {

    /** Under-layers that would reach beyond the end of the seam end this far before it instead, mm: nobody sews that, and no line is drawn as short as rounding. */
    private static final double BEFORE_THE_END = 0.001;

    /** The most that one step moves the outermost folds, as a multiple of how far their under-layers reach beyond the end. */
    private static final double LONGEST_STEP = 8;

    /** How often the outermost folds are moved in until their under-layers end with the seam; mostly once, seldom more than three times. */
    private static final int TRIES = 25;

    /**
     * Lays pleats.
     *
     * @param plan how the edge is to be pleated
     * @param asked the layout by that plan, with folds
     * @param span the seam that the edge is sewn to
     * @param flat the flat net edge, as for {@link TruedEdge#of}
     * @param drawn greatest length of the pleat lines, mm, above 0
     * @return the pleats as they can be sewn
     * @throws InvalidMeasuresException if they cannot be laid
     */
    public static LaidPleats of(PleatPlan plan, PleatLayout asked, AttachSpan span, Curve flat, double drawn) {
        PleatLayout layout = asked;
        Zone front = new Zone(plan.flatZoneFront(), plan.flatZoneFront(), 0);
        Zone back = new Zone(plan.flatZoneBack(), plan.flatZoneBack(), 0);
        for (int i = 0; i < TRIES; i++) {
            EdgeTruing truing = new EdgeTruing(flat, layout);
            Overhang overhang = truing.overhangOfOutermost();
            if (overhang.isNone()) {
                TruedEdge trued = truing.truedEdge(drawn);
                overhang = trued.overhang();
                if (overhang.isNone()) {
                    if (!trued.isSimple()) {
                        throw TruedEdge.doesNotLie();
                    }
                    return new LaidPleats(layout, trued);
                }
            }
            front = front.next(overhang.front(), layout.front());
            back = back.next(overhang.back(), layout.back());
            if (front.width >= span.front() || back.width >= span.back()) {
                throw TruedEdge.doesNotLie();
            }
            layout = new PleatPlan(
                            plan.kind(),
                            plan.direction(),
                            new PleatSizing.ByCount(layout.count()),
                            front.width,
                            back.width)
                    .layOut(span, layout.front().edge(), layout.back().edge());
        }
        throw TruedEdge.doesNotLie();
    }

    /**
     * The flat zone at one end, as it is tried.
     *
     * @param width mm
     * @param before how wide it was at the last try, mm
     * @param overhang how far the under-layers reached beyond the end of the seam then, mm
     */
    private record Zone(double width, double before, double overhang) {

        /**
         * A flat zone wider by z moves the outermost of n folds, which lie half a spacing from their borders, in by z (1 - 1 / 2n). Where the last try shows that the under-layers
         * follow more slowly, the step is as much longer (the secant method).
         */
        Zone next(double overhangNow, HalfPleats half) {
            if (overhangNow == 0) {
                return new Zone(width, width, 0);
            }
            double shortest = 1 / (1 - 1 / (2 * Math.max(1, half.pleats())));
            double followed = (width - before) / (overhang - overhangNow);
            double step = followed > shortest ? Math.min(followed, LONGEST_STEP) : shortest;
            return new Zone(width + (overhangNow + BEFORE_THE_END) * step, width, overhangNow);
        }
    }
}
