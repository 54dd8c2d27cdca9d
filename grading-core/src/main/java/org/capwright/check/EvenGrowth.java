package org.capwright.check;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.IntStream;

/**
 * A row of figures compared with even growth: a straight line over the sizes, or two that meet at a size where the rule breaks, each over two jumps or more. A size is an outlier when the
 * sizes about it follow such a line well without it and it lies off that line. Of several sizes that would explain the unevenness the one is taken without which the row is smoothest. Least squares in a window of seven sizes, so that a long run may break more than once.
 */
final class EvenGrowth {

    private static final int WINDOW = 7;
    /** How much rougher than the departure itself the rest may be. */
    private static final double ROUGH = 0.3;
    /** A departure below this share of the limit is no unevenness. */
    private static final double MEANT = 0.25;
    /** A row as smooth as this has no break, mm. */
    private static final double SMOOTH = 1e-6;
    /** Half a step of 3 mm, mm. */
    private static final double COARSE = 1.5;
    /** Figures are written no finer than this, mm. */
    private static final double FINEST = 0.25;

    /** Columns so much alike tell nothing apart. */
    private static final double SINGULAR = 1e-12;

    private final double[] values;
    private final double[] places;
    private final double[] leeways;

    private EvenGrowth(double[] values, double[] places, double[] leeways) {
        this.values = values;
        this.places = places;
        this.leeways = leeways;
    }

    /**
     * A size off the line.
     *
     * @param size its position in the run
     * @param value its figure
     * @param expected what the line says
     * @param atEnd whether it is the first or last of the row, where the line can only be continued
     * @param slip the least slip, of this size or another, that would explain the row: a row is no worse than its mildest explanation
     */
    record Outlier(int size, double value, double expected, boolean atEnd, double slip) {

        Outlier milder(Optional<Outlier> other) {
            return new Outlier(
                    size,
                    value,
                    expected,
                    atEnd,
                    Math.min(slip, other.map(Outlier::slip).orElse(slip)));
        }
    }

    private record Fit(double roughness, double expected) {}

    static EvenGrowth of(CheckedGrade grade, CheckedMeasure measure) {
        int[] known = IntStream.range(0, grade.sizes().size())
                .filter(i -> grade.value(i, measure).isPresent())
                .toArray();
        return new EvenGrowth(
                Arrays.stream(known)
                        .mapToDouble(i -> grade.value(i, measure).orElseThrow())
                        .toArray(),
                Arrays.stream(known).mapToDouble(i -> i).toArray(),
                Arrays.stream(known).mapToDouble(i -> grade.leeway(i, measure)).toArray());
    }

    /** A row that stands by itself and is not rounded. */
    static EvenGrowth of(List<Double> row) {
        return new EvenGrowth(
                row.stream().mapToDouble(Double::doubleValue).toArray(),
                IntStream.range(0, row.size()).mapToDouble(i -> i).toArray(),
                new double[row.size()]);
    }

    EvenGrowth without(int size) {
        int[] rest =
                IntStream.range(0, places.length).filter(i -> places[i] != size).toArray();
        return new EvenGrowth(
                Arrays.stream(rest).mapToDouble(i -> values[i]).toArray(),
                Arrays.stream(rest).mapToDouble(i -> places[i]).toArray(),
                Arrays.stream(rest).mapToDouble(i -> leeways[i]).toArray());
    }

    /** Whether all figures but one at most follow an even growth within a leeway. */
    boolean isEvenButForOne(double leeway) {
        double room = Math.max(leeway, FINEST);
        if (values.length < 4 || isEven(2 * room)) {
            return true;
        }
        int n = values.length;
        return IntStream.range(0, n).anyMatch(i -> {
            int from = Math.max(0, Math.min(i - WINDOW / 2, n - WINDOW));
            return fit(from, Math.min(n, from + WINDOW), i, 1).roughness <= room;
        });
    }

    /** Whether the figures are rounded so coarsely that a break of the rule and a slip look alike. */
    boolean isCoarse() {
        return Arrays.stream(leeways).max().orElse(0) >= COARSE;
    }

    /** Whether there are figures enough to show growth. */
    boolean isRow() {
        return values.length > 2;
    }

    /** Whether a straight line passes all figures within their leeway. */
    boolean isStraight() {
        return values.length < 3 || new RoundedLine(values, places, leeways, 0, values.length, -1).passes(0);
    }

    /**
     * The size that is off, if any.
     *
     * @param breaks how often the rule may break within a window, 0 or 1
     */
    Optional<Outlier> outlier(double limit, double endLimit, int breaks) {
        if (values.length < 3 || isEven(limit)) {
            return Optional.empty();
        }
        double[] rooms =
                Arrays.stream(leeways).map(l -> Math.max(l, limit * MEANT)).toArray();
        // A slip in a straight row is likelier than a slip beside a break of the rule.
        Optional<Outlier> straight = outlier(limit, endLimit, rooms, 0, breaks);
        if (breaks == 0) {
            return straight;
        }
        Optional<Outlier> broken = outlier(limit, endLimit, rooms, 1, breaks);
        return straight.map(off -> off.milder(broken)).or(() -> broken);
    }

