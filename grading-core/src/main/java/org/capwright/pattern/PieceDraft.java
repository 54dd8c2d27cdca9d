package org.capwright.pattern;

import java.util.ArrayList;
import java.util.List;

/**
 * A piece before allowances, cut line and label: what the draft says of it.
 *
 * @param kind which piece it is
 * @param size label of the size
 * @param edges seam lines with their allowances
 * @param notches where notches are wanted
 * @param marks lines drawn inside, all but the grain line
 * @param cut how it is cut
 * @param neck the narrowest width that matters on the unfolded piece, mm
 */
record PieceDraft(
        PieceKind kind,
        String size,
        List<PieceEdge> edges,
        List<NotchPlace> notches,
        List<MarkLine> marks,
        CutInstruction cut,
        double neck) {

    PieceEdge edge(String name) {
        for (PieceEdge edge : edges) {
            if (edge.name().equals(name)) {
                return edge;
            }
        }
        throw new IllegalArgumentException(kind + " has no edge " + name);
    }

    boolean onFold() {
        return cut.laying() == CutInstruction.Laying.ON_FOLD;
    }

    double widestAllowance() {
        double widest = 0;
        for (PieceEdge edge : edges) {
            widest = Math.max(widest, edge.allowance());
        }
        return widest;
    }

    /** The same piece with all allowances in proportion. */
    PieceDraft scaled(double factor) {
        List<PieceEdge> scaled = edges.stream()
                .map(e -> new PieceEdge(e.name(), e.kind(), e.curve(), e.allowance() * factor))
                .toList();
        return withEdges(scaled);
    }

    /** A piece with the same seam lines and marks, of another kind and with other allowances. */
    PieceDraft as(PieceKind other, Allowances allowances) {
        List<PieceEdge> others = new ArrayList<>(edges.size());
        for (PieceEdge edge : edges) {
            others.add(new PieceEdge(edge.name(), edge.kind(), edge.curve(), allowances.along(edge.kind())));
        }
        return new PieceDraft(other, size, List.copyOf(others), notches, marks, cut, neck);
    }

    /** The same piece with other seam lines. */
    PieceDraft withEdges(List<PieceEdge> others) {
        return new PieceDraft(kind, size, others, notches, marks, cut, neck);
    }
}
