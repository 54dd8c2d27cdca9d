package org.capwright.check;

import java.util.Arrays;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.QRDecomposition;
import org.apache.commons.math3.linear.RealVector;

/**
 * A row of figures held against even growth: a straight line over the sizes, or two that meet at a size where the rule breaks, each over two jumps or more. A size is an outlier when the
 * sizes about it follow such a line well without it and it lies off that line. Of several sizes that would explain the unevenness the one that lies off least is taken: it asks for the smallest
 * slip. Least squares in a window of seven sizes, so that a long run may break more than once.
 */
final class EvenGrowth {

    private static final int WINDOW = 7;
    /** How much rougher than the departure itself the rest may be. */
    private static final double ROUGH = 0.3;

    /** The others lie on one line where the rest is this much rougher than the departure at most. */
    private static final double STRAIGHT = 0.03;

    private static final double FIRST = 1e6;

    /** A row as smooth as this has no break, mm or share. */
    private static final double SMOOTH = 1e-6;

    private final double[] values;
    private final double[] places;
    /** Whether the figures were measured on outlines, where no rule is known that could break. */
    private final boolean measured;

    private EvenGrowth(double[] values, double[] places, boolean measured) {
        this.values = values;
        this.places = places;
        this.measured = measured;
    }

    /**
     * A size off the line.
     *
     * @param size its position in the run
     * @param value its figure
     * @param expected what the line says
     * @param atEnd whether it is the first or last of the row, where the line can only be continued
     */
    record Outlier(int size, double value, double expected, boolean atEnd) {}

    private record Fit(double roughness, double expected, boolean broken) {}

    static EvenGrowth of(CheckedGrade grade, CheckedMeasure measure) {
        int[] known = IntStream.range(0, grade.sizes().size())
                .filter(i -> grade.value(i, measure).isPresent())
                .toArray();
        return new EvenGrowth(
                Arrays.stream(known)
                        .mapToDouble(i -> grade.value(i, measure).orElseThrow())
                        .toArray(),
                Arrays.stream(known).mapToDouble(i -> i).toArray(),
                grade.isMeasured());
    }

    EvenGrowth without(int size) {
        int[] rest =
                IntStream.range(0, places.length).filter(i -> places[i] != size).toArray();
        return new EvenGrowth(
                Arrays.stream(rest).mapToDouble(i -> values[i]).toArray(),
                Arrays.stream(rest).mapToDouble(i -> places[i]).toArray(),
                measured);
    }

    Optional<Outlier> outlier(double limit, double endLimit) {
        int n = values.length;
        Optional<Outlier> best = Optional.empty();
        if (n < 3 || isEven(limit)) {
            return best;
        }
        double leastOff = Double.POSITIVE_INFINITY;
        for (int i = 0; i < n; i++) {
            boolean end = i == 0 || i == n - 1;
            int from = Math.max(0, Math.min(i - WINDOW / 2, n - WINDOW));
            int to = Math.min(n, from + WINDOW);
            Fit fit = fit(from, to, i);
            double off = Math.abs(values[i] - fit.expected);
            // All others on one straight line: nothing explains it better, however far this one lies off.
            double rank =
                    measured && !fit.broken && fit.roughness < STRAIGHT * off && to - from > 4 ? off - FIRST : off;
            if (off > (end ? endLimit : limit) && fit.roughness < ROUGH * off && rank < leastOff - 1e-9) {
                leastOff = rank;
                best = Optional.of(new Outlier((int) places[i], values[i], fit.expected, end));
            }
        }
        return best;
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

    /** The best fit to a window without one size: over no break and every allowed one. */
    private Fit fit(int from, int to, int without) {
        Fit best = fit(from, to, without, OptionalDouble.empty());
        for (int knot = Math.max(2, from + 1); knot <= Math.min(values.length - 3, to - 2); knot++) {
            if (to - from - 1 >= 4) {
                Fit broken = fit(from, to, without, OptionalDouble.of(places[knot]));
                // A break is believed only if it makes the line a good deal better.
                best = broken.roughness < 0.5 * best.roughness && best.roughness > SMOOTH ? broken : best;
            }
        }
        return best;
    }

    private Fit fit(int from, int to, int without, OptionalDouble knot) {
        int rows = to - from - 1;
        double[][] design = new double[rows][];
        double[] known = new double[rows];
        int row = 0;
        for (int i = from; i < to; i++) {
            if (i != without) {
                design[row] = terms(places[i], knot);
                known[row++] = values[i];
            }
        }
        Array2DRowRealMatrix matrix = new Array2DRowRealMatrix(design, false);
        QRDecomposition decomposition = new QRDecomposition(matrix, 1e-9);
        if (!decomposition.getSolver().isNonSingular()) {
            return new Fit(Double.POSITIVE_INFINITY, values[without], false);
        }
        RealVector observed = new ArrayRealVector(known, false);
        RealVector coefficients = decomposition.getSolver().solve(observed);
        RealVector residual = matrix.operate(coefficients).subtract(observed);
        double expected = new ArrayRealVector(terms(places[without], knot), false).dotProduct(coefficients);
        return new Fit(residual.getNorm() / Math.sqrt(rows), expected, knot.isPresent());
    }

    private static double[] terms(double place, OptionalDouble knot) {
        return knot.isPresent()
                ? new double[] {1, place, Math.max(0, place - knot.getAsDouble())}
                : new double[] {1, place};
    }
}
