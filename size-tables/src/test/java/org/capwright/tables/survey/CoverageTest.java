package org.capwright.tables.survey;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.stream.LongStream;
import org.capwright.quantity.InvalidMeasuresException;
import org.capwright.tables.BodyDimension;
import org.capwright.tables.Interval;
import org.capwright.tables.TableSubject;
import org.capwright.tables.TestCsv;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class CoverageTest {

    private static final List<Map<String, String>> WOMEN = TestCsv.read("survey/ansur-1988-women.csv.gz");

    private static double of(Map<String, String> person, String dimension) {
        return Double.parseDouble(person.get(dimension));
    }

    @Test
    void aRunThatFitsEverybodyHasNoGap() {
        Coverage all = Coverage.of(
                Survey.ANSUR_1988_WOMEN,
                BodyDimension.UPPER_ARM_GIRTH,
                List.of(new SizeInterval("all", new Interval(100, 600), new Interval(300, 900))));
        assertEquals(2208, all.covered());
        assertEquals(1, all.share());
        assertEquals(List.of(), all.gaps());
        assertTrue(all.shareInterval(0.95).lower() > 0.998);
        assertTrue(all.shareInterval(0.95).upper() <= 1);
    }

    /** Source of the interval: Wilson's formula, Brown, Cai and DasGupta, Statistical Science 16 (2001) 101-133. */
    @Test
    void shareHasWilsonsInterval() {
        Coverage half = Coverage.of(
                Survey.ANSUR_1988_WOMEN,
                BodyDimension.UPPER_ARM_GIRTH,
                List.of(new SizeInterval("M", new Interval(270, 310), new Interval(500, 600))));
        double p = half.share();
        double n = 2208;
        double z = 1.959963984540054;
        double centre = (p + z * z / (2 * n)) / (1 + z * z / n);
        double spread = z / (1 + z * z / n) * Math.sqrt(p * (1 - p) / n + z * z / (4 * n * n));
        assertEquals(centre - spread, half.shareInterval(0.95).lower(), 1e-9);
        assertEquals(centre + spread, half.shareInterval(0.95).upper(), 1e-9);
    }

    static LongStream seeds() {
        return LongStream.range(0, 60);
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void countsAsAPlainLoopOverThePeopleDoes(long seed) {
        Random random = new Random(seed);
        List<SizeInterval> run = new ArrayList<>();
        int n = 1 + random.nextInt(8);
        for (int i = 0; i < n; i++) {
            double girth = 220 + 160 * random.nextDouble();
            double length = 450 + 150 * random.nextDouble();
            run.add(new SizeInterval(
                    "s" + i,
                    new Interval(girth, girth + 40 * random.nextDouble()),
                    new Interval(length, length + 80 * random.nextDouble())));
        }
        Coverage coverage = Coverage.of(Survey.ANSUR_1988_WOMEN, BodyDimension.UPPER_ARM_GIRTH, run);
        long covered = WOMEN.stream()
                .filter(p -> run.stream()
                        .anyMatch(s -> s.armGirth().contains(of(p, "upperArmGirth"))
                                && s.armLength().contains(of(p, "armLength"))))
                .count();
        assertEquals(covered, coverage.covered(), "seed " + seed);
        for (SizeInterval size : run) {
            long fits = WOMEN.stream()
                    .filter(p -> size.armGirth().contains(of(p, "upperArmGirth"))
                            && size.armLength().contains(of(p, "armLength")))
                    .count();
            assertEquals(fits, coverage.peopleBySize().get(size.size()).longValue(), "seed " + seed);
        }
        // Whoever has a girth that no size fits is in exactly one gap of the girth; the same for the length.
        long noGirth = WOMEN.stream()
                .filter(p -> run.stream().noneMatch(s -> s.armGirth().contains(of(p, "upperArmGirth"))))
                .count();
        assertEquals(noGirth, inGaps(coverage, BodyDimension.UPPER_ARM_GIRTH), "seed " + seed);
        long noLength = WOMEN.stream()
                .filter(p -> run.stream().noneMatch(s -> s.armLength().contains(of(p, "armLength"))))
                .count();
        assertEquals(noLength, inGaps(coverage, BodyDimension.ARM_LENGTH), "seed " + seed);
    }

    private static long inGaps(Coverage coverage, BodyDimension dimension) {
        return coverage.gaps().stream()
                .filter(gap -> gap.dimension() == dimension)
                .mapToLong(CoverageGap::people)
                .sum();
    }

    @Test
    void namesTheGapsBelowBetweenAndAbove() {
        Interval length = new Interval(300, 900);
        Coverage coverage = Coverage.of(
                Survey.ANSUR_1988_WOMEN,
                BodyDimension.UPPER_ARM_GIRTH,
                List.of(
                        new SizeInterval("L", new Interval(300, 320), length),
                        new SizeInterval("S", new Interval(260, 280), length)));
        assertEquals(
                List.of(CoverageGap.Place.BELOW, CoverageGap.Place.BETWEEN, CoverageGap.Place.ABOVE),
                coverage.gaps().stream().map(CoverageGap::place).toList());
        assertEquals(new Interval(280, 300), coverage.gaps().get(1).range());
    }

    @Test
    void refusesAGirthThatWasNotMeasuredAndARunThatIsNone() {
        List<SizeInterval> run = List.of(new SizeInterval("M", new Interval(270, 310), new Interval(500, 600)));
        assertThrows(
                InvalidMeasuresException.class,
                () -> Coverage.of(Survey.ANSUR_2012_WOMEN, BodyDimension.UPPER_ARM_GIRTH, run));
        assertThrows(
                InvalidMeasuresException.class, () -> Coverage.of(Survey.ANSUR_1988_WOMEN, BodyDimension.STATURE, run));
        assertThrows(
                InvalidMeasuresException.class,
                () -> Coverage.of(Survey.ANSUR_1988_WOMEN, BodyDimension.UPPER_ARM_GIRTH, List.of()));
        InvalidMeasuresException twice = assertThrows(
                InvalidMeasuresException.class,
                () -> Coverage.of(
                        Survey.ANSUR_1988_WOMEN, BodyDimension.UPPER_ARM_GIRTH, List.of(run.get(0), run.get(0))));
        assertEquals(new TableSubject.Size(1), twice.violations().get(0).subject());
        assertThrows(
                InvalidMeasuresException.class,
                () -> Coverage.of(Survey.ANSUR_1988_WOMEN, BodyDimension.UPPER_ARM_GIRTH, run)
                        .shareInterval(1));
    }
}
