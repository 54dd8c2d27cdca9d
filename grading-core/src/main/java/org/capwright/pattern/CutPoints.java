package org.capwright.pattern;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.List;
import org.capwright.geometry.Point;

/** The points of a cut line as they are put together from parallels and the corners between them. Corners stay; beside them no other point does. */
final class CutPoints {

    /** Points nearer than this are one, mm. */
    private static final double SAME = 1e-9;

    private Point[] points;
    private final BitSet turning;
    private int first;
    private int end;

    CutPoints(int room) {
        points = new Point[room];
        turning = new BitSet(room);
    }

    /** Goes on to a point of a parallel, unless the line is there already. */
    void add(Point point) {
        if (end == 0 || points[end - 1].distanceTo(point) > SAME) {
            points = end == points.length ? Arrays.copyOf(points, 2 * end + 1) : points;
            points[end++] = point;
        }
    }

    /** Turns at a corner, which takes the place of points of a parallel that are there already. */
    void turn(Point corner) {
        while (end > 0 && !turning.get(end - 1) && points[end - 1].distanceTo(corner) <= SAME) {
            end--;
        }
        add(corner);
        turning.set(end - 1);
    }

    /** Closes the line: where it ends where it began, one of these points goes, not the corner. */
    private void close() {
        while (end - first > 1 && points[first].distanceTo(points[end - 1]) <= SAME) {
            boolean corner = turning.get(first) || turning.get(end - 1) && points[first].equals(points[end - 1]);
            if (corner) {
                turning.set(first);
                turning.clear(--end);
            } else {
                first++;
            }
        }
    }

    /** The closed line. Points that a straight part of it only passes through are left out: the ends of parallels that run on to a corner. */
    CutLine closed() {
        close();
        Point[] kept = new Point[end - first];
        List<Integer> corners = new ArrayList<>(turning.cardinality());
        int count = 0;
        for (int i = first; i < end; i++) {
            Point point = points[i];
            Point before = points[i == first ? end - 1 : i - 1];
            Point after = points[i + 1 == end ? first : i + 1];
            if (turning.get(i)) {
                corners.add(count);
                kept[count++] = point;
            } else if (!passes(before, point, after)) {
                kept[count++] = point;
            }
        }
        return new CutLine(List.of(Arrays.copyOf(kept, count)), List.copyOf(corners));
    }

    private static boolean passes(Point before, Point point, Point after) {
        double fromX = point.x() - before.x();
        double fromY = point.y() - before.y();
        double toX = after.x() - point.x();
        double toY = after.y() - point.y();
        return Math.abs(fromX * toY - fromY * toX) <= SAME * Math.min(before.distanceTo(point), point.distanceTo(after))
                && fromX * toX + fromY * toY > 0;
    }
}
