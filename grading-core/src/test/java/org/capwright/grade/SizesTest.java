package org.capwright.grade;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.capwright.draft.CapFit;
import org.capwright.draft.SleeveStyle;
import org.capwright.measure.Dimension;
import org.capwright.measure.Dimensions;
import org.capwright.quantity.InvalidMeasuresException;
import org.capwright.quantity.Violation;
import org.junit.jupiter.api.Test;

/** Sizes and rules that contradict each other are refused before anything is drafted. */
class SizesTest {

    private static final SleeveStyle PLAIN = new SleeveStyle(new CapFit.Given(), Optional.empty(), Optional.empty());
    private static final Dimensions BASE =
            Dimensions.of(Map.of(Dimension.BICEP, 360.0, Dimension.CAP_HEIGHT, 135.0, Dimension.ARMHOLE, 450.0));

    private static List<String> refused(List<String> labels, int base, GradeRule... rules) {
        return assertThrows(
                        InvalidMeasuresException.class, () -> SizeRun.grade(PLAIN, BASE, labels, base, List.of(rules)))
                .violations()
                .stream()
                .map(violation -> violation.reason().toString())
                .toList();
    }

    @Test
    void everyRepeatedLabelIsNamed() {
        assertEquals(
                List.of("names size 38 more than once", "names size 36 more than once"),
                refused(List.of("36", "38", "38", "36"), 0));
    }

    @Test
    void aBaseSizeThatIsNotThereIsRefusedWithThePositionsThatAre() {
        assertEquals(List.of("has position 2; the run has positions 0 to 1"), refused(List.of("36", "38"), 2));
        assertEquals(List.of("has position -1; the run has positions 0 to 1"), refused(List.of("36", "38"), -1));
        assertEquals(List.of("there must be one size or more"), refused(List.of(), 0));
        assertEquals(List.of("a size needs a name"), refused(List.of("36", " "), 0));
    }

    @Test
    void aSecondRuleForADimensionIsRefused() {
        GradeRule one = GradeRule.uniform(Dimension.BICEP, 12, 2);
        GradeRule other = GradeRule.uniform(Dimension.BICEP, 13, 2);
        assertEquals(List.of("has two rules; give one per dimension"), refused(List.of("36", "38"), 0, one, other));
    }

    @Test
    void everythingWrongWithTheRulesIsNamedAtOnce() {
        List<String> reasons = refused(
                List.of("36", "38"),
                0,
                GradeRule.uniform(Dimension.BICEP, 12, 5),
                GradeRule.uniform(Dimension.WRIST, 5, 2));
        assertEquals(2, reasons.size(), reasons.toString());
        assertTrue(reasons.get(0).endsWith("here 1"), reasons.toString());
    }

    @Test
    void aRunCannotBeMadeOfContradictions() {
        SizeRun run = SizeRun.grade(PLAIN, BASE, List.of("36", "38"), 0, List.of());
        assertThrows(
                InvalidMeasuresException.class,
                () -> new SizeRun(PLAIN, List.of(run.sizes().get(0), run.sizes().get(0)), 0, List.of()));
        assertThrows(InvalidMeasuresException.class, () -> new SizeRun(PLAIN, run.sizes(), 5, List.of()));
    }

    @Test
    void anIncrementThatIsNoNumberIsRefused() {
        assertThrows(
                InvalidMeasuresException.class, () -> GradeRule.uniform(Dimension.BICEP, Double.POSITIVE_INFINITY, 3));
        assertThrows(IllegalArgumentException.class, () -> GradeRule.uniform(Dimension.BICEP, 1, 0));
    }

    @Test
    void theBaseSizeIsFoundByItsName() {
        assertEquals(2, Sizes.withBase("40", "36", "38", "40").base());
        assertThrows(InvalidMeasuresException.class, () -> Sizes.withBase("41", "36", "38", "40"));
    }

    /** A cap of 135 mm over a bicep of 360 mm is about 450 mm long: no armhole of 200 mm or 1200 mm takes it. */
    @Test
    void aCapThatNoArmholeTakesIsRefusedWithTheHeightsThatWork() {
        for (double armhole : new double[] {250, 1200}) {
            InvalidMeasuresException e = assertThrows(
                    InvalidMeasuresException.class,
                    () -> SizeRun.grade(PLAIN, BASE.with(Dimension.ARMHOLE, armhole), List.of("36"), 0, List.of()));
            assertEquals(135, e.violations().get(0).value().orElseThrow());
        }
    }

    /** A flat cap is as long as the bicep line; a cap line half as long again as the armhole is all that can be gathered in. Common practice, no source. */
    @Test
    void anArmholeThatTakesNotEvenAFlatCapIsRefusedWithTheArmholesThatTakeThisOne() {
        InvalidMeasuresException e = assertThrows(
                InvalidMeasuresException.class,
                () -> SizeRun.grade(PLAIN, BASE.with(Dimension.ARMHOLE, 200), List.of("36"), 0, List.of()));
        Violation found = e.violations().get(0);
        assertEquals(Dimension.ARMHOLE, found.subject());
        double least = found.least().orElseThrow();
        SizeRun.grade(PLAIN, BASE.with(Dimension.ARMHOLE, least + 0.01), List.of("36"), 0, List.of());
        assertThrows(
                InvalidMeasuresException.class,
                () -> SizeRun.grade(PLAIN, BASE.with(Dimension.ARMHOLE, least - 0.01), List.of("36"), 0, List.of()));
    }
}
