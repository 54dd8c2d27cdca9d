package org.capwright.check;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import org.capwright.draft.CapFit;
import org.capwright.draft.SleeveStyle;
import org.capwright.draft.StyleSpace;
import org.capwright.draft.pleat.PleatLayout;
import org.capwright.grade.GradeRule;
import org.capwright.grade.SizeRun;
import org.capwright.measure.Dimension;
import org.capwright.measure.Dimensions;
import org.capwright.quantity.InvalidMeasuresException;
import org.capwright.quantity.Rounding;

/**
 * Seeded runs as a careful grader makes them, over the whole space of styles: rules that are uniform or break once with at least two jumps on either side, cap height and halves in
 * proportion to the bicep, an armhole that keeps the cap ease, increments on a room's grid or on none.
 */
final class CleanRuns {

    private static final double[] GRIDS = {0, 0.5, 1, 25.4 / 8};
    private static final List<String> LETTERS = List.of("XXS", "XS", "S", "M", "L", "XL", "XXL", "3XL", "4XL");

    private CleanRuns() {}

    /** Draws until a run can be drafted. */
    static SizeRun of(long seed) {
        for (long attempt = 0; ; attempt++) {
            try {
                SizeRun run = draw(seed + 1_000_003 * attempt);
                if (isFlat(run)) {
                    return run;
                }
            } catch (InvalidMeasuresException e) {
                // Not every drawn grade can be drafted in its outermost sizes.
            }
        }
    }

    /** A careful grader keeps pleats from lying on one another, and of one depth in all sizes. */
    private static boolean isFlat(SizeRun run) {
        List<PleatLayout> pleats = run.sizes().stream()
                .flatMap(size -> size.draft().overlay().stream())
                .flatMap(overlay -> overlay.pleats().stream())
                .toList();
        double shallowest =
                pleats.stream().mapToDouble(PleatLayout::leastDepth).min().orElse(0);
        double deepest =
                pleats.stream().mapToDouble(PleatLayout::greatestDepth).max().orElse(0);
        return deepest - shallowest <= Threshold.PLEAT_DEPTH_DRIFT_CAUTION.usual()
                && pleats.stream().allMatch(layout -> layout.greatestLayers() <= 3);
    }

    private static SizeRun draw(long seed) {
        StyleSpace.Case drawn = StyleSpace.of(seed);
        Random random = new Random(seed ^ 0x5DEECE66DL);
        int n = 5 + random.nextInt(5);
        int base = random.nextInt(n);
        int start = 30 + 2 * random.nextInt(6);
        boolean numbers = random.nextBoolean();
        List<String> labels = new ArrayList<>();
        for (int i = 0; i < n; i++) {
            labels.add(numbers ? Integer.toString(start + 2 * i) : LETTERS.get(i));
        }
        double[] growth = growth(random, n);
        double grid = GRIDS[random.nextInt(GRIDS.length)];
        Map<Dimension, Double> dimensions = new EnumMap<>(Dimension.class);
        for (Dimension dimension : drawn.dimensions().present()) {
            dimensions.put(dimension, drawn.dimensions().get(dimension));
        }
        dimensions.remove(Dimension.FRONT_ARMHOLE);
        double bicep = dimensions.get(Dimension.BICEP);
        double jump = StyleSpace.between(random, 5, 16);
        List<GradeRule> rules = new ArrayList<>();
        double proportion = dimensions.get(Dimension.CAP_HEIGHT) / bicep;
        rules.add(rule(Dimension.BICEP, jump, growth, grid));
        rules.add(rule(
                Dimension.CAP_HEIGHT, jump * proportion * StyleSpace.between(random, 0.85, 1.15), growth, grid / 4));
        rules.add(rule(Dimension.LENGTH, StyleSpace.between(random, 0, 8), growth, grid));
        rules.add(rule(Dimension.WRIST, jump * StyleSpace.between(random, 0.2, 0.5), growth, grid / 2));
        if (dimensions.containsKey(Dimension.ELBOW)) {
            rules.add(rule(Dimension.ELBOW, jump * StyleSpace.between(random, 0.4, 0.8), growth, grid));
        }
        if (dimensions.containsKey(Dimension.FRONT_WIDTH)) {
            double share = dimensions.get(Dimension.FRONT_WIDTH) / bicep;
            rules.add(new GradeRule(
                    Dimension.FRONT_WIDTH,
                    rules.get(0).increments().stream().map(i -> i * share).toList()));
        }
        SleeveStyle plain = new SleeveStyle(
                new CapFit.Given(), Optional.empty(), drawn.style().underSleeve());
        Map<Dimension, Double> bare = new EnumMap<>(dimensions);
        bare.remove(Dimension.ARMHOLE);
        SizeRun caps = SizeRun.grade(plain, Dimensions.of(bare), labels, base, rules);
        double ease = StyleSpace.between(random, 2, 45);
        List<Double> armhole = new ArrayList<>();
        for (int i = 0; i < n; i++) {
            armhole.add(
                    new Rounding(0.5).round(caps.sizes().get(i).draft().base().capLength() - ease));
        }
        dimensions.put(Dimension.ARMHOLE, armhole.get(base));
        dimensions.computeIfPresent(Dimension.FRONT_GAP, (d, gap) -> Math.min(gap, 0.2 * armhole.get(base)));
        dimensions.computeIfPresent(Dimension.BACK_GAP, (d, gap) -> Math.min(gap, 0.2 * armhole.get(base)));
        List<Double> jumps = new ArrayList<>();
        for (int i = 1; i < n; i++) {
            jumps.add(armhole.get(i) - armhole.get(i - 1));
        }
        rules.add(new GradeRule(Dimension.ARMHOLE, jumps));
        SleeveStyle style = random.nextBoolean() ? plain : StyleSpace.pleated(seed, drawn.style());
        return SizeRun.grade(style, Dimensions.of(dimensions), labels, base, rules);
    }

    /** How much of the usual jump each interval has: 1, or more above a break of the rule. */
    private static double[] growth(Random random, int n) {
        double[] growth = new double[n - 1];
        int at = random.nextInt(3) == 0 ? 2 + random.nextInt(n - 4) : n;
        double more = StyleSpace.between(random, 1.1, 1.35);
        for (int i = 0; i < n - 1; i++) {
            growth[i] = i >= at && n - 1 - at >= 2 ? more : 1;
        }
        return growth;
    }

    private static GradeRule rule(Dimension dimension, double jump, double[] growth, double grid) {
        List<Double> increments = new ArrayList<>();
        for (double share : growth) {
            increments.add(grid == 0 ? jump * share : new Rounding(grid).round(jump * share));
        }
        return new GradeRule(dimension, increments);
    }
}
