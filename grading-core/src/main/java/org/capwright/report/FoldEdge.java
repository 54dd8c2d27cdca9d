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

    private FoldEdge() {}

    static boolean holds(Piece piece, Point p) {
        return holds(folds(piece), p);
    }

    private static List<Curve> folds(Piece piece) {
        List<Curve> folds = new ArrayList<>(1);
        for (PieceEdge edge : piece.edges()) {
            if (edge.kind() == EdgeKind.FOLD) {
                folds.add(edge.curve());
            }
        }
        return folds;
    }

    private static boolean holds(List<Curve> folds, Point p) {
        for (Curve fold : folds) {
            Point start = fold.start();
            Point along = fold.end().minus(start);
            if (Math.abs(along.cross(p.minus(start))) < ON * along.norm()) {
                return true;
            }
        }
        return false;
    }

    /** From where to where the outline runs along the fold, neighbouring stretches joined. */
    static List<double[]> stretches(Piece piece, Outline outline) {
        List<double[]> stretches = new ArrayList<>(1);
        if (!piece.onFold()) {
            return stretches;
        }
        List<Curve> folds = folds(piece);
        List<Point> points = piece.cutLine();
        boolean next = holds(folds, points.get(0));
        for (int i = 0; i < points.size(); i++) {
            boolean here = next;
            next = holds(folds, points.get((i + 1) % points.size()));
            if (here && next) {
                double from = outline.distance(i);
                double to = outline.distance(i + 1);
                if (!stretches.isEmpty() && stretches.get(stretches.size() - 1)[1] == from) {
                    stretches.get(stretches.size() - 1)[1] = to;
                } else {
                    stretches.add(new double[] {from, to});
                }
            }
        }
        return stretches;
    }

    /** What is left of a stretch of fold (in the coordinates of the block) where it does not lie under the fold of the leading size. */
    static List<Curve> beyond(Block block, Point a, Point b) {
        Block.Layer lead = block.leading();
        List<Curve> folds = folds(lead.piece());
        Point back = lead.shift().times(-1);
        if (!holds(folds, a.plus(back)) || !holds(folds, b.plus(back))) {
            return List.of(Curve.line(a, b));
        }
        Point along = b.minus(a).unit();
        double low = Double.POSITIVE_INFINITY;
        double high = Double.NEGATIVE_INFINITY;
        for (Point p : lead.piece().cutLine()) {
            if (holds(folds, p)) {
                double at = p.plus(lead.shift()).minus(a).dot(along);
                low = Math.min(low, at);
                high = Math.max(high, at);
            }
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
