package org.capwright.pattern;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.capwright.draft.SleeveStyle;
import org.capwright.draft.StyleSpace;
import org.capwright.draft.pleat.PleatDirection;
import org.capwright.draft.pleat.PleatKind;
import org.capwright.draft.pleat.PleatPlan;
import org.capwright.draft.pleat.PleatSizing;
import org.capwright.grade.SizeRun;
import org.capwright.quantity.InvalidMeasuresException;
import org.capwright.quantity.Unit;
import org.junit.jupiter.api.Test;

/**
 * The same run gives the same pieces to the last bit, also where a cut line crosses itself and is untangled: libraries that hash objects by their address begin a
 * ring now here, now there.
 */
class SameAgainTest {

    private static final PatternOptions OPTIONS =
            new PatternOptions(new Allowances(10, 10, 10, 10), CornerKind.MITRED, 2, 0);

    /** Deep pleats, whose trued edges make cut lines cross themselves. */
    private static SleeveStyle pleated(SleeveStyle style) {
        PleatPlan plan =
                new PleatPlan(PleatKind.KNIFE, PleatDirection.AWAY_FROM_APEX, new PleatSizing.ByCount(8), 0, 0);
        return new SleeveStyle(style.fit(), style.overlay().map(o -> o.pleated(plan)), style.underSleeve());
    }

    @Test
    void draftingAgainGivesTheSamePieces() {
        int drawn = 0;
        for (long seed = 1; seed <= 60; seed++) {
            StyleSpace.Case style = StyleSpace.of(seed);
            try {
                SizeRun run = SizeRun.grade(pleated(style.style()), style.dimensions(), List.of("40"), 0, List.of());
                PatternSet first =
                        PatternDrafter.draft(new PatternSet.Title("Gown", "1", Unit.CENTIMETRE), run, OPTIONS);
                for (int again = 0; again < 5; again++) {
                    PatternSet next =
                            PatternDrafter.draft(new PatternSet.Title("Gown", "1", Unit.CENTIMETRE), run, OPTIONS);
                    assertEquals(first.sizes(), next.sizes(), "seed " + seed);
                }
                drawn++;
            } catch (InvalidMeasuresException e) {
                continue; // an allowance, or pleats, that this sleeve cannot take
            }
        }
        org.junit.jupiter.api.Assertions.assertTrue(drawn > 15, "only " + drawn + " could be drawn");
    }
}
