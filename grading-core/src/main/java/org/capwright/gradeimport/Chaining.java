package org.capwright.gradeimport;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.IntStream;
import org.capwright.exchange.dxf.DrawnLine;
import org.capwright.geometry.Point;

/**
 * Joins lines of one layer end to end into closed outlines. Ends that nearly meet are one node; loose ends are taken away; what is left is walked round on the outside, so that lines
 * drawn across a piece do not lead astray.
 */
final class Chaining {

    /** Ends nearer than this meet, mm. */
    static final double MEET = 0.05;

    /** The two ends of a chain nearer than this are joined and told of, mm. */
    static final double GAP = 1;

    /** Sine of the least angle at which two edges make a corner. */
    private static final double LEAST_TURN = 0.1;

    private static final int MOST_AT_NODE = 64;

    /** More pairs of a loose end and another are not compared. */
    private static final int MOST_PAIRS = 20_000_000;

    /** An outline, and how far its two ends were apart. */
    record Closed(List<Point> points, int line, double gap) {}

    /** A chain that is not closed. */
    record Open(List<Point> points, int line) {}

    private final List<DrawnLine> lines;
    private final int[] startNode;
    private final int[] endNode;
    private final List<List<Integer>> atNode = new ArrayList<>();
    private final boolean[] gone;
    private final List<Point> places = new ArrayList<>();
    private double widest;
    private int[] left = new int[0];
    private final List<Closed> closed = new ArrayList<>();
    private final List<Open> open = new ArrayList<>();
    private final List<DrawnLine> loose = new ArrayList<>();

    private Chaining(List<DrawnLine> lines) {
        this.lines = lines;
        this.startNode = new int[lines.size()];
        this.endNode = new int[lines.size()];
        this.gone = new boolean[lines.size()];
    }

    /** Joins open lines. */
    static Chaining of(List<DrawnLine> lines) {
        Chaining chaining = new Chaining(once(lines));
        chaining.nodes();
        chaining.joinLooseEnds();
        chaining.left = chaining.atNode.stream().mapToInt(List::size).toArray();
        chaining.components();
        return chaining;
    }

    List<Closed> closed() {
        return closed;
    }

    List<Open> open() {
        return open;
    }

    /** Lines that hang on an outline by one end, in order. */
    List<DrawnLine> loose() {
        return loose;
    }

    /** Without lines that lie on one before them. */
    private static List<DrawnLine> once(List<DrawnLine> lines) {
        Set<List<Long>> seen = new HashSet<>();
        List<DrawnLine> kept = new ArrayList<>(lines.size());
        for (DrawnLine line : lines) {
            Point middle = line.points().get(line.points().size() / 2);
            boolean forward = line.start().x() < line.end().x()
                    || line.start().x() == line.end().x()
                            && line.start().y() < line.end().y();
            Point first = forward ? line.start() : line.end();
            Point last = forward ? line.end() : line.start();
            List<Long> key = new ArrayList<>();
            for (Point point : line.points().size() == 2 ? List.of(first, last) : List.of(first, middle, last)) {
                key.add(Math.round(point.x() / MEET));
                key.add(Math.round(point.y() / MEET));
            }
            if (seen.add(key)) {
                kept.add(line);
            }
        }
        return kept;
    }

    /** Joins each loose end to the nearest other end that is no farther away than a small gap. */
    private void joinLooseEnds() {
        int[] loose = IntStream.range(0, atNode.size())
                .filter(node -> atNode.get(node).size() == 1)
                .toArray();
        if ((long) loose.length * atNode.size() > MOST_PAIRS) {
            return;
        }
        for (int node : loose) {
            int nearest = atNode.get(node).size() == 1 ? nearest(node) : -1;
            if (nearest >= 0) {
                int line = atNode.get(node).get(0);
                if (startNode[line] == node) {
                    startNode[line] = nearest;
                } else {
                    endNode[line] = nearest;
                }
                atNode.get(nearest).add(line);
                atNode.get(node).clear();
                widest = Math.max(widest, places.get(node).distanceTo(places.get(nearest)));
            }
        }
    }

    /** The node nearest to a loose end, that of the other end of the same line left out; -1 if none is near. */
    private int nearest(int node) {
        int line = atNode.get(node).get(0);
        int best = -1;
        double least = GAP;
        for (int other = 0; other < places.size(); other++) {
            boolean own = other == startNode[line]
                    || other == endNode[line]
                    || atNode.get(other).isEmpty();
            double gap = own ? Double.POSITIVE_INFINITY : places.get(node).distanceTo(places.get(other));
            if (gap <= least) {
                least = gap;
                best = other;
            }
        }
        return best;
    }

