package org.capwright.draft.pleat;

import java.util.ArrayList;
import java.util.List;
import org.capwright.geometry.Cubic;
import org.capwright.geometry.Curve;
import org.capwright.geometry.Point;

/** Segments put end to end. Moved pieces meet but for rounding; each is made to start exactly where the one before ends. */
final class Chain {

    /** Moved ends may be apart by rounding only, mm. */
    private static final double ROUNDING = 1e-6;

    private final List<Cubic> segments = new ArrayList<>();

    void add(Cubic segment) {
        if (segments.isEmpty()) {
            segments.add(segment);
            return;
        }
        Point end = segments.get(segments.size() - 1).end();
        if (!(end.distanceTo(segment.start()) <= ROUNDING)) {
            throw new IllegalStateException("pieces of an edge do not meet: " + end + " and " + segment.start());
        }
        segments.add(
                end.equals(segment.start())
                        ? segment
                        : new Cubic(end, segment.control1(), segment.control2(), segment.end()));
    }

    void addAll(List<Cubic> more) {
        for (int i = 0; i < more.size(); i++) {
            add(more.get(i));
        }
    }

    /** Lets a chain that has nothing yet start exactly at a point where it would start but for rounding. */
    void startAt(Point start, Cubic first) {
        add(segments.isEmpty() ? new Cubic(start, first.control1(), first.control2(), first.end()) : first);
    }

    /** Lets the last segment end exactly at a point where it ends but for rounding. */
    void endAt(Point end) {
        int last = segments.size() - 1;
        Cubic segment = segments.get(last);
        if (!(segment.end().distanceTo(end) <= ROUNDING)) {
            throw new IllegalStateException("an edge does not end at its mark: " + segment.end() + " and " + end);
        }
        segments.set(last, new Cubic(segment.start(), segment.control1(), segment.control2(), end));
    }

    /** What has been put together so far. */
    List<Cubic> segments() {
        return segments;
    }

    Curve curve() {
        return Curve.of(segments);
    }
}
