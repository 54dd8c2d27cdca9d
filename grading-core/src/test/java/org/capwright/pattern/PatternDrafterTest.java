package org.capwright.pattern;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.capwright.draft.BaseSleeve;
import org.capwright.draft.StyleSpace;
import org.capwright.draft.pleat.AttachSpan;
import org.capwright.geometry.Curve;
import org.capwright.geometry.Point;
import org.capwright.geometry.Points;
import org.capwright.grade.SizeRun;
import org.capwright.measure.Dimension;
import org.capwright.measure.SleeveSubject.Option;
import org.capwright.quantity.InvalidMeasuresException;
import org.capwright.quantity.Violation;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.locationtech.jts.algorithm.Area;
import org.locationtech.jts.algorithm.Orientation;
import org.locationtech.jts.algorithm.distance.DiscreteHausdorffDistance;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.geom.util.AffineTransformation;
import org.locationtech.jts.operation.buffer.BufferOp;
import org.locationtech.jts.operation.buffer.BufferParameters;

/** Pieces over the whole style space, compared with the geometry library JTS. */
class PatternDrafterTest {

    private static final Allowances DIFFERENT = new Allowances(10, 12, 15, 25);

    @ParameterizedTest
    @EnumSource(CornerKind.class)
    void everyOutlineIsSimpleClosedAndCounterClockwise(CornerKind corners) {
        PatternOptions options = new PatternOptions(DIFFERENT, corners, 2, 4);
        int[] drafted = {0};
        RandomStyles.seeds()
                .forEach(seed -> RandomStyles.pieces(seed, options).ifPresent(pieces -> {
                    drafted[0]++;
                    for (Piece piece : pieces) {
                        String which = "seed " + seed + " " + piece.kind();
                        assertSound(which + " net line", piece.netLine());
                        assertSound(which + " cut line", piece.cutLine());
                        assertTrue(
                                Check.polygon(piece.cutLine()).buffer(1e-6).covers(Check.polygon(piece.netLine())),
                                which + " cut inside net");
                        for (int i = 0; i < piece.edges().size(); i++) {
                            PieceEdge next =
                                    piece.edges().get((i + 1) % piece.edges().size());
                            assertEquals(
                                    piece.edges().get(i).curve().end(),
                                    next.curve().start(),
                                    which);
                        }
                        for (int i = 0; i < piece.cutCorners().size(); i++) {
                            int corner = piece.cutCorners().get(i);
                            assertTrue(corner >= 0 && corner < piece.cutLine().size(), which);
                            assertTrue(i == 0 || corner > piece.cutCorners().get(i - 1), which);
                        }
                    }
                }));
        assertTrue(drafted[0] > 0.95 * RandomStyles.MANY, "only " + drafted[0] + " styles could be drafted");
    }

    private static void assertSound(String which, List<Point> outline) {
        Polygon polygon = Check.polygon(outline);
        assertTrue(polygon.isValid(), which + " is not valid");
        assertTrue(polygon.getExteriorRing().isSimple(), which + " is not simple");
        assertTrue(Orientation.isCCW(polygon.getExteriorRing().getCoordinates()), which + " runs clockwise");
        double own = Points.of(outline).area();
        double theirs = Area.ofRing(polygon.getExteriorRing().getCoordinates());
        assertEquals(theirs, own, 1e-6 * theirs, which);
        assertEquals(outline.size(), new HashSet<>(outline).size(), which + " meets a point twice");
    }

    @Test
    void foldEdgesLieOnTheFoldAndTheUnfoldedCutLineHasNoNotchThere() {
        PatternOptions options = new PatternOptions(DIFFERENT, CornerKind.MITRED, 2, 4);
        int[] folded = {0};
        RandomStyles.seeds()
                .forEach(seed -> RandomStyles.pieces(seed, options).ifPresent(pieces -> {
                    for (Piece piece : pieces) {
                        boolean hasFold = piece.edges().stream().anyMatch(e -> e.kind() == EdgeKind.FOLD);
                        assertEquals(hasFold, piece.onFold(), "seed " + seed);
                        if (hasFold) {
                            folded[0]++;
                            assertTrue(
                                    piece.cutLine().stream().allMatch(p -> p.x() >= 0 && Double.isFinite(p.y())),
                                    "seed " + seed);
                            Geometry whole = Check.unfolded(piece, piece.cutLine());
                            assertTrue(whole instanceof Polygon p && p.getNumInteriorRing() == 0, "seed " + seed);
                            assertEquals(
                                    2 * Check.polygon(piece.cutLine()).getArea(),
                                    whole.getArea(),
                                    1e-6 * whole.getArea());
                            assertEquals(
                                    2,
                                    piece.cutLine().stream()
                                            .filter(p -> p.x() == 0)
                                            .count(),
                                    "seed " + seed);
                        }
                    }
                }));
        assertTrue(folded[0] > 100);
    }

