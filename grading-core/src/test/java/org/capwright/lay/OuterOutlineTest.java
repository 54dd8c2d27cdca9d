package org.capwright.lay;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.capwright.pattern.CutInstruction.Laying;
import org.capwright.pattern.Piece;
import org.capwright.pattern.PieceKind;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.locationtech.jts.algorithm.distance.DiscreteHausdorffDistance;
import org.locationtech.jts.geom.Polygon;

class OuterOutlineTest {

    static IntStream seeds() {
        return IntStream.range(0, 100);
    }

    /** Judged by JTS: the outline with few corners contains the true one, lies close to it, and keeps the asked distance. */
    @ParameterizedTest
    @MethodSource("seeds")
    void containsTheTrueOutlineClosely(int seed) {
        SplittableRandom random = new SplittableRandom(seed);
        double half = 60 + 200 * random.nextDouble();
        Piece piece = LayPieces.sleeve(
                PieceKind.UNDER_SLEEVE,
                "40",
                Laying.MIRRORED_PAIR,
                half,
                half * (0.4 + random.nextDouble()),
                half * 2,
                half * (0.3 + 0.6 * random.nextDouble()));
        double[] ring = LayPiece.of(piece, Fabric.Laying.OPEN).ring;
        Polygon truth = OuterOutline.polygon(ring);
        double distance = random.nextInt(2) * 8 * random.nextDouble();
        double[] few = OuterOutline.around(ring, distance, 0.5, 36);
        Polygon outer = OuterOutline.polygon(few);
        String named = "seed " + seed;
        assertTrue(outer.isValid(), named);
        assertTrue(few.length / 2 <= 40, named + " corners " + few.length / 2);
        assertTrue(truth.difference(outer).getArea() < 1e-7, named);
        if (distance == 0) {
            double off = DiscreteHausdorffDistance.distance(truth.getExteriorRing(), outer.getExteriorRing(), 0.05);
            assertTrue(outer.getArea() < 1.01 * truth.getArea(), named + " area " + outer.getArea() / truth.getArea());
            assertTrue(off < 8, named + " off " + off);
        } else {
            double kept = outer.getExteriorRing().distance(truth.getExteriorRing());
            assertTrue(kept > distance - 1e-7, named + " keeps " + kept + " of " + distance);
        }
    }
}
