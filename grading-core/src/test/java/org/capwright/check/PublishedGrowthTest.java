package org.capwright.check;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import org.capwright.grade.GradeRule;
import org.capwright.measure.Dimension;
import org.capwright.tables.BodyDimension;
import org.capwright.tables.GarmentDimension;
import org.capwright.tables.Increment;
import org.capwright.tables.SizeTable;
import org.capwright.tables.SizeTables;
import org.capwright.tables.survey.ConfidenceInterval;
import org.capwright.tables.survey.Survey;
import org.junit.jupiter.api.Test;

/**
 * The choir gown's rules against published standards and surveys. The rule: the garment's jump at the bicep is at least the body's, within the survey's interval, and at most the body's plus
 * the stated growth of ease.
 *
 * <p>Sources: EN 13402-3:2004, bust classes (step 40 mm up to 102 cm); ANSUR 1988 women, NATICK/TR-89/044; ANSUR II 2012 women, NATICK/TR-15/007; GOST 12.4.111-82, finished sleeves of
 * men's jackets, as a cross-check.
 */
class PublishedGrowthTest {

    private static double rule(Dimension dimension) {
        return ChoirGown.RULES.stream()
                .filter(r -> r.dimension() == dimension)
                .map(GradeRule::increments)
                .findFirst()
                .orElseThrow()
                .get(0);
    }

    private static double bustStep() {
        return table("en-13402-3-women-bust-classes")
                .increments(BodyDimension.BUST_GIRTH)
                .get(0)
                .millimetres();
    }

    private static SizeTable table(String id) {
        return SizeTables.find(id).orElseThrow();
    }

    /** EN 13402-3 step x growth of the upper arm: 12.32 mm relaxed (1988), 11.10 mm flexed (2012). */
    @Test
    void bicepGrowsAsTheArmOfBothSurveys() {
        ConfidenceInterval relaxed = Survey.ANSUR_1988_WOMEN
                .regression(BodyDimension.UPPER_ARM_GIRTH, BodyDimension.BUST_GIRTH)
                .growthOfMean(Map.of(BodyDimension.BUST_GIRTH, bustStep()), 0.95);
        ConfidenceInterval flexed = Survey.ANSUR_2012_WOMEN
                .regression(BodyDimension.UPPER_ARM_GIRTH_FLEXED, BodyDimension.BUST_GIRTH)
                .growthOfMean(Map.of(BodyDimension.BUST_GIRTH, bustStep()), 0.95);
        assertEquals(40, bustStep(), 1e-9);
        double bicep = rule(Dimension.BICEP);
        assertEquals(12, bicep, 0);
        for (ConfidenceInterval growth : List.of(relaxed, flexed)) {
            double ease = Threshold.BICEP_EASE_GROWTH.usual();
            assertTrue(bicep >= growth.interval().lower(), growth.toString());
            assertTrue(bicep <= growth.interval().upper() + ease, growth.toString());
        }
        // The table's own jumps, 11.2 to 13.8 mm, lie on both sides of it.
        List<Double> jumps =
                ChoirGown.women().select(ChoirGown.LABELS).increments(BodyDimension.UPPER_ARM_GIRTH).stream()
                        .map(Increment::millimetres)
                        .toList();
        assertEquals(11.2, jumps.stream().mapToDouble(j -> j).min().orElseThrow(), 1e-6);
        assertEquals(13.8, jumps.stream().mapToDouble(j -> j).max().orElseThrow(), 1e-6);
    }

    /** GOST 12.4.111-82: sleeve top +1.6 cm flat per 8 cm of chest, so 16 mm round per 40 mm. The usual growth of ease is what that leaves over the arm's growth, rounded up. */
    @Test
    void growthOfEaseIsThatOfTheGostSleeve() {
        double gost = table("gost-12-4-111-82-jacket-by-chest")
                        .increments(GarmentDimension.SLEEVE_WIDTH_TOP_HALF)
                        .get(0)
                        .millimetres()
                * 2
                * bustStep()
                / 80;
        assertEquals(16, gost, 1e-6);
        assertTrue(rule(Dimension.BICEP) <= gost);
        assertEquals(gost - 12.32, Threshold.BICEP_EASE_GROWTH.usual(), 0.5);
        double hem = table("gost-12-4-111-82-jacket-by-chest")
                        .increments(GarmentDimension.SLEEVE_WIDTH_HEM_HALF_TYPE_B)
                        .get(0)
                        .millimetres()
                * 2
                * bustStep()
                / 80;
        assertEquals(8, hem, 1e-6);
        assertEquals(hem - 2.1, Threshold.WRIST_EASE_GROWTH.usual(), 0.5);
        assertEquals((gost + hem) / 2 - 5.8, Threshold.ELBOW_EASE_GROWTH.usual(), 0.5);
    }

    /** Arm length: +3.1 to 3.4 mm per 40 mm of bust with the stature that comes with it, +29 mm per 80 mm of stature; GOST 12.4.111-82 sleeve +20 mm per 80 mm of height. */
    @Test
    void lengthGrowsAsTheArmAndNoMoreThanStated() {
        double length = rule(Dimension.LENGTH);
        for (Survey survey : Survey.values()) {
            ConfidenceInterval growth = survey.regression(BodyDimension.ARM_LENGTH, BodyDimension.BUST_GIRTH)
                    .growthOfMean(Map.of(BodyDimension.BUST_GIRTH, bustStep()), 0.95);
            assertTrue(length >= growth.interval().lower(), survey + " " + growth);
            assertTrue(length <= growth.interval().upper() + Threshold.LENGTH_GROWTH.usual(), survey + " " + growth);
            double byStature = survey.regression(BodyDimension.ARM_LENGTH, BodyDimension.STATURE)
                    .growthOfMean(Map.of(BodyDimension.STATURE, 80.0), 0.95)
                    .estimate();
            assertEquals(29.15, byStature, 0.1);
            // Five millimetres per size are the arm of a stature 14 mm greater: less than the 80 mm of a height class.
            assertEquals(13.7, length / byStature * 80, 0.2);
        }
        double gost = table("gost-12-4-111-82-jacket-by-height")
                        .increments(GarmentDimension.SLEEVE_LENGTH)
                        .get(0)
                        .millimetres()
                * 80
                / 120;
        assertEquals(20, gost, 1e-6);
        assertEquals(29.15 - gost, Threshold.LENGTH_SHORTFALL.usual(), 1);
    }

    /** Scye depth grows by 3.4 mm per 40 mm of bust (ANSUR 1988): the body behind the cap height. The ratio of cap height to bicep keeps that of the body, too. */
    @Test
    void capHeightGrowsAsTheDepthOfTheScye() {
        ConfidenceInterval depth = Survey.ANSUR_1988_WOMEN
                .regression(BodyDimension.SCYE_DEPTH, BodyDimension.BUST_GIRTH)
                .growthOfMean(Map.of(BodyDimension.BUST_GIRTH, bustStep()), 0.95);
        assertEquals(3.4, depth.estimate(), 0.06);
        double capHeight = rule(Dimension.CAP_HEIGHT);
        assertTrue(capHeight >= depth.interval().lower(), depth.toString());
        assertEquals(depth.estimate(), capHeight, 1);
        // In proportion to the bicep the cap would grow by 12 x 135 / 360 = 4.5 mm.
        assertEquals(12 * 135.0 / 360, capHeight, 1);
    }
}
