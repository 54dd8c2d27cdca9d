package org.capwright.exchange.dxf;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.capwright.geometry.Point;

/**
 * Points that correspond on the same line of every size: between anchors that correspond, they lie at the same fractions of the arc length in all sizes.
 * Fractions are added where some size's line stands farthest from its chord, until in every size all chords keep within the tolerance.
 */
final class Correspondence {

    /**
     * Chords keep within this distance of the line they are taken from, mm. Lines are themselves flattened; both together, and the rounding of the
     * rules, stay below a hundredth of a millimetre from the line that is compared.
     */
    static final double TOLERANCE = 0.005;

    private static final double SAME = 1e-9;

    /**
     * A place on the lines.
     *
     * @param section which pair of anchors it lies between
     * @param fraction of the arc length from the first anchor to the second; 0 is an anchor
     * @param points where it is in every size
     * @param beyond per size: the first vertex beyond it
     */
    record Place(int section, double fraction, List<Point> points, int[] beyond) {

        boolean isAnchor() {
            return fraction == 0 || fraction == 1;
        }
    }

    private final List<Path> paths;
    private final List<double[]> anchors;

    /**
     * Lines that correspond.
     *
     * @param paths one per size
     * @param anchors per size: arc lengths that correspond, ascending, from 0 to the length; as many in every size
     */
    Correspondence(List<Path> paths, List<double[]> anchors) {
        this.paths = paths;
        this.anchors = anchors;
    }

    /**
     * Samples the lines from their starts to their ends.
     *
     * @return places, the anchors among them
     */
    List<Place> sampled() {
        List<Place> found = new ArrayList<>();
        int sections = anchors.get(0).length - 1;
        int[] first = new int[paths.size()];
        Arrays.fill(first, 1);
        int[] last = paths.stream().mapToInt(Path::last).toArray();
        for (int section = 0; section < sections; section++) {
            Place start = place(section, 0, first, last);
            Place end = place(section, 1, start.beyond, last);
            found.add(start);
            split(start, end, found);
            if (section == sections - 1) {
                found.add(end);
            }
            first = end.beyond;
        }
        return found;
    }

    private Place place(int section, double fraction, int[] from, int[] to) {
        List<Point> points = new ArrayList<>(paths.size());
        int[] beyond = new int[paths.size()];
        for (int size = 0; size < beyond.length; size++) {
            Path path = paths.get(size);
            double at = distance(anchors.get(size), section, fraction);
            beyond[size] = path.firstBeyond(at, from[size], to[size]);
            points.add(path.pointAt(at, beyond[size]));
        }
        return new Place(section, fraction, points, beyond);
    }

    /**
     * A place of which the point gives way in one size alone: along the line between the same anchors where there is room, else square off it. The other sizes keep theirs.
     *
     * @param by mm, negative to go back
     * @param size position of the size where it gives way
     * @return one point per size
     */
    List<Point> givenWay(Place place, double by, int size) {
        double[] own = anchors.get(size);
        double at = distance(own, place.section, place.fraction);
        double moved = at + by;
        List<Point> points = new ArrayList<>(place.points);
        Point here = points.get(size);
        if (moved >= own[place.section] && moved <= own[place.section + 1]) {
            points.set(size, paths.get(size).pointAt(moved));
        } else {
            Path path = paths.get(size);
            Point along = path.pointAt(at + Math.abs(by)).minus(path.pointAt(at - Math.abs(by)));
            points.set(size, here.plus(along.unit().left().times(by)));
        }
        return points;
    }

    private static double distance(double[] anchors, int section, double fraction) {
        return fraction == 1
                ? anchors[section + 1]
                : anchors[section] + (anchors[section + 1] - anchors[section]) * fraction;
    }

    private void split(Place from, Place to, List<Place> found) {
        int section = from.section;
        for (int size = 0; size < paths.size(); size++) {
            double[] own = anchors.get(size);
            double length = own[section + 1] - own[section];
            double worst = paths.get(size)
                    .farthestFromChord(
                            from.points.get(size),
                            from.beyond[size],
                            to.points.get(size),
                            distance(own, section, to.fraction),
                            TOLERANCE);
            double fraction = (worst - own[section]) / length;
            if (fraction > from.fraction + SAME && fraction < to.fraction - SAME) {
                Place between = place(section, fraction, from.beyond, to.beyond);
                split(from, between, found);
                found.add(between);
                split(between, to, found);
                return;
            }
        }
    }
}
