package org.capwright.draft;

import java.util.ArrayList;
import java.util.List;
import org.capwright.geometry.Cubic;
import org.capwright.geometry.Curve;
import org.capwright.geometry.Point;

/**
 * The top edge of an overlay: the cap line lifted towards the apex.
 *
 * <p>Every point of the cap line is moved straight up by rise · w, where w falls from 1 at the apex to 0 at the join. w is a cubic spline of the place
 * along the guide line with w' = 0 at the apex, so the raised line is horizontal there; and w = w' = w'' = 0 at the join, so it runs into the cap line with the
 * same tangent and the same curvature. It leans over nowhere, whatever the rise, and with rise 0 it is the cap line. From the join to the underarm
 * point it is the cap line.
 */
final class RaisedLine {

    /** Where w turns from falling faster to falling slower, and where its upward turn is strongest, as shares of the way to the join. */
    private static final double TURN = 0.6;

    private static final double STRONGEST = 0.8;

    /** With w'' piecewise linear through (0, -2 S / TURN), (TURN, 0), (STRONGEST, 2 S / (1 - TURN)), (1, 0), the end conditions leave S = 3 / (1 + STRONGEST). */
    private static final double FALL = 3 / (1 + STRONGEST);

    private static final double[] KNOTS = {0, TURN, STRONGEST, 1};
    private static final double[] SECOND = {-2 * FALL / TURN, 0, 2 * FALL / (1 - TURN), 0};

    private RaisedLine() {}

    /**
     * The raised line of one half.
     *
     * @param cap the cap line it starts from
     * @param rise how far the apex is raised, mm, 0 or more
     * @param join share of the guide line where it meets the cap line, in (0.5, 1]
     * @return from the raised apex to the underarm point
     */
    static Curve over(CapLine cap, double rise, double join) {
        if (rise == 0) {
            return cap.curve();
        }
        double reach = 4 * join;
        List<Cubic> segments = new ArrayList<>(FairLine.KNOTS.length + 3);
        int next = 1;
        for (int k = 0; k + 1 < FairLine.KNOTS.length; k++) {
            double from = FairLine.KNOTS[k];
            double to = FairLine.KNOTS[k + 1];
            Cubic segment = cap.curve().segments().get(k);
            double low = from;
            while (low < to) {
                while (next < KNOTS.length && KNOTS[next] * reach <= low) {
                    next++;
                }
                double high = next < KNOTS.length ? Math.min(to, KNOTS[next] * reach) : to;
                Cubic part = segment.part((low - from) / (to - from), (high - from) / (to - from));
                segments.add(
                        low < reach
                                ? lifted(part, rise, low / reach, high / reach, segments)
                                : startingWhere(segments, part));
                low = high;
            }
        }
        return Curve.of(segments);
    }

    private static Cubic startingWhere(List<Cubic> before, Cubic part) {
        Point start = before.get(before.size() - 1).end();
        return start.equals(part.start()) ? part : new Cubic(start, part.control1(), part.control2(), part.end());
    }

    private static Cubic lifted(Cubic part, double rise, double from, double to, List<Cubic> before) {
        double third = (to - from) / 3;
        double atStart = weight(from);
        double atEnd = weight(to);
        Point start = before.isEmpty()
                ? up(part.start(), rise * atStart)
                : before.get(before.size() - 1).end();
        return new Cubic(
                start,
                up(part.control1(), rise * (atStart + third * slope(from))),
                up(part.control2(), rise * (atEnd - third * slope(to))),
                up(part.end(), rise * atEnd));
    }

    private static Point up(Point point, double by) {
        return by == 0 ? point : new Point(point.x(), point.y() + by);
    }

    /** w at a share of the way to the join. */
    static double weight(double v) {
        if (v >= 1) {
            return 0;
        }
        double sum = 1;
        for (int i = 0; i + 1 < KNOTS.length && v > KNOTS[i]; i++) {
            double width = KNOTS[i + 1] - KNOTS[i];
            double reached = Math.min(v, KNOTS[i + 1]);
            double part = reached - KNOTS[i];
            double atEnd = SECOND[i] + (SECOND[i + 1] - SECOND[i]) * part / width;
            double area = part * (SECOND[i] + atEnd) / 2;
            double moment = part * part * (2 * SECOND[i] + atEnd) / 6;
            sum += moment + area * (v - reached);
        }
        return sum;
    }

    /** w' at a share of the way to the join. */
    static double slope(double v) {
        if (v >= 1) {
            return 0;
        }
        double sum = 0;
        for (int i = 0; i + 1 < KNOTS.length && v > KNOTS[i]; i++) {
            double part = Math.min(v, KNOTS[i + 1]) - KNOTS[i];
            double atEnd = SECOND[i] + (SECOND[i + 1] - SECOND[i]) * part / (KNOTS[i + 1] - KNOTS[i]);
            sum += part * (SECOND[i] + atEnd) / 2;
        }
        return sum;
    }
}
