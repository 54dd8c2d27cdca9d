package org.capwright.draft;

/**
 * What is settled about an overlay apart from its dimensions.
 *
 * @param hem shape of the lower edge
 * @param join where the raised line joins the cap line, as a share of the guide line from the apex: above 0.5, at most 1; 0.75 is the third division
 */
public record OverlayStyle(HemShape hem, double join) {

    /** The place where the raised line joins the cap line unless another is asked for: the third division. */
    public static final double THIRD_DIVISION = 0.75;
}
