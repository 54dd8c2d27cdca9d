package org.capwright.service.sizerun;

import org.capwright.draft.Overlay;
import org.capwright.draft.SleeveDraft;
import org.capwright.draft.pleat.AttachSpan;
import org.capwright.draft.pleat.PleatDirection;
import org.capwright.draft.pleat.PleatKind;
import org.capwright.draft.pleat.PleatLayout;
import org.capwright.draft.pleat.PleatPlan;
import org.capwright.draft.pleat.PleatSizing;
import org.capwright.measure.Dimension;
import org.capwright.measure.Violation;

/**
 * The pleats asked for. A depth is graded, so that each size has a plan of its own.
 *
 * @param kind kind of pleat
 * @param direction where knife pleats point
 * @param sizing what is given; a depth is that of the base size
 * @param flatZoneFront seam without folds at the front end, mm
 * @param flatZoneBack seam without folds at the back end, mm
 */
public record PleatOrder(
        PleatKind kind, PleatDirection direction, PleatSizing sizing, double flatZoneFront, double flatZoneBack) {

    /**
     * The pleats of one size.
     *
     * @param draft a size with an overlay
     * @return where the pleats lie
     */
    PleatLayout layOut(SleeveDraft draft) {
        Overlay overlay = draft.overlay().orElseThrow();
        PleatSizing graded = sizing instanceof PleatSizing.ByDepth
                ? new PleatSizing.ByDepth(draft.dimensions().get(Dimension.PLEAT_DEPTH))
                : sizing;
        double frontGap = draft.dimensions().get(Dimension.FRONT_GAP);
        double backGap = draft.dimensions().get(Dimension.BACK_GAP);
        AttachSpan span =
                new AttachSpan(overlay.frontSpan() + frontGap, overlay.backSpan() + backGap, frontGap, backGap);
        return new PleatPlan(kind, direction, graded, flatZoneFront, flatZoneBack)
                .layOut(
                        span,
                        overlay.front().topEdge().length(),
                        overlay.back().topEdge().length());
    }

    /**
     * The same violation at the field that the request has for it.
     *
     * @param violation what was found
     * @return the violation with a field of the request
     */
    Violation placed(Violation violation) {
        String field = switch (violation.pointer()) {
            case "/overlay/pleats/flatZoneFront" -> "/overlay/pleats/flatZone";
            case "/overlay/pleats/flatZoneBack" -> "/overlay/pleats/flatZone";
            case "/overlay/pleats/depth" ->
                sizing instanceof PleatSizing.ByGreatestDepth ? "/overlay/pleats/greatestDepth" : violation.pointer();
            default -> violation.pointer();
        };
        return new Violation(
                field,
                violation.reason(),
                violation.quantity(),
                violation.value(),
                violation.minimum(),
                violation.maximum());
    }
}
