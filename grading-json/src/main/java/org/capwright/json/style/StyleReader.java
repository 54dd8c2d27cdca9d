package org.capwright.json.style;

import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.capwright.draft.CapFit;
import org.capwright.draft.ElbowShaping;
import org.capwright.draft.HemShape;
import org.capwright.draft.OverlayStyle;
import org.capwright.draft.SleeveStyle;
import org.capwright.draft.UnderSleeveStyle;
import org.capwright.draft.pleat.FullnessTarget;
import org.capwright.json.problem.FoundViolations;
import org.capwright.json.problem.RequestPlaces;
import org.capwright.json.schema.RequestObject;
import org.capwright.measure.Dimension;
import org.capwright.measure.Dimensions;
import org.capwright.words.Text;

/** Reads sleeve, overlay and under-sleeve: dimensions, and what is the same in every size. */
final class StyleReader {

    static final Map<String, HemShape> HEMS =
            Map.of("vee", HemShape.VEE, "bowed", HemShape.BOWED, "level", HemShape.LEVEL);

    private final RequestObject body;
    private final FoundViolations found;
    private final Map<Dimension, Double> values = new EnumMap<>(Dimension.class);
    private final SleeveStyle style;

    /** Whether the rise is to follow from the fullness or the pleats, be they right or wrong. */
    private boolean riseFollows;

    StyleReader(RequestObject body, FoundViolations found) {
        this.body = body;
        this.found = found;
        Optional<RequestObject> sleeve = body.object("sleeve");
        Optional<RequestObject> overlay = body.object("overlay");
        Optional<RequestObject> underSleeve = body.object("underSleeve");
        CapFit fit = sleeve.map(this::sleeve).orElse(new CapFit.Given());
        Optional<OverlayStyle> overlayStyle = overlay.map(this::overlay);
        Optional<UnderSleeveStyle> underStyle = underSleeve.map(this::underSleeve);
        this.style = new SleeveStyle(fit, overlayStyle, underStyle);
    }

    SleeveStyle style() {
        return style;
    }

    Dimensions dimensions() {
        return Dimensions.of(values);
    }

    /** Why a dimension cannot grow, or nothing if it can. */
    Optional<Text> reasonNotToGrow(Dimension dimension) {
        boolean wrongDepth = dimension == Dimension.PLEAT_DEPTH && found.names("/overlay/pleats/greatestDepth");
        if (values.containsKey(dimension) || found.names(RequestPlaces.USUAL.of(dimension)) || wrongDepth) {
            return Optional.empty();
        }
        if (dimension == Dimension.RISE && riseFollows) {
            return Optional.of(
                    Text.of("follows from the fullness or the pleats in every size, so it has no growth of its own"));
        }
        boolean follows = dimension == Dimension.CAP_HEIGHT && !(style.fit() instanceof CapFit.Given)
                || dimension == Dimension.BICEP && style.fit() instanceof CapFit.BicepFor
                || dimension == Dimension.FRONT_WIDTH && style.fit() instanceof CapFit.HalvesFor;
        return Optional.of(Text.of(
                        follows
                                ? "follows from the cap ease in every size, so it has no growth of its own"
                                : "the style has no such dimension, so it cannot grow; give {place} or leave"
                                        + " this out")
                .with("place", RequestPlaces.USUAL.of(dimension)));
    }

    private void put(RequestObject from, String field, Dimension dimension) {
        from.length(field).ifPresent(value -> values.put(dimension, value));
    }

    private void put(RequestObject from, Dimension dimension) {
        put(from, RequestPlaces.field(dimension), dimension);
    }

    private CapFit sleeve(RequestObject sleeve) {
        put(sleeve, Dimension.BICEP);
        put(sleeve, Dimension.LENGTH);
        put(sleeve, Dimension.CAP_HEIGHT);
        put(sleeve, Dimension.CAP_OUTWARD);
        put(sleeve, Dimension.CAP_INWARD);
        put(sleeve, Dimension.ARMHOLE);
        if (body.has("underSleeve") && !sleeve.has("length")) {
            sleeve.refuse("length", "is missing; the under-sleeve needs a length");
        }
        if (!body.has("underSleeve") && sleeve.has("length")) {
            sleeve.refuse("length", "has no use without an under-sleeve; add underSleeve or leave it out");
        }
        Optional<RequestObject> front = sleeve.object("front");
        Optional<RequestObject> back = sleeve.object("back");
        front.ifPresent(half -> {
            put(half, Dimension.FRONT_WIDTH);
            put(half, Dimension.FRONT_CAP_OUTWARD);
            put(half, Dimension.FRONT_CAP_INWARD);
            put(half, Dimension.FRONT_ARMHOLE);
        });
        back.ifPresent(half -> {
            put(half, Dimension.BACK_CAP_OUTWARD);
            put(half, Dimension.BACK_CAP_INWARD);
        });
        refuseUnused(sleeve, front, back, "capOutward");
        refuseUnused(sleeve, front, back, "capInward");
        new ArmholeReader(sleeve, front, back, values, found).read();
        if (body.has("overlay") && !values.containsKey(Dimension.ARMHOLE) && !sleeve.has("armhole")) {
            sleeve.refuse("armhole", "is missing; the overlay is sewn to a part of the armhole");
        }
        return new CapFitReader(sleeve, front, back, values).read();
    }

