package org.capwright.geometry;

/**
 * An affine map of the plane: (x, y) goes to (a x + b y + e, c x + d y + f).
 *
 * @param a share of x in the new x
 * @param b share of y in the new x
 * @param c share of x in the new y
 * @param d share of y in the new y
 * @param e added to the new x, mm
 * @param f added to the new y, mm
 */
public record Placing(double a, double b, double c, double d, double e, double f) {

    /**
     * A change of scale about the origin.
     *
     * @param factor how many times as large
     * @return the map
     */
    public static Placing scale(double factor) {
        return stretch(factor, factor);
    }

    /**
     * A shift.
     *
     * @param x to the right, mm
     * @param y upward, mm
     * @return the map
     */
    public static Placing move(double x, double y) {
        return new Placing(1, 0, 0, 1, x, y);
    }

    /**
     * A change of scale that may differ across and up; below 0 it mirrors.
     *
     * @param x factor across
     * @param y factor upward
     * @return the map
     */
    public static Placing stretch(double x, double y) {
        return new Placing(x, 0, 0, y, 0, 0);
    }

    /**
     * A turn about the origin.
     *
     * @param degrees counter-clockwise
     * @return the map
     */
    public static Placing turn(double degrees) {
        double cos = Math.cos(Math.toRadians(degrees));
        double sin = Math.sin(Math.toRadians(degrees));
        return new Placing(cos, -sin, sin, cos, 0, 0);
    }

    /**
     * One map upon another.
     *
     * @param first the map that is done first
     * @return first the other one, then this
     */
    public Placing after(Placing first) {
        return new Placing(
                a * first.a + b * first.c,
                a * first.b + b * first.d,
                c * first.a + d * first.c,
                c * first.b + d * first.d,
                a * first.e + b * first.f + e,
                c * first.e + d * first.f + f);
    }

    /**
     * Where a point goes.
     *
     * @param x to the right, mm
     * @param y upward, mm
     * @return its place after the map
     */
    public Point at(double x, double y) {
        return new Point(a * x + b * y + e, c * x + d * y + f);
    }
}
