package org.capwright.tables.survey;

import org.capwright.tables.BodyDimension;
import org.capwright.tables.Interval;

/**
 * A stretch of one dimension that no size of the run fits.
 *
 * @param dimension upper-arm girth or arm length
 * @param place below the smallest size, between sizes, or above the largest
 * @param range the stretch in millimetres; its ends belong to a size, or to the smallest and largest person surveyed
 * @param people people of the survey who fall in the stretch
 */
public record CoverageGap(BodyDimension dimension, Place place, Interval range, int people) {

    /** Where the gap lies in the run. */
    public enum Place {
        /** Below the smallest size. */
        BELOW,
        /** Between two sizes. */
        BETWEEN,
        /** Above the largest size. */
        ABOVE
    }
}
