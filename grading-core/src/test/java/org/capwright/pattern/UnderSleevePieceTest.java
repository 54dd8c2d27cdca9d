package org.capwright.pattern;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.function.BiConsumer;
import java.util.stream.Stream;
import org.capwright.draft.ElbowDart;
import org.capwright.draft.SleeveStyle;
import org.capwright.draft.StyleSpace;
import org.capwright.draft.UnderSleeve;
import org.capwright.draft.WristOpening;
import org.capwright.geometry.Point;
import org.capwright.grade.SizeRun;
import org.capwright.quantity.Unit;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.algorithm.Orientation;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.geom.util.AffineTransformation;

/** Pieces of under-sleeves over the whole style space, compared with the geometry library JTS. */
class UnderSleevePieceTest {

    private static final int MANY = 400;
    private static final double ALLOWANCE = 12;
    private static final PatternSet.Title TITLE = new PatternSet.Title("Choir gown", "1", Unit.MILLIMETRE);
    private static final GeometryFactory PLANE = new GeometryFactory();

    private record Drawn(String which, UnderSleeve under, Piece piece) {}

    private static void overTheStyleSpace(BiConsumer<Drawn, UnderSleeve> check) {
        PatternOptions options = new PatternOptions(Allowances.all(ALLOWANCE), CornerKind.MITRED, 2, 0);
        for (long seed = 1; seed <= MANY; seed++) {
            StyleSpace.Case drawn = StyleSpace.of(seed);
            SleeveStyle style = new SleeveStyle(
                    drawn.style().fit(), Optional.empty(), drawn.style().underSleeve());
            SizeRun run = SizeRun.grade(style, drawn.dimensions(), List.of("40"), 0, List.of());
            Piece piece =
                    PatternDrafter.draft(TITLE, run, options).sizes().get(0).get(0);
            UnderSleeve under = run.baseSize().draft().underSleeve().orElseThrow();
            check.accept(
                    new Drawn(
                            "seed " + seed + " "
                                    + style.underSleeve().orElseThrow().shaping(),
                            under,
                            piece),
                    under);
        }
    }

    @Test
    void outlinesAreSimpleClosedAndCounterClockwise() {
        overTheStyleSpace((drawn, under) -> {
            Piece piece = drawn.piece();
            for (List<Point> outline : List.of(piece.netLine(), piece.cutLine())) {
                Polygon polygon = polygon(outline);
                assertTrue(polygon.isValid(), drawn.which() + " is not valid");
                assertTrue(polygon.getExteriorRing().isSimple(), drawn.which() + " is not simple");
                assertTrue(Orientation.isCCW(polygon.getExteriorRing().getCoordinates()), drawn.which());
                assertEquals(outline.size(), new HashSet<>(outline).size(), drawn.which() + " meets a point twice");
            }
            assertTrue(polygon(piece.cutLine()).buffer(1e-6).covers(polygon(piece.netLine())), drawn.which());
            for (int i = 0; i < piece.edges().size(); i++) {
                assertEquals(
                        piece.edges().get(i).curve().end(),
                        piece.edges()
                                .get((i + 1) % piece.edges().size())
                                .curve()
                                .start(),
                        drawn.which());
            }
            assertEquals(under.symmetrical(), piece.onFold(), drawn.which());
        });
    }

    /** The legs are drawn from the point of the dart, the notches at their ends are snipped along them. */
    @Test
    void dartIsMarkedByItsLegsAndNotches() {
        int[] seen = {0};
        overTheStyleSpace((drawn, under) -> under.dart().ifPresent(dart -> {
            seen[0]++;
            List<MarkLine> legs = drawn.piece().marks().stream()
                    .filter(mark -> mark.kind() == MarkKind.DART_LEG)
                    .toList();
            assertEquals(2, legs.size(), drawn.which());
            assertEquals(legs.get(0).line().length(), legs.get(1).line().length(), 1e-9, drawn.which());
            Geometry cut = polygon(drawn.piece().cutLine()).getExteriorRing();
            List<Notch> notches = balance(drawn.piece(), UnderSleeveSeam.BACK_BELOW, UnderSleeveSeam.BACK_ABOVE);
            for (MarkLine leg : legs) {
                Point end = leg.line().end();
                Notch notch = notches.stream()
                        .filter(n -> n.at().distanceTo(end) < 1e-6)
                        .findFirst()
                        .orElseThrow(() -> new AssertionError(drawn.which() + " lacks a notch at " + end));
                assertEquals(0, cut.distance(point(notch.onCut())), 1e-6, drawn.which());
                assertEquals(
                        0, notch.inward().distanceTo(dart.point().minus(end).unit()), 1e-9, drawn.which());
            }
            Notch front = balance(drawn.piece(), UnderSleeveSeam.FRONT).stream()
                    .filter(n -> Math.abs(n.distance()
                                    - edge(drawn.piece(), UnderSleeveSeam.BACK_ABOVE)
                                            .curve()
                                            .length())
                            < 1e-6)
                    .findFirst()
                    .orElseThrow();
            assertTrue(front.at().distanceTo(under.frontElbow().mirrored()) < 8, drawn.which());
        }));
        assertTrue(seen[0] > MANY / 5);
    }

