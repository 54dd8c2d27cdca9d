package org.capwright.geometry;

import java.util.ArrayList;
import java.util.List;

/**
 * Twice continuously differentiable interpolation: a parametric cubic spline through given points with given tangents at the ends. Knots are spaced by the
 * chords, so that the speed is near 1 all along. The equations are the classical ones (de Boor, A Practical Guide to Splines, chapter IV): at each inner
 * knot h₂ m₀ + 2 (h₁ + h₂) m₁ + h₁ m₂ = 3 (h₂ c₁ + h₁ c₂), where c are the slopes of the chords.
 */
public final class Spline {

    private Spline() {}

    /**
     * The spline through points, tangent at its ends to given directions.
     *
     * @param points two or more, no two neighbours equal
     * @param startDirection direction of travel at the first point, any length but zero
     * @param endDirection direction of travel at the last point, any length but zero
     * @return the curve, one cubic between neighbouring points
     * @throws IllegalArgumentException if there are fewer than two points, or two neighbours are equal
     */
    public static Curve through(List<Point> points, Point startDirection, Point endDirection) {
        int spans = points.size() - 1;
        if (spans < 1) {
            throw new IllegalArgumentException("a spline needs two points");
        }
        double[] chords = new double[spans];
        for (int i = 0; i < spans; i++) {
            chords[i] = points.get(i).distanceTo(points.get(i + 1));
            if (chords[i] == 0) {
                throw new IllegalArgumentException("points " + i + " and " + (i + 1) + " are the same");
            }
        }
        Point start = startDirection.unit();
        Point end = endDirection.unit();
        double[] slopesX = slopes(points.stream().mapToDouble(Point::x).toArray(), chords, start.x(), end.x());
        double[] slopesY = slopes(points.stream().mapToDouble(Point::y).toArray(), chords, start.y(), end.y());
        List<Cubic> segments = new ArrayList<>(spans);
        for (int i = 0; i < spans; i++) {
            segments.add(Cubic.hermite(
                    points.get(i),
                    new Point(slopesX[i], slopesY[i]).times(chords[i]),
                    new Point(slopesX[i + 1], slopesY[i + 1]).times(chords[i]),
                    points.get(i + 1)));
        }
        return Curve.of(segments);
    }

    /** Solves the tridiagonal system for the slopes at the knots (Thomas algorithm; the matrix is diagonally dominant). */
    private static double[] slopes(double[] values, double[] chords, double first, double last) {
        int spans = chords.length;
        double[] slopes = new double[spans + 1];
        double[] upper = new double[spans + 1];
        slopes[0] = first;
        for (int i = 1; i < spans; i++) {
            double before = chords[i - 1];
            double after = chords[i];
            double right =
                    3 * (after * (values[i] - values[i - 1]) / before + before * (values[i + 1] - values[i]) / after);
            double pivot = 2 * (before + after) - after * upper[i - 1];
            upper[i] = before / pivot;
            slopes[i] = (right - after * slopes[i - 1]) / pivot;
        }
        slopes[spans] = last;
        for (int i = spans - 1; i > 0; i--) {
            slopes[i] -= upper[i] * slopes[i + 1];
        }
        return slopes;
    }
}
