package org.capwright.exchange.dxf;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.capwright.Sample;
import org.capwright.exchange.TestPatterns;
import org.capwright.geometry.Curve;
import org.capwright.geometry.Point;
import org.capwright.pattern.MarkKind;
import org.capwright.pattern.MarkLine;
import org.capwright.pattern.PatternSet;
import org.capwright.pattern.Piece;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.operation.distance.IndexedFacetDistance;

/**
 * Applies the rules of the file to the base size as ezdxf reads it from the drawing, by the numbers that stand at the points, and compares every size with its piece:
 * both ways between the corners of one outline and the other outline (JTS distances). The cut line is compared with the piece's cut line, the net line with the net
 * line flattened to 0.0005 mm.
 */
class RuleTableTest {

    private static final int STYLES = Sample.of(8, 20);
    private static final double BACK = 0.01;
    private static final GeometryFactory PLANE = new GeometryFactory();

    @TempDir
    Path folder;

    /** A rule table read from its text alone. */
    private record Table(List<String> sizes, String sample, Map<Integer, List<Point>> rules) {

        static Table read(byte[] file) {
            List<String> sizes = List.of();
            String sample = "";
            Map<Integer, List<Point>> rules = new HashMap<>();
            List<Point> open = new ArrayList<>();
            boolean ended = false;
            for (String line : new String(file, StandardCharsets.US_ASCII).split("\r\n")) {
                if (line.startsWith("SIZE LIST: ")) {
                    sizes = List.of(line.substring(11).split(" "));
                } else if (line.startsWith("SAMPLE SIZE: ")) {
                    sample = line.substring(13);
                } else if (line.startsWith("RULE: DELTA ")) {
                    open = new ArrayList<>();
                    rules.put(Integer.parseInt(line.substring(12)), open);
                } else if (line.matches("-?[0-9.]+,-?[0-9.]+")) {
                    String[] pair = line.split(",");
                    open.add(new Point(Double.parseDouble(pair[0]), Double.parseDouble(pair[1])));
                }
                ended = line.equals("END");
            }
            assertTrue(ended);
            return new Table(sizes, sample, rules);
        }
    }

    /** The rule at a place. Readers match by coordinates: what lies at one place must move alike, to the rounding of the rules. */
    private static int rule(List<EzdxfReader.Words> numbers, Table table, Point at) {
        int found = 0;
        for (EzdxfReader.Words number : numbers) {
            if (number.at().distanceTo(at) < 1e-6) {
                int other = Integer.parseInt(number.text().substring(2));
                for (int size = 0; found > 0 && size < table.sizes.size(); size++) {
                    Point apart = table.rules
                            .get(found)
                            .get(size)
                            .minus(table.rules.get(other).get(size));
                    assertEquals(0, apart.norm(), 3e-4, "rules " + found + " and " + other + " at " + at);
                }
                found = other;
            }
        }
        assertTrue(found > 0, () -> "no rule at " + at);
        return found;
    }

    private static void assertEverySizeComesBack(
            PatternSet set, EzdxfReader.Drawing drawing, byte[] rules, String what) {
        Table table = Table.read(rules);
        assertEquals(set.sizes().size(), table.sizes.size());
        int sample = table.sizes.indexOf(table.sample);
        assertEquals(set.run().base(), sample);
        table.rules.forEach((number, deltas) -> {
            assertEquals(table.sizes.size(), deltas.size(), what + " rule " + number);
            assertEquals(Point.ORIGIN, deltas.get(sample), what + " rule " + number);
        });
        int kinds = set.sizes().get(0).size();
        for (int kind = 0; kind < kinds; kind++) {
            Piece base = set.sizes().get(sample).get(kind);
            String block = (base.kind().id() + "-" + base.size()).toUpperCase(java.util.Locale.ROOT);
            List<EzdxfReader.Words> numbers = drawing.words().stream()
                    .filter(w -> w.block().equals(block) && w.text().startsWith("# "))
                    .toList();
            for (EzdxfReader.Line line : drawing.lines()) {
                if (line.block().equals(block)
                        && (line.layer().equals("1") || line.layer().equals("14"))) {
                    List<Integer> byPoint = new ArrayList<>();
                    for (Point point : line.points()) {
                        byPoint.add(rule(numbers, table, point));
                    }
                    for (int size = 0; size < table.sizes.size(); size++) {
                        List<Point> graded = new ArrayList<>();
                        for (int i = 0; i < byPoint.size(); i++) {
                            graded.add(line.points()
                                    .get(i)
                                    .plus(table.rules.get(byPoint.get(i)).get(size)));
                        }
                        Piece piece = set.sizes().get(size).get(kind);
                        List<Point> expected = line.layer().equals("1") ? piece.cutLine() : net(piece);
                        assertNear(expected, graded, what + " " + block + " layer " + line.layer() + " size " + size);
                    }
                }
            }
            if (hasSameNotchesInEverySize(set, kind)) {
                assertNotches(set, kind, drawing, block, numbers, table, what);
            }
        }
    }

    private static List<Point> net(Piece piece) {
        List<Point> points = new ArrayList<>();
        piece.edges().forEach(edge -> {
            List<Point> flat = edge.curve().flattened(0.0005);
            points.addAll(flat.subList(0, flat.size() - 1));
        });
        return points;
    }

    private static Geometry ring(List<Point> points) {
        Coordinate[] ring = new Coordinate[points.size() + 1];
        for (int i = 0; i < ring.length; i++) {
            Point point = points.get(i % points.size());
            ring[i] = new Coordinate(point.x(), point.y());
        }
        return PLANE.createLineString(ring);
    }

