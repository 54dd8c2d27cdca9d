package org.capwright.draft.pleat;

import java.util.List;
import org.capwright.geometry.Cubic;
import org.capwright.geometry.Isometry;
import org.capwright.geometry.Point;

/**
 * The seam over the under-layers of one fold.
 *
 * @param arc the seam from the fold to the inner crease
 * @param depth from the fold line, square to it, to where the inner crease meets the seam, mm
 * @param overhang how far it had to be prolonged for that
 */
record UnderLayers(List<Over> arc, double depth, Overhang overhang) {

    /**
     * A piece of the seam over them.
     *
     * @param segment where it lies on the flat cloth
     * @param length how long it is, mm
     * @param motion lays it into the seam
     */
    record Over(Cubic segment, double length, Isometry motion) {

        Point end() {
            return motion.of(segment.end());
        }
    }

    /** What ends nearer than this to where the one before it ended is left out, for the next to start there: of a hundred pieces all shorter than this only some are. */
    private static final double NOTHING = 1e-7;

    /** Adds what the seam cuts of both layers, unfolded, from the first mark over the inner crease to the last mark. Gives back where it meets the inner crease. */
    Point unfoldedOnto(Chain chain, Creases creases, Isometry place, Isometry beyond) {
        // Before the inner crease lies the layer next to the first mark: reflected where that mark is the fold.
        Isometry turned = place.after(creases.first());
        boolean foldFirst = creases.fold().lie() == Lie.TO_BACK;
        Isometry ontoFirst = (foldFirst ? turned : place).inverse();
        Isometry ontoLast = (foldFirst ? beyond : turned).inverse();
        double leftOut = 0;
        for (int i = 0; i < arc.size(); i++) {
            leftOut = add(chain, creases.firstPoint(), arc.get(i), arc.get(i).segment(), ontoFirst, leftOut);
        }
        Point corner = ontoFirst.of(arc.get(arc.size() - 1).end());
        for (int i = arc.size() - 1; i >= 0; i--) {
            leftOut = add(
                    chain,
                    creases.firstPoint(),
                    arc.get(i),
                    arc.get(i).segment().reversed(),
                    ontoLast,
                    leftOut);
        }
        chain.endAt(creases.last());
        return corner;
    }

    /** Gives back the length of what was left out since the last piece, which counts with the next. */
    private static double add(Chain chain, Point start, Over over, Cubic segment, Isometry onto, double leftOut) {
        Isometry motion = onto.after(over.motion());
        Point before = chain.isEmpty() ? start : chain.last().end();
        double length = leftOut + over.length();
        if (before.distanceTo(motion.of(segment.end())) <= NOTHING) {
            return length;
        }
        chain.add(start, segment, length, motion);
        return 0;
    }
}
