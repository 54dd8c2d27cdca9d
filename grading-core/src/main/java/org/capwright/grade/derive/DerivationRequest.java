package org.capwright.grade.derive;

import java.util.List;
import org.capwright.measure.Dimensions;
import org.capwright.quantity.Rounding;

/**
 * What rules are to be derived for.
 *
 * @param bodies where the bodies come from
 * @param sizes names of the sizes, smallest first, 1 or more, all different
 * @param base position of the base size among them
 * @param dimensions dimensions of the base size
 * @param ease how the ease goes with the size, at bicep, elbow, wrist and armhole
 * @param length how the length goes with the size
 * @param capEase what of the base size's cap ease is kept
 * @param grid the grid on which the growth from the base size is read
 */
public record DerivationRequest(
        BodySource bodies,
        List<String> sizes,
        int base,
        Dimensions dimensions,
        EasePolicy ease,
        LengthPolicy length,
        CapEaseKept capEase,
        Rounding grid) {

    /** What of the base size's cap ease is kept in every size. */
    public enum CapEaseKept {
        /** The same length. */
        LENGTH,
        /** The same share of the armhole. */
        SHARE
    }

    /**
     * Copies the sizes.
     *
     * @param bodies where the bodies come from
     * @param sizes names of the sizes, smallest first, 1 or more, all different
     * @param base position of the base size among them
     * @param dimensions dimensions of the base size
     * @param ease how the ease goes with the size, at bicep, elbow, wrist and armhole
     * @param length how the length goes with the size
     * @param capEase what of the base size's cap ease is kept
     * @param grid the grid on which the growth from the base size is read
     * @throws IllegalArgumentException if there is no size, or no base size at that position
     */
    public DerivationRequest {
        sizes = List.copyOf(sizes);
        if (base < 0 || base >= sizes.size()) {
            throw new IllegalArgumentException("base: " + base + " is not within 0 to " + (sizes.size() - 1));
        }
    }
}
