package org.capwright.grade.derive;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.capwright.check.ChoirGown;
import org.capwright.draft.StyleSpace;
import org.capwright.grade.GradeRule;
import org.capwright.grade.SizeRun;
import org.capwright.measure.Dimension;
import org.capwright.measure.Dimensions;
import org.capwright.measure.SleeveSubject;
import org.capwright.quantity.InvalidMeasuresException;
import org.capwright.quantity.Rounding;
import org.capwright.tables.BodyDimension;
import org.capwright.tables.SizeTable;
import org.capwright.tables.SizeTables;
import org.capwright.tables.survey.Survey;
import org.junit.jupiter.api.Test;

/** Body figures: ANSUR 1988 women (NATICK/TR-89/044) by bust class of EN 13402-3:2004; upper arm of 36 to 46: 270.9, 283.3, 294.5, 307.4, 320.1, 333.9 mm. */
class DerivedRulesTest {

    private static final Rounding MILLIMETRE = new Rounding(1);
    private static final Rounding EIGHTH = new Rounding(25.4 / 8);
    private static final Rounding FINE = new Rounding(1e-6);

    private static DerivationRequest gown(BodySource bodies, EasePolicy ease, LengthPolicy length, Rounding grid) {
        return new DerivationRequest(
                bodies, ChoirGown.LABELS, 2, ChoirGown.BASE, ease, length, DerivationRequest.CapEaseKept.LENGTH, grid);
    }

    private static List<Double> increments(DerivedRules rules, Dimension dimension) {
        return rules.rules().stream()
                .filter(r -> r.dimension() == dimension)
                .findFirst()
                .orElseThrow()
                .increments();
    }

    private static void assertIncrements(double[] expected, List<Double> actual, double tolerance) {
        assertEquals(expected.length, actual.size());
        for (int i = 0; i < expected.length; i++) {
            assertEquals(expected[i], actual.get(i), tolerance, "interval " + i);
        }
    }

    private static BodySource women() {
        return new BodySource.OfTable(ChoirGown.women());
    }

    @Test
    void constantEaseGrowsAsTheArm() {
        DerivedRules rules = DerivedRules.of(gown(women(), new EasePolicy.Constant(), new LengthPolicy.Held(), FINE));
        assertIncrements(new double[] {12.4, 11.2, 12.9, 12.7, 13.8}, increments(rules, Dimension.BICEP), 2e-6);
        assertTrue(rules.rules().stream().noneMatch(r -> r.dimension() == Dimension.LENGTH));
    }

    @Test
    void percentKeepsTheRatioAndGrowingAddsToEverySize() {
        DerivedRules percent =
                DerivedRules.of(gown(women(), new EasePolicy.Percent(), new LengthPolicy.Stated(5), FINE));
        double ratio = 360 / 294.5;
        assertIncrements(
                new double[] {12.4 * ratio, 11.2 * ratio, 12.9 * ratio, 12.7 * ratio, 13.8 * ratio},
                increments(percent, Dimension.BICEP),
                2e-6);
        assertIncrements(new double[] {5, 5, 5, 5, 5}, increments(percent, Dimension.LENGTH), 2e-6);
        DerivedRules growing =
                DerivedRules.of(gown(women(), new EasePolicy.Growing(2), new LengthPolicy.AsTheArm(), FINE));
        assertIncrements(new double[] {14.4, 13.2, 14.9, 14.7, 15.8}, increments(growing, Dimension.BICEP), 2e-6);
        // Arm length of the table: 541.4, 546.3, 550.0, 550.4, 554.0, 551.6.
        assertIncrements(new double[] {4.9, 3.7, 0.4, 3.6, -2.4}, increments(growing, Dimension.LENGTH), 2e-6);
    }

    /** Cap height follows from the solver: the ease of the base size in every size, within what the grid leaves. */
    @Test
    void capHeightKeepsTheCapEase() {
        for (Rounding grid : List.of(FINE, MILLIMETRE, EIGHTH)) {
            DerivedRules rules =
                    DerivedRules.of(gown(women(), new EasePolicy.Constant(), new LengthPolicy.Held(), grid));
            SizeRun run = SizeRun.grade(ChoirGown.STYLE, ChoirGown.BASE, ChoirGown.LABELS, 2, rules.rules());
            double ease = run.baseSize().draft().capEase().orElseThrow();
            for (var size : run.sizes()) {
                // Cap line per cap height is below 2; half a grid step of cap height is all that is lost.
                assertEquals(ease, size.draft().capEase().orElseThrow(), grid.step() + 1e-4, size.label());
            }
        }
    }

