package org.capwright.pattern;

import java.util.Arrays;
import org.capwright.geometry.Box;
import org.capwright.geometry.Point;
import org.capwright.geometry.Points;
import org.jspecify.annotations.Nullable;

/**
 * A closed line of points in short stretches, of each of which the box about it is known: whoever looks for what lies beside a point, or where a straight line passes, need not look at the others. Not safe for threads.
 *
 * <p>Chord i runs from the point before point i to point i; that before the first point is the last.
 */
final class Ring {

    /** So many chords make a stretch. */
    private static final int STRETCH = 16;

    /** What lies nearer to a line than this may lie on it but for rounding, mm. */
    static final double NEAR = 1e-6;

    /** Far above the rounding of a place, and above what counts as on a line, mm. */
    private static final double ASIDE = 1e-5;

    /** The way of a vertical. */
    static final Point UP = new Point(0, 1);

    private final Points points;

    /** Of each stretch the left, lower, right and upper end of its box, one after another; known once it was asked for. */
    private double @Nullable [] known;

    /** A closed line of three or more points, the first not repeated. */
    Ring(Points points) {
        this.points = points;
    }

    private double[] boxes() {
        double[] boxes = known;
        if (boxes == null) {
            boxes = new double[4 * stretches()];
            for (int stretch = 0; stretch < stretches(); stretch++) {
                double left = startX(from(stretch));
                double bottom = startY(from(stretch));
                double right = left;
                double top = bottom;
                for (int i = from(stretch); i < to(stretch); i++) {
                    double x = endX(i);
                    double y = endY(i);
                    left = x < left ? x : left;
                    bottom = y < bottom ? y : bottom;
                    right = x > right ? x : right;
                    top = y > top ? y : top;
                }
                boxes[4 * stretch] = left;
                boxes[4 * stretch + 1] = bottom;
                boxes[4 * stretch + 2] = right;
                boxes[4 * stretch + 3] = top;
            }
            known = boxes;
        }
        return boxes;
    }

    /** The line itself. */
    Points points() {
        return points;
    }

    /** The box about the line. */
    Box box() {
        double[] boxes = boxes();
        double left = boxes[0];
        double bottom = boxes[1];
        double right = boxes[2];
        double top = boxes[3];
        for (int i = 4; i < boxes.length; i += 4) {
            left = Math.min(left, boxes[i]);
            bottom = Math.min(bottom, boxes[i + 1]);
            right = Math.max(right, boxes[i + 2]);
            top = Math.max(top, boxes[i + 3]);
        }
        return new Box(left, bottom, right, top);
    }

    /** How many chords there are. */
    int chords() {
        return points.size();
    }

    /** How many stretches there are. */
    int stretches() {
        return (points.size() + STRETCH - 1) / STRETCH;
    }

    /** The first chord of a stretch. */
    int from(int stretch) {
        return stretch * STRETCH;
    }

    /** The chord after the last of a stretch. */
    int to(int stretch) {
        return Math.min(points.size(), (stretch + 1) * STRETCH);
    }

    /** Where a chord begins. */
    double startX(int chord) {
        return points.x(chord == 0 ? points.size() - 1 : chord - 1);
    }

    double startY(int chord) {
        return points.y(chord == 0 ? points.size() - 1 : chord - 1);
    }

    /** Where a chord ends. */
    double endX(int chord) {
        return points.x(chord);
    }

    double endY(int chord) {
        return points.y(chord);
    }

    /** A point of a chord, at a share of the way from its start. */
    Point at(int chord, double share) {
        double x = startX(chord);
        double y = startY(chord);
        return new Point(x + (endX(chord) - x) * share, y + (endY(chord) - y) * share);
    }

    /** How far the start of a chord lies to the left of a straight line, times the length of the line's vector. */
    double startBeside(int chord, Point on, Point way) {
        return way.x() * (startY(chord) - on.y()) - way.y() * (startX(chord) - on.x());
    }

    /** How far the end of a chord lies to the left of a straight line, times the length of the line's vector. */
    double endBeside(int chord, Point on, Point way) {
        return way.x() * (endY(chord) - on.y()) - way.y() * (endX(chord) - on.x());
    }

    /** The next chord that comes onto a straight line, however far. */
    int nextOn(int chord, Point on, Point way) {
        return nextOn(chord, on, way, Double.POSITIVE_INFINITY);
    }

    /**
     * The next chord that comes onto a straight line, or nearer to it than {@link #NEAR} times the length of the line's vector. What lies further than a distance from a point of it along x or y may be passed over.
     *
     * @return the number of chords if there is none
     */
    int nextOn(int chord, Point on, Point way, double within) {
        int i = chord;
        while (i < points.size()) {
            int end = to(i / STRETCH);
            if (!isNear(i / STRETCH, on, within) || isBeside(i / STRETCH, on, way)) {
                i = end;
            }
            double last = i < end ? startBeside(i, on, way) : 0;
            for (; i < end; i++) {
                double next = endBeside(i, on, way);
                if (!(last > NEAR && next > NEAR || last < -NEAR && next < -NEAR)) {
                    return i;
                }
                last = next;
            }
        }
        return i;
    }