    private static void assertNear(List<Point> expected, List<Point> actual, String what) {
        assertTrue(farthest(expected, ring(actual)) < BACK, () -> what + ": " + farthest(expected, ring(actual)));
        assertTrue(farthest(actual, ring(expected)) < BACK, () -> what + ": " + farthest(actual, ring(expected)));
    }

    private static double farthest(List<Point> points, Geometry from) {
        IndexedFacetDistance near = new IndexedFacetDistance(from);
        double farthest = 0;
        for (Point point : points) {
            farthest = Math.max(farthest, near.distance(PLANE.createPoint(new Coordinate(point.x(), point.y()))));
        }
        return farthest;
    }

    /** Notches lie on the cut line where the piece says. */
    private static void assertNotches(
            PatternSet set,
            int kind,
            EzdxfReader.Drawing drawing,
            String block,
            List<EzdxfReader.Words> numbers,
            Table table,
            String what) {
        List<Point> dots = drawing.dots().stream()
                .filter(d -> d.block().equals(block) && d.layer().equals("4"))
                .map(EzdxfReader.Dot::at)
                .toList();
        for (int size = 0; size < table.sizes.size(); size++) {
            int next = 0;
            for (var notch : set.sizes().get(size).get(kind).notches()) {
                Point first = moved(dots.get(next), numbers, table, size);
                switch (notch.kind()) {
                    case DOUBLE -> {
                        Point second = moved(dots.get(next + 1), numbers, table, size);
                        // Three millimetres to either side along the cut line, on a bend a little less straight across.
                        assertEquals(Snips.APART / 2, first.distanceTo(notch.onCut()), 0.2, what);
                        assertEquals(Snips.APART / 2, second.distanceTo(notch.onCut()), 0.2, what);
                        Geometry cut = ring(set.sizes().get(size).get(kind).cutLine());
                        assertTrue(farthest(List.of(first, second), cut) < BACK, what);
                        assertTrue(first.distanceTo(second) > Snips.APART - 1, what);
                        next += 2;
                    }
                    case SINGLE, APEX, OVERLAY_END, BALANCE, CLIP, PLEAT -> {
                        assertEquals(0, first.distanceTo(notch.onCut()), 0.02, what + " " + notch);
                        next++;
                    }
                    case BACK_ONLY -> {} // a reader would unfold it to both sides
                }
            }
            assertEquals(dots.size(), next);
        }
    }

    private static Point moved(Point at, List<EzdxfReader.Words> numbers, Table table, int size) {
        return at.plus(table.rules.get(rule(numbers, table, at)).get(size));
    }

    @Test
    void rulesGiveEverySizeOfTheChoirGownBack() throws IOException {
        PatternSet set = TestPatterns.choirGown();
        byte[] bytes = DxfExport.graded(set);
        assertEquals(List.of(), R12Rules.broken(bytes));
        assertEverySizeComesBack(
                set, EzdxfReader.points(bytes, folder), RuleTable.of(set).bytes(), "choir gown");
    }

    @Test
    void rulesGiveEverySizeOfRandomStylesBack() throws IOException {
        List<Path> files = new ArrayList<>();
        List<PatternSet> sets = new ArrayList<>();
        List<byte[]> rules = new ArrayList<>();
        List<Integer> seeds = new ArrayList<>();
        for (int seed = 1000; seeds.size() < STYLES; seed++) {
            PatternSet set = TestPatterns.random(seed, 3);
            PointGrading grading = PointGrading.of(set);
            byte[] drawing = grading.drawing();
            assertEquals(List.of(), R12Rules.broken(drawing), "seed " + seed);
            Path file = folder.resolve("graded-" + seed + ".dxf");
            Files.write(file, drawing);
            files.add(file);
            sets.add(set);
            rules.add(grading.rules().bytes());
            seeds.add(seed);
        }
        List<EzdxfReader.Drawing> drawings = EzdxfReader.points(files);
        for (int i = 0; i < files.size(); i++) {
            assertEquals(List.of(), drawings.get(i).errors());
            assertEverySizeComesBack(sets.get(i), drawings.get(i), rules.get(i), "seed " + seeds.get(i));
        }
    }

    /** A snip that would fall on another one in a size is missing there. */
    private static boolean hasSameNotchesInEverySize(PatternSet set, int kind) {
        return set.acrossSizes(kind).stream()
                        .map(piece -> piece.notches().stream()
                                .map(notch -> notch.kind() + notch.edge())
                                .toList())
                        .distinct()
                        .count()
                == 1;
    }

    @Test
    void marksThatAreNotInEverySizeAreLeftOutAndTold() {
        PatternSet set = TestPatterns.choirGown();
        List<List<Piece>> sizes = new ArrayList<>(set.sizes());
        List<Piece> largest = new ArrayList<>(sizes.get(5));
        Piece piece = largest.get(0);
        List<MarkLine> marks = new ArrayList<>(piece.marks());
        marks.add(new MarkLine(MarkKind.PLEAT_FOLD, "pleat 9 fold", Curve.line(new Point(10, 100), new Point(10, 60))));
        largest.set(
                0,
                new Piece(
                        piece.kind(),
                        piece.size(),
                        piece.edges(),
                        piece.cutLine(),
                        piece.cutCorners(),
                        piece.notches(),
                        marks,
                        piece.cut(),
                        piece.label()));
        sizes.set(5, largest);
        String drawing = new String(
                PointGrading.of(new PatternSet(set.title(), set.run(), sizes)).drawing(), StandardCharsets.ISO_8859_1);
        assertTrue(drawing.contains("not in every size, not graded: overlay-main: PLEAT_FOLD pleat 9 fold"));
        assertTrue(!drawing.contains("not graded: overlay-lining"));
    }
}
