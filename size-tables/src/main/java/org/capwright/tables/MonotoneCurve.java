package org.capwright.tables;

/**
 * Piecewise cubic through given points that is monotone wherever the points are, and never overshoots them.
 *
 * <p>Slopes by the weighted harmonic mean of Fritsch and Butland, "A method for constructing local monotone piecewise
 * cubic interpolants", SIAM J. Sci. Stat. Comput. 5 (1984) 300-304; end slopes by the three-point formula, limited so
 * that the ends keep their shape (Moler, Numerical Computing with MATLAB, section 3.6).
 */
final class MonotoneCurve {

    private final double[] x;
    private final double[] y;
    private final double[] slope;

    /** Takes at least one point, x strictly growing. */
    MonotoneCurve(double[] x, double[] y) {
        this.x = x.clone();
        this.y = y.clone();
        this.slope = slopes(this.x, this.y);
    }

    private static double[] slopes(double[] x, double[] y) {
        int n = x.length;
        double[] slope = new double[n];
        if (n < 2) {
            return slope;
        }
        double[] step = new double[n - 1];
        double[] secant = new double[n - 1];
        for (int i = 0; i < n - 1; i++) {
            step[i] = x[i + 1] - x[i];
            secant[i] = (y[i + 1] - y[i]) / step[i];
        }
        if (n == 2) {
            slope[0] = secant[0];
            slope[1] = secant[0];
            return slope;
        }
        for (int i = 1; i < n - 1; i++) {
            if (secant[i - 1] * secant[i] > 0) {
                double before = 2 * step[i] + step[i - 1];
                double after = step[i] + 2 * step[i - 1];
                slope[i] = (before + after) / (before / secant[i - 1] + after / secant[i]);
            }
        }
        slope[0] = endSlope(step[0], step[1], secant[0], secant[1]);
        slope[n - 1] = endSlope(step[n - 2], step[n - 3], secant[n - 2], secant[n - 3]);
        return slope;
    }

    private static double endSlope(double step, double nextStep, double secant, double nextSecant) {
        double slope = ((2 * step + nextStep) * secant - step * nextSecant) / (step + nextStep);
        if (Math.signum(slope) != Math.signum(secant)) {
            return 0;
        }
        if (Math.signum(secant) != Math.signum(nextSecant) && Math.abs(slope) > 3 * Math.abs(secant)) {
            return 3 * secant;
        }
        return slope;
    }

    /** The curve at a place between the first and the last point; the caller has checked the range. */
    double at(double place) {
        int i = 0;
        while (i < x.length - 2 && place > x[i + 1]) {
            i++;
        }
        if (place == x[i]) {
            return y[i];
        }
        double step = x[i + 1] - x[i];
        double t = (place - x[i]) / step;
        double rise = y[i + 1] - y[i];
        // Hermite form about the left point; exact there and, by t = 1, at the right one up to rounding.
        double value = y[i]
                + t
                        * (step * slope[i]
                                + t
                                        * ((3 * rise - step * (2 * slope[i] + slope[i + 1]))
                                                + t * (step * (slope[i] + slope[i + 1]) - 2 * rise)));
        return Math.min(Math.max(value, Math.min(y[i], y[i + 1])), Math.max(y[i], y[i + 1]));
    }
}
