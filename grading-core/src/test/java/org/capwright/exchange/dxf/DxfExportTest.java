package org.capwright.exchange.dxf;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.capwright.Sample;
import org.capwright.exchange.TestPatterns;
import org.capwright.geometry.Point;
import org.capwright.grade.Alignment;
import org.capwright.pattern.NotchKind;
import org.capwright.pattern.PatternSet;
import org.capwright.pattern.Piece;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.Polygon;

/** Drawings read back by ezdxf and measured against JTS's polygons of the pieces. */
class DxfExportTest {

    private static final int STYLES = Sample.of(48, 500);
    private static final GeometryFactory PLANE = new GeometryFactory();

    /** ezdxf 0.18.1 notes fix 202 for the SEQEND of every polyline in a block, without a change to the drawing; any other fix is a fault of ours. */
    private static final String HARMLESS_FIX = "202 ";

    @TempDir
    Path folder;

    static Polygon polygon(List<Point> points) {
        Coordinate[] ring = new Coordinate[points.size() + 1];
        for (int i = 0; i <= points.size(); i++) {
            Point point = points.get(i % points.size());
            ring[i] = new Coordinate(point.x(), point.y());
        }
        return PLANE.createPolygon(ring);
    }

    private static void assertClean(EzdxfReader.Drawing drawing) {
        assertEquals("AC1009", drawing.version(), drawing.file() + drawing.errors());
        assertEquals(List.of(), drawing.errors(), drawing.file());
        List<String> fixes = drawing.fixes().stream()
                .filter(fix -> !fix.startsWith(HARMLESS_FIX))
                .toList();
        assertEquals(List.of(), fixes, drawing.file());
    }

    private static void assertMeasures(List<Point> expected, EzdxfReader.Line line, String what) {
        Polygon polygon = polygon(expected);
        assertTrue(polygon.isValid(), what);
        assertEquals(1, line.closed(), what);
        assertEquals(expected.size(), line.count(), what);
        // Positive: counter-clockwise.
        assertEquals(polygon.getArea(), line.area(), 1e-6 * polygon.getArea(), what);
        Envelope box = polygon.getEnvelopeInternal();
        double width = line.box()[2] - line.box()[0];
        double height = line.box()[3] - line.box()[1];
        assertEquals(box.getWidth(), width, 1e-6 * box.getWidth(), what);
        assertEquals(box.getHeight(), height, 1e-6 * box.getHeight(), what);
    }

    private static void assertBlocks(PatternSet set, EzdxfReader.Drawing drawing) {
        assertClean(drawing);
        List<EzdxfReader.Line> cuts =
                drawing.lines().stream().filter(l -> l.layer().equals("1")).toList();
        List<EzdxfReader.Line> nets =
                drawing.lines().stream().filter(l -> l.layer().equals("14")).toList();
        int next = 0;
        for (List<Piece> pieces : set.sizes()) {
            for (Piece piece : pieces) {
                String what = drawing.file() + " " + piece.kind() + " " + piece.size();
                assertMeasures(piece.cutLine(), cuts.get(next), what);
                Envelope box = polygon(piece.cutLine()).getEnvelopeInternal();
                double[] sides = {box.getMinX(), box.getMinY(), box.getMaxX(), box.getMaxY()};
                assertArrayEquals(sides, cuts.get(next).box(), 1e-6, what);
                assertMeasures(piece.netLine(), nets.get(next), what);
                assertTrue(cuts.get(next).block().endsWith("-" + piece.size()), what);
                next++;
            }
        }
        assertEquals(next, cuts.size());
        assertEquals(next, nets.size());
        assertEquals(next, drawing.inserts().size());
    }

    /** Blocks and nests in turn, of one size each: the reader takes a tenth of a second for every drawing. */
    @Test
    void randomStylesAreReadWithoutFault() throws IOException {
        List<Path> files = new ArrayList<>();
        List<PatternSet> sets = new ArrayList<>();
        for (int seed = 0; seed < STYLES; seed++) {
            PatternSet set = TestPatterns.random(seed, 1);
            byte[] drawing = isNest(seed) ? DxfExport.nest(set, Alignment.UNDERARM) : DxfExport.blocks(set);
            assertEquals(List.of(), R12Rules.broken(drawing), "seed " + seed);
            Path file = folder.resolve("style-" + seed + ".dxf");
            Files.write(file, drawing);
            files.add(file);
            sets.add(set);
        }
        List<EzdxfReader.Drawing> drawings = EzdxfReader.measure(files);
        assertEquals(STYLES, drawings.size());
        for (int seed = 0; seed < STYLES; seed++) {
            if (isNest(seed)) {
                assertNest(sets.get(seed), drawings.get(seed));
            } else {
                assertBlocks(sets.get(seed), drawings.get(seed));
            }
        }
    }

