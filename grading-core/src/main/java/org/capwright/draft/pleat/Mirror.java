package org.capwright.draft.pleat;

import java.util.List;
import org.capwright.geometry.Cubic;
import org.capwright.geometry.Curve;
import org.capwright.geometry.Point;

/** Mirror images about the fold line x = 0 of what is run through from the front to the back. */
final class Mirror {

    private Mirror() {}

    /** Whether the back half of an edge is the image of its front half, and its folds that of those there, their marks to within a length, mm. */
    static boolean halves(Curve edge, List<PleatFold> folds, double within) {
        double length = edge.length();
        for (int i = 0; 2 * i < folds.size(); i++) {
            PleatFold one = folds.get(i);
            PleatFold other = folds.get(folds.size() - 1 - i);
            if (one.lie() == other.lie()
                    || Math.abs(one.foldMark() + other.foldMark() - length) > within
                    || Math.abs(one.placementMark() + other.placementMark() - length) > within) {
                return false;
            }
        }
        List<Cubic> segments = edge.segments();
        for (int i = 0; 2 * i < segments.size(); i++) {
            Cubic one = segments.get(i);
            Cubic other = segments.get(segments.size() - 1 - i);
            if (!images(one.start(), other.end())
                    || !images(one.control1(), other.control2())
                    || !images(one.control2(), other.control1())
                    || !images(one.end(), other.start())) {
                return false;
            }
        }
        return true;
    }

    private static boolean images(Point one, Point other) {
        return one.x() == -other.x() && one.y() == other.y();
    }
}
