package org.capwright.measure;

import java.util.Arrays;
import java.util.EnumSet;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * The dimensions of one size of a style, in millimetres. A dimension that the style does not have is absent. Guaranteed to be immutable.
 *
 * <p>Values are kept on a grid of 2⁻³² mm (a quarter of a millionth of a micrometre), on which sums and differences of lengths up to 2 m are exact in
 * double arithmetic: a grade rule applied from one size to another and back gives the very same number.
 */
public final class Dimensions {

    private static final double GRID = 0x1p32;
    private static final Dimensions NONE = new Dimensions(empty());

    private final double[] values;

    private Dimensions(double[] values) {
        this.values = values;
    }

    private static double[] empty() {
        double[] values = new double[Dimension.values().length];
        Arrays.fill(values, Double.NaN);
        return values;
    }

    /**
     * No dimension at all, to build on.
     *
     * @return the empty set
     */
    public static Dimensions none() {
        return NONE;
    }

    /**
     * Dimensions from a map.
     *
     * @param values millimetres by dimension, all finite
     * @return the dimensions, snapped to the grid
     */
    public static Dimensions of(Map<Dimension, Double> values) {
        return NONE.with(values);
    }

    /**
     * A length on the grid on which sums are exact.
     *
     * @param length millimetres, finite
     * @return the nearest multiple of 2⁻³² mm, no more than 1.2e-10 mm away
     */
    public static double snap(double length) {
        return Math.rint(length * GRID) / GRID;
    }

    /**
     * Whether the style has a dimension.
     *
     * @param dimension which
     * @return true if it has a value
     */
    public boolean has(Dimension dimension) {
        return !Double.isNaN(values[dimension.ordinal()]);
    }

    /**
     * The value of a dimension that must be there.
     *
     * @param dimension which
     * @return millimetres
     * @throws IllegalStateException if it is absent
     */
    public double get(Dimension dimension) {
        double value = values[dimension.ordinal()];
        if (Double.isNaN(value)) {
            throw new IllegalStateException("the style has no " + dimension.gradeName());
        }
        return value;
    }

    /**
     * The value of a dimension that may be there.
     *
     * @param dimension which
     * @return millimetres, or nothing
     */
    public OptionalDouble find(Dimension dimension) {
        double value = values[dimension.ordinal()];
        return Double.isNaN(value) ? OptionalDouble.empty() : OptionalDouble.of(value);
    }

    /**
     * The value of a dimension, or another if it is absent.
     *
     * @param dimension which
     * @param otherwise millimetres
     * @return the value, or {@code otherwise}
     */
    public double getOr(Dimension dimension, double otherwise) {
        double value = values[dimension.ordinal()];
        return Double.isNaN(value) ? otherwise : value;
    }

    /**
     * These dimensions with one changed or added.
     *
     * @param dimension which
     * @param value millimetres, finite; snapped to the grid
     * @return the new set
     */
    public Dimensions with(Dimension dimension, double value) {
        double[] copy = values.clone();
        copy[dimension.ordinal()] = snap(value);
        return new Dimensions(copy);
    }

    /**
     * These dimensions with some changed or added.
     *
     * @param others millimetres by dimension, all finite; snapped to the grid
     * @return the new set
     */
    public Dimensions with(Map<Dimension, Double> others) {
        double[] copy = values.clone();
        others.forEach((dimension, value) -> copy[dimension.ordinal()] = snap(value));
        return new Dimensions(copy);
    }

    /**
     * Which dimensions there are.
     *
     * @return a new set, in the order of the enumeration
     */
    public Set<Dimension> present() {
        EnumSet<Dimension> present = EnumSet.noneOf(Dimension.class);
        for (Dimension dimension : Dimension.values()) {
            if (has(dimension)) {
                present.add(dimension);
            }
        }
        return present;
    }

    @Override
    public boolean equals(@Nullable Object other) {
        return other instanceof Dimensions dimensions && Arrays.equals(values, dimensions.values);
    }

    @Override
    public int hashCode() {
        return Arrays.hashCode(values);
    }

    @Override
    public String toString() {
        StringBuilder text = new StringBuilder("Dimensions[");
        for (Dimension dimension : present()) {
            text.append(text.length() > 11 ? ", " : "")
                    .append(dimension.gradeName())
                    .append('=')
                    .append(get(dimension));
        }
        return text.append(']').toString();
    }
}
