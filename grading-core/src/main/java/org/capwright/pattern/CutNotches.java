package org.capwright.pattern;

import java.util.List;
import java.util.Optional;
import org.capwright.geometry.Point;

/** Notches as they are snipped: from the cut line to the seam line. */
final class CutNotches {

    /** Most cut lines lie within this distance, mm. */
    private static final double NEARBY = 40;

    private CutNotches() {}

    /** The notches of a piece. */
    static List<Notch> of(PieceDraft draft, Ring cut) {
        Notch[] notches = new Notch[draft.notches().size()];
        for (int i = 0; i < notches.length; i++) {
            NotchPlace place = draft.notches().get(i);
            notches[i] = snipped(place, draft.edge(place.edge()), cut);
        }
        return List.of(notches);
    }

    /** A clip at a corner on the fold or the point of a hem points from the corner of the cut line to that of the seam line. */
    private static Notch snipped(NotchPlace place, PieceEdge edge, Ring cut) {
        if (place.kind() == NotchKind.CLIP) {
            Point at = place.at(edge);
            return new Notch(place.kind(), place.edge(), place.distance(), at, below(at, cut), Ring.UP);
        }
        if (place.outward().isPresent()) {
            return along(place.outward().get(), place, place.at(edge), cut);
        }
        Notch square = place.on(edge);
        // At a corner under a pleat the cut line may not pass square beside the seam line.
        return cut.passes(square.onCut(), 2 * Piece.FLATTENING)
                ? square
                : along(square.inward().times(-1), place, square.at(), cut);
    }

    /** The nearest place of the cut line straight below a point; itself where there is none. */
    private static Point below(Point at, Ring cut) {
        double lowest = Double.NEGATIVE_INFINITY;
        for (int i = cut.nextOn(0, at, Ring.UP); i < cut.chords(); i = cut.nextOn(i + 1, at, Ring.UP)) {
            double fromX = cut.startX(i);
            double toX = cut.endX(i);
            if (Math.min(fromX, toX) <= at.x() && Math.max(fromX, toX) >= at.x() && fromX != toX) {
                double fromY = cut.startY(i);
                double y = fromY + (cut.endY(i) - fromY) * (at.x() - fromX) / (toX - fromX);
                lowest = y <= at.y() + 1e-9 ? Math.max(lowest, y) : lowest;
            }
        }
        return lowest == Double.NEGATIVE_INFINITY ? at : new Point(at.x(), lowest);
    }

    /** A notch snipped from the nearest place of the cut line that lies in a given direction. */
    private static Notch along(Point outward, NotchPlace place, Point at, Ring cut) {
        Point onCut = ahead(at, outward, cut, NEARBY)
                .or(() -> ahead(at, outward, cut, 10 * Allowances.WIDEST))
                .orElse(at);
        return new Notch(place.kind(), place.edge(), place.distance(), at, onCut, outward.times(-1));
    }

    /** The nearest place of the cut line that lies ahead of a point within a distance, mm. */
    private static Optional<Point> ahead(Point at, Point outward, Ring cut, double within) {
        Optional<Point> onCut = Optional.empty();
        double nearest = within;
        for (int i = cut.nextOn(0, at, outward, within); i < cut.chords(); i = cut.nextOn(i + 1, at, outward, within)) {
            double start = cut.startBeside(i, at, outward);
            double end = cut.endBeside(i, at, outward);
            if (Math.abs(start - end) > Ring.NEAR) {
                Point hit = cut.at(i, Math.max(0, Math.min(1, start / (start - end))));
                double away = at.ahead(outward, hit);
                if (away >= -Ring.NEAR && away < nearest) {
                    nearest = away;
                    onCut = Optional.of(hit);
                }
            }
        }
        return onCut;
    }
}
