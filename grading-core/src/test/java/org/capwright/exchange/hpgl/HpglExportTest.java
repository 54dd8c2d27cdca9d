package org.capwright.exchange.hpgl;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.capwright.exchange.OutsideTool;
import org.capwright.exchange.TestPatterns;
import org.capwright.geometry.Curve;
import org.capwright.geometry.Point;
import org.capwright.pattern.MarkKind;
import org.capwright.pattern.PatternSet;
import org.capwright.pattern.Piece;
import org.capwright.quantity.InvalidMeasuresException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.Polygon;

/** Plotter files as hp2xx (Debian package hp2xx) reads them. It gives its drawings in points of 1/72 inch, y down. */
class HpglExportTest {

    private static final GeometryFactory PLANE = new GeometryFactory();

    /** A coordinate is off by half a plotter unit at most, and hp2xx gives thousandths of a point. */
    private static final double UNIT = 0.025;

    @TempDir
    Path folder;

    private record Plot(String log, double width, double height, List<Polygon> cutLines) {}

    private Plot plot(byte[] file) throws IOException {
        Path in = folder.resolve("plot.plt");
        Path out = folder.resolve("plot.svg");
        Files.write(in, file);
        OutsideTool.Answer answer =
                OutsideTool.run("hp2xx", List.of("hp2xx", "-t", "-m", "svg", "-f", out.toString(), in.toString()));
        assertEquals(0, answer.exit(), answer.output());
        Matcher size = Pattern.compile("Width  x  height: ([0-9.]+) x ([0-9.]+) mm, true sizes")
                .matcher(answer.output());
        assertTrue(size.find(), answer.output());
        return new Plot(
                answer.output(),
                Double.parseDouble(size.group(1)),
                Double.parseDouble(size.group(2)),
                polygons(Files.readString(out)));
    }

    /**
     * hp2xx draws pen 1 in black and breaks long lines into paths; a closed line ends where it comes back to its start. What lies on the fold of the cloth is not cut: the line of a half
     * ends there, where another begins elsewhere, and is closed here by the fold.
     */
    private static List<Polygon> polygons(String svg) {
        List<Polygon> polygons = new ArrayList<>();
        boolean black = false;
        List<Coordinate> ring = new ArrayList<>();
        Matcher parts = Pattern.compile("<g style=\"stroke:rgb\\((\\d+),(\\d+),(\\d+)\\)|<path d=\"([^\"]*)\"")
                .matcher(svg);
        while (parts.find()) {
            if (parts.group(4) == null) {
                black = parts.group(1).equals("0")
                        && parts.group(2).equals("0")
                        && parts.group(3).equals("0");
            } else if (black) {
                Matcher pairs =
                        Pattern.compile("([ML])\\s*(-?[0-9.]+),\\s*(-?[0-9.]+)").matcher(parts.group(4));
                while (pairs.find()) {
                    Coordinate at = new Coordinate(
                            Double.parseDouble(pairs.group(2)) * 25.4 / 72,
                            -Double.parseDouble(pairs.group(3)) * 25.4 / 72);
                    if (pairs.group(1).equals("M") && ring.size() == 1) {
                        ring.clear(); // a break just where a line had closed
                    }
                    if (pairs.group(1).equals("M")
                            && ring.size() > 3
                            && !ring.get(ring.size() - 1).equals2D(at)) {
                        close(ring, polygons);
                    }
                    if (ring.isEmpty() || !ring.get(ring.size() - 1).equals2D(at)) {
                        ring.add(at);
                    }
                    if (ring.size() > 3 && ring.get(0).equals2D(at)) {
                        polygons.add(PLANE.createPolygon(ring.toArray(new Coordinate[0])));
                        ring.clear();
                    }
                }
            }
        }
        if (ring.size() > 3) {
            close(ring, polygons);
        }
        assertTrue(ring.size() < 2, "a line that does not close");
        return polygons;
    }

    /** The two ends of a half lie on a straight fold, upright or across. */
    private static void close(List<Coordinate> ring, List<Polygon> polygons) {
        Coordinate first = ring.get(0);
        Coordinate last = ring.get(ring.size() - 1);
        assertTrue(
                Math.min(Math.abs(first.x - last.x), Math.abs(first.y - last.y)) < UNIT,
                "an open line that does not end on a fold");
        ring.add(first.copy());
        polygons.add(PLANE.createPolygon(ring.toArray(new Coordinate[0])));
        ring.clear();
    }

    private static Polygon polygon(Piece piece) {
        List<Coordinate> ring = new ArrayList<>();
        for (Point point : piece.cutLine()) {
            ring.add(new Coordinate(point.x(), point.y()));
        }
        ring.add(ring.get(0));
        return PLANE.createPolygon(ring.toArray(new Coordinate[0]));
    }

