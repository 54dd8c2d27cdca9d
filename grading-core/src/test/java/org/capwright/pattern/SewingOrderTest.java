package org.capwright.pattern;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.capwright.draft.SleeveDraft;
import org.capwright.grade.SizeRun;
import org.capwright.quantity.InvalidMeasuresException;
import org.junit.jupiter.api.Test;

/** The sewing order has the steps that the style needs, no others, in an order that can be sewn. */
class SewingOrderTest {

    @Test
    void stepsFollowTheStyle() {
        for (long seed = 0; seed < 200; seed++) {
            SizeRun run = RandomStyles.run(seed);
            PatternSet set;
            try {
                set = PatternDrafter.draft(RandomStyles.TITLE, run, PatternOptions.usual());
            } catch (InvalidMeasuresException e) {
                continue;
            }
            SleeveDraft draft = run.baseSize().draft();
            SewingOrder order = SewingOrder.of(set);
            String which = "seed " + seed + order;
            boolean overlay = draft.overlay().isPresent();
            boolean pleated = overlay
                    && draft.overlay().get().pleats().filter(p -> p.count() > 0).isPresent();
            assertEquals(overlay, position(order, "interfacing") >= 0, which);
            assertEquals(pleated, position(order, "placement line") >= 0, which);
            assertEquals(draft.underSleeve().isPresent(), position(order, "wrist hem") >= 0, which);
            if (overlay) {
                boolean pointed =
                        set.sizes().get(0).get(0).notches().stream().anyMatch(notch -> notch.kind() == NotchKind.CLIP);
                assertEquals(pointed, position(order, "Clip the allowances") >= 0, which);
                assertTrue(position(order, "interfacing") < position(order, "sew the hem"), which);
                assertTrue(position(order, "sew the hem") < position(order, "Turn right side out"), which);
                assertTrue(position(order, "Turn right side out") < position(order, "neaten it as one"), which);
            }
            assertEquals(order.steps().size() - 1, position(order, "Neaten the armhole seam"), which);
            assertTrue(order.cautions().stream().anyMatch(c -> c.contains("flames")));
            assertTrue(order.cautions().stream().anyMatch(c -> c.contains("children")));
            assertTrue(order.cautions().stream().anyMatch(c -> c.contains("rules")));
            assertTrue(order.steps().stream().noneMatch(s -> s.contains("NaN") || s.contains("null")), which);
        }
    }

    private static int position(SewingOrder order, String words) {
        List<String> steps = order.steps();
        for (int i = 0; i < steps.size(); i++) {
            if (steps.get(i).contains(words)) {
                return i;
            }
        }
        return -1;
    }
}
