package org.capwright.check;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import org.capwright.draft.SleeveDraft;
import org.capwright.draft.UnderSleeve;
import org.capwright.draft.WristOpening;
import org.capwright.grade.GradedSize;
import org.capwright.grade.SizeRun;
import org.capwright.measure.Dimension;
import org.capwright.measure.SleeveSubject;
import org.capwright.pattern.PatternSet;
import org.capwright.pattern.SeamPair;
import org.capwright.pattern.Seams;
import org.capwright.quantity.Quantity;
import org.capwright.words.Text;

/** What is worth a look in the pieces of a run, whatever its grade: one finding for all sizes that have it, with the worst figure. */
final class PieceFindings {

    /** Less surplus than this is eased in without a word, mm. */
    private static final double NO_SURPLUS = 0.5;

    private static final String SURPLUS = "unpleated-surplus";
    private static final String WRIST = "wrist-opening";
    private static final String MISMATCH = "seam-mismatch";

    /** What may be found; docs/checks has a page for each. */
    static final List<String> CODES = List.of(SURPLUS, WRIST, MISMATCH);

    private PieceFindings() {}

    static List<Finding> of(PatternSet patterns) {
        List<Finding> findings = new ArrayList<>(of(patterns.run()));
        for (SeamPair seam : Seams.walk(patterns)) {
            if (!seam.matches()) {
                findings.add(mismatch(seam));
            }
        }
        return findings;
    }

    /** What the draft tells before a piece is drawn. */
    static List<Finding> of(SizeRun run) {
        return Stream.of(surplus(run), wrist(run)).flatMap(Optional::stream).toList();
    }

    private static double unpleated(SleeveDraft draft) {
        return draft.overlay()
                .filter(overlay -> overlay.pleats().isEmpty())
                .map(overlay -> overlay.takeUp())
                .orElse(0.0);
    }

    private static Optional<Finding> surplus(SizeRun run) {
        List<String> sizes = new ArrayList<>();
        double worst = 0;
        for (GradedSize size : run.sizes()) {
            double here = unpleated(size.draft());
            if (here > NO_SURPLUS) {
                sizes.add(size.label());
                worst = Math.max(worst, here);
            }
        }
        return sizes.isEmpty()
                ? Optional.empty()
                : Optional.of(new Finding(
                        SURPLUS,
                        Severity.CAUTION,
                        sizes,
                        SleeveSubject.Option.TAKE_UP,
                        Quantity.LENGTH,
                        OptionalDouble.of(worst),
                        Expected.atMost(NO_SURPLUS),
                        "the top edge of the overlay is longer than the armhole it is sewn to, and no pleats are asked"
                                + " for",
                        Finding.PRACTICE,
                        "Lay pleats along the top edge, or gather it."));
    }

    private static Optional<Finding> wrist(SizeRun run) {
        List<String> sizes = new ArrayList<>();
        Optional<WristOpening> narrowest = Optional.empty();
        for (GradedSize size : run.sizes()) {
            Optional<WristOpening> opening = size.draft().underSleeve().flatMap(UnderSleeve::opening);
            if (opening.isPresent()) {
                sizes.add(size.label());
                double wrist = opening.get().wrist();
                narrowest = narrowest.filter(other -> other.wrist() <= wrist).or(() -> opening);
            }
        }
        return narrowest.map(opening -> wrist(sizes, opening));
    }

    private static Finding wrist(List<String> sizes, WristOpening opening) {
        boolean known = opening.basis() == WristOpening.Basis.GIVEN;
        return new Finding(
                WRIST,
                known ? Severity.INFO : Severity.CAUTION,
                sizes,
                Dimension.WRIST,
                Quantity.LENGTH,
                OptionalDouble.of(opening.wrist()),
                Expected.atLeast(opening.handGirth()),
                known
                        ? "the hand does not pass the wrist; an opening is marked on the underarm seam"
                        : "the wrist is narrower than a usual hand, which then does not pass",
                Finding.PRACTICE,
                known
                        ? "Finish the opening with a placket, buttons or a zip."
                        : "Give the hand girth, and an opening is marked; or widen the wrist.");
    }

    private static Finding mismatch(SeamPair seam) {
        return new Finding(
                MISMATCH,
                Severity.STOP,
                List.of(seam.size()),
                new SleeveSubject.Seam(seam.name()),
                Quantity.LENGTH,
                OptionalDouble.of(seam.mismatch()),
                Expected.between(-SeamPair.TOLERANCE, SeamPair.TOLERANCE),
                Text.of("two seam lines that are sewn together differ by more than the stated ease: {first} and"
                                + " {second}")
                        .with("first", seam.first())
                        .with("second", seam.second()),
                Text.of(Finding.PRACTICE),
                Text.of("Do not cut; report this style, for the draft should not allow it."));
    }
}
