package org.capwright.exchange.dxf;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import org.capwright.geometry.Point;

/** Turns a parametric curve into chords that keep within a distance of it. */
final class Flattening {

    private static final int DEEPEST = 14;

    /** A point for a parameter. */
    interface Curve {
        Point at(double parameter);
    }

    /** How many points of curves may be reckoned in all; a drawing that needs more is not read. */
    static final class Budget {
        private int left;

        Budget(int points) {
            left = points;
        }

        boolean isSpent() {
            return left <= 0;
        }
    }

    private final Curve curve;
    private final Budget budget;
    private final List<Point> points = new ArrayList<>();
    private final List<Double> parameters = new ArrayList<>();

    private Flattening(Curve curve, Budget budget) {
        this.curve = parameter -> {
            budget.left--;
            return curve.at(parameter);
        };
        this.budget = budget;
    }

    /**
     * Flattens a curve; its highest, lowest, leftmost and rightmost points become vertices.
     *
     * @param breaks parameters, ascending, two or more, between which the curve is smooth and turns by less than half a circle
     * @param budget where it is spent, the chords are no longer true
     */
    static List<Point> of(Curve curve, double[] breaks, Budget budget) {
        Flattening flattening = new Flattening(curve, budget);
        Point last = flattening.curve.at(breaks[0]);
        flattening.add(breaks[0], last);
        for (int i = 1; i < breaks.length && !budget.isSpent(); i++) {
            Point next = flattening.curve.at(breaks[i]);
            flattening.chord(breaks[i - 1], last, breaks[i], next, 0);
            flattening.add(breaks[i], next);
            last = next;
        }
        return flattening.withExtremes();
    }

    private void add(double parameter, Point point) {
        parameters.add(parameter);
        points.add(point);
    }

    private void chord(double from, Point start, double to, Point end, int depth) {
        if (depth == DEEPEST || budget.isSpent()) {
            return;
        }
        double middle = (from + to) / 2;
        Point centre = curve.at(middle);
        if (depth > 0
                && centre.distanceTo(start, end) <= DxfContent.TOLERANCE
                && curve.at((from + middle) / 2).distanceTo(start, end) <= DxfContent.TOLERANCE
                && curve.at((middle + to) / 2).distanceTo(start, end) <= DxfContent.TOLERANCE) {
            return;
        }
        chord(from, start, middle, centre, depth + 1);
        add(middle, centre);
        chord(middle, centre, to, end, depth + 1);
    }

    private List<Point> withExtremes() {
        List<Point> out = new ArrayList<>(points.size() + 8);
        for (int i = 0; i < points.size(); i++) {
            if (i > 0 && i + 1 < points.size() && !budget.isSpent()) {
                List<Double> extremes = new ArrayList<>(2);
                extreme(i, t -> curve.at(t).y(), extremes);
                extreme(i, t -> curve.at(t).x(), extremes);
                // An arc may run against its parameter.
                double way = Math.signum(parameters.get(i + 1) - parameters.get(i - 1));
                extremes.sort(Comparator.comparingDouble(t -> way * t));
                for (double t : extremes) {
                    if (way * t < way * parameters.get(i)) {
                        out.add(curve.at(t));
                    }
                }
                out.add(points.get(i));
                for (double t : extremes) {
                    if (way * t > way * parameters.get(i)) {
                        out.add(curve.at(t));
                    }
                }
            } else {
                out.add(points.get(i));
            }
        }
        return out;
    }

    /** Looks for the turning point of a coordinate about a vertex by the golden section. */
    private void extreme(int i, DoubleUnaryOperator coordinate, List<Double> found) {
        double before = coordinate.applyAsDouble(parameters.get(i - 1));
        double here = coordinate.applyAsDouble(parameters.get(i));
        double after = coordinate.applyAsDouble(parameters.get(i + 1));
        if ((here - before) * (after - here) >= 0) {
            return;
        }
        double sign = here > before ? 1 : -1;
        double ratio = (Math.sqrt(5) - 1) / 2;
        double low = parameters.get(i - 1);
        double high = parameters.get(i + 1);
        double left = high - ratio * (high - low);
        double right = low + ratio * (high - low);
        double atLeft = sign * coordinate.applyAsDouble(left);
        double atRight = sign * coordinate.applyAsDouble(right);
        for (int step = 0; step < 40; step++) {
            if (atLeft > atRight) {
                high = right;
                right = left;
                atRight = atLeft;
                left = high - ratio * (high - low);
                atLeft = sign * coordinate.applyAsDouble(left);
            } else {
                low = left;
                left = right;
                atLeft = atRight;
                right = low + ratio * (high - low);
                atRight = sign * coordinate.applyAsDouble(right);
            }
        }
        double turning = (low + high) / 2;
        if (Math.abs(sign * coordinate.applyAsDouble(turning) - sign * here) > 1e-9) {
            found.add(turning);
        }
    }
}
