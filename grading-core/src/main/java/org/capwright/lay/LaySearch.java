package org.capwright.lay;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.stream.IntStream;

/**
 * Places shapes on a strip of given width so that little length is used. Every shape in turn goes to the place where it reaches least far along the cloth
 * (bottom-left filling) among the places that the no-fit regions of those already placed leave free, holes between outlines included. Orders by area,
 * length, width and box are tried under three measures of "far"; then the order, and the flips, are altered at random from a fixed seed. Tried are, across
 * the cloth, the edges, the turns of every no-fit region and a coarse comb refined by halving; along the cloth the place is exact. What would fit only
 * exactly into a bay of one and the same outline is not found.
 *
 * <p>The work is bounded by a count of looked-up regions, never by a clock, so that the same input gives the same lay.
 */
final class LaySearch {

    /** What is placed: a shape in the flips that are allowed. Like items share one instance, as its array is compared by identity. */
    record Item(int shape, int[] flips, boolean onFold) {}

    /** A solution: per item its flip and translation. */
    static final class Solution {
        final int[] flip;
        final double[] x;
        final double[] y;
        double length = Double.POSITIVE_INFINITY;

        Solution(int n) {
            flip = new int[n];
            x = new double[n];
            y = new double[n];
        }

        void copyFrom(Solution other) {
            System.arraycopy(other.flip, 0, flip, 0, flip.length);
            System.arraycopy(other.x, 0, x, 0, x.length);
            System.arraycopy(other.y, 0, y, 0, y.length);
            length = other.length;
        }
    }

    /** What a place is judged by: the farther left the better. */
    private enum Reach {
        RIGHT_END,
        LEFT_END,
        CENTRE
    }

    /** Which flips a first filling may use. */
    private enum Turning {
        /** Whichever reaches least far. */
        FREE,
        /** Like pieces are turned in turn, the first as drawn: top to tail. */
        DRAWN_FIRST,
        /** Like pieces are turned in turn, the first turned. */
        TURNED_FIRST;

        /** Per item the flip it must take, or -1. */
        int[] of(Item[] items, int[] order) {
            int[] force = new int[items.length];
            Arrays.fill(force, -1);
            if (this != FREE) {
                Map<Item, Integer> seen = new HashMap<>();
                for (int item : order) {
                    int[] flips = items[item].flips;
                    int nth = seen.merge(items[item], 1, Integer::sum);
                    force[item] = flips[(this == DRAWN_FIRST ? nth + 1 : nth) % 2 * (flips.length - 1)];
                }
            }
            return force;
        }
    }

    private static final double LEVEL = 1e-7;
    private static final int FINE_STEPS = 12;
    private static final int COMB = 12;
    private static final int TRIES = 80;
    private static final double DETOUR = 0.01;

    private final LayPiece[] shapes;
    private final NoFitTable table;
    private final double width;
    private final double margin;
    private long work;

    private double[] heights = new double[256];
    private double[] blocked = new double[64];
    private double[] stretch = new double[64];

    /**
     * Prepares a strip.
     *
     * @param shapes prepared shapes
     * @param width of the strip
     * @param margin least distance from the lower edge (the fold) for what does not lie on it
     */
    LaySearch(LayPiece[] shapes, double width, double margin) {
        this.shapes = shapes;
        this.width = width;
        this.margin = margin;
        this.table = new NoFitTable(shapes);
    }

