package org.capwright.draft;

import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import org.capwright.draft.pleat.PleatDirection;
import org.capwright.draft.pleat.PleatKind;
import org.capwright.draft.pleat.PleatPlan;
import org.capwright.draft.pleat.PleatSizing;
import org.capwright.measure.Dimension;
import org.capwright.measure.Dimensions;

/** Seeded random styles over the whole parameter space, for property tests. Every case is drawn from its own seed, so that a failure can be run again. */
public final class StyleSpace {

    private StyleSpace() {}

    /** Dimensions and style of one case. */
    public record Case(long seed, SleeveStyle style, Dimensions dimensions) {}

    /** A style that can be drafted: displacements are drawn inside the share of the slope triangle that the cap line can take. */
    public static Case of(long seed) {
        Random random = new Random(seed * 0x9E3779B97F4A7C15L);
        for (int i = 0; i < 8; i++) {
            random.nextDouble(); // the first values of neighbouring seeds are alike
        }
        while (true) {
            Case drawn = draw(seed, random);
            if (isDrawable(drawn.dimensions())) {
                return drawn;
            }
        }
    }

    /** The same style with its overlay, where it has one, pleated in any kind and direction; one in three is left as it is. */
    public static SleeveStyle pleated(long seed, SleeveStyle style) {
        Random random = new Random(seed);
        PleatPlan plan = new PleatPlan(
                PleatKind.values()[random.nextInt(3)],
                PleatDirection.values()[random.nextInt(4)],
                new PleatSizing.ByCount(1 + random.nextInt(14)),
                random.nextInt(20),
                0);
        if (seed % 2 == 0) {
            plan = new PleatPlan(plan.kind(), plan.direction(), plan.sizing(), 8, 8);
        }
        PleatPlan chosen = plan;
        return random.nextInt(3) == 0
                ? style
                : new SleeveStyle(
                        style.fit(), style.overlay().map(overlay -> overlay.pleated(chosen)), style.underSleeve());
    }

    /** Whether the five points allow a cap line, also with the extra width, the armhole takes it, and the overlay's edge is long enough for the span. */
    private static boolean isDrawable(Dimensions d) {
        double front = BaseSleeve.frontWidth(d);
        double back = d.get(Dimension.BICEP) - front;
        double height = d.get(Dimension.CAP_HEIGHT);
        double frontArmhole = Overlay.frontArmhole(d);
        double frontSpan = frontArmhole - d.get(Dimension.FRONT_GAP);
        double backSpan = d.get(Dimension.ARMHOLE) - frontArmhole - d.get(Dimension.BACK_GAP);
        for (double extra : new double[] {d.getOr(Dimension.EXTRA_WIDTH, 0), 0}) {
            Optional<CapLine> frontLine =
                    BaseSleeve.Half.front(d, front + extra, height).find();
            Optional<CapLine> backLine =
                    BaseSleeve.Half.back(d, back + extra, height).find();
            if (frontLine.isEmpty()
                    || backLine.isEmpty()
                    || frontLine.get().length() < frontSpan
                    || backLine.get().length() < backSpan) {
                return false;
            }
            double share = (frontLine.get().length() + backLine.get().length()) / d.get(Dimension.ARMHOLE) - 1;
            if (extra == 0 && (share < CapEase.LEAST_SHARE || share > CapEase.GREATEST_SHARE)) {
                return false;
            }
        }
        return true;
    }

