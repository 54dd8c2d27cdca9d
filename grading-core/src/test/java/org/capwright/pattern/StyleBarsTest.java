package org.capwright.pattern;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.Supplier;
import org.capwright.Sample;
import org.capwright.draft.Overlay;
import org.capwright.geometry.Point;
import org.capwright.quantity.InvalidMeasuresException;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.algorithm.Orientation;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.operation.distance.IndexedFacetDistance;

/**
 * What every piece of every style has to be, held by JTS and by reflections, over the whole space that the interface takes. {@code -Dstyles=20000} tries as many styles, {@code
 * -Dfrom=20000} others. A failure names its seed; all of them are told at the end.
 */
class StyleBarsTest {

    /** Layers of a folded pleat may miss the seam by this much, mm; flattening alone makes some thousandths. */
    private static final double CAUGHT = 0.05;

    /** How far a size put together by the rules may be off, mm. */
    private static final double BACK = 0.01;

    /** Chords of both lines keep within 0.01 mm of theirs. */
    private static final double FLAT = 0.03;

    /** Edges are equally near to a place within this, mm: lines that leave a tip in one direction cross by less. */
    private static final double TIED = 5e-3;

    /** A corner sharper than this is a needle, degrees; that of a squared mitre is never below 90. */
    private static final double NEEDLE = 8;

    private final List<String> faults = new ArrayList<>();
    private final Map<String, Integer> reasons = new TreeMap<>();
    private int drafted;
    private int pieces;
    private int folded;
    private int refused;
    private int ruled;

    @Test
    void everyPieceOfEveryStyleCanBeCutFoldedAndGraded() {
        int styles = Integer.getInteger("styles", Sample.of(40, 600));
        long from = Long.getLong("from", 0);
        for (long seed = from; seed < from + styles; seed++) {
            tryStyle(seed);
        }
        String figures = styles + " styles from " + from + ": " + drafted + " drafted with " + pieces + " pieces, "
                + folded + " overlays folded, " + ruled + " rule tables, " + refused + " refused " + reasons;
        System.out.println(figures);
        assertEquals(List.of(), faults, figures);
        assertTrue(drafted > styles / 4, figures);
    }

    /** An allowance of 58 mm beside a side of a few: a needle of 5 degrees before it was made broad. */
    @Test
    void wideAllowancesLeaveNoNeedles() {
        tryStyle(8606);
        assertEquals(1, drafted);
        assertEquals(List.of(), faults);
    }

    /**
     * Interfacing without an allowance whose point is less than 0.1 mm thick over some millimetres; a cut line that passes through a corner of the seam line in the base size alone; a slit of 7 degrees with an
     * allowance of 0.07 mm; lines that leave a tip in one direction and cross by a hair; a top edge that
     * meets the fold square but for a hair.
     */
    @Test
    void thinTipsStaySlitsEndSquareAndPointsAtOnePlaceGiveWay() {
        for (long seed : new long[] {503910, 540318, 500496, 300219, 541861, 545728}) {
            tryStyle(seed);
        }
        assertEquals(6, drafted);
        assertEquals(List.of(), faults);
    }

    /** Sides of exactly 0 in the smallest size, seen from the smallest, a middle and the largest size, with every kind of corner. */
    @Test
    void sidesThatGrowFromNothingAreGradedByRules() {
        for (long seed : new long[] {29, 175, 377, 412}) {
            PatternSet set = RandomRuns.of(seed).drafted();
            assertEquals(
                    2,
                    set.acrossSizes(0).stream()
                            .map(piece -> piece.edges().size())
                            .distinct()
                            .count(),
                    "seed " + seed);
            tryStyle(seed);
        }
        assertEquals(List.of(), faults);
    }

    private void tryStyle(long seed) {
        PatternSet set;
        RandomRuns.Case drawn = RandomRuns.of(seed);
        try {
            set = drawn.drafted();
        } catch (InvalidMeasuresException e) {
            refused++;
            reasons.merge(e.violations().get(0).subject().code(), 1, Integer::sum);
            return;
        } catch (RuntimeException | AssertionError e) {
            faults.add("\nseed " + seed + ": " + e + " at " + e.getStackTrace()[0]);
            return;
        }
        drafted++;
        for (int size = 0; size < set.sizes().size(); size++) {
            for (Piece piece : set.sizes().get(size)) {
                pieces++;
                String which = "seed " + seed + " " + piece.kind() + " size " + piece.size();
                try {
                    outlines(which, piece, drawn.options());
                    if (piece.kind() == PieceKind.OVERLAY_MAIN) {
                        pleats(
                                which,
                                piece,
                                set.run().sizes().get(size).draft().overlay().orElseThrow());
                    }
                } catch (RuntimeException | AssertionError e) {
                    faults.add("\n" + which + ": " + e + " at " + e.getStackTrace()[0]);
                }
            }
        }
        try {
            ruled++;
            double worst = RulesRead.worst(set);
            held(worst < BACK, "seed " + seed, () -> "rules off by " + worst);
        } catch (RuntimeException | AssertionError e) {
            faults.add("\nseed " + seed + ": rules: " + e + " at " + e.getStackTrace()[0]);
        }
    }

