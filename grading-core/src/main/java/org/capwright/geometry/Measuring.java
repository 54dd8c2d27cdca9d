package org.capwright.geometry;

import java.util.List;

/** How the arc lengths of a curve are found once somebody asks for them: of its segments, or of the curves that it was made of. */
sealed interface Measuring {

    /** The arc lengths. */
    ArcLengths lengths();

    /** Every segment is measured. */
    record Each(List<Cubic> segments) implements Measuring {
        @Override
        public ArcLengths lengths() {
            return ArcLengths.of(segments);
        }
    }

    /** It is known how long every segment is. */
    record Known(ArcLengths lengths) implements Measuring {}

    /** A curve moved or mirrored. */
    record Same(Curve curve) implements Measuring {
        @Override
        public ArcLengths lengths() {
            return curve.lengths();
        }
    }

    /** A curve run through from its end. */
    record Reversed(Curve curve) implements Measuring {
        @Override
        public ArcLengths lengths() {
            return curve.lengths().reversed();
        }
    }

    /** A curve continued by another. */
    record Joined(Curve curve, Curve next) implements Measuring {
        @Override
        public ArcLengths lengths() {
            return curve.lengths().joinedTo(next.lengths());
        }
    }

    /** The part of a curve between two arc lengths, which has the segments from one to another. */
    record Part(Curve curve, int first, int last, double from, double to) implements Measuring {
        @Override
        public ArcLengths lengths() {
            return curve.lengths().part(first, last, from, to);
        }
    }
}
