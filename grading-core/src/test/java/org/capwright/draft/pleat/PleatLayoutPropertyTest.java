package org.capwright.draft.pleat;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.stream.DoubleStream;
import org.junit.jupiter.api.Test;

class PleatLayoutPropertyTest {

    @Test
    void takeUpsAddUpOnEachSideOfTheApex() {
        PleatCase.forEach(PleatCase.all(), PleatLayoutPropertyTest::takeUpsAddUpOnEachSideOfTheApex);
    }

    private static void takeUpsAddUpOnEachSideOfTheApex(PleatCase pleatCase) {
        PleatLayout layout = pleatCase.layout();
        double edge = pleatCase.flat().length();
        double span = pleatCase.span().length();
        double sum = layout.folds().stream().mapToDouble(PleatFold::takeUp).sum();
        assertEquals(edge - span, sum, 1e-6);
        assertEquals(edge - span, layout.takeUp(), 1e-6);
        assertEquals(edge / span, layout.fullness(), 1e-12);
        // What stays visible before the apex has the length of the front span, so the apex lands on the shoulder point.
        double apex = pleatCase.apex();
        double hidden = layout.folds().stream()
                .mapToDouble(fold -> Math.max(0, Math.min(fold.lastMark(), apex) - fold.firstMark()))
                .sum();
        if (layout.folds().stream()
                .noneMatch(fold -> fold.firstMark() < apex - 1e-9 && fold.lastMark() > apex + 1e-9)) {
            assertEquals(pleatCase.span().front(), apex - hidden, 1e-6);
        } else {
            // A single fold on the apex: its lines land on the shoulder point themselves.
            assertEquals(
                    1,
                    layout.folds().stream()
                            .filter(fold ->
                                    Math.abs(fold.finished() - pleatCase.span().front()) < 1e-9)
                            .count());
        }
    }

    @Test
    void marksAreInOrderAndLandWhereTheLayoutSays() {
        PleatCase.forEach(PleatCase.all(), PleatLayoutPropertyTest::marksAreInOrderAndLandWhereTheLayoutSays);
    }

    private static void marksAreInOrderAndLandWhereTheLayoutSays(PleatCase pleatCase) {
        PleatLayout layout = pleatCase.layout();
        double end = 0;
        double visible = 0;
        for (PleatFold fold : layout.folds()) {
            assertTrue(fold.firstMark() >= end, () -> "marks overlap at " + fold);
            assertTrue(fold.depth() > 0 && fold.lastMark() > fold.firstMark());
            visible += fold.firstMark() - end;
            assertEquals(visible, fold.finished(), 1e-9);
            assertEquals(2 * fold.depth(), fold.lastMark() - fold.firstMark(), 1e-9);
            assertEquals(fold.lie() == Lie.TO_BACK, fold.foldMark() < fold.placementMark());
            end = fold.lastMark();
        }
        assertTrue(end <= pleatCase.flat().length() + 1e-9);
        PleatPlan plan = pleatCase.plan();
        for (PleatFold fold : layout.folds()) {
            assertTrue(fold.finished() >= plan.flatZoneFront() - 1e-9);
            assertTrue(fold.finished() <= layout.span() - plan.flatZoneBack() + 1e-9);
        }
    }

    @Test
    void foldsOfOneHalfAreEquallyDeepAndEvenlySpaced() {
        PleatCase.forEach(PleatCase.all(), PleatLayoutPropertyTest::foldsOfOneHalfAreEquallyDeepAndEvenlySpaced);
    }

    private static void foldsOfOneHalfAreEquallyDeepAndEvenlySpaced(PleatCase pleatCase) {
        PleatLayout layout = pleatCase.layout();
        assertEquals(layout.count(), layout.front().pleats() + layout.back().pleats(), 0);
        for (HalfPleats half : List.of(layout.front(), layout.back())) {
            assertTrue(half.takeUp() == 0 || half.pleats() > 0, "a half with take-up has pleats");
            assertEquals(half.takeUp(), pleatCase.plan().kind().takeUp(half.depth()) * half.pleats(), 1e-9);
        }
        if (pleatCase.plan().kind() == PleatKind.KNIFE) {
            List<Double> front = layout.folds().stream()
                    .map(PleatFold::finished)
                    .filter(x -> x < pleatCase.span().front() - 1e-9)
                    .toList();
            int whole = (int) Math.floor(layout.front().pleats());
            double spacing = (pleatCase.span().front() - pleatCase.plan().flatZoneFront())
                    / layout.front().pleats();
            for (int i = 0; i < whole; i++) {
                assertEquals(pleatCase.plan().flatZoneFront() + (i + 0.5) * spacing, front.get(i), 1e-9);
            }
        }
    }

    @Test
    void equalHalvesMirror() {
        PleatCase.forEach(PleatCase.all(), PleatLayoutPropertyTest::equalHalvesMirror);
    }

