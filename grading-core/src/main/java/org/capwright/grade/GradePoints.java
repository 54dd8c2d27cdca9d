package org.capwright.grade;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.capwright.draft.BaseSleeve;
import org.capwright.draft.CapLine;
import org.capwright.draft.Overlay;
import org.capwright.draft.OverlayHalf;
import org.capwright.draft.SleeveDraft;
import org.capwright.draft.UnderSleeve;
import org.capwright.geometry.Point;

/** Finds the named points of every size of a run and how they move. */
public final class GradePoints {

    private static final String[] DIVISIONS = {"apex", "first division", "middle division", "third division", "underarm"
    };

    private GradePoints() {}

    /**
     * The grade points of a run.
     *
     * @param run a graded run
     * @param alignment the point that keeps its place
     * @return every named point of overlay and under-sleeve, front halves at negative x
     */
    public static List<GradePoint> of(SizeRun run, Alignment alignment) {
        List<Map<String, Point>> perSize = new ArrayList<>(run.sizes().size());
        for (int i = 0; i < run.sizes().size(); i++) {
            perSize.add(named(run.sizes().get(i).draft(), run.shift(i, alignment)));
        }
        Map<String, Point> base = perSize.get(run.base());
        List<GradePoint> points = new ArrayList<>(base.size());
        base.forEach((key, place) -> {
            int slash = key.indexOf('/');
            List<Point> deltas = new ArrayList<>(perSize.size());
            for (Map<String, Point> size : perSize) {
                deltas.add(size.getOrDefault(key, place).minus(place));
            }
            points.add(new GradePoint(key.substring(0, slash), key.substring(slash + 1), place, List.copyOf(deltas)));
        });
        return List.copyOf(points);
    }

    private static Map<String, Point> named(SleeveDraft draft, Point shift) {
        Map<String, Point> points = new LinkedHashMap<>();
        draft.overlay().ifPresent(overlay -> addOverlay(points, overlay, shift));
        draft.underSleeve()
                .ifPresentOrElse(
                        under -> addUnderSleeve(points, under, shift),
                        () -> addCap(points, "sleeve", draft.base(), shift));
        return points;
    }

    private static void addOverlay(Map<String, Point> points, Overlay overlay, Point shift) {
        points.put("overlay/apex", overlay.front().apex().plus(shift));
        points.put("overlay/hem point", overlay.front().hemPoint().plus(shift));
        addOverlayHalf(points, "front ", overlay.front(), shift, -1);
        addOverlayHalf(points, "back ", overlay.back(), shift, 1);
    }

    private static void addOverlayHalf(
            Map<String, Point> points, String half, OverlayHalf line, Point shift, int sign) {
        points.put("overlay/" + half + "join", side(line.join(), sign).plus(shift));
        points.put("overlay/" + half + "underarm", side(line.underarm(), sign).plus(shift));
        points.put("overlay/" + half + "side hem", side(line.sidePoint(), sign).plus(shift));
    }

    private static void addUnderSleeve(Map<String, Point> points, UnderSleeve under, Point shift) {
        addCap(points, "underSleeve", under.base(), shift);
        points.put("underSleeve/front elbow", side(under.frontElbow(), -1).plus(shift));
        points.put("underSleeve/back elbow", under.backElbow().plus(shift));
        under.dart().ifPresent(dart -> {
            points.put("underSleeve/dart point", dart.point().plus(shift));
            points.put("underSleeve/dart fold", dart.foldEnd().plus(shift));
            points.put("underSleeve/dart lower end", dart.lowerEnd().plus(shift));
        });
        points.put("underSleeve/front wrist", side(under.frontSide().end(), -1).plus(shift));
        points.put("underSleeve/back wrist", under.backSide().end().plus(shift));
    }

    private static void addCap(Map<String, Point> points, String part, BaseSleeve base, Point shift) {
        for (int quarter = 0; quarter <= 4; quarter++) {
            if (quarter == 0) {
                points.put(part + "/apex", base.front().division(0).plus(shift));
            } else {
                points.put(
                        part + "/front " + DIVISIONS[quarter],
                        division(base.front(), quarter, -1).plus(shift));
                points.put(
                        part + "/back " + DIVISIONS[quarter],
                        division(base.back(), quarter, 1).plus(shift));
            }
        }
    }

    private static Point division(CapLine line, int quarter, int sign) {
        return side(line.division(quarter), sign);
    }

    private static Point side(Point point, int sign) {
        return sign < 0 ? point.mirrored() : point;
    }
}
