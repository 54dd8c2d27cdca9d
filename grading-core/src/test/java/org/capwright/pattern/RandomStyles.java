package org.capwright.pattern;

import java.util.List;
import java.util.Optional;
import java.util.stream.LongStream;
import org.capwright.draft.SleeveStyle;
import org.capwright.draft.StyleSpace;
import org.capwright.grade.SizeRun;
import org.capwright.measure.Dimension;
import org.capwright.measure.Dimensions;
import org.capwright.quantity.InvalidMeasuresException;
import org.capwright.quantity.Unit;

/** Runs of one size from all over the style space, for property tests of the pieces. */
final class RandomStyles {

    static final PatternSet.Title TITLE = new PatternSet.Title("Choir gown, shoulder overlay", "3", Unit.CENTIMETRE);

    /** How many styles a property is tried on. */
    static final int MANY = 300;

    private RandomStyles() {}

    static LongStream seeds() {
        return LongStream.range(0, MANY);
    }

    /** The style of a seed; every other one has equal gaps, and some lack the overlay, the under-sleeve or both. */
    static SizeRun run(long seed) {
        StyleSpace.Case drawn = StyleSpace.of(seed);
        Dimensions dimensions = drawn.dimensions();
        if (seed % 2 == 0) {
            dimensions = dimensions.with(Dimension.BACK_GAP, dimensions.get(Dimension.FRONT_GAP));
        }
        try {
            return run(seed, dimensions, StyleSpace.pleated(seed, drawn.style()));
        } catch (InvalidMeasuresException e) {
            return run(seed, dimensions, drawn.style()); // an edge too short for its span on one side
        }
    }

    private static SizeRun run(long seed, Dimensions dimensions, SleeveStyle whole) {
        SleeveStyle style = switch ((int) (seed % 7)) {
            case 4 -> new SleeveStyle(whole.fit(), Optional.empty(), whole.underSleeve());
            case 5 -> new SleeveStyle(whole.fit(), whole.overlay(), Optional.empty());
            case 6 -> new SleeveStyle(whole.fit(), Optional.empty(), Optional.empty());
            default -> whole;
        };
        return SizeRun.grade(style, dimensions, List.of("40"), 0, List.of());
    }

    /** The pieces of a seed, or nothing where the hem of the style crosses itself. */
    static Optional<List<Piece>> pieces(long seed, PatternOptions options) {
        try {
            return Optional.of(
                    PatternDrafter.draft(TITLE, run(seed), options).sizes().get(0));
        } catch (InvalidMeasuresException e) {
            return Optional.empty();
        }
    }
}
