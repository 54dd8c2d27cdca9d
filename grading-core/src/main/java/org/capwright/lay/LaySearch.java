package org.capwright.lay;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
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

    /** A lay: per item its flip and translation; in the search per place of the sequence in which they are laid. */
    static final class Solution {
        final int[] flip;
        final double[] x;
        final double[] y;
        double length = Double.POSITIVE_INFINITY;
        private int[] sequence;
        private Reach reach = Reach.RIGHT_END;

        Solution(int n) {
            flip = new int[n];
            x = new double[n];
            y = new double[n];
            sequence = new int[n];
        }

        private void copyFrom(Solution other) {
            System.arraycopy(other.flip, 0, flip, 0, flip.length);
            System.arraycopy(other.x, 0, x, 0, x.length);
            System.arraycopy(other.y, 0, y, 0, y.length);
            System.arraycopy(other.sequence, 0, sequence, 0, sequence.length);
            length = other.length;
            reach = other.reach;
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

        /** The same sequence with the flips that it must take. */
        int[] of(int[] sequence, List<Item> kinds) {
            int[] turned = sequence.clone();
            if (this != FREE) {
                int[] seen = new int[kinds.size()];
                for (int k = 0; k < turned.length; k++) {
                    int kind = kind(turned[k]);
                    int[] flips = kinds.get(kind).flips;
                    int nth = seen[kind]++;
                    turned[k] = laid(kind, flips[(this == DRAWN_FIRST ? nth : nth + 1) % 2 * (flips.length - 1)]);
                }
            }
            return turned;
        }
    }

    // What comes at a place of the sequence: a kind of item and the flip that it must take, in one number.
    private static final int ANY_FLIP = 4;
    private static final int FLIPS = 5;

    private static int laid(int kind, int flip) {
        return kind * FLIPS + flip;
    }

    private static int kind(int laid) {
        return laid / FLIPS;
    }

    private static int flip(int laid) {
        return laid % FLIPS;
    }

    private static final double LEVEL = 1e-7;
    private static final int FINE_STEPS = 6;
    private static final int COMB = 12;
    private static final int TRIES = 80;
    private static final double DETOUR = 0.01;

    private final LayPiece[] shapes;
    private final NoFitTable table;
    private final double width;
    private final double margin;
    private long work;

    // What is laid already, and how its no-fit regions stand to the shape in hand.
    private final int[] shapeAt = new int[Lay.SECTION];
    private final NoFit[] regions = new NoFit[Lay.SECTION];
    private final boolean[] flipsX = new boolean[Lay.SECTION];
    private final boolean[] flipsY = new boolean[Lay.SECTION];

    private double[] heights = new double[256];
    private double[] blocked = new double[64];
    private double[] stretch = new double[64];

    /**
     * Prepares a strip.
     *
     * @param table prepared shapes, and how they keep one another off
     * @param width of the strip
     * @param margin least distance from the lower edge (the fold) for what does not lie on it
     */
    LaySearch(NoFitTable table, double width, double margin) {
        this.shapes = table.shapes();
        this.width = width;
        this.margin = margin;
        this.table = table;
    }

    /**
     * The best lay found.
     *
     * @param items what to place
     * @param bound no lay can be shorter; the search stops when it is reached
     * @param seed of the exchanges
     * @param budget how many no-fit regions may be looked up
     * @param share is told how far the search is
     * @throws java.util.concurrent.CancellationException if it was given up
     */
    Solution solve(Item[] items, double bound, long seed, long budget, WatchedShare share) {
        List<Item> kinds = kinds(items);
        Solution laid = search(items, kinds, bound, seed, budget, share);
        share.isAt(1);
        // From places of the sequence to items: those of one kind are alike.
        Solution solution = new Solution(items.length);
        boolean[] taken = new boolean[items.length];
        for (int i = 0; i < items.length; i++) {
            int at = 0;
            while (taken[at] || kinds.get(kind(laid.sequence[at])) != items[i]) {
                at++;
            }
            taken[at] = true;
            solution.flip[i] = laid.flip[at];
            solution.x[i] = laid.x[at];
            solution.y[i] = laid.y[at];
        }
        solution.length = laid.length;
        return solution;
    }

    private static List<Item> kinds(Item[] items) {
        List<Item> kinds = new ArrayList<>();
        for (Item item : items) {
            if (kinds.stream().noneMatch(known -> known == item)) {
                kinds.add(item);
            }
        }
        return kinds;
    }

    private Solution search(Item[] items, List<Item> kinds, double bound, long seed, long budget, WatchedShare share) {
        int n = items.length;
        work = 0;
        Solution best = new Solution(n);
        Solution trial = new Solution(n);
        for (Turning turning : Turning.values()) {
            for (int[] sequence : sequences(items, kinds)) {
                trial.sequence = turning.of(sequence, kinds);
                for (Reach reach : Reach.values()) {
                    if (best.length < Double.POSITIVE_INFINITY && work > budget / 4) {
                        break;
                    }
                    trial.reach = reach;
                    share.isAt((double) work / Math.max(1, budget));
                    fill(kinds, 0, trial, best.length);
                    if (trial.length < best.length - LEVEL) {
                        best.copyFrom(trial);
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
        Solution current = new Solution(n);
        current.copyFrom(best);
        int tries = TRIES * n * n;
        long start = work;
        for (int t = 0; t < tries && work < budget && best.length > bound + LEVEL; t++) {
            trial.copyFrom(current);
            alter(trial, kinds, random);
            int from = trial.reach == current.reach ? Arrays.mismatch(trial.sequence, current.sequence) : 0;
            if (from < 0) {
                continue; // the same lay again
            }
            double done = Math.max((double) (work - start) / Math.max(1, budget - start), (double) t / tries);
            share.isAt(Math.max(done, (double) work / Math.max(1, budget)));
            double left = 1 - done;
            double allowed = best.length * (1 + DETOUR * left) + LEVEL;
            fill(kinds, from, trial, allowed);
            if (trial.length <= allowed) {
                if (trial.length < best.length) {
                    best.copyFrom(trial);
                }
                Solution former = current;
                current = trial;
                trial = former;
            }
        }
        return best;
    }

    /** Alters sequence, flips or reach at random. */
    private static void alter(Solution lay, List<Item> kinds, SplittableRandom random) {
        int[] sequence = lay.sequence;
        int n = sequence.length;
        int changes = 1 + random.nextInt(2);
        for (int c = 0; c < changes; c++) {
            int i = random.nextInt(n);
            int j = random.nextInt(n);
            switch (random.nextInt(8)) {
                case 0, 1, 2 -> {
                    int held = sequence[i];
                    sequence[i] = sequence[j];
                    sequence[j] = held;
                }
                case 3, 4 -> move(sequence, i, j);
                case 5, 6 -> {
                    int kind = kind(sequence[i]);
                    int[] flips = kinds.get(kind).flips;
                    int pick = random.nextInt(flips.length + 1);
                    sequence[i] = laid(kind, pick == flips.length ? ANY_FLIP : flips[pick]);
                }
                default -> lay.reach = Reach.values()[random.nextInt(3)];
            }
        }
    }

    private static void move(int[] sequence, int from, int to) {
        int item = sequence[from];
        if (from < to) {
            System.arraycopy(sequence, from + 1, sequence, from, to - from);
        } else {
            System.arraycopy(sequence, to, sequence, to + 1, from - to);
        }
        sequence[to] = item;
    }

    private List<int[]> sequences(Item[] items, List<Item> kinds) {
        int n = items.length;
        double[][] keys = new double[5][n];
        int[] kindOf = new int[n];
        for (int i = 0; i < n; i++) {
            LayPiece shape = shapes[items[i].shape];
            keys[0][i] = shape.area;
            keys[1][i] = shape.length();
            keys[2][i] = shape.width();
            keys[3][i] = shape.length() * shape.width();
            keys[4][i] = shape.length() + shape.width();
            while (kinds.get(kindOf[i]) != items[i]) {
                kindOf[i]++;
            }
        }
        List<int[]> sequences = new ArrayList<>();
        for (double[] key : keys) {
            // Stable: equal ones keep their order.
            int[] sequence = IntStream.range(0, n)
                    .boxed()
                    .sorted((a, b) -> Double.compare(key[b], key[a]))
                    .mapToInt(i -> laid(kindOf[i], ANY_FLIP))
                    .toArray();
            if (sequences.stream().noneMatch(known -> Arrays.equals(known, sequence))) {
                sequences.add(sequence);
            }
        }
        return sequences;
    }

    /**
     * Fills the strip in a given order, of which what comes before a position is already laid; gives up, with infinite length, as soon as the lay is longer
     * than {@code limit}.
     */
    private void fill(List<Item> kinds, int from, Solution into, double limit) {
        double length = 0;
        into.length = Double.POSITIVE_INFINITY;
        for (int k = 0; k < from; k++) {
            shapeAt[k] = kinds.get(kind(into.sequence[k])).shape;
            length = Math.max(length, into.x[k] + shapes[shapeAt[k]].rightOf(into.flip[k]));
        }
        for (int k = from; k < into.sequence.length; k++) {
            Item item = kinds.get(kind(into.sequence[k]));
            int forced = flip(into.sequence[k]);
            shapeAt[k] = item.shape;
            LayPiece shape = shapes[item.shape];
            double bestScore = Double.POSITIVE_INFINITY;
            double bestTop = Double.POSITIVE_INFINITY;
            double bestX = 0;
            double bestY = 0;
            int bestFlip = -1;
            for (int flip : item.flips) {
                if (forced != ANY_FLIP && forced != flip) {
                    continue;
                }
                double offset = switch (into.reach) {
                    case RIGHT_END -> shape.rightOf(flip);
                    case LEFT_END -> shape.leftOf(flip);
                    case CENTRE -> (shape.rightOf(flip) + shape.leftOf(flip)) / 2;
                };
                double lowest = item.onFold ? -shape.lowOf(flip) : margin - shape.lowOf(flip);
                double highest = item.onFold ? lowest : width - shape.highOf(flip);
                lookUp(k, item.shape, flip, into);
                int count = candidates(k, item.shape, flip, lowest, highest, into);
                double flipX = Double.POSITIVE_INFINITY;
                double flipY = 0;
                int flipAt = -1;
                for (int h = 0; h < count; h++) {
                    double most = Math.min(bestScore - offset + 2 * LEVEL, flipX) - LEVEL;
                    double x = leastX(k, item.shape, flip, heights[h], most, into);
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
                        double atLower = leastX(k, item.shape, flip, lower, flipX - LEVEL, into);
                        double atUpper = leastX(k, item.shape, flip, upper, Math.min(atLower, flipX) - LEVEL, into);
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
            into.x[k] = bestX;
            into.y[k] = bestY;
            into.flip[k] = bestFlip;
            length = Math.max(length, bestX + shape.rightOf(bestFlip));
            if (length > limit) {
                return;
            }
        }
        into.length = length;
    }

    /** Looks up how the regions of what is laid already stand to a shape. */
    private void lookUp(int k, int shape, int flip, Solution into) {
        for (int p = 0; p < k; p++) {
            regions[p] = table.region(shapeAt[p], into.flip[p], shape, flip);
            flipsX[p] = table.flipsX();
            flipsY[p] = table.flipsY();
        }
    }

    /** Collects, sorted, the heights at which a place may be least: the ends of the range and those where a no-fit region changes. */
    private int candidates(int k, int shape, int flip, double lowest, double highest, Solution into) {
        heights[0] = lowest;
        if (highest <= lowest) {
            return 1; // on the fold, or just as wide as the cloth
        }
        heights[1] = highest;
        int count = 2;
        if (k > 0) {
            // Between the turns of single regions, edges of two regions may cross: a coarse comb finds about where.
            for (int i = 1; i < COMB; i++) {
                heights[count++] = lowest + (highest - lowest) * i / COMB;
            }
        }
        for (int p = 0; p < k; p++) {
            boolean down = flipsY[p];
            double[] turns = flipsX[p] ? regions[p].turnsLeft() : regions[p].turnsRight();
            int n = turns.length;
            if (count + n > heights.length) {
                heights = Arrays.copyOf(heights, 2 * (count + n));
            }
            for (int i = 0; i < n; i++) {
                double y = turns[i];
                double height = into.y[p] + (down ? -y : y);
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
    private double leastX(int k, int shape, int flip, double y, double limit, Solution into) {
        work++;
        double x = -shapes[shape].leftOf(flip);
        if (x >= limit) {
            return Double.POSITIVE_INFINITY;
        }
        int n = 0;
        for (int p = 0; p < k; p++) {
            NoFit region = regions[p];
            double dy = y - into.y[p];
            int most = region.mostNumbers();
            if (stretch.length < most) {
                stretch = new double[most];
            }
            int m = region.forbidden(flipsY[p] ? -dy : dy, stretch);
            work += m == 0 ? 0 : 1;
            if (n + m > blocked.length) {
                blocked = Arrays.copyOf(blocked, 2 * (n + m));
            }
            double at = into.x[p];
            boolean back = flipsX[p];
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