    /**
     * The best lay found.
     *
     * @param items what to place
     * @param bound no lay can be shorter; the search stops when it is reached
     * @param seed of the exchanges
     * @param budget how many no-fit regions may be looked up
     */
    Solution solve(Item[] items, double bound, long seed, long budget) {
        int n = items.length;
        work = 0;
        Solution best = new Solution(n);
        Solution trial = new Solution(n);
        int[] bestOrder = new int[n];
        Reach bestReach = Reach.RIGHT_END;
        int[] forced = new int[n];
        int[][] orders = orders(items);
        for (Turning turning : Turning.values()) {
            for (int[] order : orders) {
                int[] force = turning.of(items, order);
                for (Reach reach : Reach.values()) {
                    if (best.length < Double.POSITIVE_INFINITY && work > budget / 2) {
                        break;
                    }
                    fill(items, order, reach, force, trial, best.length);
                    if (trial.length < best.length - LEVEL) {
                        best.copyFrom(trial);
                        System.arraycopy(order, 0, bestOrder, 0, n);
                        System.arraycopy(force, 0, forced, 0, n);
                        bestReach = reach;
                    }
                    if (best.length <= bound + LEVEL) {
                        return best;
                    }
                }
            }
        }
        // Record-to-record travel (Dueck, 1993): walk on from any lay that is little longer than the best one, and less
        // and less so.
        SplittableRandom random = new SplittableRandom(seed);
        int[] current = bestOrder.clone();
        Reach currentReach = bestReach;
        int[] order = new int[n];
        int[] force = new int[n];
        int tries = TRIES * n * n;
        long start = work;
        for (int t = 0; t < tries && work < budget && best.length > bound + LEVEL; t++) {
            System.arraycopy(current, 0, order, 0, n);
            System.arraycopy(forced, 0, force, 0, n);
            Reach reach = currentReach;
            int changes = 1 + random.nextInt(2);
            for (int c = 0; c < changes; c++) {
                int i = random.nextInt(n);
                int j = random.nextInt(n);
                switch (random.nextInt(8)) {
                    case 0, 1, 2 -> {
                        int held = order[i];
                        order[i] = order[j];
                        order[j] = held;
                    }
                    case 3, 4 -> move(order, i, j);
                    case 5, 6 -> {
                        int[] flips = items[i].flips;
                        int pick = random.nextInt(flips.length + 1);
                        force[i] = pick == flips.length ? -1 : flips[pick];
                    }
                    default -> reach = Reach.values()[random.nextInt(3)];
                }
            }
            double left = 1 - Math.max((double) (work - start) / Math.max(1, budget - start), (double) t / tries);
            double allowed = best.length * (1 + DETOUR * left) + LEVEL;
            fill(items, order, reach, force, trial, allowed);
            if (trial.length <= allowed) {
                if (trial.length < best.length) {
                    best.copyFrom(trial);
                }
                System.arraycopy(order, 0, current, 0, n);
                System.arraycopy(force, 0, forced, 0, n);
                currentReach = reach;
            }
        }
        return best;
    }

    private static void move(int[] order, int from, int to) {
        int item = order[from];
        if (from < to) {
            System.arraycopy(order, from + 1, order, from, to - from);
        } else {
            System.arraycopy(order, to, order, to + 1, from - to);
        }
        order[to] = item;
    }

    private int[][] orders(Item[] items) {
        int n = items.length;
        double[][] keys = new double[5][n];
        for (int i = 0; i < n; i++) {
            LayPiece shape = shapes[items[i].shape];
            keys[0][i] = shape.area;
            keys[1][i] = shape.length();
            keys[2][i] = shape.width();
            keys[3][i] = shape.length() * shape.width();
            keys[4][i] = shape.length() + shape.width();
        }
        List<int[]> orders = new ArrayList<>();
        for (double[] key : keys) {
            // Stable: equal ones keep their order.
            int[] order = IntStream.range(0, n)
                    .boxed()
                    .sorted((a, b) -> Double.compare(key[b], key[a]))
                    .mapToInt(i -> i)
                    .toArray();
            if (orders.stream().noneMatch(known -> Arrays.equals(known, order))) {
                orders.add(order);
            }
        }
        return orders.toArray(new int[0][]);
    }

    /** Fills the strip in a given order; gives up, with infinite length, as soon as the lay is longer than {@code limit}. */
    private void fill(Item[] items, int[] order, Reach reach, int[] forced, Solution into, double limit) {
        double length = 0;
        into.length = Double.POSITIVE_INFINITY;
        for (int k = 0; k < order.length; k++) {
            int item = order[k];
            LayPiece shape = shapes[items[item].shape];
            double bestScore = Double.POSITIVE_INFINITY;
            double bestTop = Double.POSITIVE_INFINITY;
            double bestX = 0;
            double bestY = 0;
            int bestFlip = -1;
            for (int flip : items[item].flips) {
                if (forced[item] >= 0 && forced[item] != flip) {
                    continue;
                }
                double offset = switch (reach) {
                    case RIGHT_END -> shape.rightOf(flip);
                    case LEFT_END -> shape.leftOf(flip);
                    case CENTRE -> (shape.rightOf(flip) + shape.leftOf(flip)) / 2;
                };
                double lowest = items[item].onFold ? -shape.lowOf(flip) : margin - shape.lowOf(flip);
                double highest = items[item].onFold ? lowest : width - shape.highOf(flip);
                int count = candidates(items, order, k, items[item].shape, flip, lowest, highest, into);
                double flipX = Double.POSITIVE_INFINITY;
                double flipY = 0;
                int flipAt = -1;
                for (int h = 0; h < count; h++) {
                    double most = Math.min(bestScore - offset + 2 * LEVEL, flipX) - LEVEL;
                    double x = leastX(items, order, k, items[item].shape, flip, heights[h], most, into);
                    if (x < most) {
                        flipX = x;
                        flipY = heights[h];
                        flipAt = h;
                    }
                }
                if (flipAt < 0) {
                    continue;
                }
                if (k > 0 && count > 2) {
                    // The least place can lie where the edges of two regions cross, between the heights tried.
                    double below = flipAt > 0 ? heights[flipAt - 1] : flipY;
                    double above = flipAt + 1 < count ? heights[flipAt + 1] : flipY;
                    for (int step = 0; step < FINE_STEPS && above - below > 0.01; step++) {
                        double lower = (below + flipY) / 2;
                        double upper = (flipY + above) / 2;
                        double atLower = leastX(items, order, k, items[item].shape, flip, lower, flipX - LEVEL, into);
                        double atUpper = leastX(
                                items,
                                order,
                                k,
                                items[item].shape,
                                flip,
                                upper,
                                Math.min(atLower, flipX) - LEVEL,
                                into);
                        if (atUpper < Math.min(atLower, flipX) - LEVEL) {
                            below = flipY;
                            flipY = upper;
                            flipX = atUpper;
                        } else if (atLower < flipX - LEVEL) {
                            above = flipY;
                            flipY = lower;
                            flipX = atLower;
                        } else {
                            below = lower;
                            above = upper;
                        }
                    }
                }
                // Equally far: the place that leaves the wider strip free above.
                double top = flipY + shape.highOf(flip);
                if (flipX + offset < bestScore - LEVEL || (flipX + offset < bestScore + LEVEL && top < bestTop)) {
                    bestScore = flipX + offset;
                    bestTop = top;
                    bestX = flipX;
                    bestY = flipY;
                    bestFlip = flip;
                }
            }
            into.x[item] = bestX;
            into.y[item] = bestY;
            into.flip[item] = bestFlip;
            length = Math.max(length, bestX + shape.rightOf(bestFlip));
            if (length > limit) {
                return;
            }
        }
        into.length = length;
    }

