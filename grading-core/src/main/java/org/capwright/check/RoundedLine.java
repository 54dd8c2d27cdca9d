package org.capwright.check;

import java.util.ArrayList;
import java.util.List;

/**
 * Whether rounding explains a row: whether some straight line, or two that meet at a size, pass every figure within its leeway. What a line leaves open is one number: the slope of a straight one, or the
 * height at which two meet. Every two figures bound it, and there is a line where the bounds leave something (Fourier-Motzkin elimination).
 */
final class RoundedLine {

    /** Room for the last digits of a sum, mm. */
    private static final double NOTHING = 1e-6;

    /** The line is to pass between two heights at a place. */
    private record Gate(double place, double low, double high) {}

    private final List<Gate> gates = new ArrayList<>();
    private final double[] places;
    private final int from;
    private final int to;
    private final boolean isRounded;

    /**
     * A window of a row.
     *
     * @param without a position whose figure is left out; none of them leaves out nothing
     */
    RoundedLine(double[] values, double[] places, double[] leeways, int from, int to, int without) {
        this.places = places;
        this.from = from;
        this.to = to;
        boolean rounded = false;
        for (int i = from; i < to; i++) {
            rounded |= leeways[i] > 0;
            if (i != without) {
                double room = leeways[i] + NOTHING;
                gates.add(new Gate(places[i], values[i] - room, values[i] + room));
            }
        }
        this.isRounded = rounded;
    }

    /**
     * Whether there is such a line.
     *
     * @param breaks how often the rule may break, 0 or 1
     * @return false as well where nothing is rounded
     */
    boolean passes(int breaks) {
        if (!isRounded) {
            return false;
        }
        if (straight()) {
            return true;
        }
        int last = breaks == 0 || to - from < 5 ? -1 : Math.min(places.length - 3, to - 2);
        for (int knot = Math.max(2, from + 1); knot <= last; knot++) {
            if (bent(places[knot])) {
                return true;
            }
        }
        return false;
    }

    private boolean straight() {
        double least = Double.NEGATIVE_INFINITY;
        double greatest = Double.POSITIVE_INFINITY;
        for (Gate left : gates) {
            for (Gate right : gates) {
                double run = right.place - left.place;
                if (run > 0) {
                    least = Math.max(least, (right.low - left.high) / run);
                    greatest = Math.min(greatest, (right.high - left.low) / run);
                }
            }
        }
        return least <= greatest;
    }

    /** Every two gates on one side of the knot, at distances d and e from it, bound the height p there: (p - high) / d may not exceed (p - low) / e. */
    private boolean bent(double knot) {
        double least = Double.NEGATIVE_INFINITY;
        double greatest = Double.POSITIVE_INFINITY;
        for (Gate one : gates) {
            if (one.place == knot) {
                least = Math.max(least, one.low);
                greatest = Math.min(greatest, one.high);
            }
            for (Gate other : gates) {
                double d = Math.abs(one.place - knot);
                double e = Math.abs(other.place - knot);
                boolean sameSide = (one.place - knot) * (other.place - knot) > 0;
                if (sameSide && e > d) {
                    greatest = Math.min(greatest, (one.high * e - other.low * d) / (e - d));
                } else if (sameSide && e < d) {
                    least = Math.max(least, (other.low * d - one.high * e) / (d - e));
                }
            }
        }
        return least <= greatest;
    }
}