    /**
     * Fold the paper pattern: with the legs together and the intake down, the cut line of the intake lies on that of the part below. At the crease the mitre runs on straight
     * for a few millimetres where the seam below bends; hence a tenth of a millimetre.
     */
    @Test
    void foldedDownTheAllowanceOfTheDartIsCutAsThatOfTheSeamBelow() {
        int[] tried = {0};
        overTheStyleSpace((drawn, under) -> under.dart().ifPresent(dart -> {
            List<Point> cutLine = drawn.piece().cutLine();
            Geometry below = AffineTransformation.rotationInstance(
                            dart.angle(), dart.point().x(), dart.point().y())
                    .transform(polygon(cutLine).getExteriorRing());
            AffineTransformation crease = AffineTransformation.reflectionInstance(
                    dart.point().x(),
                    dart.point().y(),
                    dart.foldEnd().x(),
                    dart.foldEnd().y());
            for (Point cut : cutLine) {
                if (between(cut, dart)) {
                    double side = dart.foldEnd().minus(dart.point()).cross(cut.minus(dart.point()));
                    Geometry place = side < 0 ? crease.transform(point(cut)) : point(cut);
                    assertEquals(0, below.distance(place), 0.1, drawn.which());
                    tried[0]++;
                }
            }
        }));
        assertTrue(tried[0] > MANY / 2, "tried " + tried[0]);
    }

    /** Beyond the ends of the legs and between the lines that go on from them. */
    private static boolean between(Point cut, ElbowDart dart) {
        Point from = cut.minus(dart.point());
        return dart.upperEnd().minus(dart.point()).cross(from) < -1e-6
                && dart.lowerEnd().minus(dart.point()).cross(from) > 1e-6
                && from.dot(dart.foldEnd().minus(dart.point())) > 0;
    }

    /** Measured from the underarm point and from the wrist, the notches of both seams meet. */
    @Test
    void balanceNotchesOfBothSeamsMeet() {
        int[] openings = {0};
        overTheStyleSpace((drawn, under) -> {
            Piece piece = drawn.piece();
            boolean opens = under.opening()
                    .filter(o -> o.basis() == WristOpening.Basis.GIVEN)
                    .isPresent();
            openings[0] += opens ? 1 : 0;
            int expected = (opens ? 1 : 0) + (under.easing().isPresent() ? 2 : 0);
            if (piece.onFold()) {
                assertEquals(expected, balance(piece, UnderSleeveSeam.SIDE).size(), drawn.which());
                return;
            }
            List<Double> front = fromWrist(piece, UnderSleeveSeam.FRONT, true);
            if (under.dart().isPresent()) {
                assertEquals(expected + 1, front.size(), drawn.which());
                List<Double> below = fromWrist(piece, UnderSleeveSeam.BACK_BELOW, false);
                assertMeet(drawn.which(), front, below);
                return;
            }
            assertEquals(expected, front.size(), drawn.which());
            List<Double> back = fromWrist(piece, UnderSleeveSeam.BACK, false);
            double ease = under.easing().map(e -> e.ease()).orElse(0.0);
            if (ease > 0) {
                int top = back.size() - 1;
                assertEquals(front.get(top) + ease, back.get(top), 1e-6, drawn.which());
                assertMeet(drawn.which(), front.subList(0, top), back.subList(0, top));
            } else {
                assertMeet(drawn.which(), front, back);
            }
        });
        assertTrue(openings[0] > MANY / 10, "openings " + openings[0]);
    }

    private static void assertMeet(String which, List<Double> front, List<Double> back) {
        assertEquals(front.size(), back.size(), which);
        for (int i = 0; i < front.size(); i++) {
            assertEquals(front.get(i), back.get(i), 1e-6, which);
        }
    }

    /** Distances from the wrist up, nearest first. */
    private static List<Double> fromWrist(Piece piece, String edge, boolean down) {
        double whole = edge(piece, edge).curve().length();
        return balance(piece, edge).stream()
                .map(n -> down ? whole - n.distance() : n.distance())
                .sorted()
                .toList();
    }

    private static List<Notch> balance(Piece piece, String... edges) {
        return piece.notches().stream()
                .filter(n -> n.kind() == NotchKind.BALANCE && List.of(edges).contains(n.edge()))
                .toList();
    }

    private static PieceEdge edge(Piece piece, String name) {
        return piece.edges().stream()
                .filter(e -> e.name().equals(name))
                .findFirst()
                .orElseThrow();
    }

    private static Polygon polygon(List<Point> points) {
        return PLANE.createPolygon(Stream.concat(points.stream(), Stream.of(points.get(0)))
                .map(p -> new Coordinate(p.x(), p.y()))
                .toArray(Coordinate[]::new));
    }

    private static Geometry point(Point point) {
        return PLANE.createPoint(new Coordinate(point.x(), point.y()));
    }
}
