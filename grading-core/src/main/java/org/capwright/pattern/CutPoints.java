package org.capwright.pattern;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import org.capwright.geometry.Point;
import org.capwright.geometry.PointsBuilder;

/** The points of a cut line as they are put together from parallels and the corners between them. Corners stay; beside them no other point does. */
final class CutPoints {

    /** Points nearer than this are one, mm. */
    private static final double SAME = 1e-9;

    private final PointsBuilder line;
    private final BitSet turning;
    private int first;

    CutPoints(int room) {
        line = new PointsBuilder(room);
        turning = new BitSet(room);
    }

    /** Goes on along what remains of a parallel, but for points where the line is already. */
    void add(SeamRun run) {
        int from = run.first;
        while (from <= run.last && isThere(run.parallels.x(from), run.parallels.y(from))) {
            from++;
        }
        if (from <= run.last) {
            line.addAll(run.parallels, from, run.last + 1);
        }
    }

    /** Turns at a corner, which takes the place of points of a parallel that are there already. */
    void turn(Point corner) {
        while (line.size() > 0 && !turning.get(line.size() - 1) && isSame(line.size() - 1, corner.x(), corner.y())) {
            line.cutBack(line.size() - 1);
        }
        if (!isThere(corner.x(), corner.y())) {
            line.add(corner);
        }
        turning.set(line.size() - 1);
    }

    private boolean isThere(double x, double y) {
        return line.size() > 0 && isSame(line.size() - 1, x, y);
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
        double x = end == 0 ? 0 : line.x(end - 1);
        double y = end == 0 ? 0 : line.y(end - 1);
        double nextX = end == 0 ? 0 : line.x(first);
        double nextY = end == 0 ? 0 : line.y(first);
        double firstX = nextX;
        double firstY = nextY;
        double toX = nextX - x;
        double toY = nextY - y;
        double to = toX * toX + toY * toY;
        int corner = turning.nextSetBit(first);
        for (int i = first; i < end; i++) {
            double fromX = toX;
            double fromY = toY;
            double from = to;
            x = nextX;
            y = nextY;
            nextX = i + 1 == end ? firstX : line.x(i + 1);
            nextY = i + 1 == end ? firstY : line.y(i + 1);
            toX = nextX - x;
            toY = nextY - y;
            to = toX * toX + toY * toY;
            double beside = fromX * toY - fromY * toX;
            if (i == corner) {
                corner = turning.nextSetBit(i + 1);
                corners.add(count);
                line.set(count++, x, y);
            } else if (beside * beside > SAME * SAME * from
                    || beside * beside > SAME * SAME * to
                    || fromX * toX + fromY * toY <= 0) {
                line.set(count++, x, y);
            }
        }
        line.cutBack(count);
        return new CutLine(line.points(), List.copyOf(corners));
    }
}
