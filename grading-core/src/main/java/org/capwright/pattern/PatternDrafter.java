package org.capwright.pattern;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.Consumer;
import java.util.function.Predicate;
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
        Drafts drafts = Drafts.of(run, options);
        CutLines cutLines = new CutLines(options.corners());
        RunLabels labels = new RunLabels(title);
        List<List<Piece>> sizes =
                new ArrayList<>(Collections.nCopies(run.sizes().size(), List.of()));
        Map<Integer, InvalidMeasuresException> refused = new TreeMap<>();
        for (int index : fromBase(run)) {
            GradedSize size = run.sizes().get(index);
            try {
                List<Piece> pieces = new ArrayList<>(4);
                List<PieceInside> insides = new ArrayList<>(4);
                for (PieceDraft draft : drafts.of(size)) {
                    PieceInside inside = PieceInside.of(draft, options.marking(), insides);
                    pieces.add(PieceFinish.of(draft, inside, cutLines.of(draft), labels.of(draft, inside)));
                }
                sizes.set(index, List.copyOf(pieces));
            } catch (InvalidMeasuresException e) {
                refused.put(index, e);
            }
        }
        if (!refused.isEmpty()) {
            throw new InvalidMeasuresException(inSizes(refused, run));
        }
        return new PatternSet(title, run, List.copyOf(sizes), options.finishing());
    }

    private static List<Violation> inSizes(Map<Integer, InvalidMeasuresException> refused, SizeRun run) {
        return refused.entrySet().stream()
                .flatMap(entry -> entry.getValue().violations().stream()
                        .map(violation ->
                                violation.inSize(run.sizes().get(entry.getKey()).label())))
                .toList();
    }

    /**
     * What {@link #draft} would refuse, without the work of drafting pieces: only their outlines are drawn.
     *
     * @param run the graded run
     * @param options allowances, corners, turn of cloth and overlap of the interfacing
     * @return everything found wrong, with the greatest values that work; nothing where all pieces can be drafted
     */
    public static List<Violation> wrong(SizeRun run, PatternOptions options) {
        CutLines cutLines = new CutLines(options.corners());
        return wrong(run, options, draft -> PieceFinish.checkOutlines(draft, cutLines));
    }

    /**
     * What is wrong with pieces before anything is added to them: whether a cut line with their allowances can be drawn is left open, which takes longer than all the rest.
     *
     * @param run the graded run
     * @param options allowances, corners, turn of cloth and overlap of the interfacing
     * @return everything found wrong; nothing where all net lines can be drafted
     */
    public static List<Violation> wrongNets(SizeRun run, PatternOptions options) {
        return wrong(run, options, PieceFinish::checkNet);
    }

    private static List<Violation> wrong(SizeRun run, PatternOptions options, Consumer<PieceDraft> check) {
        List<Violation> found = OptionChecks.of(options);
        if (!found.isEmpty()) {
            return found;
        }
        Drafts drafts = Drafts.of(run, options);
        Map<Integer, InvalidMeasuresException> refused = new TreeMap<>();
        for (int index = 0; index < run.sizes().size(); index++) {
            try {
                drafts.of(run.sizes().get(index)).forEach(check);
            } catch (InvalidMeasuresException e) {
                refused.put(index, e);
            }
        }
        return inSizes(refused, run);
    }

    /**
     * Whether all pieces can be drafted in all sizes; no bound is looked for.
     *
     * @param run the graded run
     * @param options allowances, corners, turn of cloth and overlap of the interfacing
     * @return false where {@link #draft} would refuse
     */
    public static boolean canDraft(SizeRun run, PatternOptions options) {
        if (!OptionChecks.of(options).isEmpty()) {
            return false;
        }
        Drafts drafts = Drafts.of(run, options);
        CutLines cutLines = new CutLines(options.corners());
        try {
            return fromBase(run).stream()
                    .flatMap(index -> drafts.of(run.sizes().get(index)).stream())
                    .allMatch(draft -> PieceFinish.canBeCut(draft, cutLines));
        } catch (InvalidMeasuresException e) {
            return false;
        }
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

    /** The pieces of each size as they are drafted, cut alike in all sizes. */
    private record Drafts(PatternOptions options, CutInstruction overlay, CutInstruction sleeve) {

        static Drafts of(SizeRun run, PatternOptions options) {
            boolean folded = options.marking().halves() == Halves.ON_FOLD;
            return new Drafts(
                    options,
                    cut(folded && all(run, PatternDrafter::overlaySymmetrical)),
                    cut(folded && all(run, PatternDrafter::sleeveSymmetrical)));
        }

        private static boolean all(SizeRun run, Predicate<SleeveDraft> symmetrical) {
            for (GradedSize size : run.sizes()) {
                if (!symmetrical.test(size.draft())) {
                    return false;
                }
            }
            return true;
        }

        List<PieceDraft> of(GradedSize size) {
            SleeveDraft draft = size.draft();
            List<PieceDraft> drafts = new ArrayList<>(4);
            if (draft.overlay().isPresent()) {
                drafts.addAll(OverlayPieces.of(size.label(), draft, options, overlay));
            }
            if (draft.underSleeve().isPresent()) {
                UnderSleeve under = draft.underSleeve().get();
                drafts.add(SleevePieces.underSleeve(size.label(), draft, under, options.allowances(), sleeve));
            }
            if (drafts.isEmpty()) {
                drafts.add(SleevePieces.baseSleeve(size.label(), draft, options.allowances(), sleeve));
            }
            if (options.finishing().strips() == Strips.AS_PIECES) {
                drafts.addAll(StripPieces.of(size.label(), draft));
            }
            return drafts;
        }
    }

    private static CutInstruction cut(boolean symmetrical) {
        return new CutInstruction(2, symmetrical ? CutInstruction.Laying.ON_FOLD : CutInstruction.Laying.MIRRORED_PAIR);
    }

    private static boolean overlaySymmetrical(SleeveDraft draft) {
        if (draft.overlay().isEmpty()) {
            return true;
        }
        Overlay overlay = draft.overlay().get();
        return overlay.symmetrical()
                && (overlay.pleats().isEmpty()
                        || PleatedEdge.symmetrical(overlay.pleats().get()));
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
}
