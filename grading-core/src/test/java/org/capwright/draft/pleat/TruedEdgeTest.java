package org.capwright.draft.pleat;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.capwright.geometry.Cubic;
import org.capwright.geometry.Curve;
import org.capwright.geometry.Point;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.GeometryFactory;

class TruedEdgeTest {

    private static final double DRAWN = 40;

    private static TruedEdge trued(PleatCase pleatCase) {
        return TruedEdge.of(pleatCase.flat(), pleatCase.layout(), DRAWN);
    }

    @Test
    void foldedAsClothTheTopEdgeHasTheSpansLengthAndCatchesTheUnderLayers() {
        PleatCase.forEach(
                PleatCase.some(), TruedEdgeTest::foldedAsClothTheTopEdgeHasTheSpansLengthAndCatchesTheUnderLayers);
    }

    private static void foldedAsClothTheTopEdgeHasTheSpansLengthAndCatchesTheUnderLayers(PleatCase pleatCase) {
        TruedEdge edge = trued(pleatCase);
        FoldedCloth cloth = FoldedCloth.fold(edge);
        Curve closed = cloth.closed();
        assertEquals(pleatCase.span().length(), closed.length(), 1e-6);
        for (int i = 0; i < cloth.under().size(); i++) {
            FoldLines lines = edge.lines().get(i / 2);
            FoldedCloth.Crease crease = cloth.creases().get(i / 2);
            double deep = lines.fold().from().distanceTo(lines.placement().from()) / 2;
            double covered = deep - lines.uncovered();
            double deepest = 0;
            for (Cubic cubic : cloth.under().get(i)) {
                for (double t : new double[] {0, 0.3, 0.7, 1}) {
                    Point point = cubic.pointAt(t);
                    double depth = crease.depthOf(point);
                    deepest = Math.max(deepest, depth);
                    if (depth <= covered + 1e-7) {
                        assertEquals(0, off(closed, point), 1e-6);
                    }
                }
            }
            assertEquals(deep, deepest, 1e-6);
        }
    }

    private static double off(Curve closed, Point point) {
        return closed.pointAtLength(closed.closestLength(point)).distanceTo(point);
    }

    /** Uncovered is only what nothing can cover: the closed edge ends there, or turns back from the inner crease. */
    @Test
    void underLayersAreUncoveredOnlyWhereTheClosedEdgeEndsOrTurnsBack() {
        PleatCase.forEach(
                PleatCase.some(), TruedEdgeTest::underLayersAreUncoveredOnlyWhereTheClosedEdgeEndsOrTurnsBack);
    }

    private static void underLayersAreUncoveredOnlyWhereTheClosedEdgeEndsOrTurnsBack(PleatCase pleatCase) {
        TruedEdge edge = trued(pleatCase);
        FoldedCloth cloth = FoldedCloth.fold(edge);
        Curve closed = cloth.closed();
        for (int i = 0; i < edge.lines().size(); i++) {
            FoldLines lines = edge.lines().get(i);
            if (lines.uncovered() == 0) {
                continue;
            }
            FoldedCloth.Crease crease = cloth.creases().get(i);
            double deep = lines.fold().from().distanceTo(lines.placement().from()) / 2;
            boolean toStart = lines.of().lie() == Lie.TO_BACK;
            double at = lines.of().finished();
            double step = 0.02;
            double reached = 0;
            double gained = step;
            while (gained > 0.021 * step && at > 0 && at < closed.length()) {
                at = toStart ? at - step : at + step;
                gained = crease.depthOf(closed.pointAtLength(at)) - reached;
                reached += Math.max(0, gained);
            }
            assertEquals(deep - lines.uncovered(), reached, 3 * step);
        }
    }

    @Test
    void foldsThatReachNeitherAnEndNorTheApexAreCoveredAllAlong() {
        // On a steeper cap a fold may reach into the bend.
        List<PleatCase> gentle = PleatCase.all().filter(TruedEdgeTest::isGentle).toList();
        assertTrue(gentle.size() >= 200, "cases: " + gentle.size());
        PleatCase.forEach(
                gentle.stream(), TruedEdgeTest::foldsThatReachNeitherAnEndNorTheApexAreCoveredAllAlong);
    }

    private static boolean isGentle(PleatCase pleatCase) {
        Curve flat = pleatCase.flat();
        double height = flat.pointAtLength(pleatCase.apex()).y();
        return height <= 0.75 * Math.min(-flat.start().x(), flat.end().x());
    }

