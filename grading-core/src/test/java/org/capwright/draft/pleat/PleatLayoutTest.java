package org.capwright.draft.pleat;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.capwright.measure.Dimension;
import org.capwright.measure.SleeveSubject.Option;
import org.capwright.quantity.InvalidMeasuresException;
import org.capwright.quantity.Quantity;
import org.capwright.quantity.Violation;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Worked examples come from: National Instructional Media Institute (Government of India), CITS Dress Making, Trade Practical, pages 202 to 204.
 */
class PleatLayoutTest {

    private static PleatPlan knife(PleatDirection direction, PleatSizing sizing) {
        return new PleatPlan(PleatKind.KNIFE, direction, sizing, 0, 0);
    }

    private static PleatSizing count(int count) {
        return new PleatSizing.ByCount(count);
    }

    /** A plain strip, finished and flat width halved at the apex. */
    private static PleatLayout strip(PleatPlan plan, double finished, double flat) {
        return plan.layOut(new AttachSpan(finished / 2, finished / 2, 0, 0), flat / 2, flat / 2);
    }

    private static Violation only(InvalidMeasuresException thrown) {
        assertEquals(1, thrown.violations().size(), thrown::getMessage);
        return thrown.violations().get(0);
    }

    @Test
    void eighteenKnifePleatsFourCentimetresDeepNeed236Centimetres() {
        // NIMI p. 203: 92 cm finished, 18 pleats 4 cm deep: 92 + 2 x 4 x 18 = 236 cm.
        assertEquals(2360, 920 + 18 * PleatKind.KNIFE.takeUp(40), 1e-9);
        PleatLayout layout = strip(knife(PleatDirection.TOWARD_BACK, count(18)), 920, 2360);
        assertEquals(40, layout.leastDepth(), 1e-9);
        assertEquals(40, layout.greatestDepth(), 1e-9);
        PleatLayout byDepth = strip(knife(PleatDirection.TOWARD_BACK, new PleatSizing.ByDepth(40)), 920, 2360);
        assertEquals(18, byDepth.count());
    }

    @ParameterizedTest
    @ValueSource(ints = {4, 10, 20})
    void knifePleatsAsDeepAsTheyAreWideNeedThreeTimesTheWidth(int pleats) {
        // NIMI p. 204: 50 cm finished = 150 cm. p. 202: depth = width is the normal pleat, so it lies in three layers
        // and none overlaps.
        double width = 500.0 / pleats;
        PleatLayout layout = strip(knife(PleatDirection.TOWARD_FRONT, count(pleats)), 500, 1500);
        assertEquals(3, layout.fullness(), 1e-12);
        assertEquals(width, layout.greatestDepth(), 1e-9);
        assertEquals(3, layout.greatestLayers());
        assertFalse(layout.overlaps());
        for (int i = 1; i < pleats; i++) {
            PleatFold before = layout.folds().get(i - 1);
            PleatFold fold = layout.folds().get(i);
            assertEquals(width, fold.finished() - before.finished(), 1e-9);
            assertEquals(3 * width, fold.foldMark() - before.foldMark(), 1e-9);
        }
    }

    @ParameterizedTest
    @CsvSource({"1400, 3, false", "1501, 5, true", "2400, 5, true", "2600, 7, true"})
    void shallowPleatsLieApartAndDeepOnesOverlap(double flat, int layers, boolean overlap) {
        // NIMI p. 202: depth less than width is shallow, greater is overlapping. Layers by drawing it: reach over
        // spacing, rounded up, twice, and the top.
        PleatLayout layout = strip(knife(PleatDirection.TOWARD_BACK, count(10)), 500, flat);
        assertEquals(layers, layout.greatestLayers());
        assertEquals(overlap, layout.overlaps());
    }

