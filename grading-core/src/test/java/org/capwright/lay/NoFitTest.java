package org.capwright.lay;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.capwright.geometry.Point;
import org.capwright.pattern.CutInstruction.Laying;
import org.capwright.pattern.Piece;
import org.capwright.pattern.PieceKind;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.geom.util.AffineTransformation;

class NoFitTest {

    static IntStream seeds() {
        return IntStream.range(0, 200);
    }

    /** The JTS topology suite says whether two polygons overlap; the no-fit region must say the same. */
    @ParameterizedTest
    @MethodSource("seeds")
    void agreesWithIntersection(int seed) {
        SplittableRandom random = new SplittableRandom(seed);
        double[] fixed = ring(random);
        double[] moving = ring(random);
        Polygon one = OuterOutline.polygon(fixed);
        Polygon other = OuterOutline.polygon(moving);
        NoFit region = NoFit.of(fixed, moving);
        double[] out = new double[region.mostNumbers()];
        for (int i = 0; i < 60; i++) {
            double x = 700 * random.nextDouble() - 350;
            double y = 700 * random.nextDouble() - 350;
            int n = region.forbidden(y, out);
            boolean forbidden = false;
            double toEnd = Double.POSITIVE_INFINITY;
            for (int k = 0; k < n; k += 2) {
                forbidden |= x > out[k] && x < out[k + 1];
                toEnd = Math.min(toEnd, Math.min(Math.abs(x - out[k]), Math.abs(x - out[k + 1])));
            }
            if (toEnd > 1e-6) {
                double overlap = one.intersection(
                                AffineTransformation.translationInstance(x, y).transform(other))
                        .getArea();
                assertEquals(
                        overlap > 1e-12, forbidden, "seed " + seed + " at " + x + ", " + y + " overlap " + overlap);
            }
        }
    }

    /** At the end of a stretch the polygons touch: no overlap, no distance. */
    @ParameterizedTest
    @MethodSource("seeds")
    void touchesAtTheEnds(int seed) {
        SplittableRandom random = new SplittableRandom(5000 + seed);
        double[] fixed = ring(random);
        double[] moving = ring(random);
        Polygon one = OuterOutline.polygon(fixed);
        Polygon other = OuterOutline.polygon(moving);
        NoFit region = NoFit.of(fixed, moving);
        double[] out = new double[region.mostNumbers()];
        for (int i = 0; i < 20; i++) {
            double y = 500 * random.nextDouble() - 250;
            int n = region.forbidden(y, out);
            for (int k = 0; k < n; k++) {
                Polygon there = (Polygon)
                        AffineTransformation.translationInstance(out[k], y).transform(other);
                String named = "seed " + seed + " at " + out[k] + ", " + y;
                assertTrue(one.intersection(there).getArea() < 1e-6, named);
                assertTrue(one.distance(there) < 1e-6, named);
            }
        }
    }

    private static double[] ring(SplittableRandom random) {
        Piece piece = random.nextInt(3) == 0
                ? steps(random)
                : LayPieces.star(random, "s", Laying.FLAT, 100 + 300 * random.nextDouble());
        double[] ring = new double[2 * piece.cutLine().size()];
        for (int i = 0; i < piece.cutLine().size(); i++) {
            Point point = piece.cutLine().get(i);
            ring[2 * i] = point.x();
            ring[2 * i + 1] = point.y();
        }
        return LayPiece.flipped(ring, random.nextInt(4));
    }

    /** Right angles on a coarse grid, so that many edges are parallel and in line: a comb with teeth of random length. */
    private static Piece steps(SplittableRandom random) {
        int teeth = 1 + random.nextInt(4);
        java.util.List<Point> outline = new java.util.ArrayList<>();
        outline.add(new Point(0, 0));
        outline.add(new Point(50 * (2 * teeth - 1), 0));
        for (int i = teeth - 1; i >= 0; i--) {
            double top = 50 * (2 + random.nextInt(3));
            outline.add(new Point(50 * (2 * i + 1), top));
            outline.add(new Point(50 * (2 * i), top));
            if (i > 0) {
                outline.add(new Point(50 * (2 * i), 50));
                outline.add(new Point(50 * (2 * i - 1), 50));
            }
        }
        return LayPieces.piece(PieceKind.UNDER_SLEEVE, "c", 1, Laying.FLAT, outline);
    }
}