    private static void foldsThatReachNeitherAnEndNorTheApexAreCoveredAllAlong(PleatCase pleatCase) {
        double apex = pleatCase.span().front();
        for (FoldLines lines : trued(pleatCase).lines()) {
            PleatFold fold = lines.of();
            double far =
                    fold.lie() == Lie.TO_BACK ? fold.finished() - 2 * fold.depth() : fold.finished() + 2 * fold.depth();
            double from = Math.min(far, fold.finished());
            double to = Math.max(far, fold.finished());
            if (from >= 0 && to <= apex
                    || from >= apex && to <= pleatCase.span().length()) {
                assertEquals(0, lines.uncovered(), fold::toString);
            }
        }
    }

    @Test
    void theEdgeKeepsItsEndsAndItsVisiblePieces() {
        PleatCase.forEach(PleatCase.some(), TruedEdgeTest::theEdgeKeepsItsEndsAndItsVisiblePieces);
    }

    private static void theEdgeKeepsItsEndsAndItsVisiblePieces(PleatCase pleatCase) {
        Curve flat = pleatCase.flat();
        TruedEdge edge = trued(pleatCase);
        assertEquals(flat.start(), edge.curve().start());
        assertEquals(flat.end(), edge.curve().end());
        double from = 0;
        for (FoldLines lines : edge.lines()) {
            PleatFold fold = lines.of();
            requireOn(flat, edge.curve(), from, fold.firstMark());
            assertEquals(0, lines.fold().from().distanceTo(flat.pointAtLength(fold.foldMark())), 1e-9);
            assertEquals(0, lines.placement().from().distanceTo(flat.pointAtLength(fold.placementMark())), 1e-9);
            from = fold.lastMark();
        }
        requireOn(flat, edge.curve(), from, flat.length());
    }

    private static void requireOn(Curve flat, Curve trued, double from, double to) {
        if (to - from < 1e-6) {
            return;
        }
        Point middle = flat.pointAtLength((from + to) / 2);
        assertEquals(0, trued.pointAtLength(trued.closestLength(middle)).distanceTo(middle), 1e-6);
    }

    @Test
    void linesOfAFoldAreParallelAndPerpendicularToItsChordAndRunIntoThePiece() {
        PleatCase.forEach(
                PleatCase.some(), TruedEdgeTest::linesOfAFoldAreParallelAndPerpendicularToItsChordAndRunIntoThePiece);
    }

    private static void linesOfAFoldAreParallelAndPerpendicularToItsChordAndRunIntoThePiece(PleatCase pleatCase) {
        for (FoldLines lines : trued(pleatCase).lines()) {
            Point chord = lines.placement().from().minus(lines.fold().from()).unit();
            Point middle = lines.fold().from().towards(lines.placement().from(), 0.5);
            assertEquals(0, lines.middle().from().minus(middle).dot(chord), 1e-7);
            for (PleatLine line : List.of(lines.fold(), lines.middle(), lines.placement())) {
                Point way = line.to().minus(line.from());
                assertEquals(DRAWN, way.norm(), 1e-9);
                assertEquals(0, way.dot(chord), 1e-7);
                // The piece hangs below an edge that runs over the apex.
                Point travel = lines.of().lie() == Lie.TO_BACK ? chord : chord.times(-1);
                assertTrue(travel.cross(way) < 0);
            }
        }
    }

    @Test
    void aTruedEdgeOfOrdinaryPleatsDoesNotCrossItself() {
        GeometryFactory jts = new GeometryFactory();
        List<PleatCase> ordinary = PleatCase.some()
                .filter(pleatCase -> pleatCase.layout().greatestDepth() <= 20)
                .filter(pleatCase -> trued(pleatCase).uncovered() == 0)
                .toList();
        assertTrue(ordinary.size() >= 30, "cases: " + ordinary.size());
        for (PleatCase pleatCase : ordinary) {
            Coordinate[] points = trued(pleatCase).curve().flattened(0.05).stream()
                    .map(point -> new Coordinate(point.x(), point.y()))
                    .toArray(Coordinate[]::new);
            assertTrue(jts.createLineString(points).isSimple(), pleatCase::toString);
        }
    }

    @ParameterizedTest
    @EnumSource(PleatKind.class)
    void aStraightEdgeStaysStraight(PleatKind kind) {
        Curve flat = Curve.line(Point.ORIGIN, new Point(1080, 0));
        PleatLayout layout = new PleatPlan(kind, PleatDirection.TOWARD_BACK, new PleatSizing.ByCount(4), 0, 0)
                .layOut(new AttachSpan(300, 300, 0, 0), 540, 540);
        TruedEdge edge = TruedEdge.of(flat, layout, DRAWN);
        assertEquals(1080, edge.curve().length(), 1e-9);
        for (FoldLines lines : edge.lines()) {
            assertEquals(
                    0, lines.middle().from().distanceTo(new Point(lines.of().middleMark(), 0)), 1e-9);
            assertEquals(-DRAWN, lines.fold().to().y(), 1e-9);
        }
        Curve reversed = Curve.line(new Point(1080, 0), Point.ORIGIN);
        assertEquals(
                DRAWN,
                TruedEdge.of(reversed, layout, DRAWN).lines().get(0).fold().to().y(),
                1e-9,
                "to the right of travel");
    }