    private static boolean isNest(int seed) {
        return seed / 4 % 2 == 1;
    }

    private static void assertNest(PatternSet set, EzdxfReader.Drawing drawing) {
        assertClean(drawing);
        for (String layer : List.of("CUT-36", "NET-36")) {
            List<EzdxfReader.Line> lines = drawing.lines().stream()
                    .filter(l -> l.layer().equals(layer))
                    .toList();
            List<Piece> pieces = set.sizes().get(0);
            assertEquals(pieces.size(), lines.size(), drawing.file());
            for (int kind = 0; kind < pieces.size(); kind++) {
                Piece piece = pieces.get(kind);
                List<Point> outline = layer.equals("CUT-36") ? piece.cutLine() : piece.netLine();
                assertMeasures(outline, lines.get(kind), drawing.file() + " " + piece.kind());
            }
        }
    }

    @Test
    void blocksOfAllSizesFollowTheLayers() throws IOException {
        PatternSet set = TestPatterns.choirGown();
        EzdxfReader.Drawing drawing = EzdxfReader.points(DxfExport.blocks(set), folder);
        assertBlocks(set, drawing);
        Piece overlay = set.sizes().get(0).get(0);
        List<Point> turns = on(drawing, "OVERLAY-MAIN-36", "2");
        List<Point> curves = on(drawing, "OVERLAY-MAIN-36", "3");
        assertEquals(overlay.cutCorners().size(), turns.size());
        assertEquals(overlay.cutLine().size() - turns.size(), curves.size());
        for (int i = 0; i < turns.size(); i++) {
            Point corner = overlay.cutLine().get(overlay.cutCorners().get(i));
            assertEquals(0, corner.distanceTo(turns.get(i)), 1e-6);
        }
        long snips = overlay.notches().stream()
                .mapToLong(n -> n.kind() == NotchKind.DOUBLE ? 2 : 1)
                .sum();
        assertEquals(snips, on(drawing, "OVERLAY-MAIN-36", "4").size());
    }

    private static List<Point> on(EzdxfReader.Drawing drawing, String block, String layer) {
        return drawing.dots().stream()
                .filter(d -> d.block().equals(block) && d.layer().equals(layer))
                .map(EzdxfReader.Dot::at)
                .toList();
    }

    @Test
    void blocksSayWhatTheyAre() throws IOException {
        EzdxfReader.Drawing drawing = EzdxfReader.points(DxfExport.blocks(TestPatterns.choirGown()), folder);
        Set<String> style = drawing.words().stream()
                .filter(w -> w.block().equals("*"))
                .map(EzdxfReader.Words::text)
                .collect(Collectors.toSet());
        assertTrue(
                style.containsAll(Set.of("STYLE NAME: Choir gown", "REVISION: 3", "SAMPLE SIZE: 40", "UNITS: METRIC")),
                style.toString());
        Set<String> piece = drawing.words().stream()
                .filter(w -> w.block().equals("UNDER-SLEEVE-44") && w.layer().equals("1"))
                .map(EzdxfReader.Words::text)
                .collect(Collectors.toSet());
        assertTrue(
                piece.containsAll(Set.of(
                        "PIECE NAME: Under-sleeve",
                        "SIZE: 44",
                        "QUANTITY: 2",
                        "MATERIAL: MAIN",
                        "ANNOTATION: cut 2 on the fold")),
                piece.toString());
    }

