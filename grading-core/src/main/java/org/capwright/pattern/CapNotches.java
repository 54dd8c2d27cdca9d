package org.capwright.pattern;

import java.util.ArrayList;
import java.util.List;
import org.capwright.draft.CapLine;
import org.capwright.draft.SleeveDraft;
import org.capwright.measure.Dimension;

/**
 * Where the notches of one half of a cap lie. No ease lies below the front and the back notch (common practice, no source), so that up to there the same distances are measured
 * along cap and armhole; beyond it the ease is spread evenly as far as the apex.
 *
 * @param balance distance of the front or back notch from the underarm point, on cap and armhole, mm
 * @param overlayEnd distance of the end of the overlay from the underarm point along the armhole, mm; 0 where there is no overlay or it reaches the underarm point
 * @param overlayEndOnCap the same place along the cap, mm
 */
record CapNotches(double balance, double overlayEnd, double overlayEndOnCap) {

    /** Notches nearer to one another than this are mistaken for one, mm. Common practice, no source. */
    static final double APART = 12;

    /** The notches of one half of a draft. */
    static CapNotches of(SleeveDraft draft, CapLine half, Dimension gap) {
        double length = half.length();
        double end = draft.overlay().isPresent() ? draft.dimensions().getOr(gap, 0) : 0;
        double armhole = draft.overlay()
                .map(overlay -> gap == Dimension.FRONT_GAP
                        ? overlay.attached().armholeFront()
                        : overlay.attached().armholeBack())
                .orElse(length);
        double balance = length - half.lengthTo(0.75).orElse(length);
        if (end > 0 && Math.abs(balance - end) < APART) {
            balance = end + APART < 0.7 * length ? end + APART : end - APART;
        }
        double eased = Math.max(balance, 0.1 * length);
        double onCap =
                end <= eased || armhole <= eased ? end : eased + (end - eased) * (length - eased) / (armhole - eased);
        return new CapNotches(eased, end, onCap);
    }

    /** The notches on an edge that ends or starts at the underarm point. */
    List<NotchPlace> along(String edge, NotchKind kind, java.util.function.DoubleUnaryOperator fromStart) {
        List<NotchPlace> places = new ArrayList<>(2);
        places.add(new NotchPlace(kind, edge, fromStart.applyAsDouble(balance)));
        if (overlayEnd > 0) {
            places.add(new NotchPlace(NotchKind.OVERLAY_END, edge, fromStart.applyAsDouble(overlayEndOnCap)));
        }
        return places;
    }
}