    private static void equalHalvesMirror(PleatCase pleatCase) {
        AttachSpan span = pleatCase.span();
        PleatPlan plan = pleatCase.plan();
        // The same halves twice, whatever the case's back half is.
        AttachSpan even = new AttachSpan(span.armholeFront(), span.armholeFront(), span.frontGap(), span.frontGap());
        PleatPlan mirrorPlan =
                new PleatPlan(plan.kind(), plan.direction(), plan.sizing(), plan.flatZoneFront(), plan.flatZoneFront());
        PleatLayout layout = mirrorPlan.layOut(even, pleatCase.apex(), pleatCase.apex());
        boolean oneWay = plan.kind() == PleatKind.KNIFE
                && (plan.direction() == PleatDirection.TOWARD_FRONT || plan.direction() == PleatDirection.TOWARD_BACK);
        int n = layout.folds().size();
        for (int i = 0; i < n; i++) {
            PleatFold fold = layout.folds().get(i);
            PleatFold mirror = layout.folds().get(n - 1 - i);
            assertEquals(fold.finished(), layout.span() - mirror.finished(), 1e-9);
            assertEquals(fold.depth(), mirror.depth(), 1e-9);
            assertEquals(fold.firstMark(), layout.edge() - mirror.lastMark(), 1e-9);
            assertEquals(oneWay, fold.lie() == mirror.lie());
        }
        if (layout.count() % 2 == 1) {
            double middle = layout.folds().stream()
                    .mapToDouble(fold -> Math.abs(fold.middleMark() - pleatCase.apex()))
                    .min()
                    .orElseThrow();
            assertTrue(middle <= 2 * layout.greatestDepth() + 1e-9 || plan.kind() == PleatKind.BOX);
            assertEquals(0.5, layout.front().pleats() % 1, 0);
        }
    }

    @Test
    void layersAreThoseCountedPointByPoint() {
        PleatCase.forEach(PleatCase.all(), PleatLayoutPropertyTest::layersAreThoseCountedPointByPoint);
    }

    private static void layersAreThoseCountedPointByPoint(PleatCase pleatCase) {
        PleatLayout layout = pleatCase.layout();
        long most = layout.folds().stream()
                .flatMapToDouble(fold -> DoubleStream.of(fold.reachFrom() + 2e-6, fold.reachTo() - 2e-6))
                .filter(x -> x > 0 && x < layout.span())
                .mapToLong(x -> layout.folds().stream()
                        .filter(fold -> fold.reachFrom() < x && x < fold.reachTo())
                        .count())
                .max()
                .orElse(0);
        assertEquals(1 + 2 * most, layout.greatestLayers());
        assertEquals(most > 1, layout.overlaps());
    }

    @Test
    void aWantedDepthIsMetAsNearlyAsWholePleatsAllow() {
        PleatCase.forEach(PleatCase.all(), PleatLayoutPropertyTest::aWantedDepthIsMetAsNearlyAsWholePleatsAllow);
    }

    private static void aWantedDepthIsMetAsNearlyAsWholePleatsAllow(PleatCase pleatCase) {
        PleatPlan plan = pleatCase.plan();
        PleatLayout layout = pleatCase.layout();
        double takeUp = layout.takeUp();
        if (plan.sizing() instanceof PleatSizing.ByDepth wanted) {
            double off = Math.abs(takeUp / plan.kind().takeUp(layout.count()) - wanted.depth());
            for (int count = 1; count <= PleatPlan.GREATEST_COUNT; count++) {
                assertTrue(off <= Math.abs(takeUp / plan.kind().takeUp(count) - wanted.depth()) + 1e-12);
            }
        } else if (plan.sizing() instanceof PleatSizing.ByGreatestDepth wanted) {
            assertTrue(layout.greatestDepth() <= wanted.depth() * (1 + 1e-9));
            for (int count = 1; count < layout.count(); count++) {
                PleatLayout fewer = new PleatPlan(
                                plan.kind(),
                                plan.direction(),
                                new PleatSizing.ByCount(count),
                                plan.flatZoneFront(),
                                plan.flatZoneBack())
                        .layOut(
                                pleatCase.span(),
                                pleatCase.apex(),
                                pleatCase.flat().length() - pleatCase.apex());
                assertTrue(fewer.greatestDepth() > wanted.depth());
            }
        } else if (plan.sizing() instanceof PleatSizing.ByCount given) {
            assertEquals(given.count(), layout.count());
            int folds = plan.kind().folds() * given.count();
            boolean pairOnApex = plan.kind() == PleatKind.KNIFE
                    && layout.front().pleats() % 1 != 0
                    && (plan.direction() == PleatDirection.TOWARD_APEX
                            || plan.direction() == PleatDirection.AWAY_FROM_APEX);
            assertEquals(pairOnApex ? folds + 1 : folds, layout.folds().size());
        }
    }
}
