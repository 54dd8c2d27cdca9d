package org.capwright.exchange.dxf;

import java.util.List;
import org.capwright.geometry.Point;
import org.capwright.pattern.Notch;
import org.capwright.pattern.NotchKind;

/** Where the snips of a notch lie on the cut line. */
final class Snips {

    /** The two snips of a double notch lie this far apart along the cut line, mm; common practice, no source. */
    static final double APART = 6;

    private Snips() {}

    /**
     * The snips of a notch.
     *
     * @param notch the notch
     * @param cut the cut line of the piece
     * @return arc lengths along the cut line: two for a double notch, none for a snip in one layer alone, which a reader would unfold to both sides, else one
     */
    static List<Double> of(Notch notch, Path cut) {
        if (notch.kind() == NotchKind.BACK_ONLY) {
            return List.of();
        }
        double middle = cut.locate(notch.onCut());
        if (notch.kind() != NotchKind.DOUBLE) {
            return List.of(middle);
        }
        return List.of(around(middle - APART / 2, cut), around(middle + APART / 2, cut));
    }

    private static double around(double distance, Path cut) {
        double length = cut.length();
        return (distance % length + length) % length;
    }

    /** The snips as points on the cut line. */
    static List<Point> points(Notch notch, Path cut) {
        return of(notch, cut).stream().map(cut::pointAt).toList();
    }
}
