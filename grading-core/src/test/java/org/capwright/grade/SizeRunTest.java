package org.capwright.grade;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import org.capwright.draft.CapEase;
import org.capwright.draft.CapFit;
import org.capwright.draft.ElbowShaping;
import org.capwright.draft.HemShape;
import org.capwright.draft.OverlayStyle;
import org.capwright.draft.SleeveStyle;
import org.capwright.draft.StyleSpace;
import org.capwright.draft.UnderSleeveStyle;
import org.capwright.geometry.Curve;
import org.capwright.geometry.Point;
import org.capwright.measure.Dimension;
import org.capwright.measure.Dimensions;
import org.capwright.quantity.InvalidMeasuresException;
import org.capwright.quantity.Unit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LineString;

class SizeRunTest {

    private static final List<String> LABELS = List.of("36", "38", "40", "42", "44", "46");

    private static final SleeveStyle GOWN = new SleeveStyle(
            new CapFit.Given(),
            Optional.of(new OverlayStyle(HemShape.VEE, OverlayStyle.THIRD_DIVISION)),
            Optional.of(new UnderSleeveStyle(ElbowShaping.TAPERED)));

    private static final Dimensions BASE = Dimensions.of(Map.ofEntries(
            Map.entry(Dimension.BICEP, 360.0),
            Map.entry(Dimension.CAP_HEIGHT, 135.0),
            Map.entry(Dimension.CAP_OUTWARD, 19.0),
            Map.entry(Dimension.CAP_INWARD, 12.0),
            Map.entry(Dimension.ARMHOLE, 450.0),
            Map.entry(Dimension.LENGTH, 600.0),
            Map.entry(Dimension.RISE, 140.0),
            Map.entry(Dimension.OVERLAY_LENGTH, 340.0),
            Map.entry(Dimension.FRONT_GAP, 60.0),
            Map.entry(Dimension.BACK_GAP, 60.0),
            Map.entry(Dimension.ELBOW, 280.0),
            Map.entry(Dimension.WRIST, 190.0)));

    private static SizeRun gown(int base) {
        return SizeRun.grade(
                GOWN,
                BASE,
                LABELS,
                base,
                List.of(
                        GradeRule.uniform(Dimension.BICEP, 12, 6),
                        GradeRule.uniform(Dimension.LENGTH, 5, 6),
                        GradeRule.uniform(Dimension.CAP_HEIGHT, 4, 6),
                        new GradeRule(Dimension.ARMHOLE, List.of(16.0, 16.0, 18.0, 18.0, 20.0))));
    }

    @Test
    void leavesTheBaseSizeAsItIs() {
        for (int base = 0; base < LABELS.size(); base++) {
            SizeRun run = gown(base);
            assertEquals(BASE, run.baseSize().draft().dimensions());
            assertEquals(Point.ORIGIN, run.shift(base, Alignment.APEX));
        }
    }

    /** Applying a rule up and then down again gives the very same number, not nearly the same. */
    @Test
    void goesUpAndDownExactly() {
        for (long seed = 1; seed <= 5_000; seed++) {
            Random random = new Random(seed);
            int sizes = 2 + random.nextInt(20);
            List<Double> increments = new ArrayList<>();
            for (int i = 1; i < sizes; i++) {
                increments.add(StyleSpace.between(random, -20, 30));
            }
            GradeRule rule = new GradeRule(Dimension.BICEP, increments);
            double value = Dimensions.snap(StyleSpace.between(random, 100, 900));
            int from = random.nextInt(sizes);
            int to = random.nextInt(sizes);
            assertEquals(value, rule.apply(rule.apply(value, from, to), to, from), 0.0, "seed " + seed);
        }
    }

    /** Forty sizes show what decimals added by hand give ({@link BigDecimal}), with no digit too many. */
    @ParameterizedTest
    @CsvSource({
        "MILLIMETRE, 360.1, 0.1",
        "MILLIMETRE, 300, 2.7",
        "CENTIMETRE, 36.1, 0.13",
        "CENTIMETRE, 30, -0.07",
        "INCH, 14.1, 0.03"
    })
    void showsWhatDecimalsAddUpTo(Unit unit, BigDecimal base, BigDecimal increment) {
        GradeRule rule = GradeRule.uniform(Dimension.BICEP, unit.toMillimetres(increment), 40);
        double kept = Dimensions.snap(unit.toMillimetres(base));
        for (int size = 0; size < 40; size++) {
            BigDecimal byHand = base.add(increment.multiply(BigDecimal.valueOf(size)));
            assertEquals(byHand.doubleValue(), unit.figure(rule.apply(kept, 0, size)), 0.0, "size " + size);
        }
    }

