package org.capwright.pattern;

import java.util.List;
import org.capwright.geometry.Cubic;
import org.capwright.geometry.Curve;
import org.capwright.geometry.Point;

/** Flattens the bowed hems of a piece, to find how far they may be bowed. */
final class BowedHem {

    private BowedHem() {}

    /** The same piece with its hems bowed by a share of what they are. */
    static PieceDraft flatter(PieceDraft draft, double share) {
        List<PieceEdge> edges = draft.edges().stream()
                .map(edge -> edge.kind() == EdgeKind.HEM
                        ? new PieceEdge(edge.name(), edge.kind(), flatter(edge.curve(), share), edge.allowance())
                        : edge)
                .toList();
        return draft.withEdges(edges);
    }

    private static Curve flatter(Curve hem, double share) {
        return Curve.of(hem.segments().stream()
                .map(bowed -> {
                    Cubic chord = Cubic.line(bowed.start(), bowed.end());
                    return new Cubic(
                            bowed.start(),
                            chord.control1().towards(bowed.control1(), share),
                            chord.control2().towards(bowed.control2(), share),
                            bowed.end());
                })
                .toList());
    }

    /** The greatest sagitta of a hem, mm, negative if it is hollow; the piece lies to the left of its edges. */
    static double sagitta(PieceDraft draft) {
        double greatest = 0;
        for (PieceEdge edge : draft.edges()) {
            if (edge.kind() == EdgeKind.HEM) {
                for (Cubic hem : edge.curve().segments()) {
                    Point chord = hem.end().minus(hem.start()).unit();
                    double sagitta = hem.pointAt(0.5).minus(hem.start()).cross(chord);
                    greatest = Math.abs(sagitta) > Math.abs(greatest) ? sagitta : greatest;
                }
            }
        }
        return greatest;
    }
}
