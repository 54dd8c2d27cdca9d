package org.capwright.pattern;

import java.util.List;
import org.capwright.geometry.Points;

/**
 * A pattern piece of one size, in the coordinates of the draft (mm, y up, origin at fold line x bicep line, front half at negative x). Guaranteed to be
 * immutable.
 *
 * @param kind which piece it is
 * @param size label of the size
 * @param edges the seam lines, counter-clockwise, each ending exactly where the next starts
 * @param cutLine the line to cut along: corners and flattened curves, counter-clockwise, first point not repeated
 * @param cutCorners positions in {@code cutLine} of true corners (turn points); the points between are curve points
 * @param notches notches on the seam lines
 * @param marks lines drawn inside the piece, the grain line always among them
 * @param cut how often and how it is cut
 * @param label the words on it
 */
public record Piece(
        PieceKind kind,
        String size,
        List<PieceEdge> edges,
        Points cutLine,
        List<Integer> cutCorners,
        List<Notch> notches,
        List<MarkLine> marks,
        CutInstruction cut,
        PieceLabel label) {

    /** Chords of flattened outlines keep within this distance of the true curve, mm. */
    public static final double FLATTENING = 0.01;

    /**
     * The net line as points.
     *
     * @return seam line, counter-clockwise, flattened to {@link #FLATTENING}, first point not repeated
     */
    public Points netLine() {
        return Outline.flattened(edges);
    }

    /**
     * An edge by its name.
     *
     * @param name name of an edge of this piece
     * @return the edge
     * @throws IllegalArgumentException if there is none of that name
     */
    public PieceEdge edge(String name) {
        for (PieceEdge edge : edges) {
            if (edge.name().equals(name)) {
                return edge;
            }
        }
        throw new IllegalArgumentException(kind + " has no edge " + name);
    }

    /**
     * Whether the drawn outline is one half, to be laid on the fold.
     *
     * @return true if it has a fold edge
     */
    public boolean onFold() {
        return cut.laying() == CutInstruction.Laying.ON_FOLD;
    }
}