    /**
     * The mitred parallel at one distance is what JTS calls a buffer with mitred joins. JTS sees chords, and its corners depend on their directions: the seam line is given to it
     * a thousand times finer than the pieces are flattened.
     */
    @Test
    void mitredCutLinesEqualBuffers() {
        double allowance = 10;
        PatternOptions options = new PatternOptions(Allowances.all(allowance), CornerKind.MITRED, 2, allowance);
        BufferParameters mitre =
                new BufferParameters(8, BufferParameters.CAP_FLAT, BufferParameters.JOIN_MITRE, Corner.MITRE_LIMIT);
        mitre.setSimplifyFactor(1e-6);
        RandomStyles.seeds()
                .limit(56)
                .forEach(seed -> RandomStyles.pieces(seed, options).ifPresent(pieces -> {
                    for (Piece piece : pieces) {
                        Geometry net = Check.unfolded(piece, fine(piece));
                        Geometry buffer = BufferOp.bufferOp(net, allowance, mitre);
                        Geometry cut = Check.unfolded(piece, piece.cutLine());
                        if (piece.kind() == PieceKind.UNDER_SLEEVE) {
                            // Below the wrist lies the mirror image of the sleeve above it: see SewingRoomMarksTest.
                            Geometry above = above(piece.edge("wrist"));
                            buffer = buffer.intersection(above);
                            cut = cut.intersection(above);
                        }
                        double off = Check.farthest(cut.getBoundary(), buffer.getBoundary());
                        assertTrue(off < 0.05, "seed " + seed + " " + piece.kind() + " is off by " + off);
                    }
                }));
    }

    private static Geometry above(PieceEdge hem) {
        Point along = hem.curve().end().minus(hem.curve().start()).unit().times(2000);
        Point left = hem.curve().start().minus(along);
        Point right = hem.curve().end().plus(along);
        return Check.polygon(List.of(left, right, right.plus(along.left()), left.plus(along.left())));
    }

    private static List<Point> fine(Piece piece) {
        List<Point> points = new ArrayList<>();
        for (PieceEdge edge : piece.edges()) {
            List<Point> flat = edge.curve().flattened(Piece.FLATTENING / 1000);
            points.addAll(flat.subList(0, flat.size() - 1));
        }
        return points;
    }

    @Test
    void straightEdgesHaveTheirExactAllowance() {
        PatternOptions options = new PatternOptions(DIFFERENT, CornerKind.MITRED, 2, 4);
        int[] tried = {0};
        RandomStyles.seeds()
                .forEach(seed -> RandomStyles.pieces(seed, options).ifPresent(pieces -> {
                    for (Piece piece : pieces) {
                        Geometry cut = Check.polygon(piece.cutLine()).getExteriorRing();
                        for (PieceEdge edge : piece.edges()) {
                            if (edge.kind() != EdgeKind.FOLD
                                    && edge.curve().segments().size() == 1
                                    && edge.curve().segments().get(0).isStraight()
                                    && edge.curve().length() > 120) {
                                Point middle =
                                        edge.curve().pointAtLength(edge.curve().length() / 2);
                                assertEquals(edge.allowance(), cut.distance(Check.point(middle)), 1e-9, "seed " + seed);
                                tried[0]++;
                            }
                        }
                    }
                }));
        assertTrue(tried[0] > 500, "tried " + tried[0]);
    }

    @Test
    void notchesLieOnBothLinesAndPointInward() {
        PatternOptions options = new PatternOptions(DIFFERENT, CornerKind.MITRED, 2, 4);
        RandomStyles.seeds()
                .forEach(seed -> RandomStyles.pieces(seed, options).ifPresent(pieces -> {
                    for (Piece piece : pieces) {
                        Polygon cut = Check.polygon(piece.cutLine());
                        for (Notch notch : piece.notches()) {
                            String which = "seed " + seed + " " + piece.kind() + " " + notch;
                            Curve edge = piece.edge(notch.edge()).curve();
                            assertEquals(0, edge.pointAtLength(notch.distance()).distanceTo(notch.at()), 1e-9, which);
                            assertEquals(1, notch.inward().norm(), 1e-12, which);
                            double off = cut.getExteriorRing().distance(Check.point(notch.onCut()));
                            assertTrue(off < 0.02, which + " is off the cut line by " + off);
                            Point tip = notch.onCut().plus(notch.inward().times(4));
                            assertTrue(
                                    cut.covers(Check.point(tip)) || Math.abs(tip.x()) < 1e-9,
                                    which + " points out of the piece");
                        }
                    }
                }));
    }

