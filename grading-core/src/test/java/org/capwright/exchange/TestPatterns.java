package org.capwright.exchange;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import org.capwright.draft.CapFit;
import org.capwright.draft.ElbowShaping;
import org.capwright.draft.HemShape;
import org.capwright.draft.OverlayStyle;
import org.capwright.draft.SleeveStyle;
import org.capwright.draft.StyleSpace;
import org.capwright.draft.UnderSleeveStyle;
import org.capwright.grade.GradeRule;
import org.capwright.grade.SizeRun;
import org.capwright.measure.Dimension;
import org.capwright.measure.Dimensions;
import org.capwright.measure.InvalidMeasuresException;
import org.capwright.measure.Unit;
import org.capwright.pattern.PatternDrafter;
import org.capwright.pattern.PatternOptions;
import org.capwright.pattern.PatternSet;

/** Patterns to export: one fixed, and seeded random ones over the whole style space. */
public final class TestPatterns {

    private TestPatterns() {}

    /** A choir gown with a shoulder overlay, sizes 36 to 46, base size 40. Invented figures. */
    public static PatternSet choirGown() {
        return choirGown("Choir gown");
    }

    /** The choir gown under another name. */
    public static PatternSet choirGown(String name) {
        Dimensions base = Dimensions.of(Map.of(
                Dimension.BICEP, 360.0,
                Dimension.LENGTH, 600.0,
                Dimension.CAP_HEIGHT, 135.0,
                Dimension.ARMHOLE, 450.0,
                Dimension.RISE, 140.0,
                Dimension.OVERLAY_LENGTH, 340.0,
                Dimension.FRONT_GAP, 60.0,
                Dimension.BACK_GAP, 60.0,
                Dimension.WRIST, 200.0));
        List<String> sizes = List.of("36", "38", "40", "42", "44", "46");
        SizeRun run = SizeRun.grade(
                new SleeveStyle(
                        new CapFit.Given(),
                        Optional.of(new OverlayStyle(HemShape.VEE, OverlayStyle.THIRD_DIVISION)),
                        Optional.of(new UnderSleeveStyle(ElbowShaping.TAPERED))),
                base,
                sizes,
                2,
                List.of(
                        GradeRule.uniform(Dimension.BICEP, 12, sizes.size()),
                        GradeRule.uniform(Dimension.LENGTH, 5, sizes.size()),
                        new GradeRule(Dimension.CAP_HEIGHT, List.of(4.0, 4.0, 5.0, 5.0, 5.0)),
                        GradeRule.uniform(Dimension.ARMHOLE, 16, sizes.size())));
        return pattern(name, run);
    }

    private static PatternSet pattern(String name, SizeRun run) {
        return PatternDrafter.draft(new PatternSet.Title(name, "3", Unit.CENTIMETRE), run, PatternOptions.usual());
    }

    /**
     * A random style in a number of sizes: with overlay and under-sleeve, or one of them, or neither, in turn.
     *
     * @param seed the same seed gives the same pattern
     * @param sizes how many sizes
     */
    public static PatternSet random(long seed, int sizes) {
        for (long attempt = 0; attempt < 1000; attempt++) {
            StyleSpace.Case style = StyleSpace.of(seed + 1_000_003 * attempt);
            Random random = new Random(style.seed());
            List<String> labels = new ArrayList<>();
            for (int i = 0; i < sizes; i++) {
                labels.add(Integer.toString(36 + 2 * i));
            }
            List<GradeRule> rules = new ArrayList<>();
            rules.add(rule(Dimension.BICEP, sizes, StyleSpace.between(random, 4, 14)));
            rules.add(rule(Dimension.LENGTH, sizes, StyleSpace.between(random, 0, 8)));
            rules.add(rule(Dimension.CAP_HEIGHT, sizes, StyleSpace.between(random, 0, 4)));
            rules.add(rule(Dimension.ARMHOLE, sizes, StyleSpace.between(random, 4, 18)));
            try {
                return pattern(
                        "Random style " + seed,
                        SizeRun.grade(
                                StyleSpace.pleated(style.seed(), parts(style.style(), seed)),
                                style.dimensions(),
                                labels,
                                random.nextInt(sizes),
                                rules));
            } catch (InvalidMeasuresException notDrawable) {
                // not every rule suits every style: draw again
            }
        }
        throw new IllegalStateException("no pattern found from seed " + seed);
    }

    private static SleeveStyle parts(SleeveStyle whole, long seed) {
        return new SleeveStyle(
                whole.fit(),
                seed % 4 < 2 ? whole.overlay() : Optional.empty(),
                seed % 2 == 0 ? whole.underSleeve() : Optional.empty());
    }

    private static GradeRule rule(Dimension dimension, int sizes, double increment) {
        return GradeRule.uniform(dimension, increment, sizes);
    }
}