    @Test
    void riseAndGapsGrowInProportion() {
        DerivedRules rules = DerivedRules.of(gown(women(), new EasePolicy.Constant(), new LengthPolicy.Held(), FINE));
        List<Double> bicep = increments(rules, Dimension.BICEP);
        List<Double> armhole = increments(rules, Dimension.ARMHOLE);
        for (int k = 0; k < 5; k++) {
            assertEquals(
                    bicep.get(k) * 140 / 360, increments(rules, Dimension.RISE).get(k), 3e-6);
            assertEquals(
                    armhole.get(k) * 60 / 450,
                    increments(rules, Dimension.FRONT_GAP).get(k),
                    3e-6);
        }
    }

    /** Rounding the growth from the base size, not each increment, keeps every size within half a grid step; increments are on the grid. */
    @Test
    void neverErrsByMoreThanHalfAGridStep() {
        SizeTable table = SizeTables.find("ansur-1988-women-by-bust").orElseThrow();
        int drifted = 0;
        for (long seed = 1; seed <= 400; seed++) {
            Random random = new Random(seed);
            int first = random.nextInt(4);
            int count = 3 + random.nextInt(9 - first - 2);
            List<String> sizes = table.sizes().subList(first, Math.min(9, first + count));
            Rounding grid = List.of(MILLIMETRE, EIGHTH, new Rounding(5), new Rounding(0.5))
                    .get(random.nextInt(4));
            EasePolicy ease = List.of(
                            new EasePolicy.Constant(),
                            new EasePolicy.Percent(),
                            new EasePolicy.Growing(StyleSpace.between(random, 0, 4)))
                    .get(random.nextInt(3));
            int base = random.nextInt(sizes.size());
            Dimensions dimensions = Dimensions.of(Map.of(
                    Dimension.BICEP, StyleSpace.between(random, 320, 400),
                    Dimension.ELBOW, StyleSpace.between(random, 260, 320),
                    Dimension.WRIST, StyleSpace.between(random, 170, 240),
                    Dimension.LENGTH, 600.0));
            DerivedRules rules = DerivedRules.of(new DerivationRequest(
                    new BodySource.OfTable(table),
                    sizes,
                    base,
                    dimensions,
                    ease,
                    new LengthPolicy.AsTheArm(),
                    DerivationRequest.CapEaseKept.SHARE,
                    grid));
            for (int r = 0; r < rules.rules().size(); r++) {
                GradeRule rule = rules.rules().get(r);
                Derivation derivation = rules.derivations().get(r);
                double increment = 0;
                for (int i = 0; i < sizes.size(); i++) {
                    double value = rule.apply(dimensions.get(rule.dimension()), base, i);
                    double exact = dimensions.get(rule.dimension())
                            + derivation.exact().get(i);
                    assertTrue(
                            Math.abs(value - exact) <= grid.step() / 2 + 1e-6,
                            "seed " + seed + " " + rule.dimension() + " size " + sizes.get(i));
                    double steps = derivation.rounded().get(i) / grid.step();
                    assertEquals(Math.rint(steps), steps, 1e-9, "seed " + seed);
                    if (i > base) {
                        increment += grid.round(
                                derivation.exact().get(i) - derivation.exact().get(i - 1));
                        drifted += Math.abs(increment - derivation.exact().get(i)) > grid.step() / 2 + 1e-6 ? 1 : 0;
                    }
                }
            }
        }
        assertTrue(drifted > 100, "rounding each increment would not have drifted; the property shows nothing");
    }

