package org.capwright.draft.pleat;

import java.util.List;
import org.capwright.geometry.Cubic;
import org.capwright.geometry.Isometry;
import org.capwright.geometry.Point;

/**
 * The seam over the under-layers of one fold, in the folded plane.
 *
 * @param arc from the fold to the inner crease
 * @param depth from the fold line, square to it, to where the inner crease meets the seam, mm
 */
record UnderLayers(List<Cubic> arc, double depth) {

    /** Shorter pieces are left out: the next one is made to start where the one before ends. */
    private static final double NOTHING = 1e-7;

    /** Adds what the seam cuts of both layers, unfolded, from the first mark over the inner crease to the last mark. Gives back where it meets the inner crease. */
    Point unfoldedOnto(Chain chain, Creases creases, FoldedPlace place, FoldedPlace beyond) {
        // Before the inner crease lies the layer next to the first mark: reflected where that mark is the fold.
        Isometry before = creases.fold().lie() == Lie.TO_BACK ? place.motion().after(creases.first()) : place.motion();
        Isometry after = creases.fold().lie() == Lie.TO_BACK
                ? beyond.motion()
                : place.motion().after(creases.first());
        Isometry ontoFirst = before.inverse();
        Isometry ontoLast = after.inverse();
        for (Cubic segment : arc) {
            add(chain, creases.firstPoint(), ontoFirst.of(segment));
        }
        Point corner = ontoFirst.of(arc.get(arc.size() - 1).end());
        for (int i = arc.size() - 1; i >= 0; i--) {
            add(chain, creases.firstPoint(), ontoLast.of(arc.get(i).reversed()));
        }
        chain.endAt(creases.last());
        return corner;
    }

    private static void add(Chain chain, Point start, Cubic segment) {
        if (segment.start().distanceTo(segment.end()) > NOTHING) {
            chain.startAt(start, segment);
        }
    }
}