    @Test
    void underSleeveNotchesMeetTheEndsOfTheOverlayWithTheEaseCounted() {
        PatternOptions options = PatternOptions.usual();
        RandomStyles.seeds().filter(s -> s % 7 < 4).forEach(seed -> {
            SizeRun run = RandomStyles.run(seed);
            double frontGap = run.baseSize().draft().dimensions().get(Dimension.FRONT_GAP);
            double backGap = run.baseSize().draft().dimensions().get(Dimension.BACK_GAP);
            RandomStyles.pieces(seed, options).ifPresent(pieces -> {
                Piece sleeve = pieces.get(3);
                assertEquals(PieceKind.UNDER_SLEEVE, sleeve.kind());
                double cap = sleeve.edge("cap").curve().length();
                List<Double> ends = sleeve.notches().stream()
                        .filter(n -> n.kind() == NotchKind.OVERLAY_END)
                        .map(Notch::distance)
                        .sorted()
                        .toList();
                BaseSleeve base = run.baseSize().draft().base();
                AttachSpan attached =
                        run.baseSize().draft().overlay().orElseThrow().attached();
                NotchKind behind = sleeve.onFold() ? NotchKind.SINGLE : NotchKind.DOUBLE;
                List<Double> expected = new ArrayList<>(List.of(
                        onCap(backGap, notch(sleeve, behind), base.back().length(), attached.armholeBack())));
                if (!sleeve.onFold()) {
                    expected.add(cap
                            - onCap(
                                    frontGap,
                                    cap - notch(sleeve, NotchKind.SINGLE),
                                    base.front().length(),
                                    attached.armholeFront()));
                    assertEquals(1, count(sleeve, NotchKind.SINGLE));
                    assertEquals(1, count(sleeve, NotchKind.DOUBLE));
                }
                assertEquals(1, count(sleeve, NotchKind.APEX));
                assertEquals(expected.size(), ends.size(), "seed " + seed);
                for (int i = 0; i < ends.size(); i++) {
                    assertEquals(expected.get(i), ends.get(i), 1e-9, "seed " + seed);
                }
                List<Notch> onCap = sleeve.notches().stream()
                        .filter(n -> n.edge().equals("cap"))
                        .toList();
                for (int i = 1; i < onCap.size(); i++) {
                    double apart = onCap.get(i).distance() - onCap.get(i - 1).distance();
                    assertTrue(apart > 5, "seed " + seed + ": notches " + apart + " mm apart");
                }
            });
        });
    }

    private static double notch(Piece piece, NotchKind kind) {
        return piece.notches().stream()
                .filter(n -> n.kind() == kind && n.edge().equals("cap"))
                .findFirst()
                .orElseThrow()
                .distance();
    }

    /** Below the front or back notch cap and armhole are sewn flat; above it the cap holds the ease, evenly. Common practice, no source. */
    private static double onCap(double gap, double notch, double cap, double armhole) {
        return gap <= notch ? gap : notch + (gap - notch) / (armhole - notch) * (cap - notch);
    }

    private static long count(Piece piece, NotchKind kind) {
        return piece.notches().stream().filter(n -> n.kind() == kind).count();
    }

