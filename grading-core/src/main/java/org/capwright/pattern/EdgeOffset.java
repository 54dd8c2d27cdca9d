package org.capwright.pattern;

import org.capwright.geometry.Cubic;
import org.capwright.geometry.Curve;
import org.capwright.geometry.Point;
import org.capwright.geometry.Points;
import org.capwright.geometry.Trace;

/**
 * The line that runs beside a smooth seam line at the distance of its allowance, outside the piece (to the right of the sense of travel), as points. Every point stands
 * exactly square off the seam line; the chords keep within {@link Piece#FLATTENING} of the true parallel. No two neighbouring points are equal.
 */
final class EdgeOffset {

    private static final int DEEPEST = 10;

    /** What a chord may be off where it is tried: half way along, where it is mostly furthest, and at its quarters, mm. */
    private static final double TRIED = 0.8 * Piece.FLATTENING;

    /** A segment run through slower than this, in mm, says its direction by its tangent alone. */
    private static final double STILL = 1e-12;

    private final Trace line;
    private final Cubic segment;
    private final double allowance;

    /** The control points. */
    private final double x0;

    private final double x1;
    private final double x2;
    private final double x3;
    private final double y0;
    private final double y1;
    private final double y2;
    private final double y3;

    /** Where the parallel was last asked for. */
    private double x;

    private double y;

    private EdgeOffset(Cubic segment, double allowance, Trace line) {
        this.line = line;
        this.segment = segment;
        this.allowance = allowance;
        this.x0 = segment.start().x();
        this.x1 = segment.control1().x();
        this.x2 = segment.control2().x();
        this.x3 = segment.end().x();
        this.y0 = segment.start().y();
        this.y1 = segment.control1().y();
        this.y2 = segment.control2().y();
        this.y3 = segment.end().y();
    }

    /** Begins the parallel of a smooth run of segments, of which a segment is the first. */
    static void begin(Cubic first, double allowance, Trace line) {
        line.add(allowance == 0 ? first.start() : first.offsetAt(0, allowance));
    }

    /** Goes on along a segment of a curve to its end. */
    static void goOn(Curve curve, int number, double allowance, Trace line) {
        int before = number == 0 ? 0 : curve.flattenedEnd(number - 1, Piece.FLATTENING);
        int end = curve.flattenedEnd(number, Piece.FLATTENING);
        if (allowance == 0) {
            Points flat = curve.flattened(Piece.FLATTENING);
            for (int i = before + 1; i <= end; i++) {
                add(line, flat.x(i), flat.y(i));
            }
            return;
        }
        Cubic segment = curve.segments().get(number);
        int spans = Math.max(1, end - before);
        new EdgeOffset(segment, allowance, line).goOn(spans, spans == 1 && segment.isStraight());
    }

    private void goOn(int spans, boolean straight) {
        if (straight) {
            to(1);
            add(line, x, y);
            return;
        }
        to(0);
        for (int i = 0; i < spans; i++) {
            double low = (double) i / spans;
            double high = (double) (i + 1) / spans;
            double fromX = x;
            double fromY = y;
            to(high);
            double toX = x;
            double toY = y;
            refine(low, fromX, fromY, high, toX, toY, 0);
            add(line, toX, toY);
            x = toX;
            y = toY;
        }
    }

    private void refine(double low, double fromX, double fromY, double high, double toX, double toY, int depth) {
        if (depth == DEEPEST || within(low, fromX, fromY, high, toX, toY)) {
            return;
        }
        double middle = (low + high) / 2;
        to(middle);
        double betweenX = x;
        double betweenY = y;
        refine(low, fromX, fromY, middle, betweenX, betweenY, depth + 1);
        add(line, betweenX, betweenY);
        refine(middle, betweenX, betweenY, high, toX, toY, depth + 1);
    }

    private boolean within(double low, double fromX, double fromY, double high, double toX, double toY) {
        double dx = toX - fromX;
        double dy = toY - fromY;
        double limit = TRIED * Math.sqrt(dx * dx + dy * dy);
        double step = high - low;
        return beside(low + step * 0.5, fromX, fromY, dx, dy) <= limit
                && beside(low + step * 0.25, fromX, fromY, dx, dy) <= limit
                && beside(low + step * 0.75, fromX, fromY, dx, dy) <= limit;
    }

    /** How far the parallel lies beside a chord, times the length of the chord. */
    private double beside(double t, double fromX, double fromY, double dx, double dy) {
        to(t);
        return Math.abs(dx * (y - fromY) - dy * (x - fromX));
    }

    /** Goes to the place of the parallel square off the segment at a parameter. */
    private void to(double t) {
        double u = 1 - t;
        double uu = u * u;
        double ut = 2 * u * t;
        double tt = t * t;
        double dx = 3 * (uu * (x1 - x0) + ut * (x2 - x1) + tt * (x3 - x2));
        double dy = 3 * (uu * (y1 - y0) + ut * (y2 - y1) + tt * (y3 - y2));
        double speed = Math.sqrt(dx * dx + dy * dy);
        if (!(speed > STILL) || t == 0 || t == 1) {
            Point place = segment.offsetAt(t, allowance);
            x = place.x();
            y = place.y();
            return;
        }
        double a = uu * u;
        double b = 3 * u * u * t;
        double c = 3 * u * t * t;
        double d = tt * t;
        x = a * x0 + b * x1 + c * x2 + d * x3 + allowance * (dy / speed);
        y = a * y0 + b * y1 + c * y2 + d * y3 - allowance * (dx / speed);
    }

    private static void add(Trace line, double x, double y) {
        int last = line.size() - 1;
        if (x != line.x(last) || y != line.y(last)) {
            line.add(x, y);
        }
    }

    /** The point square off a line to the right. */
    static Point beside(Point point, Point tangent, double distance) {
        return new Point(point.x() + distance * tangent.y(), point.y() - distance * tangent.x());
    }
}
