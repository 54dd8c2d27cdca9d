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
 * same tangent and the same curvature. w turns from falling faster to falling slower just where the cap line turns from convex to hollow, so the raised line
 * has one inflection as well, at the same place. It leans over nowhere, whatever the rise, and with rise 0 it is the cap line. From the join to the
 * underarm point it is the cap line.
 *
 * <p>w'' is piecewise linear through (0, -2 S / c), (c, 0), (e, 2 S / (1 - c)), (1, 0) with c the turn and e half way from there to the join; the conditions
 * at the join leave S = 3 / (1 + e).
 */
final class RaisedLine {

    /** The latest turn, as a share of the way to the join, that leaves room for a fair hollow before the join. */
    static final double LATEST_TURN = 0.85;

    private final double[] knots;
    private final double[] second;

    private RaisedLine(double turn) {
        double strongest = (1 + turn) / 2;
        double fall = 3 / (1 + strongest);
        knots = new double[] {0, turn, strongest, 1};
        second = new double[] {-2 * fall / turn, 0, 2 * fall / (1 - turn), 0};
    }

    /** The lift with a given turn, as a share of the way to the join. */
    static RaisedLine turningAt(double turn) {
        return new RaisedLine(turn);
    }

    /**
     * The raised line of one half.
     *
     * @param cap the cap line it starts from
     * @param rise how far the apex is raised, mm, 0 or more
     * @param join share of the guide line where it meets the cap line: above the cap line's turn / {@link #LATEST_TURN}, at most 1
     * @return from the raised apex to the underarm point
     */
    static Curve over(CapLine cap, double rise, double join) {
        if (rise == 0) {
            return cap.curve();
        }
        double reach = 4 * join;
        RaisedLine lift = turningAt(cap.turn() / join);
        double[] knots = lift.knots;
        List<Cubic> segments = new ArrayList<>(FairLine.KNOTS.length + 3);
        int next = 1;
        for (int k = 0; k + 1 < FairLine.KNOTS.length; k++) {
            double from = FairLine.KNOTS[k];
            double to = FairLine.KNOTS[k + 1];
            Cubic segment = cap.curve().segments().get(k);
            double low = from;
            while (low < to) {
                while (next < knots.length && knots[next] * reach <= low) {
                    next++;
                }
                double high = next < knots.length ? Math.min(to, knots[next] * reach) : to;
                Cubic part = segment.part((low - from) / (to - from), (high - from) / (to - from));
                segments.add(
                        low < reach
                                ? lift.lifted(part, rise, low / reach, high / reach, segments)
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

    private Cubic lifted(Cubic part, double rise, double from, double to, List<Cubic> before) {
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
    double weight(double v) {
        if (v >= 1) {
            return 0;
        }
        double sum = 1;
        for (int i = 0; i + 1 < knots.length && v > knots[i]; i++) {
            double width = knots[i + 1] - knots[i];
            double reached = Math.min(v, knots[i + 1]);
            double part = reached - knots[i];
            double atEnd = second[i] + (second[i + 1] - second[i]) * part / width;
            double area = part * (second[i] + atEnd) / 2;
            double moment = part * part * (2 * second[i] + atEnd) / 6;
            sum += moment + area * (v - reached);
        }
        return sum;
    }

    /** w' at a share of the way to the join. */
    double slope(double v) {
        if (v >= 1) {
            return 0;
        }
        double sum = 0;
        for (int i = 0; i + 1 < knots.length && v > knots[i]; i++) {
            double part = Math.min(v, knots[i + 1]) - knots[i];
            double atEnd = second[i] + (second[i + 1] - second[i]) * part / (knots[i + 1] - knots[i]);
            sum += part * (second[i] + atEnd) / 2;
        }
        return sum;
    }
}
