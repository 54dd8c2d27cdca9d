package org.capwright.lay;

import java.util.ArrayList;
import java.util.List;
import org.capwright.measure.SleeveSubject.Option;
import org.capwright.quantity.InvalidMeasuresException;
import org.capwright.quantity.Quantity;
import org.capwright.quantity.Violation;

/**
 * How trimming for the edges of the overlay is bought.
 *
 * @param waste share added for joins and turned-in ends, 0 to 1
 * @param step the shop sells whole multiples of this length, mm, 1 to 10 000
 */
public record Trimming(double waste, double step) {

    /** One twentieth for joins and ends, sold by 100 mm (common practice, no source). */
    public static final Trimming USUAL = new Trimming(0.05, 100);

    /**
     * Checks the figures.
     *
     * @param waste 0 to 1
     * @param step mm, 1 to 10 000
     * @throws InvalidMeasuresException if any is out of its range; all such figures are named
     */
    public Trimming {
        List<Violation> found = new ArrayList<>();
        if (!(waste >= 0 && waste <= 1)) {
            found.add(Violation.outside(
                    Option.TRIMMING_WASTE, "the share of trimming added is out of range", Quantity.RATIO, waste, 0, 1));
        }
        if (!(step >= 1 && step <= 10_000)) {
            found.add(Violation.lengthOutside(
                    Option.TRIMMING_STEP, "the step in which trimming is sold is out of range", step, 1, 10_000));
        }
        if (!found.isEmpty()) {
            throw new InvalidMeasuresException(found);
        }
    }
}
