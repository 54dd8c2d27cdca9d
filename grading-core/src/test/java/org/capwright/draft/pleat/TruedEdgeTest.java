package org.capwright.draft.pleat;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.capwright.geometry.Cubic;
import org.capwright.geometry.Curve;
import org.capwright.geometry.Point;
import org.capwright.quantity.InvalidMeasuresException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.util.AffineTransformation;

class TruedEdgeTest {

    private static final double DRAWN = 40;

    private static TruedEdge trued(PleatCase pleatCase) {
        return TruedEdge.of(pleatCase.flat(), pleatCase.layout(), DRAWN);
    }

    /** The cases whose pleats can be laid; deep ones over a steep edge are refused. */
    private static Stream<PleatCase> laid() {
        return PleatCase.some().filter(TruedEdgeTest::canBeLaid);
    }

    private static boolean canBeLaid(PleatCase pleatCase) {
        try {
            trued(pleatCase);
            return true;
        } catch (InvalidMeasuresException e) {
            assertEquals(
                    org.capwright.measure.SleeveSubject.Option.PLEATS,
                    e.violations().get(0).subject());
            return false;
        }
    }

    @Test
    void mostPleatsCanBeLaid() {
        double all = PleatCase.some().count();
        assertTrue(laid().count() > 0.75 * all, laid().count() + " of " + all);
    }

    @Test
    void lengthsThatFollowFromTheFlatEdgeAreThoseOfTheLine() {
        PleatCase.forEach(laid(), pleatCase -> {
            TruedEdge edge = trued(pleatCase);
            double measured = Curve.of(edge.curve().segments()).length();
            assertEquals(measured, edge.length(), 1e-6);
            assertEquals(measured, edge.curve().length(), 1e-6);
        });
    }

    /** Between pleats that all but touch, the pieces seen are nothing each, but together more than rounding. */
    @Test
    void pleatsThatAllButTouchAreLaid() {
        double seen = 8e-6;
        AttachSpan span = new AttachSpan(60, 60, 0, 0);
        PleatPlan plan = new PleatPlan(
                PleatKind.INVERTED,
                PleatDirection.TOWARD_APEX,
                new PleatSizing.ByCount(150),
                60 - seen / 2,
                60 - seen / 2);
        Curve flat = Curve.of(List.of(Cubic.line(new Point(-150, 0), new Point(150, 0))));
        TruedEdge edge = trued(new PleatCase(0, flat, 150, span, plan));
        assertEquals(300, edge.length(), 1e-4);
        assertEquals(300, Curve.of(edge.curve().segments()).length(), 1e-4);
    }

    @Test
    void foldedAsClothTheTopEdgeHasTheSpansLengthAndCatchesAllUnderLayers() {
        PleatCase.forEach(laid(), TruedEdgeTest::foldedAsClothTheTopEdgeHasTheSpansLengthAndCatchesAllUnderLayers);
    }

    private static void foldedAsClothTheTopEdgeHasTheSpansLengthAndCatchesAllUnderLayers(PleatCase pleatCase) {
        TruedEdge edge = trued(pleatCase);
        FoldedCloth cloth = FoldedCloth.fold(edge);
        Curve closed = cloth.closed();
        assertEquals(pleatCase.span().length(), closed.length(), 1e-6);
        Curve seam = prolonged(closed, edge);
        for (int i = 0; i < cloth.under().size(); i++) {
            FoldLines lines = edge.lines().get(i / 2);
            FoldedCloth.Crease crease = cloth.creases().get(i / 2);
            double deepest = 0;
            for (Cubic cubic : cloth.under().get(i)) {
                for (double t : new double[] {0, 0.3, 0.7, 1}) {
                    Point point = cubic.pointAt(t);
                    deepest = Math.max(deepest, crease.depthOf(point));
                    assertEquals(0, off(seam, point), 1e-5);
                }
            }
            assertTrue(deepest >= lines.depth() - 1e-6, lines.of()::toString);
        }
    }

    /** The seam with what it is prolonged by for layers that reach beyond its ends. */
    private static Curve prolonged(Curve closed, TruedEdge edge) {
        Curve seam = closed;
        if (edge.overhang().front() > 0) {
            Point way = closed.tangentAtLength(0).times(edge.overhang().front());
            seam = Curve.line(seam.start().minus(way), seam.start()).joinedTo(seam);
        }
        if (edge.overhang().back() > 0) {
            Point way = closed.tangentAtLength(closed.length())
                    .times(edge.overhang().back());
            seam = seam.joinedTo(Curve.line(seam.end(), seam.end().plus(way)));
        }
        return seam;
    }

    private static double off(Curve closed, Point point) {
        return closed.pointAtLength(closed.closestLength(point)).distanceTo(point);
    }

    @Test
    void theEdgeKeepsItsEndsAndItsVisiblePieces() {
        PleatCase.forEach(laid(), TruedEdgeTest::theEdgeKeepsItsEndsAndItsVisiblePieces);
    }

