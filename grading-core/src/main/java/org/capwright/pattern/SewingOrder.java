package org.capwright.pattern;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.capwright.draft.Overlay;
import org.capwright.draft.SleeveDraft;
import org.capwright.draft.UnderSleeve;
import org.capwright.draft.WristOpening;
import org.capwright.draft.pleat.PleatLayout;
import org.capwright.draft.pleat.TruedEdge;
import org.capwright.measure.Dimension;
import org.capwright.quantity.Unit;

/**
 * In which order the pieces of a style are sewn, and what to beware of. Figures are those of the base size. Common practice, no source.
 *
 * @param steps what is done, first step first
 * @param cautions what to beware of
 */
public record SewingOrder(List<String> steps, List<String> cautions) {

    /** What holds for every sleeve of this kind. */
    private static final List<String> CAUTIONS = List.of(
            "Full, flowing sleeves catch fire and get caught: do not wear them near open flames, hot plates or running"
                    + " machines.",
            "Put no cords, drawstrings or small loose trims on children's wear; local product rules decide what is"
                    + " allowed.",
            "Ask the supplier how easily cloth, lining and interfacing burn. For stage, church and work wear the local"
                    + " fire and safety rules and a qualified person decide, not this sheet.");

    /**
     * The sewing order of a set.
     *
     * @param set the pieces
     * @return steps for the parts that the style has
     */
    public static SewingOrder of(PatternSet set) {
        SleeveDraft draft = set.run().baseSize().draft();
        List<Piece> pieces = set.sizes().get(set.run().base());
        List<String> steps = new ArrayList<>();
        steps.add("Cut all pieces by the cutting list, transfer notches and marks, and keep left and right sleeves"
                + " apart.");
        draft.overlay().ifPresent(overlay -> addOverlay(steps, overlay, pieces.get(0), set));
        Optional<Piece> sleeve = pieces.stream()
                .filter(p -> p.kind() == PieceKind.UNDER_SLEEVE || p.kind() == PieceKind.BASE_SLEEVE)
                .findFirst();
        sleeve.ifPresent(piece -> addSleeve(steps, piece, draft, set));
        addSetting(steps, sleeve.isPresent(), draft, set);
        return new SewingOrder(List.copyOf(steps), CAUTIONS);
    }

    private static void addOverlay(List<String> steps, Overlay overlay, Piece main, PatternSet set) {
        steps.add("Fuse or baste the interfacing to the wrong side of the overlay in main cloth, its edges along the"
                + " seam lines.");
        boolean pointed = main.notches().stream().anyMatch(notch -> notch.kind() == NotchKind.CLIP);
        boolean sides = overlay.back().side().isPresent();
        steps.add("Lay overlay and lining right sides together and sew the hem" + (sides ? " and both sides" : "")
                + ", easing the main cloth to the lining" + (pointed ? "; at the point take one stitch across." : "."));
        if (pointed) {
            steps.add("Clip the allowances at the clip mark to within a thread of the stitching, and trim the point.");
        }
        steps.add("Turn right side out, roll the seam a little to the lining, and press.");
        steps.add("Baste overlay and lining together along the top edge and neaten it as one.");
        Optional<PleatLayout> pleats = overlay.pleats().filter(layout -> layout.count() > 0);
        if (pleats.isPresent()) {
            PleatLayout layout = pleats.get();
            steps.add("Bring each pleat's fold line to its placement line: " + layout.count()
                    + (layout.count() == 1 ? " pleat, " : " pleats, ") + "folds "
                    + depths(overlay.trued().orElseThrow(), set) + " deep. The closed edge measures "
                    + length(layout.span(), set)
                    + ". Baste across the pleats inside the allowance.");
            Bulk bulk = Bulk.of(set).get(set.run().base());
            steps.add("Layers in the closed edge where it is thickest: " + bulk.main() + " of main cloth, "
                    + bulk.lining() + " of lining, " + bulk.interfacing() + " of interfacing"
                    + (bulk.thickness().isPresent()
                            ? String.format(
                                    Locale.ROOT,
                                    ", %.1f mm in all.",
                                    bulk.thickness().getAsDouble())
                            : "."));
            steps.add("Stay the closed edge: cut a tape on the straight grain, " + length(layout.span(), set)
                    + " long, and stitch it over the pleats inside the allowance.");
        } else if (overlay.takeUp() > 0.5) {
            steps.add("Gather or ease the top edge from " + length(overlay.edgeLength(), set) + " to "
                    + length(overlay.attachSpan(), set) + ", most of it near the apex.");
        }
    }

