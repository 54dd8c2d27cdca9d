package org.capwright.draft;

import java.util.Arrays;
import java.util.Optional;

/**
 * The shortest vector that meets a set of linear inequalities, by the method of C. L. Lawson and R. J. Hanson, Solving Least Squares Problems (1974),
 * chapter 23: LDP is reduced to non-negative least squares (NNLS), which an active set finds in finitely many steps.
 */
final class LeastDistance {

    private static final double TOLERANCE = 1e-11;

    /** Where less than this is left of f, no vector meets all the inequalities. */
    private static final double NOTHING = 1e-9;

    private final double[][] columns;
    private final int height;
    private final double[] weights;
    private final boolean[] passive;
    private final double[] residual;

    private LeastDistance(double[][] columns) {
        this.columns = columns;
        this.height = columns[0].length;
        this.weights = new double[columns.length];
        this.passive = new boolean[columns.length];
        this.residual = new double[height];
    }

    /**
     * Minimises |z| subject to rows · z ≥ least.
     *
     * @param rows one row per inequality, all of one length
     * @param least the right-hand sides
     * @return z, or nothing if no vector meets all the inequalities
     */
    static Optional<double[]> solve(double[][] rows, double[] least) {
        int size = rows[0].length;
        double[][] columns = new double[rows.length][];
        for (int i = 0; i < rows.length; i++) {
            double[] column = Arrays.copyOf(rows[i], size + 1);
            column[size] = least[i];
            double norm = norm(column);
            for (int j = 0; j <= size; j++) {
                column[j] /= norm;
            }
            columns[i] = column;
        }
        LeastDistance problem = new LeastDistance(columns);
        problem.minimise();
        double last = problem.residual[size];
        if (last < NOTHING) {
            return Optional.empty();
        }
        double[] z = new double[size];
        for (int j = 0; j < size; j++) {
            z[j] = -problem.residual[j] / last;
        }
        return Optional.of(z);
    }

    /** NNLS for |E u - f| with f = (0, …, 0, 1); leaves f - E u in the residual. Its last entry is the square of its length, which only shrinks: where that is nothing, it ends, for what rounding leaves would go round in circles. */
    private void minimise() {
        residual[height - 1] = 1;
        for (int round = 0; round < 10 * columns.length && residual[height - 1] >= NOTHING; round++) {
            int entering = -1;
            double steepest = TOLERANCE;
            for (int i = 0; i < columns.length; i++) {
                if (!passive[i]) {
                    double gradient = dot(columns[i], residual);
                    if (gradient > steepest) {
                        steepest = gradient;
                        entering = i;
                    }
                }
            }
            if (entering < 0) {
                return;
            }
            passive[entering] = true;
            settle();
        }
    }

    /** Moves to the least-squares solution on the passive columns, dropping those that would turn negative on the way. */
    private void settle() {
        while (true) {
            double[] target = leastSquares();
            double step = 1;
            for (int i = 0; i < columns.length; i++) {
                if (passive[i] && target[i] <= 0) {
                    step = Math.min(step, weights[i] / (weights[i] - target[i] + 1e-300));
                }
            }
            boolean dropped = false;
            for (int i = 0; i < columns.length; i++) {
                if (passive[i]) {
                    weights[i] += step * (target[i] - weights[i]);
                    if (target[i] <= 0 && weights[i] <= TOLERANCE) {
                        weights[i] = 0;
                        passive[i] = false;
                        dropped = true;
                    }
                }
            }
            if (!dropped) {
                break;
            }
        }
        Arrays.fill(residual, 0);
        residual[height - 1] = 1;
        for (int i = 0; i < columns.length; i++) {
            if (weights[i] != 0) {
                for (int j = 0; j < height; j++) {
                    residual[j] -= weights[i] * columns[i][j];
                }
            }
        }
    }

    /** Least squares on the passive columns by modified Gram-Schmidt, twice for accuracy. */
    private double[] leastSquares() {
        int[] order = new int[columns.length];
        int count = 0;
        for (int i = 0; i < columns.length; i++) {
            if (passive[i]) {
                order[count++] = i;
            }
        }
        double[][] basis = new double[count][];
        double[][] upper = new double[count][count];
        double[] right = new double[count];
        for (int a = 0; a < count; a++) {
            double[] vector = columns[order[a]].clone();
            for (int pass = 0; pass < 2; pass++) {
                for (int b = 0; b < a; b++) {
                    double part = dot(basis[b], vector);
                    upper[b][a] += part;
                    for (int j = 0; j < height; j++) {
                        vector[j] -= part * basis[b][j];
                    }
                }
            }
            double norm = norm(vector);
            upper[a][a] = norm;
            for (int j = 0; j < height; j++) {
                vector[j] = norm > 1e-13 ? vector[j] / norm : 0;
            }
            basis[a] = vector;
            right[a] = vector[height - 1];
        }
        double[] solution = new double[columns.length];
        for (int a = count - 1; a >= 0; a--) {
            double sum = right[a];
            for (int b = a + 1; b < count; b++) {
                sum -= upper[a][b] * solution[order[b]];
            }
            solution[order[a]] = upper[a][a] > 1e-13 ? sum / upper[a][a] : 0;
        }
        return solution;
    }

    private static double dot(double[] a, double[] b) {
        double sum = 0;
        for (int j = 0; j < a.length; j++) {
            sum += a[j] * b[j];
        }
        return sum;
    }

    private static double norm(double[] a) {
        return Math.sqrt(dot(a, a));
    }
}