    /** A row of the spec table that is called like a dimension is that dimension. */
    @Test
    void aCodeMeansOneThing() {
        SizeRun run = gown(2);
        int met = 0;
        for (PointOfMeasure row : SpecTable.of(run).rows()) {
            for (Dimension dimension : Dimension.values()) {
                if (dimension.gradeName().equals(row.code())
                        && run.baseSize().draft().dimensions().has(dimension)) {
                    assertEquals(BASE.get(dimension), row.values().get(2), 1e-6, row.code());
                    met++;
                }
            }
        }
        assertTrue(met >= 5, met + " rows");
    }

    @Test
    void jumpsInTheSpecTableAreTheRules() {
        for (long seed = 1; seed <= 200; seed++) {
            StyleSpace.Case drawn = StyleSpace.of(seed);
            Random random = new Random(seed);
            List<Double> bicep = new ArrayList<>();
            List<Double> cap = new ArrayList<>();
            List<Double> length = new ArrayList<>();
            for (int i = 0; i < 3; i++) {
                bicep.add(StyleSpace.between(random, 2, 8));
                cap.add(StyleSpace.between(random, 0.5, 3));
                length.add(StyleSpace.between(random, 1, 6));
            }
            if (drawn.dimensions().has(Dimension.SIDE_DEPTH)
                    || drawn.dimensions().has(Dimension.EXTRA_WIDTH)) {
                continue;
            }
            SizeRun run = SizeRun.grade(
                    drawn.style(),
                    drawn.dimensions(),
                    List.of("S", "M", "L", "XL"),
                    1,
                    List.of(
                            new GradeRule(Dimension.BICEP, bicep),
                            new GradeRule(Dimension.CAP_HEIGHT, cap),
                            new GradeRule(Dimension.LENGTH, length)));
            SpecTable table = SpecTable.of(run);
            for (int i = 0; i < 3; i++) {
                assertEquals(bicep.get(i), row(table, "bicep").jumps().get(i), 1e-9, "seed " + seed);
                assertEquals(cap.get(i), row(table, "capHeight").jumps().get(i), 1e-9, "seed " + seed);
                assertEquals(length.get(i), row(table, "length").jumps().get(i), 1e-9, "seed " + seed);
            }
        }
    }

    private static PointOfMeasure row(SpecTable table, String code) {
        return table.rows().stream()
                .filter(r -> r.code().equals(code))
                .findFirst()
                .orElseThrow();
    }

    /**
     * Where bicep, length and cap height all grow, a larger cap lies outside a smaller one drawn on the same fold and bicep line. (On the apex or the underarm
     * point nearly parallel caps may cross rightly: a wider cap is a flatter one.) JTS looks for crossings.
     */
    @Test
    void isNestedWithoutCrossings() {
        for (long seed = 1; seed <= 300; seed++) {
            StyleSpace.Case drawn = StyleSpace.of(seed);
            Random random = new Random(seed);
            // Without an armhole, which does not grow here and might be left behind by the cap.
            Map<Dimension, Double> cap = new EnumMap<>(Dimension.class);
            for (Dimension dimension : drawn.dimensions().present()) {
                if (dimension != Dimension.ARMHOLE) {
                    cap.put(dimension, drawn.dimensions().get(dimension));
                }
            }
            SizeRun run = SizeRun.grade(
                    new SleeveStyle(
                            drawn.style().fit(), Optional.empty(), drawn.style().underSleeve()),
                    Dimensions.of(cap),
                    List.of("S", "M", "L"),
                    0,
                    List.of(
                            GradeRule.uniform(Dimension.BICEP, StyleSpace.between(random, 4, 14), 3),
                            GradeRule.uniform(Dimension.LENGTH, StyleSpace.between(random, 1, 10), 3),
                            GradeRule.uniform(Dimension.CAP_HEIGHT, StyleSpace.between(random, 1, 5), 3)));
            for (int i = 1; i < run.sizes().size(); i++) {
                LineString smaller =
                        line(run.sizes().get(i - 1).draft().base().back().curve());
                LineString larger =
                        line(run.sizes().get(i).draft().base().back().curve());
                assertFalse(smaller.intersects(larger), "seed " + seed);
            }
        }
    }

    private static LineString line(Curve curve) {
        return new GeometryFactory()
                .createLineString(curve.flattened(0.005).stream()
                        .map(p -> new Coordinate(p.x(), p.y()))
                        .toArray(Coordinate[]::new));
    }

