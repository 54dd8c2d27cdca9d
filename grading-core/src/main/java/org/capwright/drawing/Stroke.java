package org.capwright.drawing;

import java.util.Arrays;
import java.util.List;

/**
 * How a line is drawn. Immutable.
 *
 * @param ink its colour
 * @param width its width, mm
 * @param dash lengths of dashes and gaps, mm; empty for a solid line
 */
public record Stroke(Ink ink, double width, List<Double> dash) {

    /**
     * A solid line.
     *
     * @param ink its colour
     * @param width its width, mm
     * @return the stroke
     */
    public static Stroke solid(Ink ink, double width) {
        return new Stroke(ink, width, List.of());
    }

    /**
     * A dashed line.
     *
     * @param ink its colour
     * @param width its width, mm
     * @param dash lengths of dashes and gaps, mm
     * @return the stroke
     */
    public static Stroke dashed(Ink ink, double width, Double... dash) {
        return new Stroke(ink, width, Arrays.asList(dash));
    }

    /**
     * The same line in another colour, a little thinner.
     *
     * @param colour the colour
     * @return the stroke
     */
    public Stroke lighter(Ink colour) {
        return new Stroke(colour, width * 0.8, dash);
    }

    /**
     * Lines of a nest: each size has its own dashes, so that a black and white print tells them apart as well.
     *
     * @param position position of the size, smallest first
     * @param lead position of the size that is drawn solid
     * @return the stroke
     */
    public static Stroke ofSize(int position, int lead) {
        if (position == lead) {
            return solid(Ink.BLACK, 0.45);
        }
        int place = position < lead ? position : position - 1;
        return new Stroke(
                INKS.get(place % INKS.size()),
                0.3 + 0.15 * (place / DASHES.size() % 3),
                DASHES.get(place % DASHES.size()));
    }

    private static final List<Ink> INKS = List.of(
            new Ink(0.05, 0.25, 0.55),
            new Ink(0.60, 0.10, 0.12),
            new Ink(0.05, 0.38, 0.20),
            new Ink(0.38, 0.12, 0.50),
            new Ink(0.50, 0.27, 0.02),
            new Ink(0.00, 0.36, 0.42),
            new Ink(0.55, 0.05, 0.38));

    private static final List<List<Double>> DASHES = List.of(
            List.of(12.0, 2.0),
            List.of(12.0, 1.5, 1.0, 1.5),
            List.of(6.0, 2.0),
            List.of(12.0, 1.5, 1.0, 1.5, 1.0, 1.5),
            List.of(6.0, 1.5, 1.0, 1.5),
            List.of(12.0, 1.5, 4.0, 1.5),
            List.of(6.0, 1.5, 1.0, 1.5, 1.0, 1.5),
            List.of(3.5, 1.5),
            List.of(12.0, 1.5, 1.0, 1.5, 1.0, 1.5, 1.0, 1.5),
            List.of(12.0, 1.5, 4.0, 1.5, 1.0, 1.5),
            List.of(6.0, 1.5, 2.5, 1.5, 2.5, 1.5));
}
