package org.capwright.exchange.dxf;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import org.capwright.geometry.Curve;
import org.capwright.pattern.Piece;
import org.capwright.pattern.PieceEdge;

/**
 * A piece in all sizes with the same edges in each: an edge that has no length in some size, as the side of an overlay that grows from nothing, has a short one there, so that its two ends are two
 * points with a rule each. It takes its length from the longer of its neighbours; the outline stays as it is.
 */
final class SharedEdges {

    /** Length of an edge that has none, mm: no more, for it moves the end of its neighbour. */
    private static final double SHORT = 0.004;

    private SharedEdges() {}

    static List<Piece> of(List<Piece> sizes) {
        List<PieceEdge> model = List.of();
        Set<String> names = new HashSet<>();
        for (Piece piece : sizes) {
            model = piece.edges().size() > model.size() ? piece.edges() : model;
            piece.edges().forEach(edge -> names.add(edge.name()));
        }
        if (names.size() > model.size()) {
            throw new IllegalArgumentException("no size has all edges " + names);
        }
        List<Piece> shared = new ArrayList<>(sizes.size());
        for (Piece piece : sizes) {
            shared.add(piece.edges().size() == model.size() ? piece : with(piece, edges(piece, model)));
        }
        return shared;
    }

    private static Piece with(Piece piece, List<PieceEdge> edges) {
        return new Piece(
                piece.kind(),
                piece.size(),
                edges,
                piece.cutLine(),
                piece.cutCorners(),
                piece.notches(),
                piece.marks(),
                piece.cut(),
                piece.label());
    }

    private static List<PieceEdge> edges(Piece piece, List<PieceEdge> model) {
        Map<String, Curve> own = new HashMap<>();
        piece.edges().forEach(edge -> own.put(edge.name(), edge.curve()));
        List<PieceEdge> edges = new ArrayList<>(model.size());
        int count = model.size();
        for (int i = 0; i < count; i++) {
            String name = model.get(i).name();
            if (!own.containsKey(name)) {
                String before = model.get((i + count - 1) % count).name();
                String after = model.get((i + 1) % count).name();
                Optional<Curve> one = Optional.ofNullable(own.get(before));
                Optional<Curve> other = Optional.ofNullable(own.get(after));
                if (length(other) >= length(one)) {
                    Curve longer = other.orElseThrow();
                    own.put(name, longer.part(0, SHORT));
                    own.put(after, longer.part(SHORT, longer.length()));
                } else {
                    Curve longer = one.orElseThrow();
                    double rest = longer.length() - SHORT;
                    own.put(before, longer.part(0, rest));
                    own.put(name, longer.part(rest, longer.length()));
                }
            }
        }
        for (PieceEdge edge : model) {
            edges.add(new PieceEdge(
                    edge.name(), edge.kind(), Objects.requireNonNull(own.get(edge.name())), edge.allowance()));
        }
        return List.copyOf(edges);
    }

    private static double length(Optional<Curve> edge) {
        return edge.map(Curve::length).orElse(0.0);
    }
}