    private void held(boolean holds, String which, Supplier<String> what) {
        if (!holds) {
            faults.add("\n" + which + ": " + what.get());
        }
    }

    private void pleats(String which, Piece piece, Overlay overlay) {
        if (overlay.trued().isEmpty()) {
            return;
        }
        folded++;
        PaperFold paper = PaperFold.of(piece);
        held(paper.worst() < CAUGHT, which, () -> "a layer misses the seam by " + paper.worst());
        double span = overlay.attachSpan();
        held(Math.abs(paper.seamLength() - span) < 0.01, which, () -> "folded " + paper.seamLength() + ", not " + span);
    }

    private void outlines(String which, Piece piece, PatternOptions options) {
        Polygon cut = Check.polygon(piece.cutLine());
        Polygon net = Check.polygon(piece.netLine());
        sound(which + " net line", net, piece.netLine());
        sound(which + " cut line", cut, piece.cutLine());
        held(cut.buffer(Piece.FLATTENING).covers(net), which, () -> "cut inside the net line");
        if (piece.onFold()) {
            held(piece.cutLine().stream().allMatch(p -> p.x() >= 0), which, () -> "crosses its fold");
        }
        needles(which, piece);
        allowances(which, piece, options.corners());
    }

    private void sound(String which, Polygon polygon, List<Point> points) {
        held(polygon.isValid() && polygon.getExteriorRing().isSimple(), which, () -> "not simple");
        held(Orientation.isCCW(polygon.getExteriorRing().getCoordinates()), which, () -> "clockwise");
        for (int i = 0; i < points.size(); i++) {
            Point next = points.get((i + 1) % points.size());
            if (points.get(i).distanceTo(next) < 1e-3) {
                held(false, which, () -> "meets " + next + " twice");
            }
        }
    }

    private void needles(String which, Piece piece) {
        List<Point> line = piece.cutLine();
        int n = line.size();
        for (int i = 0; i < n; i++) {
            Point at = line.get(i);
            Point in = line.get((i + n - 1) % n).minus(at).unit();
            Point out = line.get((i + 1) % n).minus(at).unit();
            double degrees = Math.toDegrees(Math.acos(Math.max(-1, Math.min(1, in.dot(out)))));
            held(degrees > NEEDLE || onNet(piece, at), which, () -> "needle of " + degrees + " degrees at " + at);
        }
    }

    /** What is cut net has the corners of the net line. */
    private static boolean onNet(Piece piece, Point at) {
        return piece.netLine().stream().anyMatch(point -> point.distanceTo(at) < 1e-3);
    }

    /** No point of the cut line, nor the middle of any chord, lies nearer to an edge than the allowance of the nearest one, bevelled corners than half of it, and none further than the corners of a mitre that is squared at two allowances. */
    private void allowances(String which, Piece piece, CornerKind corners) {
        List<PieceEdge> edges = piece.edges().stream()
                .filter(edge -> edge.kind() != EdgeKind.FOLD)
                .toList();
        List<Geometry> lines = edges.stream()
                .map(edge -> Check.line(edge.curve().flattened(0.001)))
                .toList();
        List<IndexedFacetDistance> near =
                lines.stream().map(IndexedFacetDistance::new).toList();
        List<Envelope> boxes = lines.stream().map(Geometry::getEnvelopeInternal).toList();
        double widest = edges.stream().mapToDouble(PieceEdge::allowance).max().orElse(0);
        List<Point> line = piece.cutLine();
        for (int i = 0; i < line.size(); i++) {
            Point next = line.get((i + 1) % line.size());
            for (Point point : List.of(line.get(i), line.get(i).towards(next, 0.5))) {
                if (piece.onFold() && point.x() < 1e-6 || belowTheWrist(piece, point)) {
                    continue;
                }
                Coordinate place = new Coordinate(point.x(), point.y());
                double nearest = Double.POSITIVE_INFINITY;
                double allowed = 0;
                for (int k = 0; k < edges.size(); k++) {
                    if (boxes.get(k).distance(new Envelope(place)) > nearest + TIED) {
                        continue;
                    }
                    double distance = near.get(k).distance(Check.point(point));
                    if (distance < nearest - TIED) {
                        nearest = distance;
                        allowed = edges.get(k).allowance();
                    } else if (distance < nearest + TIED) {
                        allowed = Math.min(allowed, edges.get(k).allowance());
                    }
                }
                double away = nearest;
                double least = corners == CornerKind.BEVELLED ? allowed / 2 : allowed;
                held(away > least - FLAT, which, () -> "only " + away + " of " + least + " at " + point);
                held(away < Math.sqrt(5) * widest + FLAT, which, () -> away + " out at " + point + " of " + widest);
            }
        }
    }

    /** There the allowance is the mirror image of the sleeve above: see SewingRoomMarksTest. */
    private static boolean belowTheWrist(Piece piece, Point point) {
        if (piece.kind() != PieceKind.UNDER_SLEEVE) {
            return false;
        }
        Point start = piece.edge("wrist").curve().start();
        Point along = piece.edge("wrist").curve().end().minus(start).unit();
        return along.cross(point.minus(start)) < 1e-6;
    }
}
