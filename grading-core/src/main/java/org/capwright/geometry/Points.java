package org.capwright.geometry;

import java.util.AbstractList;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.RandomAccess;
import org.jspecify.annotations.Nullable;

/**
 * Points one behind the other, kept as two rows of coordinates: a list for whoever takes them one by one, bare numbers for what runs over all of them. Guaranteed to be immutable.
 *
 * <p>Behind the last point its first stands once more, so that a closed line is run through to its start without a turn of the index.
 */
public final class Points extends AbstractList<Point> implements RandomAccess {

    private final double[] x;
    private final double[] y;
    private final int size;

    /** Known once it was asked for. */
    private @Nullable Box box;

    /** Takes rows over that have room for the first point behind the last. */
    Points(double[] x, double[] y, int size) {
        this.x = x;
        this.y = y;
        this.size = size;
        x[size] = x[0];
        y[size] = y[0];
    }

    /**
     * The points of a list.
     *
     * @param points any number
     * @return the same points in the same order
     */
    public static Points of(List<Point> points) {
        if (points instanceof Points same) {
            return same;
        }
        PointsBuilder builder = new PointsBuilder(points.size());
        points.forEach(builder::add);
        return builder.points();
    }

    /**
     * Some points.
     *
     * @param points any number
     * @return the points in this order
     */
    public static Points of(Point... points) {
        PointsBuilder builder = new PointsBuilder(points.length);
        for (Point point : points) {
            builder.add(point);
        }
        return builder.points();
    }

    /**
     * How far to the right a point lies.
     *
     * @param place from 0; the size of the list gives the first point once more
     * @return mm
     */
    public double x(int place) {
        return x[place];
    }

    /**
     * How far up a point lies.
     *
     * @param place from 0; the size of the list gives the first point once more
     * @return mm
     */
    public double y(int place) {
        return y[place];
    }

    /**
     * The area within the closed line of these points.
     *
     * @return square millimetres, positive where the line runs counter-clockwise
     */
    public double area() {
        double sum = 0;
        for (int i = 0; i < size; i++) {
            sum += x[i] * y[i + 1] - y[i] * x[i + 1];
        }
        return sum / 2;
    }

    /** The least box that holds the points. */
    Box box() {
        Box known = box;
        if (known == null) {
            known = measured();
            box = known;
        }
        return known;
    }

    private Box measured() {
        double left = Double.POSITIVE_INFINITY;
        double bottom = Double.POSITIVE_INFINITY;
        double right = Double.NEGATIVE_INFINITY;
        double top = Double.NEGATIVE_INFINITY;
        for (int i = 0; i < size; i++) {
            left = Math.min(left, x[i]);
            bottom = Math.min(bottom, y[i]);
            right = Math.max(right, x[i]);
            top = Math.max(top, y[i]);
        }
        return new Box(left, bottom, right, top);
    }

    /** The rows of coordinates, for reading. */
    double[] xs() {
        return x;
    }

    double[] ys() {
        return y;
    }

    @Override
    public Point get(int place) {
        Objects.checkIndex(place, size);
        return new Point(x[place], y[place]);
    }

    @Override
    public int size() {
        return size;
    }

    @Override
    public boolean equals(@Nullable Object other) {
        return other instanceof Points points
                ? Arrays.equals(x, 0, size, points.x, 0, points.size)
                        && Arrays.equals(y, 0, size, points.y, 0, points.size)
                : super.equals(other);
    }

    @Override
    public int hashCode() {
        return super.hashCode();
    }
}
