package org.capwright.draft;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.function.DoublePredicate;
import org.apache.commons.math3.analysis.integration.IterativeLegendreGaussIntegrator;
import org.capwright.geometry.Cubic;
import org.capwright.geometry.Point;
import org.capwright.measure.Dimension;
import org.capwright.quantity.Violation;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class CapLineTest {

    private static final double INCH = 25.4;

    /** A half sleeve on the fold as it is taught on paper, in inches: common practice, no source. */
    private static CapLine onTheFold() {
        return CapLine.find(9 * INCH, 3.5 * INCH, 0.75 * INCH, 0.5 * INCH).orElseThrow();
    }

    @Test
    void passesThroughTheFivePointsOfTheConstruction() {
        CapLine line = onTheFold();
        // The guide line from (0, 3.5) to (9, 0) in quarters; its unit normal is (3.5, 9) / |(9, -3.5)|.
        double guide = Math.sqrt(9 * 9 + 3.5 * 3.5);
        double[][] expected = {
            {0, 3.5},
            {2.25 + 0.75 * 3.5 / guide, 2.625 + 0.75 * 9 / guide},
            {4.5, 1.75},
            {6.75 - 0.5 * 3.5 / guide, 0.875 - 0.5 * 9 / guide},
            {9, 0}
        };
        for (int quarter = 0; quarter <= 4; quarter++) {
            assertEquals(expected[quarter][0] * INCH, line.division(quarter).x(), 1e-9);
            assertEquals(expected[quarter][1] * INCH, line.division(quarter).y(), 1e-9);
        }
    }

    @Test
    void isHorizontalAtTheApexAndTangentToTheBicepLineAtTheUnderarm() {
        CapLine line = onTheFold();
        assertEquals(0, line.curve().tangentAtLength(0).y(), 1e-12);
        assertEquals(0, line.curve().tangentAtLength(line.length()).y(), 1e-9);
    }

    @Test
    void isAtLeastAsLongAsItsChordsAndAgreesWithAnIndependentIntegrator() {
        CapLine line = onTheFold();
        double chords = 0;
        for (int quarter = 1; quarter <= 4; quarter++) {
            chords += line.division(quarter - 1).distanceTo(line.division(quarter));
        }
        double integrated = 0;
        for (Cubic segment : line.curve().segments()) {
            integrated += new IterativeLegendreGaussIntegrator(12, 1e-13, 1e-13)
                    .integrate(10_000, t -> segment.derivativeAt(t).norm(), 0, 1);
        }
        assertTrue(line.length() > chords);
        assertEquals(integrated, line.length(), 1e-6);
    }

    /** Continuous curvature everywhere and one inflection: over the whole space of halves that can be drawn. */
    @Test
    void hasContinuousCurvatureAndOneInflectionWhereverItCanBeDrawn() {
        int drawn = 0;
        for (long seed = 1; seed <= 20_000; seed++) {
            Random random = new Random(seed);
            double width = StyleSpace.between(random, 60, 360);
            double height = StyleSpace.between(random, 15, 360);
            double limit = StyleSpace.limit(width, height);
            double outward = limit * random.nextDouble();
            double inward = limit * random.nextDouble();
            Optional<CapLine> found = CapLine.find(width, height, outward, inward);
            if (found.isEmpty()) {
                continue;
            }
            drawn++;
            CapLine line = found.get();
            String seeded = "seed " + seed;
            assertEquals(1, line.curve().inflections(), seeded);
            List<Cubic> segments = line.curve().segments();
            for (int i = 1; i < segments.size(); i++) {
                Cubic before = segments.get(i - 1);
                Cubic after = segments.get(i);
                assertEquals(0, before.tangentAt(1).cross(after.tangentAt(0)), 1e-9, seeded);
                assertEquals(
                        before.curvatureAt(1),
                        after.curvatureAt(0),
                        1e-8 + 1e-7 * Math.abs(after.curvatureAt(0)),
                        seeded);
            }
            double lastX = -1;
            for (Point point : line.curve().flattened(0.5)) {
                assertTrue(point.x() > lastX, seeded + ": the cap leans over");
                lastX = point.x();
            }
        }
        assertTrue(drawn > 8_000, "only " + drawn + " could be drawn");
    }

    /** Wherever both displacements are between a fifth and nine tenths of the limit, and the cap is no taller than a half is wide, a line is found. */
    @Test
    void isFoundForEveryUsualCap() {
        for (long seed = 1; seed <= 5_000; seed++) {
            Random random = new Random(seed);
            double width = StyleSpace.between(random, 100, 300);
            double height = width * StyleSpace.between(random, 0.2, 0.9);
            double limit = StyleSpace.limit(width, height);
            double outward = limit * StyleSpace.between(random, 0.2, 0.7);
            double inward = limit * StyleSpace.between(random, 0.2, 0.7);
            assertTrue(CapLine.find(width, height, outward, inward).isPresent(), "seed " + seed);
        }
    }

    /** Each range that is named works with the other displacement as it is, from end to end and no further; where no single one can mend the line, both together do. */
    @ParameterizedTest
    @CsvSource({"180,135,60,12", "180,135,19,60", "180,135,0.6,12", "180,40,19,12", "180,135,60,60", "180,135,0.6,60"})
    void saysWhichDisplacementsWouldWork(double width, double height, double outward, double inward) {
        assertFalse(CapLine.find(width, height, outward, inward).isPresent());
        List<Violation> violations =
                CapLine.violations(width, height, outward, inward, Dimension.CAP_OUTWARD, Dimension.CAP_INWARD);
        assertFalse(violations.isEmpty());
        boolean alone = false;
        for (Violation violation : violations) {
            DoublePredicate drawn = displacement -> (violation.subject().equals(Dimension.CAP_OUTWARD)
                            ? CapLine.find(width, height, displacement, inward)
                            : CapLine.find(width, height, outward, displacement))
                    .isPresent();
            double low = violation.least().orElseThrow();
            double high = violation.greatest().orElseThrow();
            assertTrue(low > 0 && low < high);
            double middle = (low + high) / 2;
            if (drawn.test(middle)) {
                alone = true;
                assertTrue(drawn.test(low + 1e-6) && drawn.test(high - 1e-6), () -> low + " to " + high);
                assertFalse(drawn.test(low - 0.01) || drawn.test(high + 0.01), () -> low + " to " + high);
            }
        }
        if (!alone) {
            assertEquals(
                    List.of(Dimension.CAP_OUTWARD, Dimension.CAP_INWARD),
                    violations.stream().map(Violation::subject).toList());
            double[] middles = violations.stream()
                    .mapToDouble(v -> (v.least().orElseThrow() + v.greatest().orElseThrow()) / 2)
                    .toArray();
            assertTrue(CapLine.find(width, height, middles[0], middles[1]).isPresent());
        }
    }

    @Test
    void findsTheLengthToAPlaceOnTheGuideLine() {
        CapLine line = onTheFold();
        assertEquals(0, line.lengthTo(0).orElseThrow(), 0);
        assertEquals(line.length(), line.lengthTo(1).orElseThrow(), 1e-9);
        for (int quarter = 1; quarter < 4; quarter++) {
            Point there =
                    line.curve().pointAtLength(line.lengthTo(quarter / 4.0).orElseThrow());
            assertEquals(0, there.distanceTo(line.division(quarter)), 1e-6);
        }
        assertTrue(line.lengthTo(1.1).isEmpty());
    }
}
