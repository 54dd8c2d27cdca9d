package org.capwright.gradeimport;

import java.util.ArrayList;
import java.util.List;
import org.capwright.geometry.Point;

/**
 * Notches that are cut into an outline or stand out of it: slits, V notches and boxes. The line leaves its way by a sharp corner, goes in and comes back at about the same place, and runs on as
 * before. Without them the outline is the line that is sewn or cut along.
 */
final class Notches {

    /** The widest opening, mm. Common practice, no source. */
    private static final double WIDEST = 11;

    /** The least and the greatest depth, mm. Common practice, no source. */
    private static final double SHALLOWEST = 1.5;

    private static final double DEEPEST = 16;

    /** The most points of a notch between those at its mouth. */
    private static final int MOST_POINTS = 4;

    /** The line turns by more than this at the mouth, degrees. */
    private static final double SHARP = 35;

    /** The line runs on in its old direction, give or take this, degrees. */
    private static final double ONWARD = 25;

    private static final double SAME = 1e-3;

    private Notches() {}

    /**
     * An outline without its notches.
     *
     * @param outline closed, in either direction, no vertex on the one before it
     * @param scale how many times as large as drawn it is to be looked at
     * @return the same vertices in the same order, without those of notches
     */
    static List<Point> without(List<Point> outline, double scale) {
        int n = outline.size();
        boolean[] gone = new boolean[n];
        boolean any = false;
        for (int i = 0; i < n; i++) {
            for (int k = 2; k <= MOST_POINTS + 1 && k + 4 < n && !gone[i]; k++) {
                if (isNotch(outline, i, (i + k) % n, scale)) {
                    for (int tip = i + 1; tip < i + k; tip++) {
                        gone[tip % n] = true;
                    }
                    any = true;
                    break;
                }
            }
        }
        if (!any) {
            return outline;
        }
        List<Point> kept = new ArrayList<>(n);
        for (int i = 0; i < n; i++) {
            if (!gone[i]) {
                kept.add(outline.get(i));
            }
        }
        return kept;
    }

    private static boolean isNotch(List<Point> outline, int from, int to, double scale) {
        int n = outline.size();
        Point mouth = outline.get(from);
        Point end = outline.get(to);
        if (mouth.distanceTo(end) * scale > WIDEST) {
            return false;
        }
        double depth = 0;
        for (int i = (from + 1) % n; i != to; i = (i + 1) % n) {
            double off = mouth.distanceTo(end) > SAME
                    ? outline.get(i).distanceTo(mouth, end)
                    : outline.get(i).distanceTo(mouth);
            if (off * scale < SHALLOWEST) {
                return false;
            }
            depth = Math.max(depth, off * scale);
        }
        Point in = mouth.minus(before(outline, from, -1));
        Point out = before(outline, to, 1).minus(end);
        Point first = outline.get((from + 1) % n).minus(mouth);
        Point last = end.minus(outline.get(Math.floorMod(to - 1, n)));
        double straight = mouth.distanceTo(end) > SAME ? angle(in, end.minus(mouth)) : 0;
        return depth <= DEEPEST
                && angle(in, first) > SHARP
                && angle(last, out) > SHARP
                && angle(in, out) < ONWARD
                && straight < ONWARD;
    }

    /** The neighbour of a vertex that does not lie on it. */
    private static Point before(List<Point> outline, int at, int step) {
        int n = outline.size();
        int other = Math.floorMod(at + step, n);
        for (int k = 0; k < 4 && outline.get(other).distanceTo(outline.get(at)) <= SAME; k++) {
            other = Math.floorMod(other + step, n);
        }
        return outline.get(other);
    }

    private static double angle(Point one, Point other) {
        return Math.toDegrees(Math.abs(Math.atan2(one.cross(other), one.dot(other))));
    }
}
