package org.capwright.lay;

import java.util.List;
import org.capwright.geometry.Point;
import org.capwright.pattern.Piece;

/**
 * One piece placed in a lay. Lay coordinates: x along the length of the cloth from its cut end, y across it from the fold (folded cloth) or from the inner
 * edge of the lower selvedge (open cloth), mm.
 *
 * @param piece the piece
 * @param cover how the drawn outline lies on the cloth
 * @param facing as drawn, or mirrored about the grain
 * @param rotation 0: the top of the piece points along +x; 180: along -x
 * @param translation where the origin of the draft falls in the lay
 * @param outline the cut line as it lies, counter-clockwise, first point not repeated; a half where it lies on the fold, the whole piece otherwise
 * @param yields how many whole pieces this placing gives: 2 on double cloth away from the fold, else 1
 * @param grain unit vector of the piece's grain in the draft, pointing up
 */
public record Placement(
        Piece piece,
        Cover cover,
        Facing facing,
        int rotation,
        Point translation,
        List<Point> outline,
        int yields,
        Point grain) {

    /** How a drawn outline lies on the cloth. */
    public enum Cover {
        /** As drawn. */
        DRAWN,
        /** A drawn half with its fold edge on the fold of the cloth. */
        HALF_ON_FOLD,
        /** A drawn half opened out to the whole piece. */
        OPENED_OUT
    }

    /** Which way up the paper lies. */
    public enum Facing {
        /** As drawn. */
        AS_DRAWN,
        /** Turned over. */
        MIRRORED
    }

    /**
     * Where a point of the draft falls in the lay.
     *
     * @param drafted a point in the coordinates of the piece
     * @return the point in lay coordinates
     */
    public Point onLay(Point drafted) {
        double turn = rotation == 0 ? 1 : -1;
        double over = facing == Facing.AS_DRAWN ? turn : -turn;
        return new Point(translation.x() + turn * grain.dot(drafted), translation.y() + over * grain.cross(drafted));
    }
}
