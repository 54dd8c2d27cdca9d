package org.capwright.exchange.hpgl;

import java.nio.charset.StandardCharsets;
import java.util.List;
import org.capwright.geometry.Point;

/** Writes strokes as HP-GL in whole plotter units of 0.025 mm. */
final class HpglWriter {

    /** Plotter units per millimetre (HP-GL/2: one unit is 0.025 mm). */
    static final int UNITS = 40;

    /** Coordinates of HP-GL/2 go up to 2^30. */
    private static final double GREATEST = 1 << 30;

    /** Plotters with small buffers take no more coordinates in one instruction. */
    private static final int PAIRS = 100;

    private final StringBuilder out = new StringBuilder(1 << 16);
    private int pen;

    HpglWriter() {
        out.append("IN;");
    }

    void pen(int number) {
        if (pen != number) {
            out.append("PU;SP").append(number).append(";\n");
            pen = number;
        }
    }

    void closedLine(List<Point> points) {
        start(points.get(0));
        down(points, 1);
        out.append("PD");
        place(points.get(0));
        out.append(";\n");
    }

    void openLine(List<Point> points) {
        start(points.get(0));
        down(points, 1);
    }

    private void start(Point at) {
        out.append("PU");
        place(at);
        out.append(";\n");
    }

    private void down(List<Point> points, int from) {
        for (int i = from; i < points.size(); i++) {
            out.append((i - from) % PAIRS == 0 ? "PD" : ",");
            place(points.get(i));
            if ((i - from) % PAIRS == PAIRS - 1 || i == points.size() - 1) {
                out.append(";\n");
            }
        }
    }

    private void place(Point at) {
        units(at.x());
        out.append(',');
        units(at.y());
    }

    private void units(double millimetres) {
        double units = Math.rint(millimetres * UNITS);
        if (!(Math.abs(units) <= GREATEST)) {
            throw new IllegalArgumentException("not a plotter coordinate: " + millimetres + " mm");
        }
        out.append((int) units);
    }

    byte[] finish() {
        out.append("PU;SP0;\n");
        return out.toString().getBytes(StandardCharsets.US_ASCII);
    }
}