    /** On an oblique edge that rises to a gable the under-layers of the pleat on the slope form a peak: the ordinary shape of a trued pleat, drawn by hand. */
    @Test
    void aPleatOnASlopeIsCutToAPeakOrAValley() {
        Point apex = new Point(100, 100);
        Curve flat = Curve.polyline(List.of(Point.ORIGIN, apex, new Point(200, 0)));
        double half = 100 * Math.sqrt(2);
        PleatLayout layout = new PleatPlan(
                        PleatKind.INVERTED, PleatDirection.TOWARD_APEX, new PleatSizing.ByCount(1), 0, 0)
                .layOut(new AttachSpan(half / 2, half / 2, 0, 0), half, half);
        // Each half has its fold on its own straight slope, and the slope on top is the same line: nothing to true
        // away.
        TruedEdge edge = TruedEdge.of(flat, layout, DRAWN);
        assertEquals(2 * half, edge.curve().length(), 1e-9);

        // One knife fold over the gable: F and P at equal heights, the crease upright on the axis. On top lies the
        // rising slope, so both layers follow its
        // mirror image down: a valley where the gable was.
        PleatLayout knife = new PleatPlan(PleatKind.KNIFE, PleatDirection.TOWARD_BACK, new PleatSizing.ByCount(1), 0, 0)
                .layOut(new AttachSpan(half - 20 * Math.sqrt(2), half - 20 * Math.sqrt(2), 0, 0), half, half);
        TruedEdge valley = TruedEdge.of(flat, knife, DRAWN);
        FoldLines lines = valley.lines().get(0);
        assertEquals(0, lines.fold().from().distanceTo(new Point(80, 80)), 1e-9);
        assertEquals(0, lines.placement().from().distanceTo(new Point(120, 80)), 1e-9);
        assertEquals(0, lines.middle().from().distanceTo(new Point(100, 60)), 1e-9);
    }

    @Test
    void underLayersBeyondTheEndsAreCutStraightAndReported() {
        // Seam 60, one fold in the middle of it 50 deep: 20 mm have nothing on top.
        Curve flat = Curve.line(Point.ORIGIN, new Point(160, 0));
        PleatLayout layout = new PleatPlan(
                        PleatKind.KNIFE, PleatDirection.TOWARD_FRONT, new PleatSizing.ByCount(1), 0, 0)
                .layOut(new AttachSpan(30, 30, 0, 0), 80, 80);
        TruedEdge edge = TruedEdge.of(flat, layout, DRAWN);
        assertEquals(20, edge.uncovered(), 1e-9);
        assertEquals(20, layout.overhangBack(), 1e-9);
        assertEquals(0, layout.overhangFront(), 0);
        assertEquals(160, edge.curve().length(), 1e-9);
    }

    @Test
    void aFoldDeeperThanTheBendIsReported() {
        // A half circle's worth of edge closed to a third: on top of a deep pleat at the side the edge turns back over
        // the apex.
        Curve arch = Curve.of(List.of(
                new Cubic(Point.ORIGIN, new Point(0, 55), new Point(45, 100), new Point(100, 100)),
                new Cubic(new Point(100, 100), new Point(155, 100), new Point(200, 55), new Point(200, 0))));
        double half = arch.length() / 2;
        PleatLayout layout = new PleatPlan(
                        PleatKind.KNIFE, PleatDirection.TOWARD_FRONT, new PleatSizing.ByCount(2), 0, 0)
                .layOut(new AttachSpan(half / 3, half / 3, 0, 0), half, half);
        assertTrue(TruedEdge.of(arch, layout, DRAWN).uncovered() > 1);
    }

    @Test
    void anEdgeOfAnotherLengthIsNotTrued() {
        Curve flat = Curve.line(Point.ORIGIN, new Point(100, 0));
        PleatLayout layout = new PleatPlan(
                        PleatKind.KNIFE, PleatDirection.TOWARD_FRONT, new PleatSizing.ByCount(2), 0, 0)
                .layOut(new AttachSpan(30, 30, 0, 0), 50, 51);
        assertThrows(IllegalArgumentException.class, () -> TruedEdge.of(flat, layout, DRAWN));
        PleatLayout fits = new PleatPlan(PleatKind.KNIFE, PleatDirection.TOWARD_FRONT, new PleatSizing.ByCount(2), 0, 0)
                .layOut(new AttachSpan(30, 30, 0, 0), 50, 50);
        assertThrows(IllegalArgumentException.class, () -> TruedEdge.of(flat, fits, 0));
    }
}