    private Optional<Outlier> outlier(double limit, double endLimit, double[] rooms, int breaks, int most) {
        int n = values.length;
        Optional<Outlier> best = Optional.empty();
        double least = Double.POSITIVE_INFINITY;
        double slip = Double.POSITIVE_INFINITY;
        for (int i = 0; i < n; i++) {
            boolean end = i == 0 || i == n - 1;
            int from = Math.max(0, Math.min(i - WINDOW / 2, n - WINDOW));
            int to = Math.min(n, from + WINDOW);
            Fit fit = fit(from, to, i, breaks);
            double off = Math.abs(values[i] - fit.expected);
            double room = end ? endLimit : limit;
            boolean within = off <= room || Math.abs(values[i] - fit(from, to, i, most).expected) <= room;
            if (within || new RoundedLine(values, places, rooms, from, to, -1).passes(most)) {
                continue;
            }
            boolean explained =
                    fit.roughness < ROUGH * off || new RoundedLine(values, places, leeways, from, to, i).passes(breaks);
            // The one whose absence leaves the smoothest row; of equals, the one that asks for the smallest slip.
            double score = fit.roughness / off + 1e-6 * off;
            slip = explained ? Math.min(slip, off) : slip;
            if (explained && score < least) {
                least = score;
                best = Optional.of(new Outlier((int) places[i], values[i], fit.expected, end, off));
            }
        }
        double mildest = slip;
        return best.map(found -> new Outlier(found.size, found.value, found.expected, found.atEnd, mildest));
    }

    /** What a size would measure by the sizes about it: on one straight line, and on two that meet. Empty where there are too few. */
    double[] expected(int size) {
        int n = values.length;
        for (int i = 0; i < n && n > 2; i++) {
            if (places[i] == size) {
                int from = Math.max(0, Math.min(i - WINDOW / 2, n - WINDOW));
                int to = Math.min(n, from + WINDOW);
                return new double[] {fit(from, to, i, 0).expected, fit(from, to, i, 1).expected};
            }
        }
        return new double[0];
    }

    /** An outlier by d makes a second difference of d or more; most rows have none and need no fitting. */
    private boolean isEven(double limit) {
        for (int i = 1; i < values.length - 1; i++) {
            double before = (values[i] - values[i - 1]) / (places[i] - places[i - 1]);
            double after = (values[i + 1] - values[i]) / (places[i + 1] - places[i]);
            if (Math.abs(after - before) > limit) {
                return false;
            }
        }
        return true;
    }

    /** The best fit to a window without one size: over no break and, where the rule may break, every allowed one. */
    private Fit fit(int from, int to, int without, int breaks) {
        Fit best = fit(from, to, without, OptionalDouble.empty());
        for (int knot = Math.max(2, from + 1); knot <= Math.min(values.length - 3, to - 2); knot++) {
            if (to - from - 1 >= 4 && breaks > 0) {
                Fit broken = fit(from, to, without, OptionalDouble.of(places[knot]));
                // A break is believed only if it makes the line a good deal better.
                best = broken.roughness < 0.5 * best.roughness && best.roughness > SMOOTH ? broken : best;
            }
        }
        return best;
    }

    /** Least squares by Gram-Schmidt: from figures and columns is taken what the columns before explain. */
    private Fit fit(int from, int to, int without, OptionalDouble knot) {
        double[] here = terms(places[without], knot);
        double[][] columns = new double[here.length][to - from - 1];
        double[] left = new double[to - from - 1];
        int row = 0;
        for (int i = from; i < to; i++) {
            if (i != without) {
                double[] terms = terms(places[i], knot);
                for (int c = 0; c < terms.length; c++) {
                    columns[c][row] = terms[c];
                }
                left[row++] = values[i];
            }
        }
        double expected = 0;
        for (int c = 0; c < columns.length; c++) {
            double norm = dot(columns[c], columns[c]);
            if (norm < SINGULAR) {
                return new Fit(Double.POSITIVE_INFINITY, values[without]);
            }
            for (int later = c + 1; later < columns.length; later++) {
                double share = dot(columns[c], columns[later]) / norm;
                take(columns[later], share, columns[c]);
                here[later] -= share * here[c];
            }
            double share = dot(columns[c], left) / norm;
            take(left, share, columns[c]);
            expected += share * here[c];
        }
        return new Fit(Math.sqrt(dot(left, left) / left.length), expected);
    }

    private static double dot(double[] a, double[] b) {
        double sum = 0;
        for (int i = 0; i < a.length; i++) {
            sum += a[i] * b[i];
        }
        return sum;
    }

    private static void take(double[] from, double share, double[] column) {
        for (int i = 0; i < from.length; i++) {
            from[i] -= share * column[i];
        }
    }

    private static double[] terms(double place, OptionalDouble knot) {
        return knot.isPresent()
                ? new double[] {1, place, Math.max(0, place - knot.getAsDouble())}
                : new double[] {1, place};
    }
}
