package org.capwright.pattern;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.function.Predicate;
import java.util.stream.IntStream;
import org.capwright.geometry.Point;
import org.capwright.geometry.Points;

/**
 * Takes the needles out of a cut line, as they come where a wide allowance meets a short or hollow edge: no knife follows them and no hand sews them. Cloth is only added, so that no allowance gets narrower: a
 * point that stands out is made broad by cutting straight across the hollow beside it, a slit ends square as soon as it is as wide as the allowance, or 1 mm. Common practice, no source.
 */
final class Needles {

    /** What stands out is at least this wide, degrees. */
    private static final double POINT = 20;

    /** A slit is at least this wide, degrees. */
    private static final double SLIT = 8;

    /** A slit ends this wide where the allowance is not narrower, mm. */
    private static final double END = 1;

    /** As many points of a hollow are cut across at most. */
    private static final int ACROSS = 200;

    private List<Point> points;
    private List<Boolean> corners;
    private final Predicate<Point> kept;
    private final double end;

    private Needles(CutLine line, double allowance, Predicate<Point> kept) {
        this.points = new ArrayList<>(line.points());
        this.kept = kept;
        this.end = Math.max(CutLine.WIDTH, Math.min(END, allowance));
        this.corners = new ArrayList<>(Collections.nCopies(line.points().size(), false));
        line.corners().forEach(corner -> this.corners.set(corner, true));
    }

    /**
     * A cut line without needles.
     *
     * @param line counter-clockwise
     * @param allowance the widest of the line, mm
     * @param kept tells of the points that stay as they are: those on a fold and the corners of what is cut on the seam line
     */
    static CutLine blunted(CutLine line, double allowance, Predicate<Point> kept) {
        return new Needles(line, allowance, kept).blunted(line);
    }

    private CutLine blunted(CutLine line) {
        List<Point> drawn = points;
        int left = points.size();
        for (int i = 0; i < points.size() && left > 0; i++) {
            if (isNeedle(points, i) && !kept.test(points.get(i)) && filled(i)) {
                left--;
                i = -1; // what is beside it has changed
            }
        }
        return points == drawn
                ? line
                : new CutLine(
                        Points.of(points),
                        IntStream.range(0, corners.size())
                                .filter(corners::get)
                                .boxed()
                                .toList());
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
        return turnsBack(back.x(), back.y(), on.x(), on.y())
                && Math.toDegrees(Math.atan2(Math.abs(back.cross(on)), back.dot(on)))
                        < (on.cross(back) > 0 ? POINT : SLIT);
    }

    /** Whether a line turns by more than a right angle, as it does almost nowhere. */
    private static boolean turnsBack(double backX, double backY, double onX, double onY) {
        return backX * onX + backY * onY > 0;
    }

    /** Fills beside a point that stands out, on the side where less is to fill; closes the end of a slit. */
    private boolean filled(int tip) {
        Point back = at(points, tip - 1).minus(points.get(tip));
        Point on = at(points, tip + 1).minus(points.get(tip));
        if (on.cross(back) <= 0) {
            return closed(tip);
        }
        int before = across(tip, -1);
        int after = across(tip, 1);
        boolean first = after == 0 || before != 0 && area(tip - before, tip) <= area(tip, tip + after);
        return first
                ? before != 0 && (replaced(tip - before, tip) || after != 0 && replaced(tip, tip + after))
                : replaced(tip, tip + after) || before != 0 && replaced(tip - before, tip);
    }

    /** Ends a slit square where it is wide enough, equally far along both of its sides; where that cannot be, straight between its neighbours. */
    private boolean closed(int tip) {
        double reached = 0;
        for (int passed = 0; passed < Math.min(ACROSS, points.size() - 3); passed++) {
            double next = Math.min(beyond(tip, -1, reached), beyond(tip, 1, reached));
            if (width(tip, next) >= end) {
                double narrow = reached;
                double wide = next;
                while (wide - narrow > CutLine.WIDTH / 100) {
                    double middle = (narrow + wide) / 2;
                    if (width(tip, middle) < end) {
                        narrow = middle;
                    } else {
                        wide = middle;
                    }
                }
                return closed(tip, wide) || replaced(tip - 1, tip + 1);
            }
            reached = next;
        }
        return replaced(tip - 1, tip + 1);
    }

    private boolean closed(int tip, double distance) {
        int back = 1;
        while (back < points.size() && reach(tip, -1, back) < distance + Outline.ONE_POINT) {
            back++;
        }
        int on = 1;
        while (on < points.size() - back && reach(tip, 1, on) < distance + Outline.ONE_POINT) {
            on++;
        }
        boolean free = IntStream.range(1 - back, on).noneMatch(i -> kept.test(at(points, tip + i)));
        return free && replaced(tip - back, tip + on, List.of(along(tip, -1, distance), along(tip, 1, distance)));
    }

    /** How far along the line another point lies, so many points away. */
    private double reach(int tip, int way, int count) {
        double reach = 0;
        for (int i = 0; i < count; i++) {
            reach += at(points, tip + way * i).distanceTo(at(points, tip + way * (i + 1)));
        }
        return reach;
    }

    /** How far along the line the next point beyond a distance lies. */
    private double beyond(int tip, int way, double distance) {
        int count = 1;
        while (count < points.size() && reach(tip, way, count) <= distance) {
            count++;
        }
        return reach(tip, way, count);
    }

    private Point along(int tip, int way, double distance) {
        int count = 1;
        while (count < points.size() && reach(tip, way, count) < distance) {
            count++;
        }
        Point to = at(points, tip + way * count);
        return to.towards(
                at(points, tip + way * (count - 1)),
                (reach(tip, way, count) - distance) / to.distanceTo(at(points, tip + way * (count - 1))));
    }

    private double width(int tip, double distance) {
        return along(tip, -1, distance).distanceTo(along(tip, 1, distance));
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
        return Math.abs(Points.of(IntStream.rangeClosed(from, to)
                        .mapToObj(i -> at(points, i))
                        .toList())
                .area());
    }

    /** Goes straight from one point to another, if the line meets itself nowhere then. */
    private boolean replaced(int from, int to) {
        return replaced(from, to, List.of());
    }

    /** Goes from one point to another by corners, if the line meets itself nowhere then; without any, both are corners. */
    private boolean replaced(int from, int to, List<Point> by) {
        int count = points.size();
        List<Point> line = new ArrayList<>(count);
        List<Boolean> turned = new ArrayList<>(count);
        for (int i = 0; i < count; i++) {
            int past = Math.floorMod(i - from, count);
            if (past == 0 || past >= to - from) {
                line.add(points.get(i));
                turned.add(corners.get(i) || by.isEmpty() && (past == 0 || past == to - from));
            }
            if (past == 0) {
                line.addAll(by);
                turned.addAll(Collections.nCopies(by.size(), true));
            }
        }
        if (line.size() < 3 || !Outline.isSimple(line)) {
            return false;
        }
        points = line;
        corners = turned;
        return true;
    }
}
