package org.capwright.pattern;

import java.util.ArrayList;
import java.util.List;
import org.capwright.draft.Overlay;
import org.capwright.draft.SleeveDraft;
import org.capwright.measure.Dimension;

/**
 * What tells front from back on the top edge of a whole overlay: one notch in front, two behind. Where a notch of the cap lies under the overlay, they meet it. They lie on parts of the edge that are seen
 * when the pleats are closed.
 *
 * @param front finished distance of the front notch from the front end of the seam, mm
 * @param back finished distance of the back notch from the back end of the seam, mm
 */
record OverlayNotches(double front, double back) {

    /** Where there is no notch to meet, they lie this far from the end, mm, or a third of the half. Common practice, no source. */
    private static final double USUAL = 40;

    static OverlayNotches of(SleeveDraft draft) {
        return new OverlayNotches(
                place(CapNotches.of(draft, draft.base().front(), Dimension.FRONT_GAP), front(draft)),
                place(CapNotches.of(draft, draft.base().back(), Dimension.BACK_GAP), back(draft)));
    }

    private static double front(SleeveDraft draft) {
        return draft.overlay().orElseThrow().attached().armholeFront()
                - draft.dimensions().get(Dimension.FRONT_GAP);
    }

    private static double back(SleeveDraft draft) {
        return draft.overlay().orElseThrow().attached().armholeBack()
                - draft.dimensions().get(Dimension.BACK_GAP);
    }

    private static double place(CapNotches cap, double span) {
        double met = cap.balance() - cap.overlayEnd();
        return met >= CapNotches.APART && met <= span - CapNotches.APART ? met : Math.min(USUAL, span / 3);
    }

    /** Where the notches lie along the top edge of a whole piece, which runs from the back end to the front one. */
    List<NotchPlace> along(String edge, PleatedEdge top, Overlay overlay) {
        List<NotchPlace> places = new ArrayList<>(2);
        places.add(new NotchPlace(NotchKind.DOUBLE, edge, PleatedEdge.visible(overlay, top, back, NotchKind.DOUBLE)));
        places.add(new NotchPlace(NotchKind.SINGLE, edge, PleatedEdge.visible(overlay, top, front, NotchKind.SINGLE)));
        return places;
    }
}