    @ParameterizedTest
    @ValueSource(doubles = {420, 610, 914, 1830})
    void everyPieceIsPlottedAtTrueScaleAndAlone(double rollWidth) throws IOException {
        PatternSet set = TestPatterns.choirGown();
        Plot plot = plot(HpglExport.plot(set, rollWidth));
        assertTrue(plot.log.contains("HPGL command(s) ignored: 0"), plot.log);
        assertTrue(plot.log.contains("Unexpected event(s):  0"), plot.log);
        assertTrue(plot.log.contains("Pens used: 1 2"), plot.log);
        assertTrue(plot.height <= rollWidth, plot.height + " mm on a roll of " + rollWidth);
        List<Piece> pieces = new ArrayList<>();
        set.sizes().forEach(pieces::addAll);
        assertEquals(pieces.size(), plot.cutLines.size());
        double along = 0;
        for (int i = 0; i < pieces.size(); i++) {
            Polygon expected = polygon(pieces.get(i));
            Polygon read = plot.cutLines.get(i);
            String what = pieces.get(i).kind() + " " + pieces.get(i).size();
            assertEquals(expected.getArea(), read.getArea(), UNIT * expected.getLength(), what);
            Envelope wanted = expected.getEnvelopeInternal();
            Envelope got = read.getEnvelopeInternal();
            double longer = Math.max(wanted.getWidth(), wanted.getHeight());
            double shorter = Math.min(wanted.getWidth(), wanted.getHeight());
            assertEquals(longer, Math.max(got.getWidth(), got.getHeight()), UNIT + 0.001, what);
            assertEquals(shorter, Math.min(got.getWidth(), got.getHeight()), UNIT + 0.001, what);
            // Counter-clockwise as drafted: turned perhaps, but not mirrored.
            assertTrue(
                    org.locationtech.jts.algorithm.Orientation.isCCW(
                            read.getExteriorRing().getCoordinates()),
                    what);
            along = Math.max(along, got.getMaxX());
            for (int k = 0; k < i; k++) {
                assertTrue(read.distance(plot.cutLines.get(k)) >= HpglExport.GAP - 2 * UNIT, what);
            }
        }
        assertEquals(along, plot.width, 2 * UNIT);
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15, 16})
    void randomStylesArePlottedWithoutOverlap(long seed) throws IOException {
        PatternSet set = TestPatterns.random(seed, 2);
        Plot plot = plot(HpglExport.plot(set, 1500));
        assertTrue(plot.log.contains("HPGL command(s) ignored: 0"), "seed " + seed + plot.log);
        for (int i = 0; i < plot.cutLines.size(); i++) {
            assertTrue(plot.cutLines.get(i).isValid(), "seed " + seed);
            for (int k = 0; k < i; k++) {
                assertFalse(plot.cutLines.get(i).intersects(plot.cutLines.get(k)), "seed " + seed);
            }
        }
    }

    @Test
    void aRollTooNarrowIsRefusedWithTheWidthThatWouldDo() {
        PatternSet set = TestPatterns.choirGown();
        InvalidMeasuresException refused = assertThrows(InvalidMeasuresException.class, () -> HpglExport.plot(set, 50));
        double needed = refused.violations().get(0).least().orElseThrow();
        assertTrue(HpglExport.plot(set, needed).length > 0);
        assertThrows(InvalidMeasuresException.class, () -> HpglExport.plot(set, Math.nextDown(needed)));
        assertThrows(InvalidMeasuresException.class, () -> HpglExport.plot(set, Double.NaN));
    }

    /** A line as long as from fold to placement for every pleat, wherever its piece lies on the roll. */
    @Test
    void anArrowTellsWhichLineOfAPleatIsPlacedOnWhich() {
        int pleats = 0;
        for (long seed = 1; seed < 9; seed++) {
            PatternSet set = TestPatterns.random(seed, 2);
            List<Double> drawn = lengths(HpglExport.plot(set, HpglExport.leastWidth(set)));
            for (List<Piece> pieces : set.sizes()) {
                for (Piece piece : pieces) {
                    for (double across : across(piece)) {
                        pleats++;
                        assertTrue(
                                drawn.stream().anyMatch(length -> Math.abs(length - across) < 2 * UNIT),
                                () -> piece.kind() + " " + piece.size() + ": no line of " + across);
                    }
                }
            }
        }
        assertTrue(pleats > 20, pleats + " pleats");
    }

    /** The lengths of all lines of two points. */
    private static List<Double> lengths(byte[] file) {
        List<Double> lengths = new ArrayList<>();
        Matcher lines = Pattern.compile("PU(\\d+),(\\d+);\\s*PD(\\d+),(\\d+);")
                .matcher(new String(file, StandardCharsets.US_ASCII));
        while (lines.find()) {
            lengths.add(Math.hypot(
                            Integer.parseInt(lines.group(3)) - Integer.parseInt(lines.group(1)),
                            Integer.parseInt(lines.group(4)) - Integer.parseInt(lines.group(2)))
                    * UNIT);
        }
        return lengths;
    }

    /** How far it is from fold to placement, two fifths down the shorter of both; of pleats with room for an arrow. */
    private static List<Double> across(Piece piece) {
        List<Double> across = new ArrayList<>();
        for (int i = 0; i + 1 < piece.marks().size(); i++) {
            if (piece.marks().get(i).kind() == MarkKind.PLEAT_FOLD) {
                Curve fold = piece.marks().get(i).line();
                Curve placement = piece.marks().get(i + 1).line();
                double down = 0.4 * Math.min(fold.length(), placement.length());
                across.add(fold.pointAtLength(down).distanceTo(placement.pointAtLength(down)));
            }
        }
        across.removeIf(distance -> distance < 5);
        return across;
    }

    @Test
    void theFileIsPlainAndTheSameEachTime() {
        byte[] file = HpglExport.plot(TestPatterns.choirGown("Chörgewand ½"), 914);
        assertArrayEquals(file, HpglExport.plot(TestPatterns.choirGown("Chörgewand ½"), 914));
        String text = new String(file, StandardCharsets.US_ASCII);
        assertTrue(text.startsWith("IN;PU;SP1;"));
        assertTrue(text.endsWith("PU;SP0;\n"));
        for (String instruction : text.replace("\n", "").split(";")) {
            assertTrue(instruction.matches("IN|SP[012]|P[UD](\\d+,\\d+(,\\d+,\\d+)*)?"), instruction);
        }
    }
}
