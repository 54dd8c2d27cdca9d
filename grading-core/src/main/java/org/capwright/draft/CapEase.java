package org.capwright.draft;

/** Cap line length less armhole length: what must be eased in, or how much is missing. */
public sealed interface CapEase {

    /** A cap line shorter than this cannot be stretched into its armhole, a share of the armhole. Common practice, no source. */
    double LEAST_SHARE = -0.3;

    /** A cap line longer than this is more than a gathered cap, a share of the armhole. Common practice, no source. */
    double GREATEST_SHARE = 0.5;

    /**
     * A given length of ease.
     *
     * @param ease millimetres, may be negative
     */
    record Length(double ease) implements CapEase {
        @Override
        public double over(double armhole) {
            return ease;
        }
    }

    /**
     * A share of the armhole.
     *
     * @param share for example 0.04 for four percent
     */
    record Share(double share) implements CapEase {
        @Override
        public double over(double armhole) {
            return share * armhole;
        }
    }

    /**
     * The ease that this means for an armhole.
     *
     * @param armhole millimetres
     * @return millimetres
     */
    double over(double armhole);
}