    private static String depths(TruedEdge trued, PatternSet set) {
        String least = length(trued.leastDepth(), set);
        String greatest = length(trued.greatestDepth(), set);
        return least.equals(greatest) ? least : least + " to " + greatest;
    }

    private static void addSleeve(List<String> steps, Piece sleeve, SleeveDraft draft, PatternSet set) {
        draft.underSleeve().ifPresent(under -> addUnderarm(steps, under, set));
        double ease = draft.capEase().orElse(0);
        if (ease > 0.5) {
            steps.add("Run two rows of easing stitches along the cap between the front and the back notch; they hold "
                    + length(ease, set) + ". Below the notches nothing is eased.");
        }
        CapNotches front = CapNotches.of(draft, draft.base().front(), Dimension.FRONT_GAP);
        CapNotches back = CapNotches.of(draft, draft.base().back(), Dimension.BACK_GAP);
        steps.add("Mark the armhole of the garment, measured up from the underarm seam: front notch at "
                + length(front.balance(), set) + ", back notch at " + length(back.balance(), set)
                + (draft.overlay().isPresent()
                        ? ", ends of the overlay at " + length(front.overlayEnd(), set) + " in front and "
                                + length(back.overlayEnd(), set) + " behind."
                        : "."));
        if (draft.overlay().isPresent()) {
            steps.add("Baste the overlay on the right side of the cap, apex to apex, its ends at the overlay notches.");
        }
    }

    private static void addUnderarm(List<String> steps, UnderSleeve under, PatternSet set) {
        under.dart()
                .ifPresent(dart -> steps.add("Sew the elbow dart of the under-sleeve, leg on leg, "
                        + length(dart.length(), set) + " long, and press it down."));
        boolean opening = under.opening()
                .filter(given -> given.basis() == WristOpening.Basis.GIVEN)
                .isPresent();
        steps.add("Sew the underarm seam of the under-sleeve"
                + under.easing()
                        .map(easing -> ", easing " + length(easing.ease(), set)
                                + " of the back edge into the front between the notches at the elbow")
                        .orElse("")
                + (opening ? ", down to the notches of the wrist opening; neaten the opening" : "")
                + ". Press the seam open; turn up and sew the wrist hem.");
    }

    private static void addSetting(List<String> steps, boolean sleeve, SleeveDraft draft, PatternSet set) {
        if (sleeve) {
            steps.add(
                    "Set the sleeve into the armhole: underarm to underarm, notch to notch, apex to shoulder seam. Sew"
                            + " with the sleeve uppermost.");
        } else {
            double frontGap = draft.dimensions().getOr(Dimension.FRONT_GAP, 0);
            double backGap = draft.dimensions().getOr(Dimension.BACK_GAP, 0);
            steps.add("Sew the overlay to the armhole, apex to shoulder seam, from " + length(frontGap, set)
                    + " above the underarm seam in front to " + length(backGap, set) + " above it behind.");
        }
        if (draft.dimensions().has(Dimension.ARMHOLE)) {
            steps.add("To bind the armhole seam, cut a bias strip " + length(StripPieces.ARMHOLE, set) + " wide and "
                    + length(draft.dimensions().get(Dimension.ARMHOLE) + StripPieces.ENDS, set) + " long.");
        }
        steps.add("Neaten the armhole seam and press it toward the sleeve without flattening the pleats or the cap.");
    }

    /** A length for people, in the unit of the set. */
    private static String length(double millimetres, PatternSet set) {
        Unit unit = set.title().unit();
        return switch (unit) {
            case MILLIMETRE -> String.format(Locale.ROOT, "%.0f mm", millimetres);
            case CENTIMETRE -> String.format(Locale.ROOT, "%.1f cm", millimetres / 10);
            case INCH -> String.format(Locale.ROOT, "%.2f in", millimetres / 25.4);
        };
    }
}
