package org.capwright.pattern;

import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import org.capwright.draft.CapEase;
import org.capwright.draft.CapFit;
import org.capwright.draft.ElbowShaping;
import org.capwright.draft.HemShape;
import org.capwright.draft.OverlayStyle;
import org.capwright.draft.SleeveStyle;
import org.capwright.draft.UnderSleeveStyle;
import org.capwright.draft.pleat.FullnessTarget;
import org.capwright.draft.pleat.PleatDirection;
import org.capwright.draft.pleat.PleatKind;
import org.capwright.draft.pleat.PleatPlan;
import org.capwright.draft.pleat.PleatSizing;
import org.capwright.grade.GradeRule;
import org.capwright.grade.SizeRun;
import org.capwright.measure.Dimension;
import org.capwright.measure.Dimensions;

/**
 * Seeded random runs over the whole space that the interface takes: every way to fit a cap, halves alike and apart, every hem, every kind, direction and sizing of pleats, gaps of
 * 0, sides that grow from nothing, fullness instead of rise, children's to very large arms, one to five sizes with rules, and every option of the workroom.
 */
final class RandomRuns {

    private static final List<String> LABELS = List.of("36", "38", "40", "42", "44", "46", "48");

    private final Random random;
    private final Map<Dimension, Double> d = new EnumMap<>(Dimension.class);
    private final List<GradeRule> rules = new ArrayList<>();
    private final double bicep;
    private final double capHeight;
    private int intervals;

    private RandomRuns(long seed) {
        random = new Random(seed * 0x9E3779B97F4A7C15L + 1);
        random.nextLong(); // the first values of neighbouring seeds are alike
        bicep = between(160, 680);
        capHeight = bicep * between(0.2, 0.5);
    }

    /** Everything that a run and its pieces follow from. */
    record Case(
            SleeveStyle style,
            Dimensions base,
            List<GradeRule> rules,
            List<String> labels,
            int at,
            PatternOptions options) {

        /** The pieces, without the search for values that would work which the front door adds to a refusal. */
        PatternSet drafted() {
            return PatternDrafter.draft(RandomStyles.TITLE, SizeRun.grade(style, base, labels, at, rules), options);
        }
    }

    static Case of(long seed) {
        return new RandomRuns(seed).drawn();
    }

    private double between(double low, double high) {
        return low + (high - low) * random.nextDouble();
    }

    private boolean one(int in) {
        return random.nextInt(in) == 0;
    }

    private <T> T of(T[] all) {
        return all[random.nextInt(all.length)];
    }

    private Case drawn() {
        int first = random.nextInt(3);
        List<String> labels = LABELS.subList(first, first + 1 + random.nextInt(5));
        intervals = labels.size() - 1;
        CapFit fit = sleeve();
        Optional<OverlayStyle> overlay = one(8) ? Optional.empty() : Optional.of(overlay());
        Optional<UnderSleeveStyle> under = one(2) ? Optional.of(underSleeve()) : Optional.empty();
        SleeveStyle style = new SleeveStyle(fit, overlay, under);
        int base = random.nextInt(labels.size());
        PatternOptions options = options();
        if (overlay.isPresent() && overlay.get().hem() != HemShape.LEVEL && one(8)) {
            sideFromNothing(base);
        }
        return new Case(style, Dimensions.of(d), rules, labels, base, options);
    }

    /** The side of the overlay is 0 in the smallest size exactly, or in the smallest two, and grows from there. */
    private void sideFromNothing(int base) {
        rules.removeIf(rule -> rule.dimension() == Dimension.SIDE_DEPTH);
        double step = random.nextInt(1, 20) / 2.0;
        List<Double> steps = new ArrayList<>(Collections.nCopies(intervals, step));
        if (intervals > 1 && one(3)) {
            steps.set(0, 0.0);
        }
        set(
                Dimension.SIDE_DEPTH,
                steps.subList(0, base).stream().mapToDouble(Double::doubleValue).sum());
        if (intervals > 0) {
            rules.add(new GradeRule(Dimension.SIDE_DEPTH, steps));
        }
    }

