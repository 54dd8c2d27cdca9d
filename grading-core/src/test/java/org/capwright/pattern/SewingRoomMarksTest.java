package org.capwright.pattern;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.capwright.geometry.Point;
import org.capwright.measure.SleeveSubject;
import org.capwright.quantity.InvalidMeasuresException;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.util.AffineTransformation;

/** What the ones who cut and sew read from a piece. That the front has one notch and the back two, and the rest of these marks, is common practice, no source. */
class SewingRoomMarksTest {

    private static final GeometryFactory PLANE = new GeometryFactory();
    private static final int STYLES = 60;

    private static Geometry area(List<Point> points) {
        List<Coordinate> ring = new ArrayList<>();
        points.forEach(p -> ring.add(new Coordinate(p.x(), p.y())));
        ring.add(ring.get(0).copy());
        return PLANE.createPolygon(ring.toArray(new Coordinate[0]));
    }

    private static List<Piece> pieces(long seed, PatternOptions options) {
        return RandomStyles.pieces(seed, options).orElse(List.of());
    }

    private static List<Notch> notches(Piece piece, NotchKind kind) {
        return piece.notches().stream().filter(n -> n.kind() == kind).toList();
    }

    @Test
    void aWholePieceTellsFrontFromBack() {
        int seen = 0;
        for (long seed = 0; seed < STYLES; seed++) {
            for (Piece piece : pieces(seed, PatternOptions.usual())) {
                if (piece.onFold()) {
                    continue;
                }
                seen++;
                String what = "seed " + seed + " " + piece.kind();
                assertTrue(
                        notches(piece, NotchKind.SINGLE).stream().allMatch(n -> n.at().x() < 0)
                                && !notches(piece, NotchKind.SINGLE).isEmpty(),
                        what);
                assertTrue(
                        notches(piece, NotchKind.DOUBLE).stream().allMatch(n -> n.at().x() > 0)
                                && !notches(piece, NotchKind.DOUBLE).isEmpty(),
                        what);
                Geometry net = area(piece.netLine());
                for (String half : List.of("front", "back")) {
                    MarkLine mark = piece.marks().stream()
                            .filter(m -> m.kind() == MarkKind.HALF && m.name().equals(half))
                            .findFirst()
                            .orElseThrow();
                    Point start = mark.line().start();
                    Point end = mark.line().end();
                    assertTrue(half.equals("front") ? end.x() < start.x() : end.x() > start.x(), what);
                    assertTrue(
                            net.contains(PLANE.createLineString(new Coordinate[] {
                                new Coordinate(start.x(), start.y()), new Coordinate(end.x(), end.y())
                            })),
                            what);
                }
            }
        }
        assertTrue(seen > STYLES, "only " + seen + " whole pieces");
    }

    @Test
    void theWristIsTurnedUpOnItsMirrorImageWhateverTheCorners() {
        int seen = 0;
        for (CornerKind corners : CornerKind.values()) {
            for (long seed = 0; seed < STYLES; seed++) {
                double depth = 10 + seed % 3 * 15;
                PatternOptions options = PatternOptions.usual().with(corners).with(new Allowances(10, 10, 12, depth));
                for (Piece piece : pieces(seed, options)) {
                    if (piece.kind() != PieceKind.UNDER_SLEEVE) {
                        continue;
                    }
                    seen++;
                    Geometry cut = area(piece.cutLine());
                    assertTrue(cut.isValid(), "seed " + seed);
                    Point start = piece.edge("wrist").curve().start();
                    Point end = piece.edge("wrist").curve().end();
                    Geometry hem = cut.intersection(band(start, end, -depth - 1, 0));
                    Geometry above = cut.intersection(band(start, end, 0, depth));
                    Geometry turnedUp = AffineTransformation.reflectionInstance(start.x(), start.y(), end.x(), end.y())
                            .transform(hem);
                    assertEquals(0, turnedUp.symDifference(above).getArea(), 1e-3, "seed " + seed + " " + corners);
                }
            }
        }
        assertTrue(seen > STYLES, "only " + seen + " under-sleeves");
    }

    /** What lies between two heights above the line of a hem. */
    private static Geometry band(Point start, Point end, double low, double high) {
        Point along = end.minus(start).unit().times(2000);
        Point up = along.unit().left();
        return area(List.of(
                start.minus(along).plus(up.times(low)),
                end.plus(along).plus(up.times(low)),
                end.plus(along).plus(up.times(high)),
                start.minus(along).plus(up.times(high))));
    }

