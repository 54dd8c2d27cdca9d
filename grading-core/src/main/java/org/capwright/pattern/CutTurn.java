package org.capwright.pattern;

import java.util.List;
import org.capwright.geometry.Point;
import org.capwright.geometry.PointsBuilder;

/** Turns the cut line from one smooth part of a seam line to the next: cuts both parallels back where they must be, and gives the corner points between them. */
final class CutTurn {

    /** Points of a hollow where no crossing was found, and the raw line goes by the corner of the seam line. */
    static final int TO_THE_SEAM = 3;

    /** Cosine of the least turn of a line that turns straight back: 178 degrees. */
    private static final double STRAIGHT_BACK = Math.cos(Math.toRadians(178));

    /** The share of a segment after which it is seen to which side it runs. */
    private static final double NEAR_END = 0.2;

    private final SeamRun before;
    private final SeamRun after;
    private final PointsBuilder parallels;

    private CutTurn(SeamRun before, SeamRun after) {
        this.before = before;
        this.after = after;
        this.parallels = before.parallels;
    }

    /** The corner points between two parts, none to three. */
    static List<Point> between(SeamRun before, SeamRun after, CornerKind kind) {
        return new CutTurn(before, after).points(kind);
    }

    private List<Point> points(CornerKind kind) {
        if (before.fold && after.fold) {
            return List.of();
        }
        if (after.fold) {
            return ontoFold(kind);
        }
        if (before.fold) {
            return offFold(kind);
        }
        Corner corner = new Corner(
                after.seamStart(), before.endTangent(), after.startTangent(), before.allowance, after.allowance);
        if (isPoint(corner)) {
            corner = new Corner(
                    corner.vertex(),
                    corner.before(),
                    corner.before().times(-1),
                    corner.allowanceBefore(),
                    corner.allowanceAfter());
        }
        return switch (corner.turn()) {
            case SMOOTH -> List.of();
            case POINTS ->
                // Within an edge only pleats make corners: the layers are mirrored there, and so the lines run on until
                // they meet.
                corner.points(
                        before.edge == after.edge || before.isNetHem() || after.isNetHem() ? CornerKind.MITRED : kind);
            case CROSSING -> crossing(corner);
        };
    }

    /** Whether lines that turn straight back enclose cloth, as where a bowed hem comes to a point, though their tangents say that they turn the other way by a hair. */
    private boolean isPoint(Corner corner) {
        if (corner.before().dot(corner.after()) > STRAIGHT_BACK
                || corner.before().cross(corner.after()) > 0) {
            return false;
        }
        Point from = before.nearEnd(1 - NEAR_END);
        Point to = after.nearStart(NEAR_END);
        return corner.vertex().minus(from).cross(to.minus(corner.vertex())) > 0;
    }

    /** A line that must be cut back is not prolonged: its prolongation may meet the other line at a place that the corner does not reach. */
    private List<Point> crossing(Corner corner) {
        Point runOn = corner.runsOnBefore()
                ? corner.endBefore().plus(corner.before().times(corner.reach()))
                : corner.endBefore();
        Point startEarlier = corner.runsOnAfter()
                ? corner.startAfter().minus(corner.after().times(corner.reach()))
                : corner.startAfter();
        double toX = runOn.x();
        double toY = runOn.y();
        for (int i = before.last; i >= before.first; i--) {
            double fromX = parallels.x(i);
            double fromY = parallels.y(i);
            double startX = startEarlier.x();
            double startY = startEarlier.y();
            for (int k = after.first; k <= after.last; k++) {
                double endX = parallels.x(k);
                double endY = parallels.y(k);
                double share =
                        crossed(toX - fromX, toY - fromY, startX - fromX, startY - fromY, endX - startX, endY - startY);
                if (share >= 0) {
                    before.last = i;
                    after.first = k;
                    return List.of(new Point(fromX + (toX - fromX) * share, fromY + (toY - fromY) * share));
                }
                startX = endX;
                startY = endY;
            }
            toX = fromX;
            toY = fromY;
        }
        return List.of(corner.endBefore(), corner.vertex(), corner.startAfter());
    }

    /**
     * The share of a straight line after which another crosses it, ends included; -1 if they are parallel or pass each other. Each is given by its vector, the other's start by the way to it.
     */
    private static double crossed(double x, double y, double wayX, double wayY, double otherX, double otherY) {
        double area = x * otherY - y * otherX;
        double along = (wayX * otherY - wayY * otherX) / area;
        double across = (wayX * y - wayY * x) / area;
        return area != 0 && along >= 0 && along <= 1 && across >= 0 && across <= 1 ? along : -1;
    }

    private List<Point> ontoFold(CornerKind kind) {
        Point arriving = before.endTangent();
        Corner corner = new Corner(
                before.seamEnd(),
                arriving,
                new Point(arriving.x(), 0.0 - arriving.y()),
                before.allowance,
                before.allowance);
        if (corner.turn() == Corner.Turn.CROSSING) {
            while (before.last > before.first && parallels.x(before.last - 1) <= 0) {
                before.last--;
            }
            Point outside = parallels.get(before.last);
            Point inside = parallels.get(Math.max(before.first, before.last - 1));
            before.last--;
            return List.of(onFold(inside, outside));
        }
        List<Point> turn = corner.turn() == Corner.Turn.SMOOTH ? List.of(corner.endBefore()) : corner.points(kind);
        Point first = turn.get(0);
        if (turn.size() == 1 || Math.abs(first.x()) < Outline.ONE_POINT) {
            if (Math.abs(parallels.x(before.last)) < Outline.ONE_POINT) {
                before.last--;
            }
            return List.of(new Point(0, first.y()));
        }
        return List.of(first, new Point(0, first.y()));
    }

    private List<Point> offFold(CornerKind kind) {
        Point leaving = after.startTangent();
        Corner corner = new Corner(
                after.seamStart(),
                new Point(leaving.x(), 0.0 - leaving.y()),
                leaving,
                after.allowance,
                after.allowance);
        if (corner.turn() == Corner.Turn.CROSSING) {
            while (after.first < after.last && parallels.x(after.first + 1) <= 0) {
                after.first++;
            }
            Point outside = parallels.get(after.first);
            Point inside = parallels.get(Math.min(after.last, after.first + 1));
            after.first++;
            return List.of(onFold(inside, outside));
        }
        List<Point> turn = corner.turn() == Corner.Turn.SMOOTH ? List.of(corner.startAfter()) : corner.points(kind);
        Point last = turn.get(turn.size() - 1);
        if (turn.size() == 1 || Math.abs(last.x()) < Outline.ONE_POINT) {
            if (Math.abs(parallels.x(after.first)) < Outline.ONE_POINT) {
                after.first++;
            }
            return List.of(new Point(0, last.y()));
        }
        return List.of(new Point(0, last.y()), last);
    }

    private static Point onFold(Point inside, Point outside) {
        double share = inside.x() == outside.x() ? 0 : inside.x() / (inside.x() - outside.x());
        return new Point(0, inside.y() + (outside.y() - inside.y()) * share);
    }
}