    @Test
    void gapsStayGapsAndAreNamed() {
        List<String> sizes = List.of("98-102", "102-107", "107-113", "113-119");
        DerivationRequest request = new DerivationRequest(
                women(),
                sizes,
                0,
                ChoirGown.BASE,
                new EasePolicy.Constant(),
                new LengthPolicy.Held(),
                DerivationRequest.CapEaseKept.LENGTH,
                MILLIMETRE);
        InvalidMeasuresException stopped = assertThrows(InvalidMeasuresException.class, () -> DerivedRules.of(request));
        assertEquals(
                List.of(
                        new SleeveSubject.GradeOf(Dimension.BICEP),
                        new SleeveSubject.GradeOf(Dimension.ARMHOLE),
                        new SleeveSubject.GradeOf(Dimension.ELBOW),
                        new SleeveSubject.GradeOf(Dimension.WRIST)),
                stopped.violations().stream().map(v -> v.subject()).toList());
        assertTrue(stopped.violations().get(0).reason().toString().contains("107-113, 113-119"));
    }

    /** Asked for, the survey's line continues the table: 12.32 mm of upper arm per 40 mm of bust (ANSUR 1988). */
    @Test
    void aSurveyFillsGapsWhenAsked() {
        List<String> sizes = List.of("98-102", "102-107", "107-113", "113-119");
        DerivedRules rules = DerivedRules.of(new DerivationRequest(
                new BodySource.OfTableAndSurvey(ChoirGown.women(), Survey.ANSUR_1988_WOMEN),
                sizes,
                0,
                ChoirGown.BASE,
                new EasePolicy.Constant(),
                new LengthPolicy.Held(),
                DerivationRequest.CapEaseKept.LENGTH,
                FINE));
        List<Double> bicep = increments(rules, Dimension.BICEP);
        assertEquals(13.8, bicep.get(0), 2e-6);
        assertEquals(12.32 * 55 / 40, bicep.get(1), 0.01);
        assertEquals(12.32 * 60 / 40, bicep.get(2), 0.01);
        assertEquals(List.of("107-113", "113-119"), rules.derivations().get(0).estimated());
    }

    /** Arms of GOST 25295-2003, all of one stature: ANSUR 1988 on bust and stature, 0.31051 and -0.00477 mm per mm of bust (summary of the survey by numpy). */
    @Test
    void aTableWithoutArmsTakesThoseOfItsBustAndStature() {
        SizeTable gost = SizeTables.find("gost-25295-2003-women-outerwear").orElseThrow();
        DerivedRules rules = DerivedRules.of(new DerivationRequest(
                new BodySource.OfTableAndSurvey(gost, Survey.ANSUR_1988_WOMEN),
                List.of("44", "46", "48"),
                0,
                ChoirGown.BASE,
                new EasePolicy.Constant(),
                new LengthPolicy.AsTheArm(),
                DerivationRequest.CapEaseKept.LENGTH,
                FINE));
        increments(rules, Dimension.BICEP).forEach(jump -> assertEquals(0.31051 * 40, jump, 0.001));
        increments(rules, Dimension.LENGTH).forEach(jump -> assertEquals(-0.00477 * 40, jump, 0.001));
    }

    @Test
    void aSurveyAloneIsASourceToo() {
        DerivedRules rules = DerivedRules.of(gown(
                new BodySource.OfSurvey(
                        Survey.ANSUR_1988_WOMEN,
                        BodyDimension.BUST_GIRTH,
                        Map.of("36", 840.0, "38", 880.0, "40", 920.0, "42", 960.0, "44", 1000.0, "46", 1040.0)),
                new EasePolicy.Constant(),
                new LengthPolicy.Held(),
                FINE));
        increments(rules, Dimension.BICEP).forEach(jump -> assertEquals(12.32, jump, 0.005));
        increments(rules, Dimension.ELBOW).forEach(jump -> assertEquals(5.8, jump, 0.06));
        increments(rules, Dimension.WRIST).forEach(jump -> assertEquals(2.15, jump, 0.1));
    }

    @Test
    void whatIsDerivedPassesTheChecks() {
        List<String> stops = new ArrayList<>();
        for (Rounding grid : List.of(MILLIMETRE, EIGHTH)) {
            DerivedRules rules =
                    DerivedRules.of(gown(women(), new EasePolicy.Constant(), new LengthPolicy.Stated(5), grid));
            SizeRun run = ChoirGown.run(rules.rules());
            stops.addAll(ChoirGown.stops(run));
        }
        assertEquals(List.of(), stops);
    }
}