    @ParameterizedTest
    @EnumSource
    void nestLaysEverySizeOnItsAlignmentPoint(Alignment alignment) throws IOException {
        PatternSet set = TestPatterns.choirGown();
        byte[] bytes = DxfExport.nest(set, alignment);
        assertEquals(List.of(), R12Rules.broken(bytes));
        EzdxfReader.Drawing drawing = EzdxfReader.points(bytes, folder);
        assertClean(drawing);
        int kinds = set.sizes().get(0).size();
        int base = set.run().base();
        for (int kind = 0; kind < kinds; kind++) {
            Point home = null;
            for (int size = 0; size < set.sizes().size(); size++) {
                int from = size;
                Piece piece = set.sizes().get(size).get(kind);
                EzdxfReader.Line line = drawing.lines().stream()
                        .filter(l -> l.layer()
                                .equals("CUT-" + set.sizes().get(from).get(0).size()))
                        .toList()
                        .get(kind);
                Polygon polygon = polygon(piece.cutLine());
                assertEquals(polygon.getArea(), line.area(), 1e-6 * polygon.getArea());
                Point moved = line.points().get(0).minus(piece.cutLine().get(0));
                Point point = alignment.of(set.run().sizes().get(size).draft()).plus(moved);
                home = home == null ? point : home;
                assertEquals(0, home.distanceTo(point), 3e-6, "size " + size + ", base " + base);
            }
        }
        for (Piece piece : set.acrossSizes(0)) {
            assertEquals(
                    kinds,
                    drawing.words().stream()
                            .filter(w -> w.text().equals("size " + piece.size())
                                    && w.layer().equals("CUT-" + piece.size()))
                            .count());
        }
    }

    @Test
    void extentsAreThoseOfTheOutlinesAndTextsReadBack() throws IOException {
        EzdxfReader.Drawing nest =
                EzdxfReader.points(DxfExport.nest(TestPatterns.choirGown(), Alignment.UNDERARM), folder);
        double left = nest.lines().stream().mapToDouble(l -> l.box()[0]).min().orElseThrow();
        double top = nest.lines().stream().mapToDouble(l -> l.box()[3]).max().orElseThrow();
        double bottom = nest.words().stream().mapToDouble(w -> w.at().y()).min().orElseThrow();
        double[] extents = nest.extents().get(0);
        assertEquals(left, extents[0], 1e-6);
        assertEquals(bottom, extents[1], 1e-6);
        assertEquals(top, extents[3], 1e-6);
    }

    @Test
    void extentsOfBlocksAreThoseOfWhatTheirInsertsDraw() throws IOException {
        EzdxfReader.Drawing blocks = EzdxfReader.points(DxfExport.blocks(TestPatterns.choirGown()), folder);
        Envelope drawn = new Envelope();
        for (EzdxfReader.Insert insert : blocks.inserts()) {
            blocks.lines().stream()
                    .filter(line -> line.block().equals(insert.block()))
                    .flatMap(line -> line.points().stream())
                    .map(insert.at()::plus)
                    .forEach(point -> drawn.expandToInclude(point.x(), point.y()));
        }
        double[] extents = blocks.extents().get(0);
        double lowest = blocks.words().stream()
                .filter(words -> words.block().equals("*"))
                .mapToDouble(words -> words.at().y())
                .min()
                .orElseThrow();
        double[] expected = {drawn.getMinX(), Math.min(lowest, drawn.getMinY()), drawn.getMaxX(), drawn.getMaxY()};
        assertArrayEquals(expected, extents, 1e-6);
    }

    @Test
    void lettersOutsideAsciiAreEscapedAndReadBack() throws IOException {
        String name = "Chörgewand \u5531\u8a69 100%% ^J \\P";
        byte[] bytes = DxfExport.blocks(TestPatterns.choirGown(name));
        for (byte b : bytes) {
            assertTrue(b > 0, "7-bit");
        }
        String file = new String(bytes, StandardCharsets.US_ASCII);
        assertTrue(
                file.contains("STYLE NAME: Ch\\U+00F6rgewand \\U+5531\\U+8A69 100%\\U+0025 \\U+005EJ \\U+005CP\r\n"));
        EzdxfReader.points(bytes, folder);
    }

    @Test
    void sameInputGivesSameBytesAndNoDateUnlessGiven() {
        PatternSet set = TestPatterns.choirGown();
        assertArrayEquals(DxfExport.blocks(set), DxfExport.blocks(TestPatterns.choirGown()));
        assertArrayEquals(
                DxfExport.nest(set, Alignment.APEX), DxfExport.nest(TestPatterns.choirGown(), Alignment.APEX));
        assertFalse(new String(DxfExport.blocks(set), StandardCharsets.US_ASCII).contains("DATE"));
        assertTrue(new String(DxfExport.blocks(set, LocalDate.of(2026, 3, 1)), StandardCharsets.US_ASCII)
                .contains("CREATION DATE: 2026-03-01\r\n"));
    }
}
