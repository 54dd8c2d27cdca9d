package org.capwright.drawing.pdf;

import java.util.Arrays;
import java.util.List;

/**
 * How a line is drawn.
 *
 * @param ink its colour
 * @param width its width, mm
 * @param dash lengths of dashes and gaps, mm; empty for a solid line
 */
record Stroke(Ink ink, double width, List<Double> dash) {

    static Stroke solid(Ink ink, double width) {
        return new Stroke(ink, width, List.of());
    }

    static Stroke dashed(Ink ink, double width, Double... dash) {
        return new Stroke(ink, width, Arrays.asList(dash));
    }

    /** Cut lines of a nest: each size has its own dashes, so that a black and white print tells them apart as well. */
    static Stroke ofSize(int position, boolean lead) {
        if (lead) {
            return solid(Ink.BLACK, 0.45);
        }
        Ink ink = INKS.get(position % INKS.size());
        return new Stroke(ink, 0.3 + 0.15 * (position / DASHES.size() % 3), DASHES.get(position % DASHES.size()));
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
