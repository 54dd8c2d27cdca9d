package org.capwright.pattern;

import java.util.ArrayList;
import java.util.List;
import org.capwright.geometry.Curve;
import org.capwright.geometry.Point;

/**
 * Where an arrow runs from the fold line of a pleat to the line on which it is placed, well inside the piece.
 *
 * @param from on the fold line
 * @param to on the placement line
 */
public record PleatArrow(Point from, Point to) {

    /** How far down the pleat lines it stands, as a share of the shorter one. */
    private static final double DOWN = 0.4;

    /**
     * The arrows of a piece.
     *
     * @param piece the piece, in which each fold line has its placement line
     * @return one for each pleat, in their order; none where lines are without their like
     */
    public static List<PleatArrow> of(Piece piece) {
        List<Curve> folds = lines(piece, MarkKind.PLEAT_FOLD);
        List<Curve> placements = lines(piece, MarkKind.PLEAT_PLACEMENT);
        if (folds.size() != placements.size()) {
            return List.of();
        }
        List<PleatArrow> arrows = new ArrayList<>(folds.size());
        for (int i = 0; i < folds.size(); i++) {
            double down =
                    DOWN * Math.min(folds.get(i).length(), placements.get(i).length());
            arrows.add(new PleatArrow(
                    folds.get(i).pointAtLength(down), placements.get(i).pointAtLength(down)));
        }
        return arrows;
    }

    /**
     * How long it is.
     *
     * @return mm
     */
    public double length() {
        return from.distanceTo(to);
    }

    private static List<Curve> lines(Piece piece, MarkKind kind) {
        return piece.marks().stream()
                .filter(mark -> mark.kind() == kind)
                .map(MarkLine::line)
                .toList();
    }
}
