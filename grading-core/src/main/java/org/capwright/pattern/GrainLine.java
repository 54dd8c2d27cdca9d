package org.capwright.pattern;

import java.util.List;
import org.capwright.geometry.Box;
import org.capwright.geometry.Curve;
import org.capwright.geometry.Point;

/** Places the grain line: parallel to the fold, a little way into the piece, clear of its edges. */
final class GrainLine {

    /** Distance from the fold as a share of the width of the half, so that it is not taken for the fold line and leaves room for the label. */
    private static final double PLACE = 0.14;

    /** Share of the way across the piece that is left free at each end. */
    private static final double INSET = 0.1;

    /** Distance from a pleat line and from a corner of the piece, mm. */
    private static final double CLEAR = 3;

    /** Share of its length that a grain line keeps, whatever it crosses. */
    private static final double LEAST = 0.3;

    private GrainLine() {}

    /** A grain line inside a net line, on the front half of a whole piece. */
    static MarkLine in(Ring net, PieceDraft draft, List<MarkLine> marks) {
        Box box = net.box();
        double x = PLACE * (draft.onFold() ? box.right() : box.left());
        double[] ends = net.longestWithin(x);
        double inset = INSET * (ends[1] - ends[0]);
        double[] clear = clearOfCorners(net, x, ends[0] + inset, ends[1] - inset);
        double end = belowPleats(x, clear[0], clear[1], marks);
        return new MarkLine(MarkKind.GRAIN, "grain line", Curve.line(new Point(x, clear[0]), new Point(x, end)));
    }

    /** The part of a grain line that no corner of the piece comes near, as those of interfacing that is cut away do. */
    private static double[] clearOfCorners(Ring net, double x, double from, double to) {
        double middle = (from + to) / 2;
        double bottom = from;
        double top = to;
        for (int stretch = 0; stretch < net.stretches(); stretch++) {
            if (!net.isBetween(stretch, x - CLEAR, x + CLEAR)) {
                continue;
            }
            for (int i = net.from(stretch); i < net.to(stretch); i++) {
                double y = net.endY(i);
                if (Math.abs(net.endX(i) - x) < CLEAR) {
                    top = y > middle ? Math.min(top, y - CLEAR) : top;
                    bottom = y > middle ? bottom : Math.max(bottom, y + CLEAR);
                }
            }
        }
        return new double[] {Math.min(bottom, middle), Math.max(top, middle)};
    }

    /** Ends the grain line under the lowest pleat line that it would cross, if enough of it remains to lay the piece by. */
    private static double belowPleats(double x, double from, double to, List<MarkLine> marks) {
        double end = to;
        for (MarkLine mark : marks) {
            Point start = mark.line().start();
            Point stop = mark.line().end();
            boolean pleat = mark.kind() == MarkKind.PLEAT_FOLD || mark.kind() == MarkKind.PLEAT_PLACEMENT;
            if (pleat && Math.min(start.x(), stop.x()) - CLEAR < x && Math.max(start.x(), stop.x()) + CLEAR > x) {
                double lowest = Math.min(start.y(), stop.y()) - CLEAR;
                if (lowest - from > LEAST * (to - from)) {
                    end = Math.min(end, lowest);
                }
            }
        }
        return end;
    }
}
