package org.capwright.tables.survey;

import org.apache.commons.math3.distribution.TDistribution;
import org.capwright.tables.Violation;
import org.capwright.tables.ViolationException;

/** Student's t distribution for a number of degrees of freedom. */
record StudentT(int degreesOfFreedom) {

    private TDistribution distribution() {
        return new TDistribution(null, degreesOfFreedom);
    }

    /** The quantile that leaves half of the rest on either side. */
    double twoSided(String field, double confidence) {
        requireShare(field, confidence);
        return distribution().inverseCumulativeProbability(0.5 + confidence / 2);
    }

    /** The probability of a departure at least as large, to either side. */
    double departure(double t) {
        return 2 * distribution().cumulativeProbability(-Math.abs(t));
    }

    static void requireShare(String field, double share) {
        if (!(share > 0 && share < 1)) {
            throw new ViolationException(
                    new Violation(field, Double.toString(share), "above 0 and below 1, such as 0.95"));
        }
    }
}