    private void set(Dimension dimension, double value) {
        d.put(dimension, value);
    }

    private void grow(Dimension dimension, double low, double high) {
        if (intervals == 0 || !d.containsKey(dimension) || one(3)) {
            return;
        }
        boolean broken = one(3);
        double same = between(low, high);
        List<Double> steps = new ArrayList<>();
        for (int i = 0; i < intervals; i++) {
            steps.add(broken ? between(low, high) : same);
        }
        rules.add(new GradeRule(dimension, steps));
    }

    private CapFit sleeve() {
        double armhole = bicep * between(1.08, 1.34);
        set(Dimension.BICEP, bicep);
        set(Dimension.CAP_HEIGHT, capHeight);
        set(Dimension.ARMHOLE, armhole);
        double limit = Math.hypot(bicep / 2, capHeight) / 4 * capHeight / (bicep / 2);
        set(Dimension.CAP_OUTWARD, limit * between(0.3, 0.62));
        set(Dimension.CAP_INWARD, limit * between(0.3, 0.62));
        if (one(3)) {
            set(Dimension.FRONT_WIDTH, bicep * between(0.46, 0.54));
        }
        if (one(3)) {
            set(Dimension.FRONT_ARMHOLE, armhole * between(0.46, 0.54));
        }
        if (one(3)) {
            set(Dimension.FRONT_CAP_INWARD, d.get(Dimension.CAP_INWARD) * between(0.9, 1.15));
        }
        CapFit fit = new CapFit.Given();
        CapEase ease = one(2) ? new CapEase.Length(between(-5, 40)) : new CapEase.Share(between(-0.01, 0.1));
        switch (random.nextInt(12)) {
            case 0 -> {
                d.remove(Dimension.CAP_HEIGHT);
                fit = new CapFit.CapHeightFor(ease);
            }
            case 1 -> {
                d.remove(Dimension.BICEP);
                d.remove(Dimension.FRONT_WIDTH);
                fit = new CapFit.BicepFor(ease);
            }
            case 2 -> {
                d.remove(Dimension.CAP_HEIGHT);
                d.remove(Dimension.FRONT_WIDTH);
                fit = one(8)
                        ? new CapFit.HalvesFor(ease, new CapEase.Length(between(0, 15)))
                        : new CapFit.CapHeightFor(ease);
            }
            default -> {}
        }
        grow(Dimension.BICEP, 5, 20);
        grow(Dimension.CAP_HEIGHT, 0, 8);
        grow(Dimension.ARMHOLE, 5, 24);
        return fit;
    }

    private OverlayStyle overlay() {
        HemShape hem = of(HemShape.values());
        double armhole = d.get(Dimension.ARMHOLE);
        set(Dimension.RISE, one(6) ? 0 : between(0, 0.9 * bicep));
        set(Dimension.OVERLAY_LENGTH, capHeight + between(10, 400));
        set(Dimension.FRONT_GAP, one(6) ? 0 : armhole * between(0, 0.3));
        set(Dimension.BACK_GAP, one(6) ? 0 : one(4) ? d.get(Dimension.FRONT_GAP) : armhole * between(0, 0.3));
        if (hem == HemShape.BOWED) {
            set(Dimension.HEM_SAGITTA, between(-60, 80));
        }
        if (hem != HemShape.LEVEL && one(2)) {
            set(Dimension.SIDE_DEPTH, one(4) ? between(0, 6) : between(0, 120));
        }
        if (one(3)) {
            set(Dimension.EXTRA_WIDTH, between(0, 60));
        }
        double join = one(3) ? between(0.3, 1) : OverlayStyle.THIRD_DIVISION;
        Optional<PleatPlan> pleats = one(4) ? Optional.empty() : Optional.of(pleats());
        Optional<FullnessTarget> target = Optional.empty();
        if (one(4)) {
            target = Optional.of(new FullnessTarget.Ratio(between(1, 3)));
        } else if (one(8) && pleats.isPresent() && pleats.get().sizing() instanceof PleatSizing.ByCount count) {
            set(Dimension.PLEAT_DEPTH, between(3, 50));
            target = Optional.of(
                    new FullnessTarget.Pleats(pleats.get().kind(), count.count(), d.get(Dimension.PLEAT_DEPTH)));
        }
        if (target.isPresent()) {
            d.remove(Dimension.RISE);
        }
        grow(Dimension.RISE, -3, 6);
        grow(Dimension.FRONT_GAP, -1, 4);
        grow(Dimension.BACK_GAP, -1, 4);
        grow(Dimension.OVERLAY_LENGTH, 0, 15);
        grow(Dimension.SIDE_DEPTH, -1, 4);
        grow(Dimension.EXTRA_WIDTH, -1, 3);
        grow(Dimension.HEM_SAGITTA, -2, 4);
        return new OverlayStyle(hem, join, pleats, target);
    }

