package org.capwright.gradeimport;

import org.capwright.geometry.Point;

/** An affine map of the drawing plane: (x, y) goes to (a x + b y + e, c x + d y + f). */
record Placing(double a, double b, double c, double d, double e, double f) {

    static Placing scale(double factor) {
        return new Placing(factor, 0, 0, factor, 0, 0);
    }

    static Placing move(double x, double y) {
        return new Placing(1, 0, 0, 1, x, y);
    }

    static Placing stretch(double x, double y) {
        return new Placing(x, 0, 0, y, 0, 0);
    }

    static Placing turn(double degrees) {
        double cos = Math.cos(Math.toRadians(degrees));
        double sin = Math.sin(Math.toRadians(degrees));
        return new Placing(cos, -sin, sin, cos, 0, 0);
    }

    /** First the other one, then this. */
    Placing after(Placing first) {
        return new Placing(
                a * first.a + b * first.c,
                a * first.b + b * first.d,
                c * first.a + d * first.c,
                c * first.b + d * first.d,
                a * first.e + b * first.f + e,
                c * first.e + d * first.f + f);
    }

    Point at(double x, double y) {
        return new Point(a * x + b * y + e, c * x + d * y + f);
    }
}
