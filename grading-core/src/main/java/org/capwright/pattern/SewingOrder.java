package org.capwright.pattern;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.capwright.draft.Overlay;
import org.capwright.draft.SleeveDraft;
import org.capwright.draft.UnderSleeve;
import org.capwright.draft.WristOpening;
import org.capwright.draft.pleat.PleatLayout;
import org.capwright.draft.pleat.TruedEdge;
import org.capwright.measure.Dimension;
import org.capwright.quantity.Decimals;
import org.capwright.quantity.Unit;
import org.capwright.words.Language;
import org.capwright.words.Text;

/**
 * In which order the pieces of a style are sewn, and what to beware of. Figures are those of the base size. Common practice, no source.
 *
 * @param steps what is done, first step first
 * @param cautions what to beware of
 */
public record SewingOrder(List<String> steps, List<String> cautions) {

    /** What holds for every sleeve of this kind. */
    private static final List<Text> CAUTIONS = List.of(
            Text.of("Full, flowing sleeves catch fire and get caught: do not wear them near open flames, hot plates or"
                    + " running machines."),
            Text.of("Put no cords, drawstrings or small loose trims on children's wear; local product rules decide what"
                    + " is allowed."),
            Text.of("Ask the supplier how easily cloth, lining and interfacing burn. For stage, church and work wear"
                    + " the local fire and safety rules and a qualified person decide, not this sheet."));

    /**
     * The sewing order of a set, in its language.
     *
     * @param set the pieces
     * @return steps for the parts that the style has
     */
    public static SewingOrder of(PatternSet set) {
        SleeveDraft draft = set.run().baseSize().draft();
        List<Piece> pieces = set.sizes().get(set.run().base());
        List<Text> steps = new ArrayList<>();
        steps.add(Text.of("Cut all pieces by the cutting list, transfer notches and marks, and keep left and right"
                + " sleeves apart."));
        draft.overlay().ifPresent(overlay -> addOverlay(steps, overlay, pieces.get(0), set));
        Optional<Piece> sleeve = pieces.stream()
                .filter(p -> p.kind() == PieceKind.UNDER_SLEEVE || p.kind() == PieceKind.BASE_SLEEVE)
                .findFirst();
        sleeve.ifPresent(piece -> addSleeve(steps, piece, draft, set));
        addSetting(steps, sleeve.isPresent(), draft, set);
        Language language = set.title().language();
        return new SewingOrder(said(steps, language), said(CAUTIONS, language));
    }

    private static List<String> said(List<Text> texts, Language language) {
        return texts.stream().map(text -> text.in(language)).toList();
    }

    private static void addOverlay(List<Text> steps, Overlay overlay, Piece main, PatternSet set) {
        steps.add(
                Text.of("Fuse or baste the interfacing to the wrong side of the overlay in main cloth, its edges along"
                        + " the seam lines."));
        boolean pointed = main.notches().stream().anyMatch(notch -> notch.kind() == NotchKind.CLIP);
        boolean sides = overlay.back().side().isPresent();
        steps.add(Text.of("Lay overlay and lining right sides together and sew {edges}, easing the main cloth to the"
                        + " lining{point}.")
                .with("edges", Text.of(sides ? "the hem and both sides" : "the hem"))
                .with("point", pointed ? Text.of("; at the point take one stitch across") : Text.name("")));
        if (pointed) {
            steps.add(Text.of("Clip the allowances at the clip mark to within a thread of the stitching, and trim the"
                    + " point."));
        }
        steps.add(Text.of("Turn right side out, roll the seam a little to the lining, and press."));
        steps.add(Text.of("Baste overlay and lining together along the top edge and neaten it as one."));
        Optional<PleatLayout> pleats = overlay.pleats().filter(layout -> layout.count() > 0);
        if (pleats.isPresent()) {
            PleatLayout layout = pleats.get();
            steps.add(Text.of(
                            layout.count() == 1
                                    ? "Bring each pleat's fold line to its placement line: {count} pleat, folds {depth}"
                                            + " deep. The closed edge measures {span}. Baste across the pleats inside"
                                            + " the allowance."
                                    : "Bring each pleat's fold line to its placement line: {count} pleats, folds"
                                            + " {depth} deep. The closed edge measures {span}. Baste across the pleats"
                                            + " inside the allowance.")
                    .with("count", layout.count())
                    .with("depth", depths(overlay.trued().orElseThrow(), set))
                    .with("span", length(layout.span(), set)));
            steps.add(layers(Bulk.of(set).get(set.run().base())));
            steps.add(Text.of("Stay the closed edge: cut a tape on the straight grain, {span} long, and stitch it over"
                            + " the pleats inside the allowance.")
                    .with("span", length(layout.span(), set)));
        } else if (overlay.takeUp() > 0.5) {
            steps.add(Text.of("Gather or ease the top edge from {edge} to {span}, most of it near the apex.")
                    .with("edge", length(overlay.edgeLength(), set))
                    .with("span", length(overlay.attachSpan(), set)));
        }
    }

