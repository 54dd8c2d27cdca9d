package org.capwright.tables;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.stream.LongStream;
import org.capwright.quantity.InvalidMeasuresException;
import org.capwright.quantity.Violation;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class SizeTableTest {

    private static final SizeTable WOMEN =
            SizeTables.find("women-en-13402-3-bust").orElseThrow();

    /** Choir gowns in sizes 36 to 46: the workshop's labels are half the bust of the class minus six, rounded. */
    @Test
    void labelsOfTheDemoWorkshopNameBustClasses() {
        assertEquals(
                List.of("36", "38", "40", "42", "44", "46"),
                List.copyOf(WOMEN.labels().keySet()));
        WOMEN.labels().forEach((label, size) -> {
            double bust =
                    WOMEN.value(label, BodyDimension.BUST_GIRTH).orElseThrow().millimetres();
            assertEquals(Integer.parseInt(label), bust / 20 - 6, 0.3);
            assertEquals(Optional.of(size), WOMEN.size(label));
            assertEquals(
                    WOMEN.value(size, BodyDimension.UPPER_ARM_GIRTH),
                    WOMEN.value(label, BodyDimension.UPPER_ARM_GIRTH));
        });
        assertTrue(
                WOMEN.info().notes().stream().anyMatch(note -> note.contains("not labels of EN 13402-3")),
                "says that the labels are no standard's");
    }

    /** Source of the figures: class means of ANSUR 1988, NATICK/TR-89/044. */
    @Test
    void selectsSizesByLabelAndGivesTheIncrementsBetweenThem() {
        SizeTable run = WOMEN.select(List.of("36", "40", "42"));
        assertEquals(List.of("36", "40", "42"), run.sizes());
        List<Increment> increments = run.increments(BodyDimension.UPPER_ARM_GIRTH);
        assertEquals(2, increments.size());
        assertEquals("36", increments.get(0).fromSize());
        assertEquals("40", increments.get(0).toSize());
        assertEquals(294.5 - 270.9, increments.get(0).millimetres(), 1e-9);
        assertEquals(307.4 - 294.5, increments.get(1).millimetres(), 1e-9);
        assertEquals(Provenance.MEASURED, increments.get(1).provenance());
        assertEquals(
                Provenance.INTERPOLATED,
                WOMEN.select(List.of("44", "46"))
                        .increments(BodyDimension.UPPER_ARM_GIRTH)
                        .get(0)
                        .provenance());
    }

    @Test
    void refusesUnknownRepeatedAndUnorderedSizesAllAtOnce() {
        InvalidMeasuresException error =
                assertThrows(InvalidMeasuresException.class, () -> WOMEN.select(List.of("40", "35", "38", "40")));
        assertEquals(
                List.of(new TableSubject.Size(1), new TableSubject.Size(2), new TableSubject.Size(3)),
                error.violations().stream().map(Violation::subject).toList());
        assertTrue(error.violations().get(0).reason().toString().contains("82-86"));
        assertThrows(InvalidMeasuresException.class, () -> WOMEN.select(List.of()));
    }

    @Test
    void gapsStayGaps() {
        assertEquals(Optional.empty(), WOMEN.value("107-113", BodyDimension.UPPER_ARM_GIRTH));
        assertEquals(Optional.empty(), WOMEN.value("40", BodyDimension.HIP_GIRTH));
        assertEquals(Optional.empty(), WOMEN.value("999", BodyDimension.BUST_GIRTH));
        assertEquals(List.of(), WOMEN.increments(BodyDimension.HIP_GIRTH));
        assertEquals(7, WOMEN.increments(BodyDimension.UPPER_ARM_GIRTH).size(), "eight classes have an upper arm");
        assertEquals(
                List.of(),
                SizeTables.find("nhanes-2015-2016-women-by-age")
                        .orElseThrow()
                        .increments(BodyDimension.UPPER_ARM_GIRTH),
                "age classes have no increments");
    }

    @Test
    void interpolatesForABustInBetweenAndSaysSo() {
        TableValue at = WOMEN.interpolate(BodyDimension.UPPER_ARM_GIRTH, 920);
        assertEquals(new TableValue(294.5, Provenance.MEASURED), at);
        TableValue between = WOMEN.interpolate(BodyDimension.UPPER_ARM_GIRTH, 900);
        assertEquals(Provenance.INTERPOLATED, between.provenance());
        assertEquals((283.3 + 294.5) / 2, between.millimetres(), 0.3);
        assertEquals(between, WOMEN.interpolate(BodyDimension.UPPER_ARM_GIRTH, "38", "40", 0.5));
        assertEquals(at, WOMEN.interpolate(BodyDimension.UPPER_ARM_GIRTH, "38", "40", 1));
    }

    @Test
    void refusesToExtrapolateAndNamesTheRange() {
        for (double bust : new double[] {759.9, 1045.1, Double.NaN, Double.POSITIVE_INFINITY}) {
            InvalidMeasuresException error = assertThrows(
                    InvalidMeasuresException.class, () -> WOMEN.interpolate(BodyDimension.UPPER_ARM_GIRTH, bust));
            assertEquals(BodyDimension.BUST_GIRTH, error.violations().get(0).subject());
            assertTrue(
                    error.violations().get(0).reason().toString().contains("760.0 to 1045.0 mm"), error.getMessage());
        }
        InvalidMeasuresException missing =
                assertThrows(InvalidMeasuresException.class, () -> WOMEN.interpolate(BodyDimension.HIP_GIRTH, 900));
        assertEquals(
                new TableSubject.Argument("dimension"),
                missing.violations().get(0).subject());
        assertThrows(
                InvalidMeasuresException.class,
                () -> WOMEN.interpolate(BodyDimension.UPPER_ARM_GIRTH, "40", "38", 0.5));
        assertThrows(
                InvalidMeasuresException.class,
                () -> WOMEN.interpolate(BodyDimension.UPPER_ARM_GIRTH, "38", "40", -0.1));
        SizeTable ages = SizeTables.find("nhanes-2015-2016-women-by-age").orElseThrow();
        assertThrows(InvalidMeasuresException.class, () -> ages.interpolate(BodyDimension.UPPER_ARM_GIRTH, 900));
    }

    @Test
    void doesNotInterpolateAcrossAGap() {
        SizeTable table = new TableDraft(
                        "gapped",
                        "With a gap",
                        "test data",
                        "none",
                        "women",
                        "nobody",
                        "cm",
                        TableKind.BODY,
                        "bustGirth",
                        List.of("1", "2", "3", "4", "5"),
                        List.of(row("bustGirth", 80, 84, 88, 92, 96), row("upperArmGirth", 25, 26, Double.NaN, 29, 30)))
                .build();
        DimensionCurve curve = table.curve(BodyDimension.UPPER_ARM_GIRTH);
        assertEquals(List.of(new Interval(800, 840), new Interval(920, 960)), curve.ranges());
        assertThrows(InvalidMeasuresException.class, () -> curve.at(880));
        assertEquals(2, table.increments(BodyDimension.UPPER_ARM_GIRTH).size());
    }

    static RowDraft row(String dimension, double... values) {
        return new RowDraft(
                dimension,
                java.util.Arrays.stream(values)
                        .mapToObj(v -> Double.isNaN(v) ? OptionalDouble.empty() : OptionalDouble.of(v))
                        .toList());
    }

    static LongStream seeds() {
        return LongStream.range(0, 100);
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void interpolationLiesBetweenTheNeighbouringSizes(long seed) {
        Random random = new Random(seed);
        List<SizeTable> tables = SizeTables.all().stream()
                .filter(t -> t.info().key().isPresent())
                .toList();
        SizeTable table = tables.get(random.nextInt(tables.size()));
        Row row = table.rows().get(random.nextInt(table.rows().size()));
        List<Increment> increments = table.increments(row.dimension());
        if (increments.isEmpty()) {
            return;
        }
        Increment step = increments.get(random.nextInt(increments.size()));
        double from = row.value(step.fromSize()).orElseThrow().millimetres();
        double to = row.value(step.toSize()).orElseThrow().millimetres();
        double value = table.interpolate(row.dimension(), step.fromSize(), step.toSize(), random.nextDouble())
                .millimetres();
        assertTrue(
                value >= Math.min(from, to) - 1e-9 && value <= Math.max(from, to) + 1e-9,
                "seed " + seed + ": " + value + " not between " + from + " and " + to);
    }

    @Test
    void tablesCannotBeChanged() {
        assertThrows(UnsupportedOperationException.class, () -> SizeTables.all().clear());
        assertThrows(
                UnsupportedOperationException.class,
                () -> WOMEN.rows().get(0).values().put("x", new TableValue(1, Provenance.PUBLISHED)));
        assertThrows(UnsupportedOperationException.class, () -> WOMEN.labels().putAll(Map.of("1", "2")));
    }
}
