package org.capwright.draft.pleat;

import java.util.Arrays;
import org.capwright.geometry.Cubic;
import org.capwright.geometry.Curve;
import org.capwright.geometry.Isometry;
import org.capwright.geometry.Point;

/**
 * Segments put end to end, and how long each is: moved and mirrored, they keep their lengths. Moved pieces meet but for rounding; each is made to start exactly where the one before ends.
 */
final class Chain {

    /** Moved ends may be apart by rounding only, mm. */
    private static final double ROUNDING = 1e-6;

    private Cubic[] segments;
    private double[] lengths;
    private int size;

    /** A chain without segments, with room for some. */
    Chain(int room) {
        segments = new Cubic[room];
        lengths = new double[room];
    }

    /** A chain of the segments of a curve. */
    static Chain of(Curve curve) {
        Chain chain = new Chain(curve.segments().size());
        for (int i = 0; i < chain.segments.length; i++) {
            chain.put(curve.segments().get(i), curve.lengthOf(i));
        }
        return chain;
    }

    boolean isEmpty() {
        return size == 0;
    }

    int size() {
        return size;
    }

    Cubic segment(int number) {
        return segments[number];
    }

    double length(int number) {
        return lengths[number];
    }

    Cubic last() {
        return segments[size - 1];
    }

    private void put(Cubic segment, double length) {
        if (size == segments.length) {
            segments = Arrays.copyOf(segments, 2 * size + 1);
            lengths = Arrays.copyOf(lengths, segments.length);
        }
        segments[size] = segment;
        lengths[size++] = length;
    }

    /** Goes on with the first segments of another chain, or begins with them. */
    void addAll(Chain more, int count) {
        for (int i = 0; i < count; i++) {
            Cubic next = more.segments[i];
            Point start = size == 0
                    ? next.start()
                    : startOf(next.start().x(), next.start().y());
            put(
                    start.equals(next.start()) ? next : new Cubic(start, next.control1(), next.control2(), next.end()),
                    more.lengths[i]);
        }
    }

    /** Goes on with the mirror image about x = 0 of its own first segments, the last of them first. */
    void addImage(int count) {
        Point image = segments[count - 1].end();
        Point joint = startOf(0.0 - image.x(), image.y());
        for (int i = count - 1; i >= 0; i--) {
            put(segments[i].mirroredBack(joint), lengths[i]);
            joint = last().end();
        }
    }

    /** Goes on with a segment laid by a motion, or begins with it, exactly at a point where it starts but for rounding. */
    void add(Point begin, Cubic segment, double length, Isometry motion) {
        Point from = segment.start();
        put(
                new Cubic(
                        size == 0 ? begin : startOf(motion.x(from), motion.y(from)),
                        motion.of(segment.control1()),
                        motion.of(segment.control2()),
                        motion.of(segment.end())),
                length);
    }

    /** Where a segment starts that starts there but for rounding. */
    private Point startOf(double x, double y) {
        Point end = last().end();
        if (!(Math.abs(end.x() - x) <= ROUNDING && Math.abs(end.y() - y) <= ROUNDING)) {
            throw new IllegalStateException("pieces of an edge do not meet: " + end + " and " + new Point(x, y));
        }
        return end;
    }

    /** Lets the last segment end exactly at a point where it ends but for rounding. */
    void endAt(Point end) {
        Cubic segment = last();
        if (!(segment.end().distanceTo(end) <= ROUNDING)) {
            throw new IllegalStateException("an edge does not end at its mark: " + segment.end() + " and " + end);
        }
        segments[size - 1] = new Cubic(segment.start(), segment.control1(), segment.control2(), end);
    }

    /** The mirror image about x = 0, in order of travel. */
    Chain mirrored() {
        Chain image = new Chain(size);
        Point joint = size == 0 ? Point.ORIGIN : last().end().mirrored();
        for (int i = size - 1; i >= 0; i--) {
            image.put(segments[i].mirroredBack(joint), lengths[i]);
            joint = image.last().end();
        }
        return image;
    }

    Curve curve() {
        return Curve.of(Arrays.asList(Arrays.copyOf(segments, size)), lengths);
    }
}
