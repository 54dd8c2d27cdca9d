package org.capwright.lay;

import java.util.Arrays;

/**
 * The no-fit region of two polygons: every vector by which the second may be moved so that its interior meets the interior of the first. It is the
 * Minkowski sum of the first and the second turned by half a turn. It is kept as horizontal slabs, each with the pairs of edges between which a vector is
 * forbidden, so that the forbidden stretch at one height is found by a binary search.
 *
 * <p>Method: the convolution of the two outlines (Guibas, Ramshaw, Stolfi, A kinetic framework for computational geometry, 1983) is a closed line whose
 * winding number about a vector is the number of parts in which the two polygons overlap there; a slab's forbidden stretches are those of winding number
 * above 0. Slabs end at the corners of the convolution and where two of its edges cross.
 */
final class NoFit {

    /** Heights and places closer than this, mm, are taken as one: far above the rounding of lengths of 100 m, far below anything that can be cut. */
    static final double TOUCH = 2e-10;

    private static final double SAME = 1e-9;

    // Edges of the convolution, upwards: x at the lower end, slope dx/dy, bounds.
    private double[] lowX = new double[64];
    private double[] lowY = new double[64];
    private double[] highX = new double[64];
    private double[] highY = new double[64];
    private int[] winding = new int[64];
    private int edges;

    // Slab s reaches from bottom[s] to bottom[s + 1]; its stretches are pairs of edges from first[s] to first[s + 1].
    private double[] bottom = new double[64];
    private int[] first = new int[64];
    private int[] pairs = new int[128];
    private int slabs;

    private double[] turnsRight = new double[0];
    private double[] turnsLeft = new double[0];
    private int mostNumbers;

    private NoFit() {}

    /** The no-fit region of a fixed polygon and a moving one, both counter-clockwise rings x0, y0, x1, y1, ... */
    static NoFit of(double[] fixed, double[] moving) {
        NoFit region = new NoFit();
        double[] turned = new double[moving.length];
        for (int i = 0; i < moving.length; i++) {
            turned[i] = 0.0 - moving[i];
        }
        region.convolve(fixed, turned);
        region.cutIntoSlabs();
        region.turnsRight = region.turns(1);
        region.turnsLeft = region.turns(-1);
        int most = 0;
        for (int i = 0; i < region.slabs; i++) {
            most = Math.max(most, region.first[i + 1] - region.first[i]);
        }
        region.mostNumbers = 2 * most + 4;
        return region;
    }

    private void convolve(double[] p, double[] q) {
        double[] directionP = directions(p);
        double[] directionQ = directions(q);
        sweep(p, directionP, q, directionQ, Ties.EDGE_TURNED_BACK);
        sweep(q, directionQ, p, directionP, Ties.EDGE_TURNED_ON);
    }

    /** Parallel edges: the edges of the first polygon count as turned by the least bit clockwise, so that each meets exactly one corner. */
    private enum Ties {
        EDGE_TURNED_BACK,
        EDGE_TURNED_ON
    }

    private static double[] directions(double[] ring) {
        int n = ring.length / 2;
        double[] directions = new double[n];
        for (int i = 0; i < n; i++) {
            int k = (i + 1) % n;
            // Adding zero turns -0.0 into 0.0, so that the direction of -x is always +pi.
            directions[i] = Math.atan2(ring[2 * k + 1] - ring[2 * i + 1] + 0.0, ring[2 * k] - ring[2 * i] + 0.0);
        }
        return directions;
    }

    /** Moves every edge of one ring over those corners of the other whose turn passes the edge's direction; at reflex corners backwards. */
    private void sweep(double[] ring, double[] directions, double[] corners, double[] cornerDirections, Ties ties) {
        int n = ring.length / 2;
        int m = corners.length / 2;
        for (int j = 0; j < m; j++) {
            double in = cornerDirections[(j + m - 1) % m];
            double out = cornerDirections[j];
            double turn = out - in;
            if (turn > Math.PI) {
                turn -= 2 * Math.PI;
            } else if (turn <= -Math.PI) {
                turn += 2 * Math.PI;
            }
            if (turn == 0) {
                continue;
            }
            double from = turn > 0 ? in : out;
            double to = turn > 0 ? out : in;
            for (int i = 0; i < n; i++) {
                if (!passes(directions[i], from, to, ties)) {
                    continue;
                }
                int k = (i + 1) % n;
                double x0 = ring[2 * i] + corners[2 * j];
                double y0 = ring[2 * i + 1] + corners[2 * j + 1];
                double x1 = ring[2 * k] + corners[2 * j];
                double y1 = ring[2 * k + 1] + corners[2 * j + 1];
                if (turn > 0) {
                    add(x0, y0, x1, y1);
                } else {
                    add(x1, y1, x0, y0);
                }
            }
        }
    }