    @Test
    void liningIsSmallerByTheTurnOfClothAtHemAndSidesAndLiesOnTheSameTopEdge() {
        double turn = 3;
        PatternOptions options = new PatternOptions(Allowances.all(10), CornerKind.MITRED, turn, 0);
        int[] seen = {0};
        int[] reduced = {0};
        RandomStyles.seeds()
                .forEach(seed -> RandomStyles.pieces(seed, options)
                        .filter(pieces -> pieces.get(0).kind() == PieceKind.OVERLAY_MAIN)
                        .ifPresent(pieces -> {
                            seen[0]++;
                            Piece main = pieces.get(0);
                            Piece lining = pieces.get(1);
                            Piece interfacing = pieces.get(2);
                            Geometry top =
                                    Check.line(main.edge("top edge").curve().flattened(0.001));
                            for (Point point : lining.edge("top edge").curve().flattened(0.01)) {
                                assertEquals(0, top.distance(Check.point(point)), 0.003, "seed " + seed);
                            }
                            if (main.marks().stream().noneMatch(m -> m.kind() == MarkKind.PLEAT_FOLD)) {
                                reduced[0] += reducedAllAlong(main, lining, turn, "seed " + seed);
                            }
                            assertTrue(
                                    Check.polygon(main.netLine()).buffer(0.02).covers(Check.polygon(lining.netLine())),
                                    "seed " + seed + ": lining shows below the main cloth");
                            String hem = main.onFold() ? "hem" : "back hem";
                            assertEquals(
                                    turn,
                                    lining.edge(hem).curve().start().y()
                                            - main.edge(hem).curve().start().y(),
                                    1e-9);
                            assertEquals(main.netLine(), interfacing.netLine());
                            assertEquals(
                                    0,
                                    DiscreteHausdorffDistance.distance(
                                            Check.polygon(interfacing.cutLine()), Check.polygon(main.netLine())),
                                    0.02,
                                    "seed " + seed + ": interfacing is not cut net");
                        }));
        assertTrue(seen[0] > 200 && reduced[0] > 20, seen[0] + " and " + reduced[0]);
    }

    /**
     * A straight hem that is moved up by t stands t cos a off the hem, a its slope; where it is cut off after four t along a level top edge, its end stands 4 t sin a off. A side stands t off.
     */
    private static int reducedAllAlong(Piece main, Piece lining, double turn, String which) {
        int straight = 0;
        for (PieceEdge edge : main.edges()) {
            Curve lined = lining.edge(edge.name()).curve();
            Geometry line = Check.line(edge.curve().flattened(0.01));
            boolean isStraight = edge.kind() == EdgeKind.HEM
                    && edge.curve().segments().size() == 1
                    && edge.curve().segments().get(0).isStraight();
            if (isStraight) {
                Point way = edge.curve().segments().get(0).tangentAt(0.5);
                double expected = Math.abs(way.y()) > 0.99
                        ? turn
                        : Math.min(turn * Math.abs(way.x()), 4 * turn * Math.abs(way.y()));
                boolean hasSide = main.edges().stream().anyMatch(e -> e.name().endsWith("side"));
                double least = hasSide && Math.abs(way.y()) <= 0.99 ? turn * Math.abs(way.x()) : expected;
                for (double share : new double[] {0, 0.25, 0.5, 0.75, 1}) {
                    Point point = lined.pointAtLength(share * lined.length());
                    assertTrue(
                            line.distance(Check.point(point)) > 0.85 * least - 1e-9,
                            which + " " + edge.name() + " at " + share + ": " + line.distance(Check.point(point))
                                    + " of " + least);
                }
                straight++;
            }
        }
        return straight;
    }

    @Test
    void unequalHalvesAreDrawnWholeWithTheFrontAtTheLeft() {
        PatternOptions options = PatternOptions.usual();
        int[] unequal = {0};
        RandomStyles.seeds().filter(s -> s % 7 < 4).forEach(seed -> {
            StyleSpace.Case drawn = StyleSpace.of(seed);
            if (!drawn.dimensions().has(Dimension.FRONT_WIDTH)) {
                return;
            }
            RandomStyles.pieces(seed, options).ifPresent(pieces -> {
                unequal[0]++;
                Piece sleeve = pieces.get(3);
                assertEquals("cut 2 (1 pair, mirrored)", sleeve.cut().words().toString());
                double left =
                        sleeve.netLine().stream().mapToDouble(Point::x).min().orElseThrow();
                assertTrue(left <= -drawn.dimensions().get(Dimension.FRONT_WIDTH) + 1e-9, "seed " + seed);
            });
        });
        assertTrue(unequal[0] > 25);
    }

    @Test
    void allowanceWiderThanTheNeckIsRefusedWithTheGreatestThatWorks() {
        int refused = 0;
        for (long seed = 0; seed < 60; seed++) {
            long s = seed;
            Optional<Violation> violation = violation(s, 100);
            if (violation.isEmpty()) {
                continue;
            }
            refused++;
            assertEquals(Option.SEAM_ALLOWANCE, violation.get().subject());
            assertEquals(100, violation.get().value().orElseThrow(), 1e-9);
            double works = violation.get().greatest().orElseThrow();
            assertTrue(violation(s, works).isEmpty(), "seed " + s + ": " + works + " mm does not work");
            assertTrue(violation(s, works + 0.2).isPresent(), "seed " + s + ": more than " + works + " mm works");
        }
        assertTrue(refused > 3, "refused " + refused);
    }