    private void nodes() {
        Map<Long, List<Integer>> cells = new HashMap<>();
        for (int i = 0; i < lines.size(); i++) {
            startNode[i] = node(lines.get(i).start(), cells);
            endNode[i] = node(lines.get(i).end(), cells);
            atNode.get(startNode[i]).add(i);
            atNode.get(endNode[i]).add(i);
        }
    }

    private int node(Point point, Map<Long, List<Integer>> cells) {
        long column = (long) Math.floor(point.x() / MEET);
        long row = (long) Math.floor(point.y() / MEET);
        for (long c = column - 1; c <= column + 1; c++) {
            for (long r = row - 1; r <= row + 1; r++) {
                for (int candidate : cells.getOrDefault(c * 100_000_007L + r, List.of())) {
                    if (places.get(candidate).distanceTo(point) <= MEET) {
                        return candidate;
                    }
                }
            }
        }
        places.add(point);
        atNode.add(new ArrayList<>(2));
        cells.computeIfAbsent(column * 100_000_007L + row, k -> new ArrayList<>(1))
                .add(places.size() - 1);
        return places.size() - 1;
    }

    private void components() {
        boolean[] seen = new boolean[lines.size()];
        for (int i = 0; i < lines.size(); i++) {
            if (!seen[i]) {
                component(gather(i, seen));
            }
        }
    }

    private List<Integer> gather(int first, boolean[] seen) {
        List<Integer> found = new ArrayList<>();
        Deque<Integer> next = new ArrayDeque<>(List.of(first));
        seen[first] = true;
        while (!next.isEmpty()) {
            int line = next.remove();
            found.add(line);
            for (int node : new int[] {startNode[line], endNode[line]}) {
                List<Integer> here = atNode.get(node);
                if (here.size() <= MOST_AT_NODE) {
                    for (int other : here) {
                        if (!seen[other]) {
                            seen[other] = true;
                            next.add(other);
                        }
                    }
                }
            }
        }
        return found;
    }

    private void component(List<Integer> component) {
        List<Integer> loose = component.stream()
                .flatMap(line -> java.util.stream.Stream.of(startNode[line], endNode[line]))
                .filter(node -> atNode.get(node).size() == 1)
                .distinct()
                .toList();
        boolean path = loose.size() == 2
                && component.stream()
                        .allMatch(line -> atNode.get(startNode[line]).size() <= 2
                                && atNode.get(endNode[line]).size() <= 2
                                && startNode[line] != endNode[line]);
        if (path) {
            path(component, loose.get(0));
            return;
        }
        prune(loose);
        List<Integer> left = component.stream().filter(line -> !gone[line]).toList();
        boolean crowded = left.stream()
                .anyMatch(line -> atNode.get(startNode[line]).size() > MOST_AT_NODE
                        || atNode.get(endNode[line]).size() > MOST_AT_NODE);
        if (!left.isEmpty() && !crowded) {
            around(left);
        }
    }

    private void path(List<Integer> component, int from) {
        List<Point> points = new ArrayList<>();
        int node = from;
        int previous = -1;
        for (int step = 0; step < component.size(); step++) {
            int line = -1;
            for (int candidate : atNode.get(node)) {
                line = candidate != previous ? candidate : line;
            }
            append(points, line, startNode[line] == node);
            node = startNode[line] == node ? endNode[line] : startNode[line];
            previous = line;
        }
        double gap = points.get(0).distanceTo(points.get(points.size() - 1));
        int line = lines.get(component.get(0)).line();
        if (gap <= GAP && points.size() > 3) {
            closed.add(new Closed(points, line, Math.max(gap, widest)));
        } else {
            open.add(new Open(points, line));
        }
    }

    private void append(List<Point> points, int line, boolean forward) {
        List<Point> own = lines.get(line).points();
        Point near = forward ? own.get(0) : own.get(own.size() - 1);
        int last = points.size() - 1;
        double gap = last < 0 ? 0 : points.get(last).distanceTo(near);
        int first = last < 0 || gap > MEET ? 0 : 1;
        if (last > 0 && gap > MEET && gap <= GAP && own.size() > 1) {
            Point next = forward ? own.get(1) : own.get(own.size() - 2);
            points.set(last, corner(points.get(last - 1), points.get(last), near, next));
            first = 1;
        }
        for (int i = first; i < own.size(); i++) {
            points.add(own.get(forward ? i : own.size() - 1 - i));
        }
    }

    /** The one corner that two ends near one another are meant for: where their edges meet, or the middle between them where they meet nowhere near. */
    static Point corner(Point before, Point end, Point start, Point after) {
        Point middle = end.plus(start).times(0.5);
        Point along = end.minus(before);
        Point onward = after.minus(start);
        double turn = along.cross(onward);
        if (Math.abs(turn) <= LEAST_TURN * before.distanceTo(end) * start.distanceTo(after)) {
            return middle;
        }
        Point meeting = before.plus(along.times(start.minus(before).cross(onward) / turn));
        return meeting.distanceTo(middle) <= GAP ? meeting : middle;
    }

