package org.capwright.exchange.hpgl;

import java.util.Arrays;
import java.util.List;
import java.util.function.UnaryOperator;
import org.capwright.geometry.Point;
import org.capwright.quantity.Decimals;

/** Writes strokes as HP-GL in whole plotter units of 0.025 mm. */
final class HpglWriter {

    /** Plotter units per millimetre (HP-GL/2: one unit is 0.025 mm). */
    static final int UNITS = 40;

    /** Coordinates of HP-GL/2 go up to 2^30. */
    private static final double GREATEST = 1 << 30;

    /** Plotters with small buffers take no more coordinates in one instruction. */
    private static final int PAIRS = 100;

    /** The longest pair of coordinates with what stands about it stays below this. */
    private static final int PAIR = 48;

    private byte[] bytes = new byte[1 << 16];
    private int length;
    private int pen;

    HpglWriter() {
        put("IN;");
    }

    void pen(int number) {
        if (pen != number) {
            put("PU;SP" + number + ";\n");
            pen = number;
        }
    }

    /** Draws a closed line through points, each put where it lies on the roll. */
    void closedLine(List<Point> points, UnaryOperator<Point> place) {
        openLine(points, place);
        put("PD");
        place(place.apply(points.get(0)));
        put(";\n");
    }

    /** Draws a line through points, each put where it lies on the roll. */
    void openLine(List<Point> points, UnaryOperator<Point> place) {
        put("PU");
        place(place.apply(points.get(0)));
        put(";\n");
        for (int i = 1; i < points.size(); i++) {
            put(i % PAIRS == 1 ? "PD" : ",");
            place(place.apply(points.get(i)));
            if (i % PAIRS == 0 || i == points.size() - 1) {
                put(";\n");
            }
        }
    }

    private void place(Point at) {
        reserve(PAIR);
        length = Decimals.put(units(at.x()), bytes, length);
        bytes[length++] = ',';
        length = Decimals.put(units(at.y()), bytes, length);
    }

    private static int units(double millimetres) {
        double units = Math.rint(millimetres * UNITS);
        if (!(Math.abs(units) <= GREATEST)) {
            throw new IllegalArgumentException("not a plotter coordinate: " + millimetres + " mm");
        }
        return (int) units;
    }

    @SuppressWarnings("deprecation") // The quickest way for letters of one byte each.
    private void put(String ascii) {
        int count = ascii.length();
        reserve(count);
        ascii.getBytes(0, count, bytes, length);
        length += count;
    }

    private void reserve(int more) {
        if (length + more > bytes.length) {
            bytes = Arrays.copyOf(bytes, 2 * bytes.length + more);
        }
    }

    byte[] finish() {
        put("PU;SP0;\n");
        return Arrays.copyOf(bytes, length);
    }
}