    /** Whether all of a stretch lies on one side of a straight line for certain, by more than 0.01 µm: its middle lies further away than its corners reach. */
    boolean isBeside(int stretch, Point on, Point way) {
        double[] boxes = boxes();
        double left = boxes[4 * stretch] - on.x();
        double bottom = boxes[4 * stretch + 1] - on.y();
        double right = boxes[4 * stretch + 2] - on.x();
        double top = boxes[4 * stretch + 3] - on.y();
        double reach = Math.abs(way.x()) * (top - bottom + 2 * ASIDE) + Math.abs(way.y()) * (right - left + 2 * ASIDE);
        return Math.abs(way.x() * (top + bottom) - way.y() * (left + right)) > reach;
    }

    /** Whether some of a stretch may lie between two verticals, or on one of them. */
    boolean isBetween(int stretch, double fromX, double toX) {
        double[] boxes = boxes();
        return boxes[4 * stretch + 2] >= fromX && boxes[4 * stretch] <= toX;
    }

    /** The lower and the upper end of the longest part of a vertical that lies within; the vertical must cross the line. */
    double[] longestWithin(double x) {
        double[] heights = crossings(x);
        double low = heights[0];
        double high = heights[1];
        for (int i = 2; i + 1 < heights.length; i += 2) {
            if (heights[i + 1] - heights[i] > high - low) {
                low = heights[i];
                high = heights[i + 1];
            }
        }
        return new double[] {low, high};
    }

    /** How high the line crosses a vertical, from below; an even number of times. */
    private double[] crossings(double x) {
        double[] heights = new double[4];
        int count = 0;
        Point on = new Point(x, 0);
        for (int i = nextOn(0, on, UP); i < chords(); i = nextOn(i + 1, on, UP)) {
            double from = startX(i);
            double to = endX(i);
            if ((from <= x) != (to <= x)) {
                heights = count == heights.length ? Arrays.copyOf(heights, 2 * count) : heights;
                heights[count++] = startY(i) + (endY(i) - startY(i)) * (x - from) / (to - from);
            }
        }
        Arrays.sort(heights, 0, count);
        return Arrays.copyOf(heights, count);
    }

    /** Whether some of a stretch may come nearer to a point than a distance along x and y, mm. */
    private boolean isNear(int stretch, Point point, double within) {
        double[] boxes = boxes();
        return point.x() >= boxes[4 * stretch] - within
                && point.x() <= boxes[4 * stretch + 2] + within
                && point.y() >= boxes[4 * stretch + 1] - within
                && point.y() <= boxes[4 * stretch + 3] + within;
    }

    /** Whether the line passes a point within a distance, mm. */
    boolean passes(Point point, double within) {
        for (int stretch = 0; stretch < stretches(); stretch++) {
            if (isNear(stretch, point, within)) {
                for (int i = from(stretch); i < to(stretch); i++) {
                    if (Outline.near(startX(i), startY(i), endX(i), endY(i), point.x(), point.y(), within)) {
                        return true;
                    }
                }
            }
        }
        return false;
    }

    /** Whether a point lies within: the ray to the right crosses the line an odd number of times. Right but for rounding on the line itself. */
    boolean contains(Point point) {
        double[] boxes = boxes();
        boolean inside = false;
        for (int stretch = 0; stretch < stretches(); stretch++) {
            if (boxes[4 * stretch + 1] <= point.y()
                    && boxes[4 * stretch + 3] > point.y()
                    && boxes[4 * stretch + 2] > point.x() - ASIDE) {
                for (int i = from(stretch); i < to(stretch); i++) {
                    inside ^= Outline.isCrossed(startX(i), startY(i), endX(i), endY(i), point);
                }
            }
        }
        return inside;
    }

    /** Whether any of the line comes into a box. */
    boolean meets(Box box) {
        double[] boxes = boxes();
        for (int stretch = 0; stretch < stretches(); stretch++) {
            if (boxes[4 * stretch] <= box.right()
                    && boxes[4 * stretch + 2] >= box.left()
                    && boxes[4 * stretch + 1] <= box.top()
                    && boxes[4 * stretch + 3] >= box.bottom()) {
                for (int i = from(stretch); i < to(stretch); i++) {
                    if (box.meets(startX(i), startY(i), endX(i), endY(i))) {
                        return true;
                    }
                }
            }
        }
        return false;
    }

    @Override
    public boolean equals(@Nullable Object other) {
        return other instanceof Ring ring && points.equals(ring.points);
    }

    @Override
    public int hashCode() {
        return points.hashCode();
    }
}
