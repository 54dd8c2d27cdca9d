package org.capwright.draft;

/**
 * The stretch at the elbow over which a longer back underarm seam is eased to the front one. Outside it the two seams run equally. Guaranteed to be immutable.
 *
 * @param ease how much longer the stretch is on the back seam, mm, above 0
 * @param from where the stretch begins on both seams, as arc length from the underarm point, mm
 * @param frontTo where it ends on the front seam, as arc length from the underarm point, mm
 */
public record SeamEasing(double ease, double from, double frontTo) {

    /**
     * Where the stretch ends on the back seam.
     *
     * @return arc length from the underarm point, mm
     */
    public double backTo() {
        return frontTo + ease;
    }
}