    /** A narrow base sleeve is the piece with the narrowest neck: its cap height. */
    private static Optional<Violation> violation(long seed, double allowance) {
        try {
            PatternDrafter.draft(
                    RandomStyles.TITLE,
                    RandomStyles.run(seed * 7 + 6),
                    new PatternOptions(Allowances.all(allowance), CornerKind.MITRED, 0, 0));
            return Optional.empty();
        } catch (InvalidMeasuresException e) {
            return Optional.of(e.violations().get(0));
        }
    }

    @Test
    void optionsOutOfRangeAreNamed() {
        PatternOptions bad = new PatternOptions(new Allowances(-1, 10, Double.NaN, 10), CornerKind.MITRED, 30, 200);
        InvalidMeasuresException thrown = assertThrows(
                InvalidMeasuresException.class,
                () -> PatternDrafter.draft(RandomStyles.TITLE, RandomStyles.run(1), bad));
        assertEquals(
                List.of(Option.SEAM_ALLOWANCE, Option.SEAM_ALLOWANCE, Option.TURN_OF_CLOTH, Option.INTERFACING_OVERLAP),
                thrown.violations().stream().map(Violation::subject).toList());
    }

    @Test
    void grainIsParallelToTheFoldAndInside() {
        Set<MarkKind> seen = new HashSet<>();
        RandomStyles.seeds()
                .limit(200)
                .forEach(seed -> RandomStyles.pieces(seed, PatternOptions.usual())
                        .ifPresent(pieces -> {
                            for (Piece piece : pieces) {
                                Polygon net = Check.polygon(piece.netLine());
                                assertEquals(
                                        1,
                                        piece.marks().stream()
                                                .filter(m -> m.kind() == MarkKind.GRAIN)
                                                .count());
                                assertEquals(
                                        piece.marks().size(),
                                        piece.marks().stream()
                                                .map(MarkLine::name)
                                                .distinct()
                                                .count());
                                for (MarkLine mark : piece.marks()) {
                                    seen.add(mark.kind());
                                    Geometry line = Check.line(mark.line().flattened(0.01));
                                    assertTrue(net.buffer(0.02).covers(line), "seed " + seed + " " + mark.name());
                                    if (mark.kind() == MarkKind.GRAIN) {
                                        assertEquals(
                                                mark.line().start().x(),
                                                mark.line().end().x());
                                        assertTrue(net.covers(line), "seed " + seed);
                                        assertTrue(line.getLength() > 20, "seed " + seed);
                                    }
                                }
                            }
                        }));
        assertTrue(seen.containsAll(Set.of(MarkKind.BICEP_LINE, MarkKind.ELBOW_LINE, MarkKind.FOLD_LINE)));
    }

    @Test
    void symmetryOfTheUnfoldedPieceIsExact() {
        RandomStyles.pieces(0, PatternOptions.usual()).orElseThrow().stream()
                .filter(Piece::onFold)
                .forEach(piece -> {
                    Geometry whole = Check.unfolded(piece, piece.cutLine());
                    Geometry mirrored =
                            AffineTransformation.scaleInstance(-1, 1).transform(whole);
                    assertEquals(0, whole.symDifference(mirrored).getArea(), 1e-6);
                });
    }

    /** The short way to a refusal and the long one agree, on runs over the whole space that the interface takes. */
    @Test
    void whatIsWrongIsFoundWithoutDraftingPieces() {
        int refused = 0;
        int drafted = 0;
        for (long seed = 600; seed < 660; seed++) {
            RandomRuns.Case drawn = RandomRuns.of(seed);
            SizeRun run;
            try {
                run = SizeRun.grade(drawn.style(), drawn.base(), drawn.labels(), drawn.at(), drawn.rules());
            } catch (InvalidMeasuresException e) {
                continue;
            }
            List<Violation> expected = List.of();
            try {
                PatternDrafter.draft(RandomStyles.TITLE, run, drawn.options());
                drafted++;
            } catch (InvalidMeasuresException e) {
                expected = e.violations();
                refused++;
            }
            assertEquals(expected, PatternDrafter.wrong(run, drawn.options()), "seed " + seed);
            assertEquals(expected.isEmpty(), PatternDrafter.canDraft(run, drawn.options()), "seed " + seed);
        }
        assertTrue(refused > 1 && drafted > 3, refused + " refused, " + drafted + " drafted");
    }
}