    private static void theEdgeKeepsItsEndsAndItsVisiblePieces(PleatCase pleatCase) {
        Curve flat = pleatCase.flat();
        TruedEdge edge = trued(pleatCase);
        assertEquals(0, flat.start().distanceTo(edge.curve().start()), 1e-9);
        assertEquals(0, flat.end().distanceTo(edge.curve().end()), 1e-9);
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
    void foldLineAndPlacementLineMirrorOneAnotherAndNoTwoLinesMeet() {
        PleatCase.forEach(laid(), TruedEdgeTest::foldLineAndPlacementLineMirrorOneAnotherAndNoTwoLinesMeet);
    }

    private static void foldLineAndPlacementLineMirrorOneAnotherAndNoTwoLinesMeet(PleatCase pleatCase) {
        TruedEdge edge = trued(pleatCase);
        List<PleatLine> drawn = new ArrayList<>();
        for (FoldLines lines : edge.lines()) {
            PleatLine middle = lines.middle();
            AffineTransformation about = AffineTransformation.reflectionInstance(
                    middle.from().x(),
                    middle.from().y(),
                    middle.to().x(),
                    middle.to().y());
            Coordinate from = about.transform(coordinate(lines.fold().from()), new Coordinate());
            Coordinate to = about.transform(coordinate(lines.fold().to()), new Coordinate());
            assertEquals(0, from.distance(coordinate(lines.placement().from())), 1e-6);
            assertEquals(0, to.distance(coordinate(lines.placement().to())), 1e-6);
            // The piece hangs below an edge that runs over the apex.
            Point chord = lines.placement().from().minus(lines.fold().from());
            Point travel = lines.of().lie() == Lie.TO_BACK ? chord : chord.times(-1);
            assertTrue(travel.cross(middle.to().minus(middle.from())) < 0);
            drawn.add(lines.fold());
            drawn.add(lines.placement());
        }
        for (int i = 0; i < drawn.size(); i++) {
            for (int k = i + 1; k < drawn.size(); k++) {
                boolean shared = drawn.get(i).from().distanceTo(drawn.get(k).from()) < 1e-6;
                assertTrue(
                        shared || !segment(drawn.get(i)).intersects(segment(drawn.get(k))), "lines " + i + " and " + k);
            }
        }
    }

    private static Coordinate coordinate(Point point) {
        return new Coordinate(point.x(), point.y());
    }

    private static Geometry segment(PleatLine line) {
        return new GeometryFactory()
                .createLineString(new Coordinate[] {coordinate(line.from()), coordinate(line.to())});
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

    /** On an edge that rises to a gable, drawn by hand. */
    @Test
    void aPleatOverAGableIsCutToTheGable() {
        Point apex = new Point(100, 100);
        Curve flat = Curve.polyline(List.of(Point.ORIGIN, apex, new Point(200, 0)));
        double half = 100 * Math.sqrt(2);
        // One knife fold over the gable: F and P at equal heights. Square to the slopes its lines lean in by 45
        // degrees, so that the seam runs straight on, and the gable itself is the
        // shape that folds flat onto it.
        PleatLayout knife = new PleatPlan(PleatKind.KNIFE, PleatDirection.TOWARD_BACK, new PleatSizing.ByCount(1), 0, 0)
                .layOut(new AttachSpan(half - 20 * Math.sqrt(2), half - 20 * Math.sqrt(2), 0, 0), half, half);
        TruedEdge gable = TruedEdge.of(flat, knife, DRAWN);
        FoldLines lines = gable.lines().get(0);
        assertEquals(0, lines.fold().from().distanceTo(new Point(80, 80)), 1e-9);
        assertEquals(0, lines.placement().from().distanceTo(new Point(120, 80)), 1e-9);
        assertEquals(0, lines.middle().from().distanceTo(new Point(100, 100)), 1e-9);
        assertEquals(20 * Math.sqrt(2), lines.depth(), 1e-9);
        assertEquals(2 * half, gable.curve().length(), 1e-9);
    }

    @Test
    void underLayersBeyondTheEndsAreCutStraightAndReported() {
        // Seam 60, one fold in the middle of it 50 deep: 20 mm have nothing on top.
        Curve flat = Curve.line(Point.ORIGIN, new Point(160, 0));
        PleatLayout layout = new PleatPlan(
                        PleatKind.KNIFE, PleatDirection.TOWARD_FRONT, new PleatSizing.ByCount(1), 0, 0)
                .layOut(new AttachSpan(30, 30, 0, 0), 80, 80);
        TruedEdge edge = TruedEdge.of(flat, layout, DRAWN);
        assertEquals(20, edge.overhang().back(), 1e-9);
        assertEquals(0, edge.overhang().front(), 0);
        assertEquals(160, edge.curve().length(), 1e-9);
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