    private PleatPlan pleats() {
        PleatSizing sizing = switch (random.nextInt(4)) {
            case 0 -> new PleatSizing.ByDepth(between(2, 60));
            case 1 -> new PleatSizing.ByGreatestDepth(between(2, 60));
            default -> new PleatSizing.ByCount(1 + random.nextInt(16));
        };
        double front = one(3) ? between(0, 60) : 0;
        double back = one(2) ? front : one(3) ? between(0, 60) : 0;
        return new PleatPlan(of(PleatKind.values()), of(PleatDirection.values()), sizing, front, back);
    }

    private UnderSleeveStyle underSleeve() {
        set(Dimension.LENGTH, capHeight + between(120, 600));
        double wrist = bicep * between(0.45, 1);
        set(Dimension.WRIST, wrist);
        if (one(2)) {
            set(Dimension.ELBOW, wrist + (bicep - wrist) * between(0.2, 0.9));
        }
        if (one(3)) {
            set(Dimension.ELBOW_LEVEL, between(50, 250));
        }
        if (one(3)) {
            set(Dimension.HAND_GIRTH, between(120, 300));
        }
        ElbowShaping shaping = of(ElbowShaping.values());
        if (shaping == ElbowShaping.ELBOW_DART && one(2)) {
            set(Dimension.ELBOW_DART, between(3, 50));
            if (one(2)) {
                set(Dimension.ELBOW_DART_LENGTH, between(20, 160));
            }
        }
        if (shaping == ElbowShaping.EASED_SEAM && one(2)) {
            set(Dimension.ELBOW_EASE, between(2, 30));
        }
        grow(Dimension.WRIST, 0, 10);
        grow(Dimension.LENGTH, 0, 10);
        return new UnderSleeveStyle(shaping);
    }

    private PatternOptions options() {
        Allowances allowances = switch (random.nextInt(4)) {
            case 0 -> Allowances.all(one(4) ? between(20, 60) : between(0, 20));
            case 1 -> new Allowances(between(5, 20), between(5, 25), between(5, 30), between(5, 60));
            default -> Allowances.all(10);
        };
        double overlap = one(4) ? Math.min(allowances.attachedEdge(), allowances.hem()) * random.nextDouble() : 0;
        double turn = one(4) ? between(0, 8) : 2;
        PieceMarking marking = new PieceMarking(
                one(3) ? Halves.WHOLE : Halves.ON_FOLD,
                one(5) ? PleatNotches.NONE : PleatNotches.CUT_EDGE,
                one(4) ? DrillHoles.PLEATS_AND_DARTS : DrillHoles.NONE);
        Finishing finishing = new Finishing(
                one(4) ? Strips.AS_PIECES : Strips.IN_WORDS,
                one(3) ? PleatInterfacing.CUT_AWAY : PleatInterfacing.THROUGH,
                LayerThickness.unknown());
        return new PatternOptions(allowances, of(CornerKind.values()), turn, overlap, marking, finishing);
    }
}
