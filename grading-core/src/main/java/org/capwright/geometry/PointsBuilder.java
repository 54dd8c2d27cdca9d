package org.capwright.geometry;

import java.util.Arrays;

/** A line as it is drawn: points are put at its end, and may be taken back. Not safe for threads. */
public final class PointsBuilder {

    /** Rows with so much room to spare are not copied to save it. */
    private static final int SPARE = 8;

    private double[] x;
    private double[] y;
    private int size;

    /**
     * A line without points.
     *
     * @param room how many points are expected, 0 or more; more of them make room for themselves
     */
    public PointsBuilder(int room) {
        x = new double[room + 1];
        y = new double[room + 1];
    }

    /**
     * Goes on to a point.
     *
     * @param point the next point
     */
    public void add(Point point) {
        add(point.x(), point.y());
    }

    /**
     * Goes on to a point.
     *
     * @param toX mm to the right
     * @param toY mm up
     */
    public void add(double toX, double toY) {
        makeRoom(1);
        x[size] = toX;
        y[size++] = toY;
    }

    /**
     * Goes on to a point, unless the line is there already. There must be a point.
     *
     * @param toX mm to the right
     * @param toY mm up
     */
    public void goOn(double toX, double toY) {
        if (toX != x[size - 1] || toY != y[size - 1]) {
            add(toX, toY);
        }
    }

    /**
     * Goes on along a part of another line, or of this one.
     *
     * @param line the other line
     * @param from the place of its first point that is wanted, from 0
     * @param to the place after the last one, at most its size
     */
    public void addAll(PointsBuilder line, int from, int to) {
        addAll(line.x, line.y, from, to);
    }

    /**
     * Goes on along a part of a line.
     *
     * @param line the line
     * @param from the place of its first point that is wanted, from 0
     * @param to the place after the last one, at most its size
     */
    public void addAll(Points line, int from, int to) {
        addAll(line.xs(), line.ys(), from, to);
    }

    private void addAll(double[] xs, double[] ys, int from, int to) {
        makeRoom(to - from);
        System.arraycopy(xs, from, x, size, to - from);
        System.arraycopy(ys, from, y, size, to - from);
        size += to - from;
    }

    private void makeRoom(int count) {
        if (size + count >= x.length) {
            int room = 2 * x.length + count;
            x = Arrays.copyOf(x, room);
            y = Arrays.copyOf(y, room);
        }
    }

    /**
     * Puts a point in the place of another.
     *
     * @param place from 0, below the size
     * @param toX mm to the right
     * @param toY mm up
     */
    public void set(int place, double toX, double toY) {
        x[place] = toX;
        y[place] = toY;
    }

    /**
     * Takes points back.
     *
     * @param count how many are left, from 0 to the size
     */
    public void cutBack(int count) {
        size = count;
    }

    /**
     * How far to the right a point lies.
     *
     * @param place from 0, below the size
     * @return mm
     */
    public double x(int place) {
        return x[place];
    }

    /**
     * How far up a point lies.
     *
     * @param place from 0, below the size
     * @return mm
     */
    public double y(int place) {
        return y[place];
    }

    /**
     * A point of the line.
     *
     * @param place from 0, below the size
     * @return the point
     */
    public Point get(int place) {
        return new Point(x[place], y[place]);
    }

    /**
     * How many points there are.
     *
     * @return 0 or more
     */
    public int size() {
        return size;
    }

    /**
     * The points as they stand. They are handed over, and the builder is empty again.
     *
     * @return all points in order
     */
    public Points points() {
        int needed = size + 1;
        boolean roomy = x.length > needed + needed / 4 + SPARE;
        Points points =
                roomy ? new Points(Arrays.copyOf(x, needed), Arrays.copyOf(y, needed), size) : new Points(x, y, size);
        x = new double[1];
        y = new double[1];
        size = 0;
        return points;
    }
}