    private static Text layers(Bulk bulk) {
        return Text.of(
                        bulk.thickness().isPresent()
                                ? "Layers in the closed edge where it is thickest: {main} of main cloth, {lining} of"
                                        + " lining, {interfacing} of interfacing, {thickness} in all."
                                : "Layers in the closed edge where it is thickest: {main} of main cloth, {lining} of"
                                        + " lining, {interfacing} of interfacing.")
                .with("main", bulk.main())
                .with("lining", bulk.lining())
                .with("interfacing", bulk.interfacing())
                .with("thickness", Text.figures(Decimals.fixed(bulk.thickness().orElse(0), 1) + " mm"));
    }

    private static Text depths(TruedEdge trued, PatternSet set) {
        Text least = length(trued.leastDepth(), set);
        Text greatest = length(trued.greatestDepth(), set);
        return least.equals(greatest)
                ? least
                : Text.of("{least} to {greatest}").with("least", least).with("greatest", greatest);
    }

    private static void addSleeve(List<Text> steps, Piece sleeve, SleeveDraft draft, PatternSet set) {
        draft.underSleeve().ifPresent(under -> addUnderarm(steps, under, set));
        double ease = draft.capEase().orElse(0);
        if (ease > 0.5) {
            steps.add(Text.of("Run two rows of easing stitches along the cap between the front and the back notch; they"
                            + " hold {ease}. Below the notches nothing is eased.")
                    .with("ease", length(ease, set)));
        }
        CapNotches front = CapNotches.of(draft, draft.base().front(), Dimension.FRONT_GAP);
        CapNotches back = CapNotches.of(draft, draft.base().back(), Dimension.BACK_GAP);
        Text marks = Text.of(
                draft.overlay().isPresent()
                        ? "Mark the armhole of the garment, measured up from the underarm seam: front notch at {front},"
                                + " back notch at {back}, ends of the overlay at {frontEnd} in front and {backEnd}"
                                + " behind."
                        : "Mark the armhole of the garment, measured up from the underarm seam: front notch at {front},"
                                + " back notch at {back}.");
        steps.add(marks.with("front", length(front.balance(), set))
                .with("back", length(back.balance(), set))
                .with("frontEnd", length(front.overlayEnd(), set))
                .with("backEnd", length(back.overlayEnd(), set)));
        if (draft.overlay().isPresent()) {
            steps.add(Text.of("Baste the overlay on the right side of the cap, apex to apex, its ends at the overlay"
                    + " notches."));
        }
    }

    private static void addUnderarm(List<Text> steps, UnderSleeve under, PatternSet set) {
        under.dart()
                .ifPresent(dart ->
                        steps.add(Text.of("Sew the elbow dart of the under-sleeve, leg on leg, {length} long,"
                                        + " and press it down.")
                                .with("length", length(dart.length(), set))));
        boolean opening = under.opening()
                .filter(given -> given.basis() == WristOpening.Basis.GIVEN)
                .isPresent();
        Text eased = under.easing()
                .map(easing -> Text.of(
                                ", easing {ease} of the back edge into the front between the notches at the" + " elbow")
                        .with("ease", length(easing.ease(), set)))
                .orElse(Text.name(""));
        steps.add(Text.of("Sew the underarm seam of the under-sleeve{eased}{opening}. Press the seam open; turn up and"
                        + " sew the wrist hem.")
                .with("eased", eased)
                .with(
                        "opening",
                        opening
                                ? Text.of(", down to the notches of the wrist opening; neaten the opening")
                                : Text.name("")));
    }

    private static void addSetting(List<Text> steps, boolean sleeve, SleeveDraft draft, PatternSet set) {
        if (sleeve) {
            steps.add(Text.of("Set the sleeve into the armhole: underarm to underarm, notch to notch, apex to shoulder"
                    + " seam. Sew with the sleeve uppermost."));
        } else {
            steps.add(Text.of("Sew the overlay to the armhole, apex to shoulder seam, from {front} above the underarm"
                            + " seam in front to {back} above it behind.")
                    .with("front", length(draft.dimensions().getOr(Dimension.FRONT_GAP, 0), set))
                    .with("back", length(draft.dimensions().getOr(Dimension.BACK_GAP, 0), set)));
        }
        if (set.sizes().get(set.run().base()).stream().anyMatch(p -> p.kind() == PieceKind.SLEEVE_HEAD)) {
            steps.add(
                    Text.of("Lay the stay of the sleeve head inside the cap, apex to apex, its ends at the notches, and"
                            + " stitch it to the allowance."));
        }
        if (draft.dimensions().has(Dimension.ARMHOLE)) {
            steps.add(Text.of("To bind the armhole seam, cut a bias strip {width} wide and {length} long.")
                    .with("width", length(StripPieces.ARMHOLE, set))
                    .with("length", length(draft.dimensions().get(Dimension.ARMHOLE) + StripPieces.ENDS, set)));
        }
        steps.add(Text.of("Neaten the armhole seam and press it toward the sleeve without flattening the pleats or the"
                + " cap."));
    }

    /** A length for people, in the unit of the set. */
    private static Text length(double millimetres, PatternSet set) {
        Unit unit = set.title().unit();
        return Text.figures(
                switch (unit) {
                    case MILLIMETRE -> Decimals.fixed(millimetres, 0) + " mm";
                    case CENTIMETRE -> Decimals.fixed(millimetres / 10, 1) + " cm";
                    case INCH -> Decimals.fixed(millimetres / 25.4, 2) + " in";
                });
    }
}
