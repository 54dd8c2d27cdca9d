package org.capwright.pattern;

import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.capwright.draft.Overlay;
import org.capwright.draft.SleeveDraft;
import org.capwright.draft.UnderSleeve;
import org.capwright.grade.GradedSize;
import org.capwright.grade.SizeRun;
import org.capwright.measure.Dimension;
import org.capwright.quantity.InvalidMeasuresException;
import org.capwright.quantity.Violation;

/** Makes pattern pieces of a graded run. */
public final class PatternDrafter {

    private PatternDrafter() {}

    /**
     * Drafts all pieces in all sizes: overlay main, lining and interfacing where the style has an overlay, the under-sleeve where it has one, and the plain sleeve down to the
     * bicep line where it has neither. A piece whose halves are equal in every size, pleats included, is drawn as its half at x ≥ 0, closed by a fold edge, unless pieces are to be
     * drawn whole; others are drawn whole.
     *
     * @param title what stands on every file
     * @param run the graded run
     * @param options allowances, corners, turn of cloth and overlap of the interfacing
     * @return the pieces per size
     * @throws InvalidMeasuresException if an allowance, the turn of cloth or the hem leaves a piece without a valid outline; with the greatest value that works
     */
    public static PatternSet draft(PatternSet.Title title, SizeRun run, PatternOptions options) {
        check(options);
        boolean folded = options.marking().halves() == Halves.ON_FOLD;
        CutInstruction overlayCut = cut(folded
                && run.sizes().stream()
                        .allMatch(s -> s.draft()
                                .overlay()
                                .map(PatternDrafter::overlaySymmetrical)
                                .orElse(true)));
        CutInstruction sleeveCut = cut(folded && run.sizes().stream().allMatch(s -> sleeveSymmetrical(s.draft())));
        Map<PieceKind, LabelPlace> leading = new EnumMap<>(PieceKind.class);
        List<List<Piece>> sizes =
                new ArrayList<>(Collections.nCopies(run.sizes().size(), List.of()));
        Map<Integer, InvalidMeasuresException> refused = new TreeMap<>();
        for (int index : fromBase(run)) {
            GradedSize size = run.sizes().get(index);
            try {
                List<Piece> pieces = new ArrayList<>(4);
                List<PieceInside> insides = new ArrayList<>(4);
                for (PieceDraft draft : drafts(size, options, overlayCut, sleeveCut)) {
                    PieceInside inside = PieceInside.of(draft, options.marking(), insides);
                    Piece piece = PieceFinish.of(
                            title, draft, inside, options, Optional.ofNullable(leading.get(draft.kind())));
                    leading.putIfAbsent(draft.kind(), new LabelPlace(piece.label(), inside.box()));
                    pieces.add(piece);
                }
                sizes.set(index, List.copyOf(pieces));
            } catch (InvalidMeasuresException e) {
                refused.put(index, e);
            }
        }
        if (!refused.isEmpty()) {
            throw new InvalidMeasuresException(refused.entrySet().stream()
                    .flatMap(entry -> entry.getValue().violations().stream()
                            .map(violation -> violation.inSize(
                                    run.sizes().get(entry.getKey()).label())))
                    .toList());
        }
        return new PatternSet(title, run, List.copyOf(sizes), options.finishing());
    }

    /** The places of the sizes, the base size first: the others follow it in what is not drafted. */
    private static List<Integer> fromBase(SizeRun run) {
        List<Integer> order = new ArrayList<>(run.sizes().size());
        order.add(run.base());
        for (int i = 0; i < run.sizes().size(); i++) {
            if (i != run.base()) {
                order.add(i);
            }
        }
        return order;
    }

    /**
     * Refuses options that no piece can take.
     *
     * @param options allowances, corners, turn of cloth and overlap of the interfacing
     * @throws InvalidMeasuresException if one is out of its range, with the range
     */
    public static void check(PatternOptions options) {
        List<Violation> found = OptionChecks.of(options);
        if (!found.isEmpty()) {
            throw new InvalidMeasuresException(found);
        }
    }

    private static CutInstruction cut(boolean symmetrical) {
        return new CutInstruction(2, symmetrical ? CutInstruction.Laying.ON_FOLD : CutInstruction.Laying.MIRRORED_PAIR);
    }

    private static boolean overlaySymmetrical(Overlay overlay) {
        return overlay.symmetrical()
                && overlay.pleats().map(PleatedEdge::symmetrical).orElse(true);
    }

    /** A sleeve can be folded if its halves are equal, it is not turned at the elbow, and the ends of the overlay marked on the cap are equal too. */
    private static boolean sleeveSymmetrical(SleeveDraft draft) {
        boolean equalGaps = draft.overlay().isEmpty()
                || draft.dimensions().getOr(Dimension.FRONT_GAP, 0)
                        == draft.dimensions().getOr(Dimension.BACK_GAP, 0);
        boolean equalHalves = draft.underSleeve()
                .map(UnderSleeve::symmetrical)
                .orElse(draft.base().symmetrical());
        return equalHalves && equalGaps;
    }

    private static List<PieceDraft> drafts(
            GradedSize size, PatternOptions options, CutInstruction overlayCut, CutInstruction sleeveCut) {
        SleeveDraft draft = size.draft();
        List<PieceDraft> drafts = new ArrayList<>(4);
        Optional<Overlay> overlay = draft.overlay();
        overlay.ifPresent(o -> drafts.addAll(OverlayPieces.of(size.label(), draft, options, overlayCut)));
        draft.underSleeve()
                .ifPresent(under -> drafts.add(
                        SleevePieces.underSleeve(size.label(), draft, under, options.allowances(), sleeveCut)));
        if (drafts.isEmpty()) {
            drafts.add(SleevePieces.baseSleeve(size.label(), draft, options.allowances(), sleeveCut));
        }
        if (options.finishing().strips() == Strips.AS_PIECES) {
            drafts.addAll(StripPieces.of(size.label(), draft));
        }
        return drafts;
    }
}
