package org.capwright.geometry;

import java.util.List;

/** How the arc lengths of a curve are found once somebody asks for them: of its segments, or of the curves that it was made of. */
sealed interface Measuring
        permits ArcLengths, Measuring.Each, Measuring.Same, Measuring.Reversed, Measuring.Joined, Measuring.Part {

    /** The arc lengths. */
    ArcLengths lengths();

    /** Every segment is measured. */
    record Each(List<Cubic> segments) implements Measuring {
        @Override
        public ArcLengths lengths() {
            return ArcLengths.of(segments);
        }
    }

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
    record Part(Curve curve, int first, ArcLengths lengths) implements Measuring {}
}