    private static boolean passes(double direction, double from, double to, Ties ties) {
        boolean afterFrom = ties == Ties.EDGE_TURNED_BACK ? direction > from : direction >= from;
        boolean beforeTo = ties == Ties.EDGE_TURNED_BACK ? direction <= to : direction < to;
        return from < to ? afterFrom && beforeTo : afterFrom || beforeTo;
    }

    private void add(double x0, double y0, double x1, double y1) {
        if (y0 == y1) {
            return;
        }
        if (edges == winding.length) {
            int size = 2 * edges;
            lowX = Arrays.copyOf(lowX, size);
            lowY = Arrays.copyOf(lowY, size);
            highX = Arrays.copyOf(highX, size);
            highY = Arrays.copyOf(highY, size);
            winding = Arrays.copyOf(winding, size);
        }
        boolean up = y1 > y0;
        lowX[edges] = up ? x0 : x1;
        lowY[edges] = up ? y0 : y1;
        highX[edges] = up ? x1 : x0;
        highY[edges] = up ? y1 : y0;
        // Seen from the left, the inside of a counter-clockwise ring begins at a downward edge.
        winding[edges] = up ? -1 : 1;
        edges++;
    }

    private double at(int edge, double y) {
        double x0 = lowX[edge];
        double x1 = highX[edge];
        if (x0 == x1 || y <= lowY[edge]) {
            return x0;
        }
        if (y >= highY[edge]) {
            return x1;
        }
        return x0 + (x1 - x0) * ((y - lowY[edge]) / (highY[edge] - lowY[edge]));
    }

    private void cutIntoSlabs() {
        double[] heights = new double[2 * edges];
        System.arraycopy(lowY, 0, heights, 0, edges);
        System.arraycopy(highY, 0, heights, edges, edges);
        Arrays.sort(heights);
        int distinct = 0;
        for (double height : heights) {
            if (distinct == 0 || height > heights[distinct - 1] + SAME) {
                heights[distinct++] = height;
            }
        }
        int[] byLow = sortedByLow();
        int[] active = new int[edges];
        int live = 0;
        int entering = 0;
        double[] atBottom = new double[edges];
        double[] atTop = new double[edges];
        double[] crossings = new double[32];
        for (int s = 0; s + 1 < distinct; s++) {
            double y0 = heights[s];
            double y1 = heights[s + 1];
            int kept = 0;
            for (int i = 0; i < live; i++) {
                if (highY[active[i]] >= y1 - SAME) {
                    active[kept++] = active[i];
                }
            }
            live = kept;
            while (entering < edges && lowY[byLow[entering]] <= y0 + SAME) {
                int edge = byLow[entering++];
                if (highY[edge] >= y1 - SAME) {
                    active[live++] = edge;
                }
            }
            sortByX(active, live, y0 + (y1 - y0) * 1e-3, atBottom);
            for (int i = 0; i < live; i++) {
                atBottom[i] = at(active[i], y0);
                atTop[i] = at(active[i], y1);
            }
            int crossed = 0;
            for (int i = 0; i < live; i++) {
                for (int j = i + 1; j < live; j++) {
                    double below = atBottom[j] - atBottom[i];
                    double above = atTop[i] - atTop[j];
                    if (below > SAME && above > SAME) {
                        if (crossed == crossings.length) {
                            crossings = Arrays.copyOf(crossings, 2 * crossed);
                        }
                        crossings[crossed++] = y0 + (y1 - y0) * (below / (below + above));
                    }
                }
            }
            Arrays.sort(crossings, 0, crossed);
            double from = y0;
            for (int c = 0; c < crossed; c++) {
                double to = crossings[c];
                if (to > from + SAME && to < y1 - SAME) {
                    addSlab(from, active, live, (from + to) / 2, atBottom);
                    from = to;
                }
            }
            addSlab(from, active, live, (from + y1) / 2, atBottom);
        }
        close(heights[distinct - 1], first[slabs]);
    }

    private int[] sortedByLow() {
        Integer[] order = new Integer[edges];
        for (int i = 0; i < edges; i++) {
            order[i] = i;
        }
        Arrays.sort(order, (a, b) -> Double.compare(lowY[a], lowY[b]));
        int[] sorted = new int[edges];
        for (int i = 0; i < edges; i++) {
            sorted[i] = order[i];
        }
        return sorted;
    }

    private void sortByX(int[] active, int live, double y, double[] x) {
        for (int i = 0; i < live; i++) {
            x[i] = at(active[i], y);
        }
        for (int i = 1; i < live; i++) { // nearly sorted from the slab below
            int edge = active[i];
            double place = x[i];
            int j = i - 1;
            while (j >= 0 && x[j] > place) {
                x[j + 1] = x[j];
                active[j + 1] = active[j];
                j--;
            }
            x[j + 1] = place;
            active[j + 1] = edge;
        }
    }

