package org.capwright.tables;

/**
 * The growth of a dimension from one size to the next.
 *
 * @param fromSize the smaller size
 * @param toSize the next size of the table
 * @param dimension the dimension that grows
 * @param millimetres the growth in millimetres; negative where a class mean falls back
 * @param provenance {@link Provenance#INTERPOLATED} when either end is interpolated, else that of the upper end
 */
public record Increment(
        String fromSize, String toSize, TableDimension dimension, double millimetres, Provenance provenance) {}
