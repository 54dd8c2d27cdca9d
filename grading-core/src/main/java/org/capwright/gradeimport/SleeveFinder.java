package org.capwright.gradeimport;

import java.util.ArrayList;
import java.util.List;
import org.capwright.exchange.dxf.DrawnLine;
import org.capwright.geometry.Placing;
import org.capwright.geometry.Point;

/** Finds the way up of an outline, and the sleeve in it. */
final class SleeveFinder {

    private SleeveFinder() {}

    /** The shape of an overlay: to its first corner as a sleeve, unless its top edge is cut for pleats. */
    static SleeveShape overlay(SizedPiece piece) throws SleeveShape.NoSleeve {
        SleeveShape wide = find(piece, SleeveShape.Underarm.OUTERMOST);
        return wide.jagged() ? wide : sleeve(piece);
    }

    /** The shape of a sleeve. */
    static SleeveShape sleeve(SizedPiece piece) throws SleeveShape.NoSleeve {
        return find(piece, SleeveShape.Underarm.FIRST_CORNER);
    }

    /** Tries the outline along its grain line, both ways up; without one as drawn and turned by quarters. */
    private static SleeveShape find(SizedPiece piece, SleeveShape.Underarm underarm) throws SleeveShape.NoSleeve {
        String reason = "";
        for (double degrees : turns(piece)) {
            try {
                return SleeveShape.of(piece.outline().points(), Placing.turn(degrees), underarm);
            } catch (SleeveShape.NoSleeve e) {
                reason = reason.isEmpty() ? e.reason() : reason;
            }
        }
        throw new SleeveShape.NoSleeve(reason);
    }

    private static List<Double> turns(SizedPiece piece) {
        for (DrawnLine mark : piece.marks()) {
            if (LineRole.of(mark.layer()) == LineRole.GRAIN) {
                Point along = mark.end().minus(mark.start());
                double up = 90 - Math.toDegrees(Math.atan2(along.y(), along.x()));
                double asDrawn = Math.abs(Math.IEEEremainder(up, 360)) <= 90 ? up : up + 180;
                double exact =
                        Math.abs(Math.IEEEremainder(asDrawn, 90)) < 1e-4 ? 90 * Math.rint(asDrawn / 90) : asDrawn;
                List<Double> turns = new ArrayList<>(List.of(exact, exact + 180));
                if (exact != 0) {
                    turns.addAll(List.of(0.0, 180.0));
                }
                return turns;
            }
        }
        return List.of(0.0, 180.0, 90.0, 270.0);
    }
}