    private void addSlab(double from, int[] active, int live, double middle, double[] x) {
        sortByX(active, live, middle, x);
        int start = first[slabs];
        int count = start;
        int sum = 0;
        int left = -1;
        for (int i = 0; i < live; i++) {
            int before = sum;
            sum += winding[active[i]];
            if (before <= 0 && sum > 0) {
                // Stretches that touch are one: what fits between them only exactly is not looked for.
                if (count > start && at(pairs[count - 1], middle) >= x[i] - SAME) {
                    left = pairs[count - 2];
                    count -= 2;
                } else {
                    left = active[i];
                }
            } else if (before > 0 && sum <= 0) {
                if (count + 2 > pairs.length) {
                    pairs = Arrays.copyOf(pairs, 2 * pairs.length);
                }
                pairs[count++] = left;
                pairs[count++] = active[i];
            }
        }
        if (slabs > 0
                && count - start == start - first[slabs - 1]
                && Arrays.equals(pairs, first[slabs - 1], start, pairs, start, count)) {
            return; // the slab below simply goes on
        }
        close(from, count);
    }

    /** Notes where the slab in work begins and where its pairs end, and opens the next one. */
    private void close(double from, int count) {
        if (slabs + 2 > bottom.length) {
            bottom = Arrays.copyOf(bottom, 2 * bottom.length);
            first = Arrays.copyOf(first, 2 * first.length);
        }
        bottom[slabs] = from;
        slabs++;
        first[slabs] = count;
    }

    /** The heights at which the right ends (side 1) or the left ends (side -1) of stretches are least far out, or a stretch begins, ends or divides. */
    private double[] turns(int side) {
        double[] heights = new double[slabs];
        int count = 0;
        for (int s = 0; s < slabs; s++) {
            if (s == 0 || s == slabs - 1 || turns(s, side)) {
                heights[count++] = bottom[s];
            }
        }
        return Arrays.copyOf(heights, count);
    }

    private boolean turns(int slab, int side) {
        int below = first[slab - 1];
        int above = first[slab];
        int numbers = first[slab + 1] - above;
        if (above - below != numbers) {
            return true;
        }
        double y = bottom[slab];
        for (int i = 0; i < numbers; i++) {
            int lower = pairs[below + i];
            int upper = pairs[above + i];
            if (Math.abs(at(lower, y) - at(upper, y)) > 1e-6) {
                return true;
            }
            boolean rightEnd = (i & 1) == 1;
            if (rightEnd == (side > 0)) {
                double before = side * (highX[lower] - lowX[lower]);
                double after = side * (highX[upper] - lowX[upper]);
                if ((before < 0 && after >= 0) || (before <= 0 && after > 0)) {
                    return true;
                }
            }
        }
        return false;
    }

    /** The heights worth trying from the right of the region: ascending. */
    double[] turnsRight() {
        return turnsRight;
    }

    /** The heights worth trying from the left of the region: ascending. */
    double[] turnsLeft() {
        return turnsLeft;
    }

    /**
     * The forbidden stretches at a height, written to {@code out} as from, to, from, to, ... each an open interval. At a height where slabs meet, only what
     * both forbid is forbidden: the rest is the region's edge, where the polygons merely touch.
     *
     * @return how many numbers were written
     */
    int forbidden(double y, double[] out) {
        int last = slabs - 1; // the highest height ends the last slab
        if (y <= bottom[0] + TOUCH || y >= bottom[last] - TOUCH) {
            return 0;
        }
        int low = 0;
        int high = last;
        while (high - low > 1) {
            int middle = (low + high) >>> 1;
            if (bottom[middle] <= y) {
                low = middle;
            } else {
                high = middle;
            }
        }
        int other = -1;
        if (y - bottom[low] <= TOUCH) {
            other = low - 1;
        } else if (bottom[low + 1] - y <= TOUCH) {
            other = low + 1;
        }
        int n = 0;
        for (int p = first[low]; p < first[low + 1]; p += 2) {
            double from = at(pairs[p], y);
            double to = at(pairs[p + 1], y);
            if (other < 0) {
                out[n++] = from;
                out[n++] = to;
                continue;
            }
            for (int r = first[other]; r < first[other + 1]; r += 2) {
                double start = Math.max(from, at(pairs[r], y));
                double end = Math.min(to, at(pairs[r + 1], y));
                if (start < end) {
                    out[n++] = start;
                    out[n++] = end;
                }
            }
        }
        return n;
    }

    /** The most numbers that {@link #forbidden} can write. */
    int mostNumbers() {
        return mostNumbers;
    }
}
