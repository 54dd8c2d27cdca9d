package org.capwright.geometry;

import java.util.List;

/** How long a curve is up to the end of each of its segments. Immutable, so that it is safely shared among threads however it reaches them. */
final class ArcLengths implements Measuring {

    /**
     * A distance this near to the end of a segment is that end, mm: of the crumb between them no direction could be told, and at a corner it would hang on the last digits which way the curve runs there.
     * Lengths are right to less.
     */
    static final double AT_END = 4e-10;

    private final double[] ends;

    private ArcLengths(double... ends) {
        this.ends = ends;
    }

    /** Measures segments. */
    static ArcLengths of(List<Cubic> segments) {
        double[] ends = new double[segments.size()];
        double sum = 0;
        for (int i = 0; i < ends.length; i++) {
            sum += segments.get(i).length();
            ends[i] = sum;
        }
        return new ArcLengths(ends);
    }

    /** Adds up the lengths of the first so many segments. */
    static ArcLengths summed(double[] lengths, int count) {
        double[] ends = new double[count];
        double sum = 0;
        for (int i = 0; i < count; i++) {
            sum += lengths[i];
            ends[i] = sum;
        }
        return new ArcLengths(ends);
    }

    @Override
    public ArcLengths lengths() {
        return this;
    }

    double total() {
        return ends[ends.length - 1];
    }

    double before(int segment) {
        return segment == 0 ? 0 : ends[segment - 1];
    }

    double after(int segment) {
        return ends[segment];
    }

    /** The first segment that does not end before a distance, or the last one. */
    int segmentAt(double distance) {
        int low = 0;
        int high = ends.length - 1;
        while (low < high) {
            int middle = (low + high) >>> 1;
            if (ends[middle] <= distance - AT_END) {
                low = middle + 1;
            } else {
                high = middle;
            }
        }
        return low;
    }

    /** Those of the part between two arc lengths, which has these segments, first and last perhaps cut short. */
    ArcLengths part(int first, int last, double from, double to) {
        double[] part = new double[last - first + 1];
        for (int i = 0; i < part.length; i++) {
            part[i] = Math.min(to, ends[first + i]) - Math.max(0, from);
        }
        return new ArcLengths(part);
    }

    /** Those of the curve run through from its end. */
    ArcLengths reversed() {
        double[] back = new double[ends.length];
        for (int i = 0; i + 1 < back.length; i++) {
            back[i] = total() - ends[ends.length - 2 - i];
        }
        back[back.length - 1] = total();
        return new ArcLengths(back);
    }

    /** Those of a curve that another continues. */
    ArcLengths joinedTo(ArcLengths next) {
        double[] all = new double[ends.length + next.ends.length];
        for (int i = 0; i < all.length; i++) {
            all[i] = i < ends.length ? ends[i] : total() + next.ends[i - ends.length];
        }
        return new ArcLengths(all);
    }
}
