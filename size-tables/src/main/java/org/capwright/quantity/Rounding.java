package org.capwright.quantity;

/**
 * The grid on which a sewing room reads its figures.
 *
 * @param step distance between neighbouring readable values, mm, above 0
 */
public record Rounding(double step) {

    /**
     * Checks the step.
     *
     * @param step distance between neighbouring readable values, mm, above 0
     * @throws IllegalArgumentException if the step is not above 0
     */
    public Rounding {
        if (!(step > 0)) {
            throw new IllegalArgumentException("a rounding step must be above 0, not " + step);
        }
    }

    /**
     * The nearest value of the grid; halves go away from zero, as a tape is read.
     *
     * @param length millimetres
     * @return a multiple of the step
     */
    public double round(double length) {
        double steps = Math.floor(Math.abs(length) / step + 0.5 + 1e-9);
        return steps == 0 ? 0 : Math.copySign(steps * step, length);
    }
}
