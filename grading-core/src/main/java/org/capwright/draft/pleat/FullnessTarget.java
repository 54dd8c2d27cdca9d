package org.capwright.draft.pleat;

import org.capwright.quantity.InvalidMeasuresException;

/** What a top edge is to be long enough for. */
public sealed interface FullnessTarget {

    /**
     * The length of flat edge that meets the target.
     *
     * @param span finished seam, mm, above 0
     * @return millimetres
     */
    double edge(double span);

    /**
     * A fullness ratio: flat edge to finished seam.
     *
     * @param ratio 1 or more
     */
    record Ratio(double ratio) implements FullnessTarget {
        @Override
        public double edge(double span) {
            return ratio * span;
        }
    }

    /**
     * Pleats of a given number and depth.
     *
     * @param kind knife, box or inverted
     * @param count number of pleats, 1 to {@link PleatPlan#GREATEST_COUNT}
     * @param depth depth of each fold in mm, above 0; the mean of both halves where these differ
     */
    record Pleats(PleatKind kind, int count, double depth) implements FullnessTarget {

        /**
         * Checks the number.
         *
         * @param kind knife, box or inverted
         * @param count number of pleats
         * @param depth depth of each fold in mm
         * @throws InvalidMeasuresException if the number of pleats is out of range
         */
        public Pleats {
            PleatPlacing.requireCount(count);
        }

        @Override
        public double edge(double span) {
            return span + count * kind.takeUp(depth);
        }
    }
}
