package org.capwright.exchange.hpgl;

import org.capwright.geometry.Point;
import org.capwright.geometry.Points;
import org.capwright.quantity.FileBytes;

/** Writes strokes as HP-GL in whole plotter units of 0.025 mm. */
final class HpglWriter {

    /** Plotter units per millimetre (HP-GL/2: one unit is 0.025 mm). */
    static final int UNITS = 40;

    /** Coordinates of HP-GL/2 go up to 2^30. */
    private static final double GREATEST = 1 << 30;

    /** Plotters with small buffers take no more coordinates in one instruction. */
    private static final int PAIRS = 100;

    private final FileBytes file = new FileBytes();
    private int pen;

    HpglWriter() {
        file.put("IN;");
    }

    void pen(int number) {
        if (pen != number) {
            file.put("PU;SP" + number + ";\n");
            pen = number;
        }
    }

    /** Where a place of a piece lies on the roll. */
    interface OnRoll {
        Point at(double x, double y);
    }

    /** Draws a closed line through points, each put where it lies on the roll. */
    void closedLine(Points points, OnRoll roll) {
        openLine(points, roll);
        file.put("PD");
        place(roll.at(points.x(0), points.y(0)));
        file.put(";\n");
    }

    /** Draws a line through points, each put where it lies on the roll. */
    void openLine(Points line, OnRoll roll) {
        file.put("PU");
        place(roll.at(line.x(0), line.y(0)));
        file.put(";\n");
        for (int i = 1; i < line.size(); i++) {
            file.put(i % PAIRS == 1 ? "PD" : ",");
            place(roll.at(line.x(i), line.y(i)));
            if (i % PAIRS == 0 || i == line.size() - 1) {
                file.put(";\n");
            }
        }
    }

    private void place(Point at) {
        file.whole(units(at.x()));
        file.put(',');
        file.whole(units(at.y()));
    }

    private static int units(double millimetres) {
        double units = Math.rint(millimetres * UNITS);
        if (!(Math.abs(units) <= GREATEST)) {
            throw new IllegalArgumentException("not a plotter coordinate: " + millimetres + " mm");
        }
        return (int) units;
    }

    byte[] finish() {
        file.put("PU;SP0;\n");
        return file.all();
    }
}