    private static Case draw(long seed, Random random) {
        Map<Dimension, Double> d = new EnumMap<>(Dimension.class);
        double bicep = between(random, 220, 620);
        double capHeight = bicep * between(random, 0.15, 0.5);
        double armhole = bicep * between(random, 1.05, 1.35);
        d.put(Dimension.BICEP, bicep);
        d.put(Dimension.CAP_HEIGHT, capHeight);
        d.put(Dimension.ARMHOLE, armhole);
        d.put(Dimension.LENGTH, capHeight + between(random, 250, 550));
        boolean unequal = random.nextInt(3) == 0;
        double width = bicep / 2;
        if (unequal) {
            width = bicep * between(random, 0.46, 0.54);
            d.put(Dimension.FRONT_WIDTH, width);
            d.put(Dimension.FRONT_ARMHOLE, armhole * between(random, 0.46, 0.54));
        }
        double extra = random.nextBoolean() ? 0 : between(random, 5, 40);
        double limit = Math.min(limit(width, capHeight), limit(bicep - width, capHeight));
        double outward = limit * between(random, 0.32, 0.65);
        double inward = limit * between(random, 0.32, 0.65);
        // With extra width the triangle is flatter; keep the displacements inside it as well.
        double squeeze = limit(Math.max(width, bicep - width) + extra, capHeight) / limit;
        d.put(Dimension.CAP_OUTWARD, outward * Math.min(1, squeeze));
        d.put(Dimension.CAP_INWARD, inward * Math.min(1, squeeze));
        if (unequal) {
            d.put(Dimension.FRONT_CAP_INWARD, d.get(Dimension.CAP_INWARD) * between(random, 1, 1.15));
        }
        HemShape hem = HemShape.values()[random.nextInt(3)];
        d.put(Dimension.RISE, random.nextInt(5) == 0 ? 0 : between(random, 5, 300));
        d.put(Dimension.OVERLAY_LENGTH, capHeight + between(random, 120, 400));
        d.put(Dimension.FRONT_GAP, armhole * between(random, 0, 0.25));
        d.put(Dimension.BACK_GAP, armhole * between(random, 0, 0.25));
        if (extra > 0) {
            d.put(Dimension.EXTRA_WIDTH, extra);
        }
        if (hem == HemShape.BOWED) {
            d.put(Dimension.HEM_SAGITTA, between(random, -40, 60));
        }
        if (hem != HemShape.LEVEL && random.nextBoolean()) {
            d.put(Dimension.SIDE_DEPTH, between(random, 0, 100));
        }
        double wrist = bicep * between(random, 0.5, 0.8);
        d.put(Dimension.WRIST, wrist);
        if (random.nextBoolean()) {
            d.put(Dimension.ELBOW, wrist + (bicep - wrist) * between(random, 0.3, 0.7));
        }
        double join = random.nextBoolean() ? OverlayStyle.THIRD_DIVISION : between(random, 0.74, 1);
        ElbowShaping shaping = ElbowShaping.values()[random.nextInt(3)];
        drawElbow(d, shaping, random);
        SleeveStyle style = new SleeveStyle(
                new CapFit.Given(),
                Optional.of(new OverlayStyle(hem, join)),
                Optional.of(new UnderSleeveStyle(shaping)));
        return new Case(seed, style, Dimensions.of(d));
    }

    /** Level, dart, ease and girth of the hand, each sometimes left out, drawn inside the ranges that the sleeve can take. */
    private static void drawElbow(Map<Dimension, Double> d, ElbowShaping shaping, Random random) {
        double bicep = d.get(Dimension.BICEP);
        double wrist = d.get(Dimension.WRIST);
        double wristLevel = d.get(Dimension.LENGTH) - d.get(Dimension.CAP_HEIGHT);
        double level = wristLevel / 2;
        if (random.nextBoolean()) {
            level = wristLevel * between(random, 0.35, 0.6);
            d.put(Dimension.ELBOW_LEVEL, level);
        }
        double elbow = d.getOrDefault(Dimension.ELBOW, bicep + (wrist - bicep) * level / wristLevel);
        double shorter = Math.min(level, wristLevel - level);
        double backElbow = elbow / 2 - (2 * d.getOrDefault(Dimension.FRONT_WIDTH, bicep / 2) - bicep) / 2;
        if (shaping == ElbowShaping.ELBOW_DART && random.nextBoolean()) {
            double widest = Math.min(Math.min(0.2 * elbow, shorter / 3), backElbow / 2);
            double dart = between(random, 3, widest);
            d.put(Dimension.ELBOW_DART, dart);
            if (random.nextBoolean()) {
                d.put(Dimension.ELBOW_DART_LENGTH, Math.max(10, between(random, 2 * dart + 1e-6, backElbow - 1e-6)));
            }
        }
        if (shaping == ElbowShaping.EASED_SEAM && random.nextBoolean()) {
            d.put(Dimension.ELBOW_EASE, between(random, 1, Math.min(0.4 * Math.min(60, 0.3 * shorter), 0.2 * elbow)));
        }
        if (random.nextBoolean()) {
            d.put(Dimension.HAND_GIRTH, Math.min(600, wrist + between(random, -50, 60)));
        }
    }

    /** The greatest displacement with which the first chord does not rise above the apex. */
    public static double limit(double width, double capHeight) {
        return Math.hypot(width, capHeight) / 4 * capHeight / width;
    }

    /** A uniform random number. */
    public static double between(Random random, double low, double high) {
        return low + (high - low) * random.nextDouble();
    }
}
