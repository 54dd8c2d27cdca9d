package org.capwright.check;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import org.capwright.grade.GradeRule;
import org.capwright.measure.Dimension;
import org.capwright.quantity.Rounding;

/**
 * Even rules on a grid: few breaks, increments about those that the bodies grow by.
 *
 * @param intervals how many jumps a rule has
 * @param base position of the base size
 * @param grid the room's grid
 */
record EvenRules(int intervals, int base, Rounding grid) {

    /** So many rules of equal rank are tried in one row, the nearest to the bodies first. */
    private static final int TRIED = 800;

    /** Increments are sought about so far apart at least, mm. */
    private static final double COARSE = 0.25;

    /** All rules with so many breaks and increments about those of the bodies, the nearest to the bodies first. */
    List<GradeRule> about(Dimension dimension, double[] exact, int breaks) {
        List<GradeRule> found = new ArrayList<>();
        for (int[] starts : starts(breaks)) {
            List<List<Double>> choices = new ArrayList<>();
            for (int piece = 0; piece <= breaks; piece++) {
                int from = starts[piece];
                int to = starts[piece + 1];
                choices.add(about((exact[to] - exact[from]) / (to - from), breaks));
            }
            combine(dimension, starts, choices, 0, new ArrayList<>(), found);
        }
        found.sort(Comparator.comparingDouble(rule -> distance(rule, exact)));
        return found.size() > TRIED ? found.subList(0, TRIED) : found;
    }

    private void combine(
            Dimension dimension,
            int[] starts,
            List<List<Double>> choices,
            int piece,
            List<Double> increments,
            List<GradeRule> found) {
        if (piece == choices.size()) {
            found.add(new GradeRule(dimension, increments));
            return;
        }
        for (double increment : choices.get(piece)) {
            List<Double> longer = new ArrayList<>(increments);
            longer.addAll(Collections.nCopies(starts[piece + 1] - starts[piece], increment));
            combine(dimension, starts, choices, piece + 1, longer, found);
        }
    }

    /** Where the pieces of a rule with so many breaks begin, and the end. */
    private List<int[]> starts(int breaks) {
        List<int[]> all = new ArrayList<>();
        if (breaks == 0) {
            all.add(new int[] {0, intervals});
        }
        for (int a = 1; breaks == 1 && a < intervals; a++) {
            all.add(new int[] {0, a, intervals});
        }
        for (int a = 1; breaks == 2 && a < intervals - 1; a++) {
            for (int b = a + 1; b < intervals; b++) {
                all.add(new int[] {0, a, b, intervals});
            }
        }
        return all;
    }

    /** Increments on the grid about one of the bodies: wide apart for a rule without breaks, close where there are many to combine. */
    private List<Double> about(double increment, int breaks) {
        // On a very fine grid every few steps are enough to choose from.
        double step = grid.step() * Math.max(1, Math.rint(COARSE / grid.step()));
        long middle = Math.round(increment / step);
        int reach = breaks == 0 ? (int) Math.max(3, Math.ceil(6 / step)) : (int) Math.max(1, Math.ceil(2 / step));
        reach = Math.min(reach, breaks == 0 ? 60 : 4 - breaks);
        List<Double> about = new ArrayList<>();
        for (long k = middle - reach; k <= middle + reach; k++) {
            about.add(k * step);
        }
        return about;
    }

    /** The sum of the squared departures from the growth of the bodies, square mm. */
    double distance(GradeRule rule, double[] exact) {
        double sum = 0;
        for (int i = 0; i <= intervals; i++) {
            double off = rule.apply(0, base, i) - (exact[i] - exact[base]);
            sum += off * off;
        }
        return sum;
    }
}
