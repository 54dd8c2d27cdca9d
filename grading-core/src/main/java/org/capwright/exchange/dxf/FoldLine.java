package org.capwright.exchange.dxf;

import java.util.ArrayList;
import java.util.List;
import org.capwright.geometry.Curve;
import org.capwright.geometry.Point;
import org.capwright.pattern.EdgeKind;
import org.capwright.pattern.Piece;
import org.capwright.pattern.PieceEdge;

/** The fold of a half piece, about which a reader unfolds it. */
final class FoldLine {

    /** Points this near to the line of the fold edge lie on the fold, mm. */
    private static final double ON_LINE = 1e-6;

    private FoldLine() {}

    /**
     * The fold lines of a piece, from one corner of the cut line to the other.
     *
     * @return one line per fold edge; none for a whole piece
     */
    static List<List<Point>> of(Piece piece) {
        List<List<Point>> folds = new ArrayList<>();
        for (PieceEdge edge : piece.edges()) {
            if (edge.kind() == EdgeKind.FOLD) {
                folds.add(alongCut(edge.curve(), piece.cutLine()));
            }
        }
        return folds;
    }

    private static List<Point> alongCut(Curve fold, List<Point> cutLine) {
        Point along = fold.end().minus(fold.start()).unit();
        Point first = fold.start();
        Point last = fold.end();
        for (Point point : cutLine) {
            Point offset = point.minus(fold.start());
            if (Math.abs(along.cross(offset)) <= ON_LINE) {
                first = offset.dot(along) < first.minus(fold.start()).dot(along) ? point : first;
                last = offset.dot(along) > last.minus(fold.start()).dot(along) ? point : last;
            }
        }
        return List.of(first, last);
    }
}
