package org.capwright.pattern;

import java.util.ArrayList;
import java.util.List;
import org.capwright.geometry.Curve;
import org.capwright.geometry.Point;

/** Holes short of the inner ends of pleat lines and of the point of a dart, so that the stitching hides them. Each is a mark 2 mm long whose middle is the hole. */
final class DrilledMarks {

    /** Distance from the end of a pleat line, mm. Common practice, no source. */
    private static final double SHORT_OF_PLEAT = 3;

    /** Distance from the point of a dart, mm: half an inch. Common practice, no source. */
    private static final double SHORT_OF_DART = 12.7;

    private static final double HALF = 1;

    private DrilledMarks() {}

    static List<MarkLine> of(List<MarkLine> marks) {
        List<MarkLine> holes = new ArrayList<>();
        for (MarkLine mark : marks) {
            if (mark.kind() == MarkKind.PLEAT_FOLD || mark.kind() == MarkKind.PLEAT_PLACEMENT) {
                double length = mark.line().length();
                hole(holes, mark.name(), mark.line().pointAtLength(Math.max(length / 2, length - SHORT_OF_PLEAT)));
            }
        }
        List<MarkLine> legs =
                marks.stream().filter(mark -> mark.kind() == MarkKind.DART_LEG).toList();
        if (legs.size() == 2) {
            Point point = legs.get(0).line().start();
            Point mouth =
                    legs.get(0).line().end().plus(legs.get(1).line().end()).times(0.5);
            double length = point.distanceTo(mouth);
            hole(holes, "dart", point.towards(mouth, Math.min(0.5, SHORT_OF_DART / length)));
        }
        return holes;
    }

    private static void hole(List<MarkLine> holes, String of, Point at) {
        Point aside = new Point(HALF, 0);
        holes.add(new MarkLine(MarkKind.DRILL_HOLE, "drill hole, " + of, Curve.line(at.minus(aside), at.plus(aside))));
    }
}
