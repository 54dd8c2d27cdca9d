package org.capwright.tables.survey;

import org.apache.commons.math3.distribution.TDistribution;
import org.capwright.quantity.InvalidMeasuresException;
import org.capwright.quantity.Violation;
import org.capwright.tables.TableSubject;

/** Student's t distribution for a number of degrees of freedom. Keeps the last quantile, as callers ask for the same. */
final class StudentT {

    private record Quantile(double confidence, double t) {}

    private final TDistribution distribution;
    private volatile Quantile last = new Quantile(0, 0);

    StudentT(int degreesOfFreedom) {
        this.distribution = new TDistribution(null, degreesOfFreedom);
    }

    /** The quantile that leaves half of the rest on either side. */
    double twoSided(String field, double confidence) {
        requireShare(field, confidence);
        Quantile known = last;
        if (known.confidence != confidence) {
            known = new Quantile(confidence, distribution.inverseCumulativeProbability(0.5 + confidence / 2));
            last = known;
        }
        return known.t;
    }

    /** The probability of a departure at least as large, to either side. */
    double departure(double t) {
        return 2 * distribution.cumulativeProbability(-Math.abs(t));
    }

    static void requireShare(String field, double share) {
        if (!(share > 0 && share < 1)) {
            throw new InvalidMeasuresException(Violation.other(
                    new TableSubject.Argument(field), Double.toString(share), "above 0 and below 1, such as 0.95"));
        }
    }
}
