package org.capwright.report;

import org.capwright.drawing.Canvas;
import org.capwright.geometry.Point;
import org.capwright.geometry.Points;

/** A closed line of points, walked by distance from its first point. No point is made where it would only be drawn or measured: outlines are walked often. */
final class Outline {

    /** Far beyond what sums of lengths are off by, mm. */
    private static final double ROUNDING = 1e-6;

    private final Points points;
    private final double[] distances;

    Outline(Points points) {
        this.points = points;
        distances = new double[points.size() + 1];
        for (int i = 1; i < distances.length; i++) {
            double dx = x(i) - x(i - 1);
            double dy = y(i) - y(i - 1);
            distances[i] = distances[i - 1] + Math.sqrt(dx * dx + dy * dy);
        }
    }

    /** How many points it has. */
    int count() {
        return distances.length - 1;
    }

    /** One of its points; the last is followed by the first once more. */
    double x(int point) {
        return points.x(point);
    }

    double y(int point) {
        return points.y(point);
    }

    double length() {
        return distances[count()];
    }

    double distance(int point) {
        return distances[point];
    }

    private int before(double distance) {
        int low = 0;
        int high = count() - 1;
        while (low < high) {
            int middle = (low + high + 1) >>> 1;
            if (distances[middle] <= distance) {
                low = middle;
            } else {
                high = middle - 1;
            }
        }
        return low;
    }

    private int after(int point) {
        return point + 1 == count() ? 0 : point + 1;
    }

    private double wrapped(double distance) {
        if (distance >= 0 && distance < length()) {
            return distance;
        }
        double rest = distance % length();
        return rest < 0 ? rest + length() : rest;
    }

    Point at(double distance) {
        double rest = wrapped(distance);
        int i = before(rest);
        double step = distances[i + 1] - distances[i];
        return new Point(x(i), y(i))
                .towards(new Point(x(i + 1), y(i + 1)), step == 0 ? 0 : (rest - distances[i]) / step);
    }

    /** Goes along the part between two distances, the second greater, less than a whole round on; as a line not yet drawn. */
    void part(Canvas canvas, double from, double to) {
        canvas.from(at(from));
        double start = wrapped(from);
        double span = to - from;
        int i = before(start);
        double walked = distances[i + 1] - start;
        while (walked < span) {
            i = after(i);
            canvas.to(x(i), y(i));
            walked += distances[i + 1] - distances[i];
        }
        canvas.to(at(to));
    }

    /** The least distance of a point from the part between two distances; the most asked about where it is no less. */
    double distanceTo(Point p, double from, double to, double most) {
        double enough = most * most;
        double least = enough;
        int i = before(wrapped(from));
        double far = 0; // so much of the line to come is too far away
        for (double walked = 0; walked < to - from; i = after(i)) {
            double step = distances[i + 1] - distances[i];
            if (step > far) {
                double fromX = p.x() - x(i);
                double fromY = p.y() - y(i);
                double distance = fromX * fromX + fromY * fromY;
                double within = most + step;
                if (distance < within * within) {
                    double along = x(i + 1) - x(i);
                    double up = y(i + 1) - y(i);
                    double square = along * along + up * up;
                    double share = square == 0 ? 0 : Math.max(0, Math.min(1, (fromX * along + fromY * up) / square));
                    double dx = x(i) + share * along - p.x();
                    double dy = y(i) + share * up - p.y();
                    least = Math.min(least, dx * dx + dy * dy);
                } else {
                    far = Math.sqrt(distance) - most - ROUNDING;
                }
            }
            far -= step;
            walked += Math.max(step, 1e-9);
        }
        return least < enough ? Math.sqrt(least) : most;
    }
}
