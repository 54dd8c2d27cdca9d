package org.capwright.draft;

import org.capwright.geometry.Point;

/**
 * The turn of the sleeve below the elbow. The paper is cut along the elbow line from the back seam to the front seam and swung open about the front end F, so that
 * the back seam opens by {@code opening} and the wrist moves forward, to negative x; then the lower part is slid up along its own centre line by what the turn has
 * opened there, so that the sleeve keeps its length. All points lie in the frame of the piece: front at negative x.
 *
 * @param hinge F, the front end of the elbow line
 * @param upper where the upper edge of the cut meets the back seam
 * @param angle angle of the turn, radians, 0 or more
 */
record ElbowTurn(Point hinge, Point upper, double angle) {

    /** The turn that opens the back seam by a given length: opening = 2 · elbow · sin(angle / 2). */
    static ElbowTurn opening(double frontElbow, double backElbow, double elbowLevel, double opening) {
        double elbow = frontElbow + backElbow;
        return new ElbowTurn(
                new Point(0.0 - frontElbow, 0.0 - elbowLevel),
                new Point(backElbow, 0.0 - elbowLevel),
                2 * Math.asin(opening / (2 * elbow)));
    }

    double elbow() {
        return upper.x() - hinge.x();
    }

    /** Unit vector along the elbow line turned by a share of the turn: 0 its upper edge, 1 its lower edge, 1/2 the line that halves the cut. */
    Point along(double share) {
        return new Point(Math.cos(angle * share), 0.0 - Math.sin(angle * share));
    }

    /** Where the lower edge of the cut meets the back seam. */
    Point lower() {
        return hinge.plus(along(1).times(elbow()));
    }

    /** The back elbow point of a seam without a dart: on the line that halves the cut, so far from the front as the elbow is wide. */
    Point middle() {
        return hinge.plus(along(0.5).times(elbow()));
    }

    /** What the turn opens where the centre line crosses the elbow line. */
    double openingAtCentre() {
        return -2 * hinge.x() * Math.sin(angle / 2);
    }

    /** Where the centre line goes on at the lower edge of the cut. */
    Point centre() {
        return hinge.plus(along(1).times(-hinge.x()));
    }

    /** The point on the turned centre line at a depth below the lower edge of the cut. */
    Point centreAt(double depth) {
        Point across = along(1);
        return centre().plus(across.left().times(-depth));
    }

    static Point turned(Point point, Point about, double angle) {
        double cos = Math.cos(angle);
        double sin = Math.sin(angle);
        Point from = point.minus(about);
        return about.plus(new Point(cos * from.x() - sin * from.y(), sin * from.x() + cos * from.y()));
    }
}
