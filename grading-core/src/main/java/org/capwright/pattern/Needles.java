package org.capwright.pattern;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.function.Predicate;
import java.util.stream.IntStream;
import org.capwright.geometry.Point;

/**
 * Takes the needles out of a cut line, as they come where a wide allowance meets a short or hollow edge: no knife follows them and no hand sews them. Cloth is only added, so that no allowance gets narrower: a
 * point that stands out is made broad by cutting straight across the hollow beside it, a slit is closed at its end until it is wide enough to be cut. Common practice, no source.
 */
final class Needles {

    /** What stands out is at least this wide, degrees. */
    private static final double POINT = 20;

    /** A slit is at least this wide, degrees. */
    private static final double SLIT = 8;

    /** As many points of a hollow are cut across at most. */
    private static final int ACROSS = 200;

    private final List<Point> points;
    private final List<Boolean> corners;
    private final Predicate<Point> kept;

    private Needles(CutLine line, Predicate<Point> kept) {
        this.points = new ArrayList<>(line.points());
        this.kept = kept;
        this.corners = new ArrayList<>(Collections.nCopies(line.points().size(), false));
        line.corners().forEach(corner -> corners.set(corner, true));
    }

    /**
     * A cut line without needles.
     *
     * @param line counter-clockwise
     * @param kept tells of the points that stay as they are: those on a fold and the corners of what is cut on the seam line
     */
    static CutLine blunted(CutLine line, Predicate<Point> kept) {
        List<Point> points = line.points();
        for (int i = 0; i < points.size(); i++) {
            if (isNeedle(points, i) && !kept.test(points.get(i))) {
                return new Needles(line, kept).blunted();
            }
        }
        return line;
    }

    private CutLine blunted() {
        int left = points.size();
        for (int i = 0; i < points.size() && left > 0; i++) {
            if (isNeedle(points, i) && !kept.test(points.get(i)) && filled(i)) {
                left--;
                i = -1; // what is beside it has changed
            }
        }
        return new CutLine(
                List.copyOf(points),
                IntStream.range(0, corners.size()).filter(corners::get).boxed().toList());
    }

    private static Point at(List<Point> points, int place) {
        return points.get(Math.floorMod(place, points.size()));
    }

    private static boolean isNeedle(List<Point> points, int place) {
        Point tip = points.get(place);
        return isNeedle(at(points, place - 1), tip, at(points, place + 1));
    }

    private static boolean isNeedle(Point before, Point tip, Point after) {
        Point back = before.minus(tip);
        Point on = after.minus(tip);
        double dot = back.dot(on);
        return dot > 0
                && Math.toDegrees(Math.atan2(Math.abs(back.cross(on)), dot)) < (on.cross(back) > 0 ? POINT : SLIT);
    }

    /** Fills beside a point that stands out, on the side where less is to fill; closes the end of a slit. */
    private boolean filled(int tip) {
        Point back = at(points, tip - 1).minus(points.get(tip));
        Point on = at(points, tip + 1).minus(points.get(tip));
        if (on.cross(back) <= 0) {
            return replaced(tip - 1, tip + 1);
        }
        int before = across(tip, -1);
        int after = across(tip, 1);
        boolean first = after == 0 || before != 0 && area(tip - before, tip) <= area(tip, tip + after);
        return first
                ? before != 0 && (replaced(tip - before, tip) || after != 0 && replaced(tip, tip + after))
                : replaced(tip, tip + after) || before != 0 && replaced(tip - before, tip);
    }

    /** How many points away the line from a tip to another point is first wide enough, with all between it and the cloth; 0 if there is none. */
    private int across(int tip, int way) {
        Point from = points.get(tip);
        Point other = at(points, tip - way);
        for (int count = 2; count <= Math.min(ACROSS, points.size() - 3); count++) {
            Point to = at(points, tip + way * count);
            if (kept.test(at(points, tip + way * (count - 1)))) {
                return 0;
            }
            boolean beside = true;
            for (int i = 1; i < count && beside; i++) {
                beside = way * to.minus(from).cross(at(points, tip + way * i).minus(from)) >= 0;
            }
            if (beside && !isNeedle(way > 0 ? other : to, from, way > 0 ? to : other)) {
                return count;
            }
        }
        return 0;
    }

    private double area(int from, int to) {
        return Math.abs(Untangling.area(
                IntStream.rangeClosed(from, to).mapToObj(i -> at(points, i)).toList()));
    }

    /** Goes straight from one point to another, if the line meets itself nowhere then. */
    private boolean replaced(int from, int to) {
        List<Integer> between = IntStream.range(from + 1, to)
                .map(i -> Math.floorMod(i, points.size()))
                .boxed()
                .sorted(Comparator.reverseOrder())
                .toList();
        List<Point> line = new ArrayList<>(points);
        between.forEach(i -> line.remove(i.intValue()));
        if (line.size() < 3 || !Outline.isSimple(line)) {
            return false;
        }
        corners.set(Math.floorMod(from, points.size()), true);
        corners.set(Math.floorMod(to, points.size()), true);
        between.forEach(i -> {
            points.remove(i.intValue());
            corners.remove(i.intValue());
        });
        return true;
    }
}
