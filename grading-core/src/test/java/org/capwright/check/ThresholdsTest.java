package org.capwright.check;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.HashSet;
import java.util.Map;
import java.util.Set;
import org.capwright.quantity.InvalidMeasuresException;
import org.junit.jupiter.api.Test;

class ThresholdsTest {

    @Test
    void usualLimitsAreWithinTheirRangesAndHaveKeysOfTheirOwn() {
        Set<String> keys = new HashSet<>();
        for (Threshold threshold : Threshold.values()) {
            assertTrue(threshold.usual() >= threshold.least() && threshold.usual() <= threshold.greatest());
            assertTrue(keys.add(threshold.key()), threshold.key());
            assertEquals(threshold.usual(), Thresholds.usual().get(threshold), 0);
            assertTrue(!threshold.source().isBlank());
        }
        assertEquals("capEaseDriftStop", Threshold.CAP_EASE_DRIFT_STOP.key());
    }

    @Test
    void aLabelSetsItsOwn() {
        Thresholds own = Thresholds.usual().with(Threshold.CAP_EASE_DRIFT_CAUTION, 20);
        assertEquals(20, own.get(Threshold.CAP_EASE_DRIFT_CAUTION), 0);
        assertEquals("set by the label", own.source(Threshold.CAP_EASE_DRIFT_CAUTION));
        assertEquals(5, Thresholds.usual().get(Threshold.CAP_EASE_DRIFT_CAUTION), 0);
        assertTrue(GradeChecks.run(ChoirGown.grade(), own).stream()
                .noneMatch(f -> f.code().equals("cap-ease-drift")));
    }

    @Test
    void limitsOutOfRangeAreAllNamedWithTheRange() {
        InvalidMeasuresException refused = assertThrows(
                InvalidMeasuresException.class,
                () -> new Thresholds(
                        Map.of(Threshold.CAP_EASE_DRIFT_STOP, -1.0, Threshold.PROPORTION_STOP, Double.NaN)));
        assertEquals(2, refused.violations().size());
        assertEquals(Threshold.CAP_EASE_DRIFT_STOP, refused.violations().get(0).subject());
        assertEquals(200, refused.violations().get(0).greatest().orElseThrow(), 0);
        assertTrue(refused.violations().get(1).value().isEmpty());
    }
}
