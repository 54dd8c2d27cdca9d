package org.capwright.grade.derive;

/** How the sleeve length goes with the size. Arm length follows stature and hardly the bust, so a table of bust classes alone is a poor guide. */
public sealed interface LengthPolicy {

    /** As the arm length of the table, with its chance ups and downs. */
    record AsTheArm() implements LengthPolicy {}

    /** The same length in every size: all sizes are made for one stature. */
    record Held() implements LengthPolicy {}

    /**
     * A stated growth.
     *
     * @param perSize mm from each size to the next, -50 to 50
     */
    record Stated(double perSize) implements LengthPolicy {

        /**
         * Checks the growth.
         *
         * @param perSize mm from each size to the next, -50 to 50
         * @throws IllegalArgumentException if it is not within -50 to 50 mm
         */
        public Stated {
            if (!(perSize >= -50 && perSize <= 50)) {
                throw new IllegalArgumentException("perSize: " + perSize + " mm is not within -50 to 50 mm");
            }
        }
    }
}
