package org.capwright.exchange.dxf;

import org.capwright.geometry.Curve;
import org.capwright.geometry.Point;
import org.capwright.geometry.Points;
import org.capwright.geometry.PointsBuilder;

/** A line of straight chords with positions by arc length along the chords. */
final class Path {

    /** What lies as near as this to the border of a reach is measured all the same, mm. */
    private static final double EDGE = 1e-6;

    /** Every so many vertices one is looked at first. */
    private static final int SOME = 16;

    private final Points points;
    private final double[] reached;

    private Path(Points points) {
        this.points = points;
        this.reached = new double[points.size()];
        for (int i = 1; i < reached.length; i++) {
            double dx = x(i) - x(i - 1);
            double dy = y(i) - y(i - 1);
            reached[i] = reached[i - 1] + Math.sqrt(dx * dx + dy * dy);
        }
    }

    private double x(int vertex) {
        return points.x(vertex);
    }

    private double y(int vertex) {
        return points.y(vertex);
    }

    /**
     * A closed outline opened at one of its points.
     *
     * @param outline first point not repeated
     * @param first position of the point where the path begins and ends
     */
    static Path around(Points outline, int first) {
        PointsBuilder line = new PointsBuilder(outline.size() + 1);
        for (int i = 0; i <= outline.size(); i++) {
            int place = (first + i) % outline.size();
            line.add(outline.x(place), outline.y(place));
        }
        return new Path(line.points());
    }

    /** A curve flattened to a distance. */
    static Path along(Curve curve, double tolerance) {
        return new Path(curve.flattened(tolerance));
    }

    double length() {
        return reached[reached.length - 1];
    }

    /** Arc length at which a given vertex lies. */
    double at(int vertex) {
        return reached[vertex];
    }

    /** The vertex at a point through which the path was laid, at or beyond another vertex. */
    int vertex(Point point, int from) {
        for (int i = from; i < reached.length; i++) {
            if (x(i) == point.x() && y(i) == point.y()) {
                return i;
            }
        }
        throw new IllegalArgumentException("the path has no vertex at " + point);
    }

    Point pointAt(double distance) {
        return pointAt(distance, firstBeyond(distance, 1, last()));
    }

    /** The place at an arc length, where the first vertex beyond it is known. */
    Point pointAt(double distance, int after) {
        if (distance <= 0) {
            return points.get(0);
        }
        if (distance >= length()) {
            return points.get(points.size() - 1);
        }
        double start = reached[after - 1];
        return points.get(after - 1).towards(points.get(after), (distance - start) / (reached[after] - start));
    }

    /** Position of the last vertex. */
    int last() {
        return reached.length - 1;
    }

    /** Position of the first vertex that lies beyond an arc length, of those from one to another; that other where none does before it. */
    int firstBeyond(double distance, int from, int to) {
        int low = from;
        int high = to;
        while (low < high) {
            int middle = (low + high) >>> 1;
            if (reached[middle] <= distance) {
                low = middle + 1;
            } else {
                high = middle;
            }
        }
        return low;
    }

    /** Arc length of the place that is nearest to a point. Where the line is farther away than it has come before, it is followed only from where it may have come back. */
    double locate(Point point) {
        double nearest = Double.POSITIVE_INFINITY; // squared
        double reach = Math.sqrt(nearVertex(point)) + EDGE;
        double at = 0;
        for (int i = 1; i < reached.length; i++) {
            double startX = point.x() - x(i - 1);
            double startY = point.y() - y(i - 1);
            double chord = reached[i] - reached[i - 1];
            double within = reach + chord;
            double start = startX * startX + startY * startY; // squared
            if (start > within * within) {
                double back = reached[i - 1] + Math.sqrt(start) - reach - EDGE;
                i = Math.max(i, firstBeyond(back, i, last()) - 1); // no place of the chords between is nearer
                continue;
            }
            double chordX = x(i) - x(i - 1);
            double chordY = y(i) - y(i - 1);
            double square = chordX * chordX + chordY * chordY;
            double dot = startX * chordX + startY * chordY;
            double fraction = square == 0 ? 0 : Math.max(0, Math.min(1, dot / square));
            double offX = x(i - 1) + chordX * fraction - point.x();
            double offY = y(i - 1) + chordY * fraction - point.y();
            double distance = offX * offX + offY * offY; // squared
            if (distance < nearest) {
                nearest = distance;
                reach = Math.min(reach, Math.sqrt(distance) + EDGE);
                at = reached[i - 1] + fraction * chord;
            }
        }
        return at;
    }

    /** How near the nearest of some vertices is, squared. */
    private double nearVertex(Point point) {
        double nearest = Double.POSITIVE_INFINITY;
        for (int i = 0; i < reached.length; i += SOME) {
            double offX = x(i) - point.x();
            double offY = y(i) - point.y();
            nearest = Math.min(nearest, offX * offX + offY * offY);
        }
        return nearest;
    }

    /**
     * The vertex between two arc lengths that lies farthest from the straight chord between them.
     *
     * @param start where the chord begins
     * @param first the first vertex beyond
     * @param end where it ends
     * @param to arc length there
     * @param tolerance vertices within this distance do not count
     * @return its arc length, or NaN if all lie within the tolerance
     */
    double farthestFromChord(Point start, int first, Point end, double to, double tolerance) {
        double chordX = end.x() - start.x();
        double chordY = end.y() - start.y();
        double square = chordX * chordX + chordY * chordY;
        double farthest = tolerance * tolerance;
        double at = Double.NaN;
        for (int i = first; i < reached.length && reached[i] < to; i++) {
            double offX = x(i) - start.x();
            double offY = y(i) - start.y();
            double along = square == 0 ? 0 : Math.max(0, Math.min(1, (offX * chordX + offY * chordY) / square));
            double besideX = offX - chordX * along;
            double besideY = offY - chordY * along;
            double distance = besideX * besideX + besideY * besideY; // squared
            if (distance > farthest) {
                farthest = distance;
                at = reached[i];
            }
        }
        return at;
    }
}
