package org.capwright.report;

import java.util.ArrayList;
import java.util.List;
import org.capwright.geometry.Point;
import org.capwright.pattern.Piece;

/** Where along its cut line each size of a nest writes its name. */
final class SizeLabels {

    /** Places tried about the one whose turn it is, as shares of the distance to the next. */
    private static final double[] TRIED = {0, -0.35, 0.35};

    /** More room than this about a label is of no use, mm. */
    private static final double ENOUGH = 3;

    /** A label moves for more room than this only, mm. */
    private static final double BETTER = 0.05;

    private SizeLabels() {}

    /**
     * One place on every long stretch between corners. The sizes take turns along it; each moves a little to where its neighbours are further away.
     *
     * @param outlines cut lines of all sizes, each in the coordinates of its piece
     * @param fold that of the size
     * @param position which size
     * @param room length that a label takes, mm
     * @return distances along the cut line
     */
    static List<Double> places(Block block, List<Outline> outlines, FoldEdge fold, int position, double room) {
        Piece piece = block.layers().get(position).piece();
        Outline outline = outlines.get(position);
        List<Double> places = new ArrayList<>();
        int sizes = block.layers().size();
        int corners = piece.cutCorners().size();
        if (corners == 0) {
            return List.of(outline.length() / (sizes + 1) * (position + 1));
        }
        for (int run = 0; run < corners; run++) {
            double from = outline.distance(piece.cutCorners().get(run));
            double to = end(piece, outline, run);
            double share = (to - from) / (sizes + 1);
            if (share > room + 2 && !fold.holds(outline.at((from + to) / 2))) {
                double turn = from + share * (position + 1);
                double best = turn;
                double clearest = -1;
                for (double tried : TRIED) {
                    if (clearest + BETTER >= ENOUGH) {
                        break;
                    }
                    double at = turn + tried * (share - room);
                    double clear = clearance(block, outlines, position, run, outline.at(at));
                    if (clear > clearest + BETTER) {
                        clearest = clear;
                        best = at;
                    }
                }
                places.add(best);
            }
        }
        return places;
    }

    private static double end(Piece piece, Outline outline, int run) {
        List<Integer> corners = piece.cutCorners();
        return run + 1 < corners.size()
                ? outline.distance(corners.get(run + 1))
                : outline.distance(corners.get(0)) + outline.length();
    }

    /** Distance to the same stretch of the sizes before and after. */
    private static double clearance(Block block, List<Outline> outlines, int position, int run, Point at) {
        Block.Layer own = block.layers().get(position);
        double clear = ENOUGH;
        for (int other : new int[] {position - 1, position + 1}) {
            if (other < 0 || other >= block.layers().size()) {
                continue;
            }
            Block.Layer layer = block.layers().get(other);
            if (layer.piece().cutCorners().size() == own.piece().cutCorners().size()) {
                double from =
                        outlines.get(other).distance(layer.piece().cutCorners().get(run));
                Point seen = at.plus(own.shift()).minus(layer.shift());
                clear = outlines.get(other).distanceTo(seen, from, end(layer.piece(), outlines.get(other), run), clear);
            }
        }
        return clear;
    }
}
