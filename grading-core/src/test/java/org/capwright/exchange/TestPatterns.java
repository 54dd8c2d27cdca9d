package org.capwright.exchange;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.capwright.check.ChoirGown;
import org.capwright.draft.SleeveStyle;
import org.capwright.draft.StyleSpace;
import org.capwright.grade.GradeRule;
import org.capwright.grade.SizeRun;
import org.capwright.measure.Dimension;
import org.capwright.pattern.PatternDrafter;
import org.capwright.pattern.PatternOptions;
import org.capwright.pattern.PatternSet;
import org.capwright.quantity.InvalidMeasuresException;
import org.capwright.quantity.Unit;

/** Patterns to export: one fixed, and seeded random ones over the whole style space. */
public final class TestPatterns {

    private TestPatterns() {}

    /** The choir gown, its overlay without pleats, sizes 36 to 46, base size 40. */
    public static PatternSet choirGown() {
        return choirGown("Choir gown");
    }

    /** The choir gown under another name. */
    public static PatternSet choirGown(String name) {
        return pattern(name, SizeRun.grade(ChoirGown.UNPLEATED, ChoirGown.BASE, ChoirGown.LABELS, 2, ChoirGown.RULES));
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
