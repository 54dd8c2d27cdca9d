package org.capwright.grade.derive;

/** How the ease of a garment over the body goes with the size. */
public sealed interface EasePolicy {

    /** The same ease in every size: the garment grows as the body does. */
    record Constant() implements EasePolicy {
        @Override
        public double garment(double garmentBase, double bodyBase, double body, int sizes) {
            return garmentBase + (body - bodyBase);
        }
    }

    /** The same share of the body in every size: garment and body stay in the ratio of the base size. */
    record Percent() implements EasePolicy {
        @Override
        public double garment(double garmentBase, double bodyBase, double body, int sizes) {
            return garmentBase * body / bodyBase;
        }
    }

    /**
     * Ease that grows with every size.
     *
     * @param perSize mm more ease from each size to the next; negative for less, -30 to 30
     */
    record Growing(double perSize) implements EasePolicy {

        /**
         * Checks the growth.
         *
         * @param perSize mm more ease from each size to the next; negative for less, -30 to 30
         * @throws IllegalArgumentException if it is not within -30 to 30 mm
         */
        public Growing {
            if (!(perSize >= -30 && perSize <= 30)) {
                throw new IllegalArgumentException("perSize: " + perSize + " mm is not within -30 to 30 mm");
            }
        }

        @Override
        public double garment(double garmentBase, double bodyBase, double body, int sizes) {
            return garmentBase + (body - bodyBase) + perSize * sizes;
        }
    }

    /**
     * The garment of a size.
     *
     * @param garmentBase garment of the base size, mm
     * @param bodyBase body of the base size, mm
     * @param body body of the size asked for, mm
     * @param sizes how many sizes above the base size it is; negative below
     * @return millimetres
     */
    double garment(double garmentBase, double bodyBase, double body, int sizes);
}
