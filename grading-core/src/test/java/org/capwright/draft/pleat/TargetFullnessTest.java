package org.capwright.draft.pleat;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import org.capwright.measure.Dimension;
import org.capwright.measure.SleeveSubject.Option;
import org.capwright.quantity.InvalidMeasuresException;
import org.capwright.quantity.Quantity;
import org.capwright.quantity.Violation;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class TargetFullnessTest {

    /** A gable of half width 180 whose apex is raised from 120: its edge has the closed form 2 √(180² + (120 + rise)²). */
    private static final DoubleUnaryOperator GABLE = rise -> 2 * Math.hypot(180, 120 + rise);

    private static Violation refused(FullnessTarget target, double span) {
        InvalidMeasuresException thrown =
                assertThrows(InvalidMeasuresException.class, () -> TargetFullness.rise(target, span, GABLE, 0, 200));
        assertEquals(1, thrown.violations().size());
        return thrown.violations().get(0);
    }

    @Test
    void theRiseIsTheClosedFormsInverse() {
        for (long seed = 1; seed <= 500; seed++) {
            theRiseIsTheClosedFormsInverse(seed);
        }
    }

    private static void theRiseIsTheClosedFormsInverse(long seed) {
        Random random = new Random(seed);
        double rise = random.nextDouble(0, 200);
        double span = random.nextDouble(200, 400);
        double edge = GABLE.applyAsDouble(rise);
        FullnessTarget ratio = new FullnessTarget.Ratio(edge / span);
        assertEquals(rise, TargetFullness.rise(ratio, span, GABLE, 0, 200), 1e-6, () -> "seed " + seed);
        PleatKind kind = PleatKind.values()[random.nextInt(3)];
        int count = random.nextInt(1, 20);
        FullnessTarget pleats = new FullnessTarget.Pleats(kind, count, (edge - span) / kind.takeUp(count));
        assertEquals(rise, TargetFullness.rise(pleats, span, GABLE, 0, 200), 1e-6, () -> "seed " + seed);
    }

    @Test
    void theBoundsThemselvesWork() {
        double shortest = GABLE.applyAsDouble(0);
        double longest = GABLE.applyAsDouble(200);
        assertEquals(0, TargetFullness.rise(new FullnessTarget.Ratio(1), shortest, GABLE, 0, 200), 1e-9);
        assertEquals(200, TargetFullness.rise(new FullnessTarget.Ratio(1), longest, GABLE, 0, 200), 1e-9);
    }

    @Test
    void aFullnessBeyondABoundIsRefusedWithTheNearestThatWorks() {
        Violation high = refused(new FullnessTarget.Ratio(3), 400);
        assertEquals(Option.FULLNESS, high.subject());
        assertEquals(Quantity.RATIO, high.quantity());
        assertTrue(high.reason().toString().contains("greatest rise"));
        double nearest = high.greatest().orElseThrow();
        assertEquals(200, TargetFullness.rise(new FullnessTarget.Ratio(nearest), 400, GABLE, 0, 200), 1e-5);
        Violation low = refused(new FullnessTarget.Ratio(1.01), 400);
        assertTrue(low.reason().toString().contains("least rise"));
        double least = low.least().orElseThrow();
        assertEquals(0, TargetFullness.rise(new FullnessTarget.Ratio(least), 400, GABLE, 0, 200), 1e-5);
    }

    @Test
    void aDepthBeyondABoundIsRefusedWithTheNearestThatWorks() {
        Violation deep = refused(new FullnessTarget.Pleats(PleatKind.BOX, 6, 80), 400);
        assertEquals(Dimension.PLEAT_DEPTH, deep.subject());
        assertEquals(Quantity.LENGTH, deep.quantity());
        double nearest = deep.greatest().orElseThrow();
        FullnessTarget works = new FullnessTarget.Pleats(PleatKind.BOX, 6, nearest);
        assertEquals(200, TargetFullness.rise(works, 400, GABLE, 0, 200), 1e-5);
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.9, 0, -2, Double.NaN})
    void aFullnessBelowOneIsRefused(double ratio) {
        Violation violation = refused(new FullnessTarget.Ratio(ratio), 500);
        assertTrue(violation.reason().toString().contains("less than the span"));
        assertEquals(1, violation.least().orElseThrow(), 1e-12);
    }

    @Test
    void noPleatsAreNoTarget() {
        assertThrows(InvalidMeasuresException.class, () -> new FullnessTarget.Pleats(PleatKind.KNIFE, 0, 10));
        assertThrows(InvalidMeasuresException.class, () -> new FullnessTarget.Pleats(PleatKind.KNIFE, 201, 10));
        assertThrows(
                IllegalArgumentException.class,
                () -> TargetFullness.rise(new FullnessTarget.Ratio(2), 400, GABLE, 10, 5));
    }
}