    /** Takes away lines with a loose end, again and again. */
    private void prune(List<Integer> loose) {
        Deque<Integer> next = new ArrayDeque<>(loose);
        while (!next.isEmpty()) {
            int node = next.remove();
            if (left[node] != 1 || atNode.get(node).size() > MOST_AT_NODE) {
                continue;
            }
            for (int line : atNode.get(node)) {
                if (!gone[line] && startNode[line] != endNode[line]) {
                    gone[line] = true;
                    this.loose.add(lines.get(line));
                    left[startNode[line]]--;
                    left[endNode[line]]--;
                    next.add(startNode[line] == node ? endNode[line] : startNode[line]);
                    break;
                }
            }
        }
    }

    /** Walks round the outside, counter-clockwise, from the line that reaches farthest to the left. */
    private void around(List<Integer> component) {
        int first = component.get(0);
        double leftmost = Double.POSITIVE_INFINITY;
        boolean forward = true;
        for (int line : component) {
            List<Point> points = lines.get(line).points();
            for (int i = 0; i < points.size(); i++) {
                if (points.get(i).x() < leftmost) {
                    leftmost = points.get(i).x();
                    first = line;
                    forward = downward(points, i);
                }
            }
        }
        List<Point> leftmostLine = lines.get(first).points();
        for (int node : new int[] {startNode[first], endNode[first]}) {
            Point end = node == startNode[first] ? leftmostLine.get(0) : leftmostLine.get(leftmostLine.size() - 1);
            if (end.x() == leftmost) {
                // Lines meet there: the outside lies to the right of the one that leaves downward most.
                double steepest = Double.POSITIVE_INFINITY;
                for (int candidate : atNode.get(node)) {
                    for (boolean leaves : new boolean[] {true, false}) {
                        Point out = direction(candidate, leaves);
                        double angle = Math.atan2(out.y(), out.x());
                        if (!gone[candidate]
                                && (leaves ? startNode[candidate] : endNode[candidate]) == node
                                && angle < steepest) {
                            steepest = angle;
                            first = candidate;
                            forward = leaves;
                        }
                    }
                }
                break;
            }
        }
        List<Point> points = new ArrayList<>();
        int line = first;
        int most = 2 * component.size();
        for (int step = 0; step < most; step++) {
            append(points, line, forward);
            int node = forward ? endNode[line] : startNode[line];
            Point in = direction(line, !forward).times(-1);
            int best = -1;
            boolean bestForward = true;
            double rightmost = Double.POSITIVE_INFINITY;
            for (int candidate : atNode.get(node)) {
                for (int way = 0; way < 2 && !gone[candidate]; way++) {
                    boolean leaves = way == 0;
                    boolean here = (leaves ? startNode[candidate] : endNode[candidate]) == node;
                    boolean back = candidate == line && leaves != forward;
                    if (here && !back) {
                        Point out = direction(candidate, leaves);
                        double turn = Math.atan2(in.cross(out), in.dot(out));
                        if (turn < rightmost) {
                            rightmost = turn;
                            best = candidate;
                            bestForward = leaves;
                        }
                    }
                }
            }
            if (best < 0) {
                return;
            }
            line = best;
            forward = bestForward;
            if (line == first) {
                break;
            }
        }
        if (line == first && points.size() > 3) {
            if (points.get(0).distanceTo(points.get(points.size() - 1)) <= MEET) {
                points.remove(points.size() - 1);
            }
            closed.add(new Closed(points, lines.get(first).line(), widest));
        }
    }

    /** Whether the outside lies to the right when a line is run through as drawn, at its leftmost point. */
    private static boolean downward(List<Point> points, int leftmost) {
        Point here = points.get(leftmost);
        if (leftmost > 0 && leftmost + 1 < points.size()) {
            Point in = here.minus(points.get(leftmost - 1));
            Point out = points.get(leftmost + 1).minus(here);
            double turn = in.cross(out);
            return turn != 0 ? turn > 0 : out.y() < 0;
        }
        Point other = leftmost > 0 ? points.get(leftmost - 1) : points.get(1);
        return leftmost > 0 ? other.y() > here.y() : other.y() < here.y();
    }

    /** Direction in which a line leaves its start, or its end when run backwards. */
    private Point direction(int line, boolean forward) {
        List<Point> points = lines.get(line).points();
        int n = points.size();
        return forward
                ? points.get(1).minus(points.get(0)).unit()
                : points.get(n - 2).minus(points.get(n - 1)).unit();
    }
}
