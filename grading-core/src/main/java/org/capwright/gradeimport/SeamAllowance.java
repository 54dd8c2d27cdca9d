package org.capwright.gradeimport;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.capwright.geometry.Point;

/** Cut lines: closed lines that run round another one at one distance, the seam allowance. Sizes of a nest lie unevenly apart. */
final class SeamAllowance {

    /** The least and the greatest seam allowance, mm. Common practice, no source. */
    private static final double LEAST = 3;

    private static final double GREATEST = 40;

    /** The distance is one where this share of the points lies as far away as the middle one; a hem may have more. */
    private static final double MOST = 0.7;

    /** Distances nearer to one another than this are one, mm. */
    private static final double SAME = 0.25;

    private static final int SAMPLES = 60;

    /** More lines than these in one place are not compared. */
    private static final int MOST_LINES = 120;

    private SeamAllowance() {}

    /**
     * The lines that are sewn along.
     *
     * @param lines closed lines, the largest first
     * @return those of them that do not run round another one at one distance; never empty
     */
    static List<Outline> without(List<Outline> lines) {
        if (lines.size() > MOST_LINES) {
            return lines;
        }
        List<Outline> sewn = new ArrayList<>();
        for (int i = 0; i < lines.size(); i++) {
            Outline outer = lines.get(i);
            if (lines.subList(i + 1, lines.size()).stream().noneMatch(inner -> runsRound(outer, inner))) {
                sewn.add(outer);
            }
        }
        return sewn;
    }

    private static boolean runsRound(Outline outer, Outline inner) {
        if (!outer.box().grown(SAME).shared(inner.box()).equals(inner.box())) {
            return false;
        }
        int n = inner.points().size();
        int step = Math.max(1, n / SAMPLES);
        double[] distances = new double[(n + step - 1) / step];
        for (int k = 0; k < distances.length; k++) {
            distances[k] = distance(inner.points().get(k * step), outer.points());
        }
        double[] sorted = distances.clone();
        Arrays.sort(sorted);
        double middle = sorted[sorted.length / 2];
        double scale = SleeveFinder.scale(outer.box());
        long near = Arrays.stream(distances)
                .filter(distance -> Math.abs(distance - middle) * scale <= SAME)
                .count();
        return middle * scale >= LEAST
                && middle * scale <= GREATEST
                && sorted[0] > middle / 4
                && near >= MOST * distances.length
                && (outer.colour() == inner.colour() || !outer.layer().equals(inner.layer()));
    }

    private static double distance(Point point, List<Point> ring) {
        double least = Double.POSITIVE_INFINITY;
        for (int i = 0; i < ring.size(); i++) {
            least = Math.min(least, point.distanceTo(ring.get(i), ring.get((i + 1) % ring.size())));
        }
        return least;
    }
}