    @ParameterizedTest
    @EnumSource(
            value = PleatKind.class,
            names = {"BOX", "INVERTED"})
    void oneBoxPleatTwelveCentimetresDeepNeeds108Centimetres(PleatKind kind) {
        // NIMI p. 204: a box or inverted pleat is two knife pleats; 60 cm finished, 12 cm deep: 60 + 4 x 12 = 108 cm;
        // it is 2 x depth wide.
        PleatLayout layout = strip(new PleatPlan(kind, PleatDirection.TOWARD_APEX, count(1), 0, 0), 600, 1080);
        assertEquals(2, layout.folds().size());
        assertEquals(120, layout.greatestDepth(), 1e-9);
        PleatFold left = layout.folds().get(0);
        PleatFold right = layout.folds().get(1);
        if (kind == PleatKind.BOX) {
            assertEquals(240, right.finished() - left.finished(), 1e-9);
            assertEquals(List.of(Lie.TO_FRONT, Lie.TO_BACK), List.of(left.lie(), right.lie()));
        } else {
            assertEquals(300, left.finished(), 1e-9);
            assertEquals(left.placementMark(), right.placementMark(), 1e-9);
            assertEquals(List.of(Lie.TO_BACK, Lie.TO_FRONT), List.of(left.lie(), right.lie()));
            assertEquals(240, left.finished() + right.reachTo() - right.finished() - left.reachFrom(), 1e-9);
        }
        assertEquals(3, layout.greatestLayers());
    }

    @Test
    void boxPleatsSideBySideNeedThreeTimesTheWidth() {
        // Panels 2 x depth wide that touch: 3 layers all along, placement lines shared.
        PleatLayout layout = strip(new PleatPlan(PleatKind.BOX, PleatDirection.TOWARD_APEX, count(5), 0, 0), 500, 1500);
        assertEquals(50, layout.greatestDepth(), 1e-9);
        assertEquals(3, layout.greatestLayers());
        for (int i = 1; i < 9; i += 2) {
            assertEquals(
                    layout.folds().get(i).placementMark(),
                    layout.folds().get(i + 1).placementMark(),
                    1e-9);
        }
        assertEquals(0, layout.overhangFront(), 1e-9);
        assertEquals(0, layout.overhangBack(), 1e-9);
    }

    @Test
    void marksOfAHandDrawnLayout() {
        // 60 mm seam, 4 knife pleats 5 mm deep toward the apex, drawn by hand: folds 15 apart from 7.5, each taking up
        // 10.
        PleatLayout layout = strip(knife(PleatDirection.TOWARD_APEX, count(4)), 60, 100);
        double[][] marks = {{7.5, 17.5}, {32.5, 42.5}, {67.5, 57.5}, {92.5, 82.5}};
        for (int i = 0; i < 4; i++) {
            assertEquals(marks[i][0], layout.folds().get(i).foldMark(), 1e-12);
            assertEquals(marks[i][1], layout.folds().get(i).placementMark(), 1e-12);
            assertEquals(7.5 + 15 * i, layout.folds().get(i).finished(), 1e-12);
        }
        PleatLayout away = strip(knife(PleatDirection.AWAY_FROM_APEX, count(4)), 60, 100);
        assertEquals(17.5, away.folds().get(0).foldMark(), 1e-12);
        assertEquals(7.5, away.folds().get(0).placementMark(), 1e-12);
        assertEquals(82.5, away.folds().get(3).foldMark(), 1e-12);
    }

    @Test
    void anOddCountPutsOnePleatOnTheApex() {
        PleatLayout oneWay = strip(knife(PleatDirection.TOWARD_BACK, count(3)), 90, 120);
        assertEquals(3, oneWay.folds().size());
        assertEquals(45, oneWay.folds().get(1).finished(), 1e-12);
        assertEquals(60, oneWay.folds().get(1).middleMark(), 1e-12);
        PleatLayout inward = strip(knife(PleatDirection.TOWARD_APEX, count(3)), 90, 120);
        assertEquals(4, inward.folds().size());
        assertEquals(2.5, inward.folds().get(1).depth(), 1e-12);
        assertEquals(60, inward.folds().get(1).placementMark(), 1e-12);
        assertEquals(60, inward.folds().get(2).placementMark(), 1e-12);
        PleatLayout outward = strip(knife(PleatDirection.AWAY_FROM_APEX, count(3)), 90, 120);
        assertEquals(
                5, outward.folds().get(2).finished() - outward.folds().get(1).finished(), 1e-12);
        assertEquals(Lie.TO_FRONT, outward.folds().get(1).lie());
    }

    @ParameterizedTest
    @CsvSource({"100, 140, 6, 3", "100, 140, 7, 3", "40, 200, 6, 1", "5, 400, 4, 1", "100, 104, 7, 3.5", "0, 50, 4, 0"})
    void theCountIsSharedInProportionToTheTakeUp(double front, double back, int count, double pleatsFront) {
        PleatLayout layout = knife(PleatDirection.TOWARD_BACK, count(count))
                .layOut(new AttachSpan(200, 220, 0, 0), 200 + front, 220 + back);
        assertEquals(pleatsFront, layout.front().pleats(), 0);
        assertEquals(count - pleatsFront, layout.back().pleats(), 0);
        assertEquals(front, layout.front().depth() * 2 * pleatsFront, 1e-9, "the front takes up what it has too much");
    }

