package org.capwright.pattern;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.capwright.draft.StyleSpace;
import org.capwright.grade.SizeRun;
import org.capwright.measure.InvalidMeasuresException;
import org.capwright.measure.Unit;
import org.junit.jupiter.api.Test;

/**
 * The same run gives the same pieces to the last bit, also where a cut line crosses itself and is untangled: libraries that hash objects by their address begin a
 * ring now here, now there.
 */
class SameAgainTest {

    private static final PatternOptions OPTIONS =
            new PatternOptions(new Allowances(10, 10, 10, 10), CornerKind.MITRED, 2, 0);

    @Test
    void draftingAgainGivesTheSamePieces() {
        int drawn = 0;
        for (long seed = 1; seed <= 60; seed++) {
            StyleSpace.Case style = StyleSpace.of(seed);
            SizeRun run = SizeRun.grade(style.style(), style.dimensions(), List.of("40"), 0, List.of());
            try {
                PatternSet first =
                        PatternDrafter.draft(new PatternSet.Title("Gown", "1", Unit.CENTIMETRE), run, OPTIONS);
                for (int again = 0; again < 5; again++) {
                    PatternSet next =
                            PatternDrafter.draft(new PatternSet.Title("Gown", "1", Unit.CENTIMETRE), run, OPTIONS);
                    assertEquals(first.sizes(), next.sizes(), "seed " + seed);
                }
                drawn++;
            } catch (InvalidMeasuresException e) {
                continue; // an allowance that this sleeve cannot take
            }
        }
        org.junit.jupiter.api.Assertions.assertTrue(drawn > 30, "only " + drawn + " could be drawn");
    }
}
