package org.capwright.pattern;

import java.util.Optional;
import org.capwright.measure.SleeveSubject.Option;
import org.capwright.quantity.InvalidMeasuresException;
import org.capwright.quantity.Violation;
import org.capwright.words.Text;

/** Draws the cut lines of pieces, one after another. Not safe for threads. */
final class CutLines {

    /** An allowance is said in steps of a tenth of a millimetre. */
    private static final int STEPS = 10;

    private final CornerKind corners;

    /** The parallels of the pieces of a size: they have some in common. */
    private final EdgeOffset parallels = new EdgeOffset();

    private String size = "";

    /** Cut lines with their corners turned in one way. */
    CutLines(CornerKind corners) {
        this.corners = corners;
    }

    /** Whether a piece has a cut line with its allowances; no bound is looked for. */
    boolean canBeDrawn(PieceDraft draft) {
        return asAsked(draft).isPresent();
    }

    private Optional<CutLine> asAsked(PieceDraft draft) {
        return draft.widestAllowance() > draft.neck() ? Optional.empty() : outline(draft);
    }

    /** The cut line of a piece; refused if there is none, with the widest allowance that works. */
    CutLine of(PieceDraft draft) {
        double widest = draft.widestAllowance();
        Optional<CutLine> line = asAsked(draft);
        if (line.isPresent()) {
            return line.get();
        }
        double works = 0;
        double fails = Math.min(1, draft.neck() / widest);
        if (outline(draft.scaled(fails)).isPresent()) {
            works = fails;
        }
        while ((fails - works) * widest * STEPS > 0.25) {
            double middle = (works + fails) / 2;
            if (outline(draft.scaled(middle)).isPresent()) {
                works = middle;
            } else {
                fails = middle;
            }
        }
        boolean interfacing = draft.kind() == PieceKind.OVERLAY_INTERFACING;
        throw new InvalidMeasuresException(Violation.lengthAbove(
                interfacing ? Option.INTERFACING_OVERLAP : Option.SEAM_ALLOWANCE,
                Text.of("wider than the narrowest part of the piece {piece} can take")
                        .with("piece", Text.of(draft.kind().words())),
                widest,
                Math.floor(works * widest * STEPS) / STEPS));
    }

    private Optional<CutLine> outline(PieceDraft draft) {
        if (!draft.size().equals(size)) {
            size = draft.size();
            parallels.wipe();
        }
        Optional<PieceEdge> hem = TurnedHem.of(draft);
        return hem.isEmpty()
                ? CutLine.around(draft.edges(), corners, parallels)
                : CutLine.around(TurnedHem.cutNet(draft.edges()), corners, parallels)
                        .flatMap(line -> TurnedHem.added(line, hem.get()));
    }
}