    @Test
    void everyPleatLineIsSnippedIntoTheCutEdge() {
        int seen = 0;
        for (long seed = 0; seed < STYLES; seed++) {
            for (Piece piece : pieces(seed, PatternOptions.usual())) {
                List<MarkLine> lines = piece.marks().stream()
                        .filter(m -> m.kind() == MarkKind.PLEAT_FOLD || m.kind() == MarkKind.PLEAT_PLACEMENT)
                        .toList();
                List<Notch> snips = notches(piece, NotchKind.PLEAT);
                Geometry cut = area(piece.cutLine()).getBoundary();
                for (MarkLine line : lines) {
                    Point start = line.line().start();
                    boolean atApex = notches(piece, NotchKind.APEX).get(0).at().distanceTo(start) < 1.5;
                    Optional<Notch> snip = snips.stream()
                            .filter(n -> n.at().distanceTo(start) < 0.02)
                            .findFirst();
                    boolean atEnd = piece.edge("top edge").curve().start().distanceTo(start) < 1.5
                            || piece.edge("top edge").curve().end().distanceTo(start) < 1.5;
                    assertTrue(snip.isPresent() || atApex || atEnd, "seed " + seed + " " + line.name());
                    if (snip.isPresent()) {
                        seen++;
                        Point on = snip.get().onCut();
                        assertEquals(
                                0,
                                cut.distance(PLANE.createPoint(new Coordinate(on.x(), on.y()))),
                                0.03,
                                "seed " + seed);
                        Point way = line.line().end().minus(start).unit();
                        assertEquals(0, way.cross(on.minus(start)), 0.03, "seed " + seed + ": off the pleat line");
                    }
                }
            }
        }
        assertTrue(seen > STYLES, "only " + seen + " snips");
        PatternOptions none =
                PatternOptions.usual().with(new PieceMarking(Halves.ON_FOLD, PleatNotches.NONE, DrillHoles.NONE));
        for (long seed = 0; seed < 10; seed++) {
            pieces(seed, none)
                    .forEach(p -> assertTrue(notches(p, NotchKind.PLEAT).isEmpty()));
        }
    }

    @Test
    void piecesCutOpenAreBothHalvesOfThoseOnTheFold() {
        PatternOptions whole =
                PatternOptions.usual().with(new PieceMarking(Halves.WHOLE, PleatNotches.CUT_EDGE, DrillHoles.NONE));
        int seen = 0;
        for (long seed = 0; seed < STYLES; seed++) {
            List<Piece> folded = pieces(seed, PatternOptions.usual());
            List<Piece> open = pieces(seed, whole);
            for (int i = 0; i < folded.size() && i < open.size(); i++) {
                assertTrue(!open.get(i).onFold());
                if (folded.get(i).onFold()) {
                    seen++;
                    Geometry half = area(folded.get(i).cutLine());
                    Geometry both = half.union(new AffineTransformation(-1, 0, 0, 0, 1, 0).transform(half));
                    assertEquals(
                            0,
                            both.symDifference(area(open.get(i).cutLine())).getArea(),
                            0.02 * both.getLength(),
                            "seed " + seed + " " + folded.get(i).kind());
                }
            }
        }
        assertTrue(seen > 5, "only " + seen + " folded pieces");
    }

    @Test
    void holesLieInsideShortOfTheEndsOfThePleatLines() {
        PatternOptions drilled = PatternOptions.usual()
                .with(new PieceMarking(Halves.ON_FOLD, PleatNotches.CUT_EDGE, DrillHoles.PLEATS_AND_DARTS));
        int seen = 0;
        for (long seed = 0; seed < STYLES; seed++) {
            for (Piece piece : pieces(seed, drilled)) {
                Geometry net = area(piece.netLine()).buffer(0.01);
                for (MarkLine mark : piece.marks()) {
                    if (mark.kind() == MarkKind.DRILL_HOLE) {
                        seen++;
                        Point at = mark.line().pointAtLength(mark.line().length() / 2);
                        assertTrue(net.contains(PLANE.createPoint(new Coordinate(at.x(), at.y()))), "seed " + seed);
                    }
                }
            }
        }
        assertTrue(seen > STYLES, "only " + seen + " holes");
    }

    /** A cap cut on the fold carries the second snip of its back, 6 mm from the first. */
    @Test
    void aCapOnTheFoldMarksTheSecondSnipOfTheBack() {
        int seen = 0;
        for (long seed = 0; seed < STYLES; seed++) {
            for (Piece piece : pieces(seed, PatternOptions.usual())) {
                if (piece.onFold()
                        && piece.edges().stream().anyMatch(e -> e.name().equals("cap"))) {
                    seen++;
                    assertEquals(
                            6,
                            notches(piece, NotchKind.BACK_ONLY).get(0).distance()
                                    - notches(piece, NotchKind.SINGLE).get(0).distance(),
                            1e-9);
                }
            }
        }
        assertTrue(seen > 0);
    }

    @Test
    void interfacingThatWouldReachBeyondTheAllowancesIsRefused() {
        InvalidMeasuresException refused = assertThrows(
                InvalidMeasuresException.class,
                () -> PatternDrafter.draft(
                        RandomStyles.TITLE,
                        RandomStyles.run(0),
                        PatternOptions.usual().withInterfacingOverlap(30)));
        assertEquals(
                SleeveSubject.Option.INTERFACING_OVERLAP,
                refused.violations().get(0).subject());
        assertEquals(10, refused.violations().get(0).greatest().orElseThrow());
    }

    /** Wide allowances round a half stop at its fold. */
    @Test
    void noCutLineCrossesItsFold() {
        for (long seed = 0; seed < STYLES; seed++) {
            PatternOptions wide = PatternOptions.usual().with(Allowances.all(20 + seed));
            for (Piece piece : pieces(seed, wide)) {
                if (piece.onFold()) {
                    assertTrue(
                            piece.cutLine().stream().allMatch(p -> p.x() > -1e-6), "seed " + seed + " " + piece.kind());
                    assertTrue(area(piece.cutLine()).isValid(), "seed " + seed);
                }
            }
        }
    }
}
