package org.capwright.pattern;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.stream.Stream;
import org.capwright.geometry.Curve;
import org.capwright.geometry.Point;

/** The words front and back on a whole piece, each along a short line that points to its side, so that a left piece is not taken for a right one. */
final class HalfWords {

    static final String FRONT = "front";
    static final String BACK = "back";

    /** Where the lines begin, as shares of the width of the half: the first place with room, else the one with most. */
    private static final double[] FROM = {0.42, 0.3, 0.2, 0.1, 0.55, 0.65};

    /** Their length, as a share of it. */
    private static final double LENGTH = 0.2;

    /** The words stand above their lines, and reach up to here, mm. */
    static final double WORD = 8;

    /** Height that is room enough, mm. */
    private static final double ROOM = 15;

    /** Share of the height of the piece below the lines. */
    private static final double HEIGHT = 0.22;

    /** Distance kept from lines across the piece, mm. */
    private static final double CLEAR = 7;

    private HalfWords() {}

    /** Two lines inside a net line; none on a half, which has both sides in one. */
    static List<MarkLine> on(List<Point> net, PieceDraft draft) {
        if (draft.onFold()) {
            return List.of();
        }
        double left = net.stream().mapToDouble(Point::x).min().orElse(0);
        double right = net.stream().mapToDouble(Point::x).max().orElse(0);
        return List.of(word(FRONT, left, net, draft), word(BACK, right, net, draft));
    }

    private static MarkLine word(String name, double side, List<Point> net, PieceDraft draft) {
        double from = FROM[0];
        double[] best = free(from * side, (from + LENGTH) * side, net);
        for (int i = 1; i < FROM.length && best[1] - best[0] < ROOM; i++) {
            double[] other = free(FROM[i] * side, (FROM[i] + LENGTH) * side, net);
            if (other[1] - other[0] > best[1] - best[0]) {
                best = other;
                from = FROM[i];
            }
        }
        double y = best[0] + HEIGHT * (best[1] - best[0]);
        for (MarkLine mark : draft.marks()) {
            boolean across = mark.kind() == MarkKind.BICEP_LINE || mark.kind() == MarkKind.ELBOW_LINE;
            double line = mark.line().start().y();
            if (across && Math.abs(line - y) < CLEAR) {
                y = line + (y > line ? CLEAR : -CLEAR);
            }
        }
        return new MarkLine(
                MarkKind.HALF, name, Curve.line(new Point(from * side, y), new Point((from + LENGTH) * side, y)));
    }

    /** Lowest and highest place of the most that is free between two verticals. */
    private static double[] free(double from, double to, List<Point> net) {
        double[] inner = chord(from, net);
        double[] outer = chord(to, net);
        double low = Math.max(inner[0], outer[0]);
        double high = Math.min(inner[1], outer[1]);
        // Gaps of interfacing that is cut away come down between the ends: of the heights between their corners the
        // most is taken.
        double[] heights = Stream.concat(
                        Stream.of(low, high),
                        net.stream()
                                .filter(corner -> (corner.x() - from) * (corner.x() - to) < 0)
                                .map(Point::y))
                .filter(height -> height >= low && height <= high)
                .mapToDouble(Double::doubleValue)
                .sorted()
                .toArray();
        double bottom = low;
        double top = low;
        for (int i = 1; i < heights.length; i++) {
            if (heights[i] - heights[i - 1] > top - bottom) {
                bottom = heights[i - 1];
                top = heights[i];
            }
        }
        return new double[] {bottom, top};
    }

    /** Lowest and highest place of the longest part of a vertical line inside. */
    private static double[] chord(double x, List<Point> net) {
        List<Double> heights = new ArrayList<>();
        for (int i = 0; i < net.size(); i++) {
            Point from = net.get(i);
            Point to = net.get((i + 1) % net.size());
            if (from.x() <= x != to.x() <= x) {
                heights.add(from.y() + (to.y() - from.y()) * (x - from.x()) / (to.x() - from.x()));
            }
        }
        Collections.sort(heights);
        double[] longest = {heights.get(0), heights.get(1)};
        for (int i = 2; i + 1 < heights.size(); i += 2) {
            if (heights.get(i + 1) - heights.get(i) > longest[1] - longest[0]) {
                longest = new double[] {heights.get(i), heights.get(i + 1)};
            }
        }
        return longest;
    }
}
