package org.capwright.lay;

/**
 * What to buy for a lay, with every factor: lay length x shrinkage factor x waste factor, rounded up to the shop's step.
 *
 * @param layLength length of the shrunk cloth that the lay covers, mm
 * @param shrinkageFactor 1 / (1 - s), where s is the share of the bought length that is lost: what is left of the longer piece is then as long as the lay.
 *     (The change of dimension is stated as a share of the original length: ISO 5077, from memory.)
 * @param wasteFactor 1 + w
 * @param exactLength the product before rounding, mm
 * @param step the shop's step, mm
 * @param length what to buy, a whole multiple of the step, mm
 */
public record Purchase(
        double layLength, double shrinkageFactor, double wasteFactor, double exactLength, double step, double length) {

    /** The purchase for a lay length. */
    static Purchase of(double layLength, double shrinkage, double waste, double step) {
        double shrinkageFactor = 1 / (1 - shrinkage);
        double wasteFactor = 1 + waste;
        double exact = layLength * shrinkageFactor * wasteFactor;
        // A millionth of a step is rounding of the arithmetic, not a reason to buy one step more.
        double steps = Math.ceil(exact / step - 1e-6);
        return new Purchase(layLength, shrinkageFactor, wasteFactor, exact, step, steps * step);
    }
}
