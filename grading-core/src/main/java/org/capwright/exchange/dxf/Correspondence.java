package org.capwright.exchange.dxf;

import java.util.ArrayList;
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
     */
    record Place(int section, double fraction) {

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
        for (int section = 0; section < sections; section++) {
            found.add(new Place(section, 0));
            split(section, 0, 1, found);
        }
        found.add(new Place(sections - 1, 1));
        return found;
    }

    /**
     * A place in every size.
     *
     * @return one point per size
     */
    List<Point> at(Place place) {
        List<Point> points = new ArrayList<>(paths.size());
        for (int size = 0; size < paths.size(); size++) {
            points.add(paths.get(size).pointAt(distance(anchors.get(size), place.section, place.fraction)));
        }
        return points;
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
        List<Point> points = at(place);
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

    private void split(int section, double from, double to, List<Place> found) {
        for (int size = 0; size < paths.size(); size++) {
            double[] own = anchors.get(size);
            double length = own[section + 1] - own[section];
            double worst = paths.get(size)
                    .farthestFromChord(distance(own, section, from), distance(own, section, to), TOLERANCE);
            double fraction = (worst - own[section]) / length;
            if (fraction > from + SAME && fraction < to - SAME) {
                split(section, from, fraction, found);
                found.add(new Place(section, fraction));
                split(section, fraction, to, found);
                return;
            }
        }
    }
}
