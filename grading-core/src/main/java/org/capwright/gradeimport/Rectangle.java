package org.capwright.gradeimport;

import java.util.ArrayList;
import java.util.List;
import org.capwright.geometry.Point;

/** Frames, title boxes, test squares and cuffs. */
final class Rectangle {

    /** The line bends at a vertex from this angle on, degrees. */
    private static final double BENT = 3;

    /** A corner is a right angle give or take this, degrees. */
    private static final double SQUARE = 2;

    /** The sides are straight where the area is the product of two of them, give or take this share. */
    private static final double FULL = 0.005;

    private static final double SAME = 1e-3;

    private Rectangle() {}

    /** Whether a closed line has four right angles and is straight between them. */
    static boolean is(List<Point> outline) {
        List<Point> ring = new ArrayList<>();
        for (Point point : outline) {
            if (ring.isEmpty() || ring.get(ring.size() - 1).distanceTo(point) > SAME) {
                ring.add(point);
            }
        }
        while (ring.size() > 1 && ring.get(0).distanceTo(ring.get(ring.size() - 1)) <= SAME) {
            ring.remove(ring.size() - 1);
        }
        int n = ring.size();
        List<Point> corners = new ArrayList<>();
        for (int i = 0; i < n && corners.size() <= 4; i++) {
            double turn = Math.abs(SleeveShape.turn(ring.get((i + n - 1) % n), ring.get(i), ring.get((i + 1) % n)));
            if (turn > BENT) {
                if (Math.abs(turn - 90) > SQUARE) {
                    return false;
                }
                corners.add(ring.get(i));
            }
        }
        if (corners.size() != 4) {
            return false;
        }
        double sides =
                corners.get(0).distanceTo(corners.get(1)) * corners.get(1).distanceTo(corners.get(2));
        return Math.abs(Math.abs(SleeveShape.area(ring)) - sides) <= FULL * sides;
    }
}