    @Test
    void anEdgeAsLongAsItsSpanHasNoPleats() {
        PleatLayout layout = strip(knife(PleatDirection.TOWARD_BACK, count(8)), 400, 400);
        assertTrue(layout.folds().isEmpty());
        assertEquals(0, layout.count());
        assertEquals(1, layout.greatestLayers());
        assertEquals(1, layout.fullness(), 1e-12);
    }

    @Test
    void anEdgeShorterThanItsSpanIsRefusedWithTheGapThatWorks() {
        AttachSpan span = new AttachSpan(240, 250, 60, 50);
        PleatPlan plan = knife(PleatDirection.TOWARD_BACK, count(8));
        Violation front = only(assertThrows(InvalidMeasuresException.class, () -> plan.layOut(span, 165, 260)));
        assertEquals(Dimension.FRONT_GAP, front.subject());
        assertEquals(60, front.value().orElseThrow(), 1e-12);
        assertEquals(75, front.least().orElseThrow(), 1e-12);
        // The named bound works.
        plan.layOut(new AttachSpan(240, 250, front.least().orElseThrow(), 50), 165, 260);
        InvalidMeasuresException both =
                assertThrows(InvalidMeasuresException.class, () -> plan.layOut(span, 165, Double.NaN));
        assertEquals(
                List.of(Dimension.FRONT_GAP, Dimension.BACK_GAP),
                both.violations().stream().map(Violation::subject).toList());
    }

    @ParameterizedTest
    @ValueSource(ints = {Integer.MIN_VALUE, -1, 0, 201, Integer.MAX_VALUE})
    void countsOutOfRangeAreRefused(int count) {
        Violation violation = only(assertThrows(
                InvalidMeasuresException.class,
                () -> strip(knife(PleatDirection.TOWARD_BACK, count(count)), 400, 900)));
        assertEquals(Option.PLEAT_COUNT, violation.subject());
        assertEquals(Quantity.COUNT, violation.quantity());
        assertEquals(1, violation.least().orElseThrow(), 0);
        assertEquals(200, violation.greatest().orElseThrow(), 0);
    }

    @ParameterizedTest
    @ValueSource(doubles = {-5, 0, 1e-9, 0.5})
    void depthsTooSmallAreRefusedWithOneThatWorks(double depth) {
        for (PleatSizing sizing : List.of(new PleatSizing.ByDepth(depth), new PleatSizing.ByGreatestDepth(depth))) {
            Violation violation = only(assertThrows(
                    InvalidMeasuresException.class, () -> strip(knife(PleatDirection.TOWARD_BACK, sizing), 400, 900)));
            assertEquals(Dimension.PLEAT_DEPTH, violation.subject());
            double works = violation.least().orElseThrow();
            PleatSizing mended = sizing instanceof PleatSizing.ByDepth
                    ? new PleatSizing.ByDepth(works)
                    : new PleatSizing.ByGreatestDepth(works);
            assertEquals(
                    200,
                    strip(knife(PleatDirection.TOWARD_BACK, mended), 400, 900).count());
        }
    }

    @Test
    void gapsAndFlatZonesMustLeaveSomething() {
        InvalidMeasuresException gaps =
                assertThrows(InvalidMeasuresException.class, () -> new AttachSpan(220, 230, 220, -1));
        assertEquals(
                List.of(Dimension.FRONT_GAP, Dimension.BACK_GAP),
                gaps.violations().stream().map(Violation::subject).toList());
        assertEquals(219, gaps.violations().get(0).greatest().orElseThrow(), 1e-12);
        assertThrows(InvalidMeasuresException.class, () -> new AttachSpan(0, 230, 0, 0));
        assertThrows(InvalidMeasuresException.class, () -> new AttachSpan(220, 230, Double.NaN, 0));
        PleatPlan plan = new PleatPlan(PleatKind.KNIFE, PleatDirection.TOWARD_BACK, count(3), 200, -3);
        InvalidMeasuresException zones = assertThrows(InvalidMeasuresException.class, () -> strip(plan, 400, 900));
        assertEquals(
                List.of(Option.FLAT_ZONE_FRONT, Option.FLAT_ZONE_BACK),
                zones.violations().stream().map(Violation::subject).toList());
    }
}