    @Test
    void gradePointsMoveAsTheRulesSay() {
        List<GradePoint> points = GradePoints.of(gown(2), Alignment.FOLD_AND_BICEP_LINE);
        GradePoint underarm = points.stream()
                .filter(p -> p.part().equals("underSleeve") && p.name().equals("back underarm"))
                .findFirst()
                .orElseThrow();
        for (int i = 0; i < LABELS.size(); i++) {
            assertEquals(6.0 * (i - 2), underarm.deltas().get(i).x(), 1e-9);
            assertEquals(0, underarm.deltas().get(i).y(), 1e-9);
        }
        GradePoint apex = points.stream()
                .filter(p -> p.part().equals("overlay") && p.name().equals("apex"))
                .findFirst()
                .orElseThrow();
        for (int i = 0; i < LABELS.size(); i++) {
            assertEquals(4.0 * (i - 2), apex.deltas().get(i).y(), 1e-9);
        }
    }

    @Test
    void keepsTheEaseInEverySizeWhereTheCapHeightFollows() {
        SleeveStyle fitted =
                new SleeveStyle(new CapFit.CapHeightFor(new CapEase.Share(0.03)), GOWN.overlay(), GOWN.underSleeve());
        SizeRun run = SizeRun.grade(
                fitted,
                BASE,
                LABELS,
                2,
                List.of(GradeRule.uniform(Dimension.BICEP, 12, 6), GradeRule.uniform(Dimension.ARMHOLE, 16, 6)));
        for (GradedSize size : run.sizes()) {
            double armhole = size.draft().dimensions().get(Dimension.ARMHOLE);
            assertEquals(0.03 * armhole, size.draft().capEase().orElseThrow(), 1e-6);
        }
    }

    @Test
    void namesEverySizeThatCannotBeDrafted() {
        InvalidMeasuresException stopped = assertThrows(
                InvalidMeasuresException.class,
                () -> SizeRun.grade(GOWN, BASE, LABELS, 2, List.of(GradeRule.uniform(Dimension.CAP_HEIGHT, 48, 6))));
        assertTrue(stopped.violations().stream().anyMatch(v -> v.size().equals(java.util.Optional.of("36"))));
        assertTrue(stopped.violations().stream().allMatch(v -> v.least().isPresent()));
    }

    /** Width and length of an elbow dart are among the parts that do not grow (Making Fashion blog, "Grading contd", 2008-06-01). */
    @Test
    void elbowDartKeepsItsMeasuresAndItsPointsAreGraded() {
        SizeRun run = shaped(ElbowShaping.ELBOW_DART, BASE.with(Dimension.ELBOW_DART_LENGTH, 75));
        SpecTable table = SpecTable.of(run);
        for (int i = 0; i < LABELS.size(); i++) {
            assertEquals(20, row(table, "elbowDart").values().get(i), 1e-9);
            assertEquals(75, row(table, "elbowDartLength").values().get(i), 1e-9);
            assertEquals(
                    run.sizes().get(i).draft().dimensions().get(Dimension.LENGTH),
                    row(table, "length").values().get(i),
                    1e-9);
        }
        List<GradePoint> points = GradePoints.of(run, Alignment.FOLD_AND_BICEP_LINE);
        for (String name : List.of("dart point", "dart fold", "dart lower end", "back elbow", "back wrist")) {
            GradePoint point = points.stream()
                    .filter(p -> p.part().equals("underSleeve") && p.name().equals(name))
                    .findFirst()
                    .orElseThrow();
            assertEquals(Point.ORIGIN, point.deltas().get(2));
            assertTrue(point.deltas().get(3).norm() > 0.1, name);
        }
    }

    @Test
    void easeOfTheBackSeamIsMeasuredAndKept() {
        Dimensions dimensions = BASE.with(Dimension.ELBOW_EASE, 12).with(Dimension.HAND_GIRTH, 230);
        SpecTable table = SpecTable.of(shaped(ElbowShaping.EASED_SEAM, dimensions));
        for (int i = 0; i < LABELS.size(); i++) {
            assertEquals(12, row(table, "elbowEase").values().get(i), 1e-6);
            assertEquals(30, row(table, "wristOpening").values().get(i), 1e-9, "half of 230 less 190, and 10 mm more");
        }
    }

    private static SizeRun shaped(ElbowShaping shaping, Dimensions dimensions) {
        return SizeRun.grade(
                new SleeveStyle(GOWN.fit(), GOWN.overlay(), Optional.of(new UnderSleeveStyle(shaping))),
                dimensions,
                LABELS,
                2,
                List.of(
                        GradeRule.uniform(Dimension.BICEP, 12, 6),
                        GradeRule.uniform(Dimension.LENGTH, 5, 6),
                        GradeRule.uniform(Dimension.CAP_HEIGHT, 4, 6),
                        GradeRule.uniform(Dimension.ELBOW, 8, 6)));
    }
}
