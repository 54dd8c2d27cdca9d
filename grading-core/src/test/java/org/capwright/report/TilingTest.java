package org.capwright.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.stream.LongStream;
import org.capwright.geometry.Box;
import org.capwright.geometry.Point;
import org.capwright.grade.Alignment;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.Polygon;

/** Placing and tiling against JTS. */
class TilingTest {

    private static final GeometryFactory FACTORY = new GeometryFactory();

    static LongStream seeds() {
        return LongStream.range(0, 200);
    }

    /** Star-shaped outlines with few and long edges as well as many and short ones. */
    private static Block block(Random random) {
        int points = 3 + random.nextInt(random.nextBoolean() ? 5 : 120);
        double size = 20 + random.nextDouble() * 500;
        double stretch = 0.2 + random.nextDouble() * 2;
        double[] outline = new double[2 * points];
        Box box = Box.EMPTY;
        for (int i = 0; i < points; i++) {
            double angle = 2 * Math.PI * (i + 0.8 * random.nextDouble()) / points;
            double r = size * (0.3 + 0.7 * random.nextDouble());
            outline[2 * i] = r * Math.cos(angle);
            outline[2 * i + 1] = r * stretch * Math.sin(angle);
            box = box.including(new Point(outline[2 * i], outline[2 * i + 1]));
        }
        return new Block(0, List.of(), 0, contours(outline), box);
    }

    private static Contours contours(double... outline) {
        return new Contours(() -> List.of(new Contours.Contour(outline)));
    }

    private static Polygon polygon(Sheet.Placed placed) {
        double[] outline = placed.block().contours().all().get(0).line();
        Coordinate[] ring = new Coordinate[outline.length / 2 + 1];
        for (int i = 0; i < ring.length; i++) {
            int k = 2 * i % outline.length;
            ring[i] = new Coordinate(
                    outline[k] + placed.at().x(), outline[k + 1] + placed.at().y());
        }
        return FACTORY.createPolygon(ring);
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void pagesAreNeededWhereSomethingLies(long seed) {
        Random random = new Random(seed);
        List<Block> blocks = new ArrayList<>();
        for (int i = 0; i <= random.nextInt(6); i++) {
            blocks.add(block(random));
        }
        Paper.Sheets paper = new Paper.Sheets("any", 140 + random.nextInt(200), 200 + random.nextInt(300));
        Tiling tiling = Tiling.fewest(blocks, paper);
        Sheet sheet = tiling.sheet();
        assertEquals(blocks.size(), sheet.placed().size(), "seed " + seed);
        for (int row = 0; row < tiling.rows(); row++) {
            for (int column = 0; column < tiling.columns(); column++) {
                Box page = tiling.printed(row, column);
                double right = column == tiling.columns() - 1 ? page.right() : page.left() + tiling.stepX();
                double bottom = row == tiling.rows() - 1 ? page.bottom() : page.top() - tiling.stepY();
                var own = FACTORY.toGeometry(new Envelope(page.left(), right, bottom, page.top()));
                boolean met = sheet.placed().stream()
                        .anyMatch(placed -> polygon(placed).intersects(own));
                assertEquals(met, tiling.needs(row, column), "seed " + seed + ", page " + Tiling.label(row, column));
            }
        }
        Box all = tiling.printed(0, 0).including(tiling.printed(tiling.rows() - 1, tiling.columns() - 1));
        for (int i = 0; i < sheet.placed().size(); i++) {
            Box one = sheet.placed().get(i).bounds();
            assertTrue(
                    one.left() >= all.left() + Sheet.RIM - 1e-9
                            && one.right() <= all.right() - Sheet.RIM + 1e-9
                            && one.top() <= all.top() - Sheet.RIM + 1e-9
                            && one.bottom() >= all.bottom() + Sheet.RIM - 1e-9,
                    "seed " + seed + ": inside the sheet");
            for (int k = 0; k < i; k++) {
                Box other = sheet.placed().get(k).bounds();
                assertFalse(
                        one.grown(Sheet.GAP / 2 - 1e-9).meets(other.grown(Sheet.GAP / 2 - 1e-9)),
                        "seed " + seed + ": pieces keep apart");
            }
        }
    }

    @Test
    void sheetsAreLaidAcrossWhereFewerAreNeeded() {
        // 260 mm by 170 mm: one A4 sheet across (277 by 190 mm printed), two upright.
        double[] outline = {0, 0, 260, 0, 260, 170, 0, 170};
        Block wide = new Block(0, List.of(), 0, contours(outline), new Box(0, 0, 260, 170));
        Tiling tiling = Tiling.fewest(List.of(wide), Paper.A4);
        assertEquals(1, tiling.count());
        assertEquals(297, tiling.pageWidth());
    }

    @Test
    void nestedSizesLieOnTheAlignmentPoint() {
        var set = ChoirGown.inSizes("Choir gown", "36", "38", "40", "42", "44");
        for (Alignment alignment : Alignment.values()) {
            for (Block block : Block.of(set, List.of(0, 1, 2, 3, 4), alignment)) {
                Point first = null;
                for (int i = 0; i < 5; i++) {
                    Point there = alignment
                            .of(set.run().sizes().get(i).draft())
                            .plus(block.layers().get(i).shift());
                    first = first == null ? there : first;
                    assertEquals(0, first.distanceTo(there), 1e-9);
                }
                assertEquals(2, block.lead(), "the base size leads");
                assertEquals(
                        5,
                        block.layers().stream()
                                .map(layer -> layer.stroke().dash())
                                .distinct()
                                .count(),
                        "every size has dashes of its own");
            }
        }
    }

    @Test
    void labelsCountLikeColumnsOfATable() {
        assertEquals("A1", Tiling.label(0, 0));
        assertEquals("Z3", Tiling.label(25, 2));
        assertEquals("AA1", Tiling.label(26, 0));
        assertEquals("AZ1", Tiling.label(51, 0));
        assertEquals("BA12", Tiling.label(52, 11));
    }
}
