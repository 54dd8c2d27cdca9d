package org.capwright.draft.pleat;

import java.util.ArrayList;
import java.util.List;
import org.capwright.geometry.Cubic;
import org.capwright.geometry.Isometry;
import org.capwright.geometry.Point;

/**
 * Where a strip of the flat cloth comes to lie when all folds before it are laid.
 *
 * @param motion from the flat cloth to the folded plane
 */
record FoldedPlace(Isometry motion) {

    /** The strip before the first fold stays where it is. */
    static final FoldedPlace START = new FoldedPlace(Isometry.NONE);

    /** The place of the visible strip beyond a fold: both creases reflect what lies beyond them, the later one first. */
    FoldedPlace beyond(Creases fold) {
        return new FoldedPlace(motion.after(fold.first()).after(fold.second()));
    }

    Point of(Point point) {
        return motion.of(point);
    }

    Point turned(Point vector) {
        return motion.turned(vector);
    }

    List<Cubic> of(List<Cubic> segments) {
        List<Cubic> moved = new ArrayList<>(segments.size());
        for (Cubic segment : segments) {
            moved.add(motion.of(segment));
        }
        return moved;
    }
}