    private static void refuseUnused(
            RequestObject sleeve, Optional<RequestObject> front, Optional<RequestObject> back, String field) {
        if (sleeve.has(field)
                && front.map(half -> half.has(field)).orElse(false)
                && back.map(half -> half.has(field)).orElse(false)) {
            sleeve.refuse(field, "has no use, as front and back each have their own; leave it out");
        }
    }

    private OverlayStyle overlay(RequestObject overlay) {
        put(overlay, Dimension.RISE);
        put(overlay, Dimension.OVERLAY_LENGTH);
        put(overlay, Dimension.SIDE_DEPTH);
        put(overlay, Dimension.HEM_SAGITTA);
        put(overlay, Dimension.EXTRA_WIDTH);
        put(overlay, Dimension.FRONT_GAP);
        put(overlay, Dimension.BACK_GAP);
        Optional<String> word = overlay.choice("hem");
        HemShape hem = word.map(HEMS::get).orElse(HemShape.VEE);
        boolean known = word.isPresent() || !overlay.has("hem");
        if (known && hem == HemShape.BOWED && !overlay.has("hemSagitta")) {
            overlay.refuse("hemSagitta", "is missing; a bowed hem needs it");
        }
        if (known && hem != HemShape.BOWED && overlay.has("hemSagitta")) {
            overlay.refuse("hemSagitta", "has no use unless the hem is bowed");
        }
        double join = overlay.ratio("join").orElse(OverlayStyle.THIRD_DIVISION);
        Optional<RequestObject> pleats = overlay.object("pleats");
        boolean byPleats = !overlay.has("rise")
                && !overlay.has("fullness")
                && pleats.map(PleatReader::full).orElse(false);
        pleats.ifPresent(given -> {
            put(given, "depth", Dimension.PLEAT_DEPTH);
            put(given, "greatestDepth", Dimension.PLEAT_DEPTH);
        });
        riseFollows = byPleats || overlay.has("fullness") && !overlay.has("rise");
        Optional<Double> depth = Optional.ofNullable(values.get(Dimension.PLEAT_DEPTH));
        Optional<PleatReader.Pleated> pleated =
                pleats.map(given -> byPleats ? PleatReader.readFull(given, depth) : PleatReader.readOne(given, depth));
        return new OverlayStyle(
                hem,
                join,
                pleated.flatMap(PleatReader.Pleated::plan),
                byPleats ? pleated.flatMap(PleatReader.Pleated::target) : fullness(overlay));
    }

    private static Optional<FullnessTarget> fullness(RequestObject overlay) {
        OptionalDouble ratio = overlay.ratio("fullness");
        if (overlay.has("rise") == overlay.has("fullness")) {
            overlay.refuse(
                    "rise",
                    overlay.has("rise")
                            ? "contradicts fullness; give exactly one of them"
                            : "is missing; give it, or the fullness or the pleats by count and depth that it follows"
                                    + " from");
        }
        return ratio.isPresent() ? Optional.of(new FullnessTarget.Ratio(ratio.getAsDouble())) : Optional.empty();
    }

    private UnderSleeveStyle underSleeve(RequestObject underSleeve) {
        put(underSleeve, Dimension.ELBOW);
        put(underSleeve, Dimension.WRIST);
        put(underSleeve, Dimension.ELBOW_LEVEL);
        put(underSleeve, Dimension.ELBOW_DART);
        put(underSleeve, Dimension.ELBOW_DART_LENGTH);
        put(underSleeve, Dimension.ELBOW_EASE);
        put(underSleeve, Dimension.HAND_GIRTH);
        Optional<String> word = underSleeve.choice("shaping");
        ElbowShaping shaping = word.map(StyleReader::shaping).orElse(ElbowShaping.TAPERED);
        if (word.isPresent() || !underSleeve.has("shaping")) {
            refuseUnless(ElbowShaping.ELBOW_DART, shaping, underSleeve, "elbowDart");
            refuseUnless(ElbowShaping.ELBOW_DART, shaping, underSleeve, "elbowDartLength");
            refuseUnless(ElbowShaping.EASED_SEAM, shaping, underSleeve, "elbowEase");
        }
        return new UnderSleeveStyle(shaping);
    }

    private static ElbowShaping shaping(String label) {
        for (ElbowShaping shaping : ElbowShaping.values()) {
            if (shaping.label().equals(label)) {
                return shaping;
            }
        }
        return ElbowShaping.TAPERED;
    }

    private static void refuseUnless(
            ElbowShaping needed, ElbowShaping shaping, RequestObject underSleeve, String field) {
        if (shaping != needed && underSleeve.has(field)) {
            underSleeve.refuse(
                    field, Text.of("has no use unless shaping is {shaping}").with("shaping", needed.label()));
        }
    }
}
