package org.capwright.pattern;

import java.util.Arrays;
import java.util.List;
import org.capwright.geometry.Box;
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
    static List<MarkLine> on(Ring net, PieceDraft draft) {
        if (draft.onFold()) {
            return List.of();
        }
        Box box = net.box();
        return List.of(word(FRONT, box.left(), net, draft), word(BACK, box.right(), net, draft));
    }

    private static MarkLine word(String name, double side, Ring net, PieceDraft draft) {
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
    private static double[] free(double from, double to, Ring net) {
        double[] inner = net.longestWithin(from);
        double[] outer = net.longestWithin(to);
        double low = Math.max(inner[0], outer[0]);
        double high = Math.min(inner[1], outer[1]);
        // Gaps of interfacing that is cut away come down between the ends: of the heights between their corners the
        // most is taken.
        double[] heights = heights(from, to, low, high, net);
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

    /** The lowest, the highest, and between them those of the corners between two verticals, from below. */
    private static double[] heights(double from, double to, double low, double high, Ring net) {
        if (low > high) {
            return new double[0];
        }
        double[] heights = {low, high, 0, 0};
        int count = 2;
        for (int i = 0; i < net.points().size(); i++) {
            double x = net.endX(i);
            double y = net.endY(i);
            if ((x - from) * (x - to) < 0 && y >= low && y <= high) {
                heights = count == heights.length ? Arrays.copyOf(heights, 2 * count) : heights;
                heights[count++] = y;
            }
        }
        Arrays.sort(heights, 0, count);
        return Arrays.copyOf(heights, count);
    }
}
