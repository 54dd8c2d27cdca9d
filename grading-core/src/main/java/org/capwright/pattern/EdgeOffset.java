package org.capwright.pattern;

import java.util.ArrayList;
import java.util.List;
import org.capwright.geometry.Cubic;
import org.capwright.geometry.Point;

/**
 * The line that runs beside a smooth seam line at the distance of its allowance, outside the piece (to the right of the sense of travel), as points. Every point stands
 * exactly square off the seam line; the chords keep within {@link Piece#FLATTENING} of the true parallel.
 */
final class EdgeOffset {

    private static final int DEEPEST = 10;

    /** Places within a span at which its chord is tried, the middle first, where it is mostly furthest. */
    private static final double[] TRIED = {0.5, 0.25, 0.75};

    private EdgeOffset() {}

    /** The parallel of a smooth run of segments; two or more points, no two neighbours equal. */
    static List<Point> of(List<Cubic> segments, double allowance) {
        List<Point> points = new ArrayList<>();
        points.add(at(segments.get(0), 0, allowance));
        for (Cubic segment : segments) {
            int spans = segment.chordsWithin(Piece.FLATTENING);
            boolean refined = allowance > 0 && !segment.isStraight();
            Point from = at(segment, 0, allowance);
            for (int i = 0; i < spans; i++) {
                double low = (double) i / spans;
                double high = (double) (i + 1) / spans;
                Point to = at(segment, high, allowance);
                if (refined) {
                    refine(segment, allowance, low, from, high, to, points, 0);
                }
                add(points, to);
                from = to;
            }
        }
        return points;
    }

    private static void refine(
            Cubic segment,
            double allowance,
            double low,
            Point from,
            double high,
            Point to,
            List<Point> points,
            int depth) {
        if (depth == DEEPEST || within(segment, allowance, low, from, high, to)) {
            return;
        }
        double middle = (low + high) / 2;
        Point between = at(segment, middle, allowance);
        refine(segment, allowance, low, from, middle, between, points, depth + 1);
        add(points, between);
        refine(segment, allowance, middle, between, high, to, points, depth + 1);
    }

    private static boolean within(Cubic segment, double allowance, double low, Point from, double high, Point to) {
        double dx = to.x() - from.x();
        double dy = to.y() - from.y();
        double norm = Math.sqrt(dx * dx + dy * dy);
        double x = norm == 0 ? dx : dx / norm;
        double y = norm == 0 ? dy : dy / norm;
        for (double place : TRIED) {
            Point tried = segment.offsetAt(low + (high - low) * place, allowance);
            if (Math.abs(x * (tried.y() - from.y()) - y * (tried.x() - from.x())) > 0.8 * Piece.FLATTENING) {
                return false;
            }
        }
        return true;
    }

    private static void add(List<Point> points, Point point) {
        if (!point.equals(points.get(points.size() - 1))) {
            points.add(point);
        }
    }

    private static Point at(Cubic segment, double t, double allowance) {
        return allowance == 0 ? segment.pointAt(t) : segment.offsetAt(t, allowance);
    }

    /** The point square off a line to the right. */
    static Point beside(Point point, Point tangent, double distance) {
        return new Point(point.x() + distance * tangent.y(), point.y() - distance * tangent.x());
    }
}
