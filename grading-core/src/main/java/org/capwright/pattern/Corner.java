package org.capwright.pattern;

import java.util.List;
import org.capwright.geometry.Point;

/**
 * Where two cut lines meet: the corner of the seam lines, the directions of travel before and after it, and both allowances.
 *
 * @param vertex corner of the seam lines
 * @param before unit tangent of the line that arrives
 * @param after unit tangent of the line that leaves
 * @param allowanceBefore allowance of the line that arrives, mm
 * @param allowanceAfter allowance of the line that leaves, mm
 */
record Corner(Point vertex, Point before, Point after, double allowanceBefore, double allowanceAfter) {

    /** The greatest distance of a mitre's tip from the corner, in allowances: a longer one is squared off. Common practice, no source. */
    static final double MITRE_LIMIT = 2;

    /** The least distance of a bevel from the corner, in the narrower of the two allowances: a sharper corner is cut off square there. Common practice, no source. */
    private static final double BEVEL_LEAST = 0.5;

    /** How far two cut lines may be prolonged, or cut back, to where they cross, in allowances. */
    private static final double PROLONGED = 4;

    private static final double PARALLEL = 1e-9;

    /** How the corner is turned. */
    enum Turn {
        /** The line goes on without a corner. */
        SMOOTH,
        /** Points are put between the two lines. */
        POINTS,
        /** Both lines are cut back to where they cross. */
        CROSSING
    }

    Point endBefore() {
        return EdgeOffset.beside(vertex, before, allowanceBefore);
    }

    Point startAfter() {
        return EdgeOffset.beside(vertex, after, allowanceAfter);
    }

    private double sine() {
        return before.cross(after);
    }

    /** How far the arriving cut line must run on to meet the leaving one; negative to cut it back. */
    private double runOnBefore() {
        return startAfter().minus(endBefore()).cross(after) / sine();
    }

    /** How far the leaving cut line must start earlier; negative to cut it back. */
    private double runOnAfter() {
        return before.cross(startAfter().minus(endBefore())) / sine();
    }

    boolean runsOnBefore() {
        return runOnBefore() >= 0;
    }

    boolean runsOnAfter() {
        return runOnAfter() >= 0;
    }

    double reach() {
        return PROLONGED * Math.max(allowanceBefore, allowanceAfter);
    }

    private double limit() {
        return MITRE_LIMIT * Math.max(allowanceBefore, allowanceAfter);
    }

    Turn turn() {
        boolean straightOn = before.dot(after) > 0;
        if (Math.abs(sine()) < PARALLEL) {
            return straightOn && allowanceBefore == allowanceAfter ? Turn.SMOOTH : Turn.POINTS;
        }
        if (allowanceBefore == 0 && allowanceAfter == 0) {
            return Turn.POINTS;
        }
        boolean runOn = runOnBefore() >= 0 && runOnAfter() >= 0;
        boolean near = Math.max(Math.abs(runOnBefore()), Math.abs(runOnAfter())) <= reach();
        return runOn || (straightOn && !near) ? Turn.POINTS : Turn.CROSSING;
    }

    /** One or two points that turn the corner, in order of travel. */
    List<Point> points(CornerKind kind) {
        if (allowanceBefore == 0 && allowanceAfter == 0) {
            return List.of(vertex);
        }
        Point from = endBefore();
        Point to = startAfter();
        boolean straightOn = before.dot(after) > 0;
        if (Math.abs(sine()) < PARALLEL) {
            if (straightOn) {
                return List.of(from, to);
            }
            return switch (kind) {
                case BEVELLED -> bevelled();
                case MITRED -> cutOff(limit());
                case SQUARED -> squared(allowanceAfter, allowanceBefore);
            };
        }
        double runOn = runOnBefore();
        double startEarlier = runOnAfter();
        if (runOn < 0 || startEarlier < 0) {
            return List.of(from, to); // two allowances whose lines cross far away: a step square to the seam
        }
        Point tip = from.plus(before.times(runOn));
        return switch (kind) {
            case BEVELLED -> bevelled();
            case MITRED -> tip.distanceTo(vertex) <= limit() ? List.of(tip) : cutOff(limit());
            case SQUARED ->
                runOn <= allowanceAfter + PARALLEL && startEarlier <= allowanceBefore + PARALLEL
                        ? List.of(tip)
                        : squared(Math.min(runOn, allowanceAfter), Math.min(startEarlier, allowanceBefore));
        };
    }

    private List<Point> squared(double runOn, double startEarlier) {
        return List.of(endBefore().plus(before.times(runOn)), startAfter().minus(after.times(startEarlier)));
    }

    private List<Point> bevelled() {
        Point from = endBefore();
        Point to = startAfter();
        double least = BEVEL_LEAST * Math.min(allowanceBefore, allowanceAfter);
        if (!Outline.near(from, to, vertex, least)) {
            return List.of(from, to);
        }
        Point out = before.minus(after).unit();
        return cutOff(Math.max(
                least, Math.max(from.minus(vertex).dot(out), to.minus(vertex).dot(out))));
    }

    /** The mitre cut off square to the bisector at a distance from the corner that neither line has passed yet. */
    private List<Point> cutOff(double distance) {
        Point out = before.minus(after).unit();
        Point from = endBefore();
        Point to = startAfter();
        double runOn = (distance - from.minus(vertex).dot(out)) / before.dot(out);
        double startEarlier = (distance - to.minus(vertex).dot(out)) / -after.dot(out);
        return List.of(from.plus(before.times(runOn)), to.minus(after.times(startEarlier)));
    }
}