    /** Collects, sorted, the heights at which a place may be least: the ends of the range and those where a no-fit region changes. */
    private int candidates(
            Item[] items, int[] order, int placed, int shape, int flip, double lowest, double highest, Solution into) {
        heights[0] = lowest;
        if (highest <= lowest) {
            return 1; // on the fold, or just as wide as the cloth
        }
        heights[1] = highest;
        int count = 2;
        if (placed > 0) {
            // Between the turns of single regions, edges of two regions may cross: a coarse comb finds about where.
            for (int i = 1; i < COMB; i++) {
                heights[count++] = lowest + (highest - lowest) * i / COMB;
            }
        }
        for (int p = 0; p < placed; p++) {
            int other = order[p];
            NoFit region = table.region(items[other].shape, into.flip[other], shape, flip);
            boolean down = table.flipsY();
            double[] turns = table.flipsX() ? region.turnsLeft() : region.turnsRight();
            int n = turns.length;
            if (count + n > heights.length) {
                heights = Arrays.copyOf(heights, 2 * (count + n));
            }
            for (int i = 0; i < n; i++) {
                double y = turns[i];
                double height = into.y[other] + (down ? -y : y);
                if (height > lowest && height < highest) {
                    heights[count++] = height;
                }
            }
        }
        Arrays.sort(heights, 0, count);
        int distinct = 1;
        for (int i = 1; i < count; i++) {
            if (heights[i] > heights[distinct - 1] + 2 * NoFit.TOUCH) {
                heights[distinct++] = heights[i];
            }
        }
        return distinct;
    }

    /** The least x at a height, or infinity if it is not below a limit. */
    private double leastX(
            Item[] items, int[] order, int placed, int shape, int flip, double y, double limit, Solution into) {
        work++;
        double x = -shapes[shape].leftOf(flip);
        if (x >= limit) {
            return Double.POSITIVE_INFINITY;
        }
        int n = 0;
        for (int p = 0; p < placed; p++) {
            int other = order[p];
            NoFit region = table.region(items[other].shape, into.flip[other], shape, flip);
            double dy = y - into.y[other];
            int most = region.mostNumbers();
            if (stretch.length < most) {
                stretch = new double[most];
            }
            int m = region.forbidden(table.flipsY() ? -dy : dy, stretch);
            work += m == 0 ? 0 : 1;
            if (n + m > blocked.length) {
                blocked = Arrays.copyOf(blocked, 2 * (n + m));
            }
            double at = into.x[other];
            boolean back = table.flipsX();
            for (int i = 0; i < m; i += 2) {
                blocked[n++] = at + (back ? -stretch[i + 1] : stretch[i]);
                blocked[n++] = at + (back ? -stretch[i] : stretch[i + 1]);
            }
        }
        boolean moved = true;
        while (moved) {
            moved = false;
            for (int i = 0; i < n; i += 2) {
                if (x > blocked[i] + NoFit.TOUCH && x < blocked[i + 1] - NoFit.TOUCH) {
                    x = blocked[i + 1];
                    moved = true;
                }
            }
            if (x >= limit) {
                return Double.POSITIVE_INFINITY;
            }
        }
        return x;
    }
}
