package org.capwright.report;

import java.util.ArrayList;
import java.util.List;
import org.capwright.geometry.Point;

/** A closed line of points, walked by distance from its first point. */
final class Outline {

    private final List<Point> points;
    private final double[] distances;

    Outline(List<Point> points) {
        this.points = points;
        distances = new double[points.size() + 1];
        for (int i = 0; i < points.size(); i++) {
            distances[i + 1] = distances[i] + points.get(i).distanceTo(points.get((i + 1) % points.size()));
        }
    }

    double length() {
        return distances[points.size()];
    }

    double distance(int point) {
        return distances[point];
    }

    private int before(double distance) {
        int low = 0;
        int high = points.size() - 1;
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

    private double wrapped(double distance) {
        double rest = distance % length();
        return rest < 0 ? rest + length() : rest;
    }

    Point at(double distance) {
        double rest = wrapped(distance);
        int i = before(rest);
        double step = distances[i + 1] - distances[i];
        return points.get(i).towards(points.get((i + 1) % points.size()), step == 0 ? 0 : (rest - distances[i]) / step);
    }

    /** The part between two distances, the second greater, less than a whole round on. */
    List<Point> part(double from, double to) {
        List<Point> part = new ArrayList<>();
        part.add(at(from));
        double start = wrapped(from);
        double span = to - from;
        int i = before(start);
        double walked = distances[i + 1] - start;
        while (walked < span) {
            i = (i + 1) % points.size();
            part.add(points.get(i));
            walked += distances[i + 1] - distances[i];
        }
        part.add(at(to));
        return part;
    }

    /** The least distance of a point from the part between two distances. Points are not made anew here: it is asked often. */
    double distanceTo(Point p, double from, double to) {
        double least = Double.POSITIVE_INFINITY;
        int i = before(wrapped(from));
        for (double walked = 0; walked < to - from; i = (i + 1) % points.size()) {
            Point a = points.get(i);
            Point b = points.get((i + 1) % points.size());
            double x = b.x() - a.x();
            double y = b.y() - a.y();
            double square = x * x + y * y;
            double along = (p.x() - a.x()) * x + (p.y() - a.y()) * y;
            double share = square == 0 ? 0 : Math.max(0, Math.min(1, along / square));
            double dx = a.x() + share * x - p.x();
            double dy = a.y() + share * y - p.y();
            least = Math.min(least, dx * dx + dy * dy);
            walked += Math.max(distances[i + 1] - distances[i], 1e-9);
        }
        return Math.sqrt(least);
    }
}
