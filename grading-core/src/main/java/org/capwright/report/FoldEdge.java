package org.capwright.report;

import java.util.ArrayList;
import java.util.List;
import org.capwright.geometry.Curve;
import org.capwright.geometry.Point;
import org.capwright.pattern.EdgeKind;
import org.capwright.pattern.Piece;
import org.capwright.pattern.PieceEdge;

/** The part of a cut line that is not cut, because it lies on the fold of the cloth. */
final class FoldEdge {

    /** A point as near as this to the fold lies on it, mm. */
    private static final double ON = 1e-3;

    /** A straight line along the fold, and how near to it, times its length, a point must be. */
    private record Line(Point start, Point along, double near) {}

    private final List<Line> lines = new ArrayList<>(1);
    private final List<Point> on = new ArrayList<>();
    private final List<double[]> stretches = new ArrayList<>(1);

    /**
     * The fold of a piece.
     *
     * @param piece the piece
     * @param outline its cut line
     */
    FoldEdge(Piece piece, Outline outline) {
        for (PieceEdge edge : piece.edges()) {
            if (edge.kind() == EdgeKind.FOLD) {
                Point start = edge.curve().start();
                Point along = edge.curve().end().minus(start);
                lines.add(new Line(start, along, ON * along.norm()));
            }
        }
        if (!lines.isEmpty()) {
            gather(outline, piece.onFold());
        }
    }

    private void gather(Outline outline, boolean onFold) {
        boolean next = holds(outline.x(0), outline.y(0));
        for (int i = 0; i < outline.count(); i++) {
            boolean here = next;
            next = holds(outline.x(i + 1), outline.y(i + 1));
            if (here) {
                on.add(new Point(outline.x(i), outline.y(i)));
            }
            if (here && next && onFold) {
                double from = outline.distance(i);
                double to = outline.distance(i + 1);
                if (!stretches.isEmpty() && stretches.get(stretches.size() - 1)[1] == from) {
                    stretches.get(stretches.size() - 1)[1] = to;
                } else {
                    stretches.add(new double[] {from, to});
                }
            }
        }
    }

    boolean holds(Point p) {
        return holds(p.x(), p.y());
    }

    private boolean holds(double x, double y) {
        for (int i = 0; i < lines.size(); i++) {
            Line line = lines.get(i);
            double aside = line.along.x() * (y - line.start.y()) - line.along.y() * (x - line.start.x());
            if (Math.abs(aside) < line.near) {
                return true;
            }
        }
        return false;
    }

    /** From where to where the outline runs along the fold, neighbouring stretches joined. */
    List<double[]> stretches() {
        return stretches;
    }

    /** What is left of a straight line on the fold of another size where it does not lie under this fold, both in the coordinates of their block. */
    List<Curve> beyond(Point shift, Point a, Point b) {
        if (!holds(a.minus(shift)) || !holds(b.minus(shift))) {
            return List.of(Curve.line(a, b));
        }
        Point along = b.minus(a).unit();
        double low = Double.POSITIVE_INFINITY;
        double high = Double.NEGATIVE_INFINITY;
        for (Point point : on) {
            double at = point.plus(shift).minus(a).dot(along);
            low = Math.min(low, at);
            high = Math.max(high, at);
        }
        double length = a.distanceTo(b);
        List<Curve> parts = new ArrayList<>(2);
        if (low > 0.01) {
            parts.add(Curve.line(a, a.plus(along.times(Math.min(low, length)))));
        }
        if (high < length - 0.01) {
            parts.add(Curve.line(a.plus(along.times(Math.max(high, 0))), b));
        }
        return parts;
    }
}
