package org.capwright.export.dxf;

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

    private final List<Path> paths;

    /**
     * Lines that correspond.
     *
     * @param paths one per size
     */
    Correspondence(List<Path> paths) {
        this.paths = paths;
    }

    /**
     * Samples the lines from their starts to their ends.
     *
     * @param anchors per size: arc lengths that correspond, ascending, from 0 to the length; as many in every size
     * @return per point its place in every size, the anchors among them
     */
    List<List<Point>> sampled(List<double[]> anchors) {
        List<List<Point>> found = new ArrayList<>();
        int sections = anchors.get(0).length - 1;
        for (int section = 0; section < sections; section++) {
            List<Double> fractions = new ArrayList<>();
            fractions.add(0.0);
            split(anchors, section, 0, 1, fractions);
            for (double fraction : fractions) {
                found.add(at(anchors, section, fraction));
            }
        }
        found.add(at(anchors, sections - 1, 1));
        return found;
    }

    private List<Point> at(List<double[]> anchors, int section, double fraction) {
        List<Point> places = new ArrayList<>(paths.size());
        for (int size = 0; size < paths.size(); size++) {
            places.add(paths.get(size).pointAt(distance(anchors.get(size), section, fraction)));
        }
        return places;
    }

    private static double distance(double[] anchors, int section, double fraction) {
        return fraction == 1
                ? anchors[section + 1]
                : anchors[section] + (anchors[section + 1] - anchors[section]) * fraction;
    }

    private void split(List<double[]> anchors, int section, double from, double to, List<Double> fractions) {
        for (int size = 0; size < paths.size(); size++) {
            double[] own = anchors.get(size);
            double length = own[section + 1] - own[section];
            double worst = paths.get(size)
                    .farthestFromChord(distance(own, section, from), distance(own, section, to), TOLERANCE);
            double fraction = (worst - own[section]) / length;
            if (fraction > from + SAME && fraction < to - SAME) {
                split(anchors, section, from, fraction, fractions);
                fractions.add(fraction);
                split(anchors, section, fraction, to, fractions);
                return;
            }
        }
    }
}
