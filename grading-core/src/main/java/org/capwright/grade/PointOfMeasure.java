package org.capwright.grade;

import java.util.List;

/**
 * One row of a spec table.
 *
 * @param code short code, unique in the table
 * @param name what is measured
 * @param definition how it is measured, one sentence
 * @param values millimetres per size, smallest first, unrounded, walked along the drafted lines
 * @param tolerance what the finished garment may be off by, mm, plus or minus
 * @param toleranceSource where the tolerance comes from
 */
public record PointOfMeasure(
        String code, String name, String definition, List<Double> values, double tolerance, String toleranceSource) {

    /**
     * The jumps between neighbouring sizes.
     *
     * @return millimetres, one per interval, smallest sizes first
     */
    public List<Double> jumps() {
        return java.util.stream.IntStream.range(1, values.size())
                .mapToObj(i -> values.get(i) - values.get(i - 1))
                .toList();
    }
}
