package org.capwright.pattern;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import org.capwright.geometry.Point;
import org.capwright.geometry.Trace;

/** The points of a cut line as they are put together from parallels and the corners between them. Corners stay; beside them no other point does. */
final class CutPoints {

    /** Points nearer than this are one, mm. */
    private static final double SAME = 1e-9;

    private final Trace line;
    private final BitSet turning;
    private int first;

    CutPoints(int room) {
        line = new Trace(room);
        turning = new BitSet(room);
    }

    /** Goes on to a point of a parallel, unless the line is there already. */
    void add(double x, double y) {
        if (line.size() == 0 || !isSame(line.size() - 1, x, y)) {
            line.add(x, y);
        }
    }

    /** Turns at a corner, which takes the place of points of a parallel that are there already. */
    void turn(Point corner) {
        while (line.size() > 0 && !turning.get(line.size() - 1) && isSame(line.size() - 1, corner.x(), corner.y())) {
            line.cutBack(line.size() - 1);
        }
        add(corner.x(), corner.y());
        turning.set(line.size() - 1);
    }

    private boolean isSame(int place, double x, double y) {
        double dx = line.x(place) - x;
        double dy = line.y(place) - y;
        return dx * dx + dy * dy <= SAME * SAME;
    }

    /** Closes the line: where it ends where it began, one of these points goes, not the corner. */
    private void close() {
        int last = line.size() - 1;
        while (last > first && isSame(last, line.x(first), line.y(first))) {
            boolean equal = line.x(first) == line.x(last) && line.y(first) == line.y(last);
            if (turning.get(first) || turning.get(last) && equal) {
                turning.set(first);
                turning.clear(last--);
            } else {
                first++;
            }
        }
        line.cutBack(last + 1);
    }

    /** The closed line. Points that a straight part of it only passes through are left out: the ends of parallels that run on to a corner. */
    CutLine closed() {
        close();
        List<Integer> corners = new ArrayList<>(turning.cardinality());
        int end = line.size();
        int count = 0;
        double beforeX = end == 0 ? 0 : line.x(end - 1);
        double beforeY = end == 0 ? 0 : line.y(end - 1);
        double firstX = end == 0 ? 0 : line.x(first);
        double firstY = end == 0 ? 0 : line.y(first);
        for (int i = first; i < end; i++) {
            double x = line.x(i);
            double y = line.y(i);
            double afterX = i + 1 == end ? firstX : line.x(i + 1);
            double afterY = i + 1 == end ? firstY : line.y(i + 1);
            boolean corner = turning.get(i);
            if (corner) {
                corners.add(count);
            }
            if (corner || !passes(x - beforeX, y - beforeY, afterX - x, afterY - y)) {
                line.set(count++, x, y);
            }
            beforeX = x;
            beforeY = y;
        }
        line.cutBack(count);
        return new CutLine(line.points(), List.copyOf(corners));
    }

    private static boolean passes(double fromX, double fromY, double toX, double toY) {
        double beside = fromX * toY - fromY * toX;
        double from = fromX * fromX + fromY * fromY;
        double to = toX * toX + toY * toY;
        return beside * beside <= SAME * SAME * Math.min(from, to) && fromX * toX + fromY * toY > 0;
    }
}
