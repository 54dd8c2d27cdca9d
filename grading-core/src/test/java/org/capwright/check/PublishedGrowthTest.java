package org.capwright.check;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import org.capwright.tables.BodyDimension;
import org.capwright.tables.GarmentDimension;
import org.capwright.tables.SizeTables;
import org.capwright.tables.TableDimension;
import org.capwright.tables.survey.Survey;
import org.junit.jupiter.api.Test;

/**
 * The usual limits, and what the checks say of a grade that grows as a published one does.
 *
 * <p>Sources: ANSUR 1988 women, NATICK/TR-89/044, per person (how an arm grows with bust and stature); GOST 12.4.111-82, finished sleeves of men's jackets (how much a sleeve grows); EN
 * 13402-3:2004, bust classes of 40 mm.
 */
class PublishedGrowthTest {

    private static final double BUST_STEP = 40;

    /** Growth of the arm, mm, with a step of one other dimension. */
    private static double arm(BodyDimension response, BodyDimension predictor, double step) {
        return Survey.ANSUR_1988_WOMEN
                .regression(response, predictor)
                .growthOfMean(Map.of(predictor, step), 0.95)
                .estimate();
    }

    /** The first increment of a finished sleeve, mm. */
    private static double sleeve(String table, TableDimension dimension) {
        return SizeTables.find(table).orElseThrow().increments(dimension).get(0).millimetres();
    }

    /** GOST gives half the sleeve, flat, per 80 mm of chest. */
    private static double round(GarmentDimension half) {
        return 2 * sleeve("gost-12-4-111-82-jacket-by-chest", half) * BUST_STEP / 80;
    }

    private static List<Finding> bicepGrowingBy(double jump) {
        double[] biceps =
                IntStream.range(0, 6).mapToDouble(i -> 360 + jump * (i - 2)).toArray();
        return CheckCases.alarms(new BodyJumpCheck(), CheckCases.gownWith(CheckedMeasure.BICEP, biceps)).stream()
                .filter(finding -> finding.subject().code().equals("bicep"))
                .toList();
    }

    /** The usual growth of ease is what the growth of the finished sleeve leaves over the arm's own, to the next half millimetre. */
    @Test
    void growthOfEaseIsThatOfAFinishedSleeve() {
        double top = round(GarmentDimension.SLEEVE_WIDTH_TOP_HALF);
        double hem = round(GarmentDimension.SLEEVE_WIDTH_HEM_HALF_TYPE_B);
        double upperArm = arm(BodyDimension.UPPER_ARM_GIRTH, BodyDimension.BUST_GIRTH, BUST_STEP);
        double elbow = arm(BodyDimension.ELBOW_GIRTH, BodyDimension.BUST_GIRTH, BUST_STEP);
        double wrist = arm(BodyDimension.WRIST_GIRTH, BodyDimension.BUST_GIRTH, BUST_STEP);
        assertEquals(top - upperArm, Threshold.BICEP_EASE_GROWTH.usual(), 0.5);
        assertEquals((top + hem) / 2 - elbow, Threshold.ELBOW_EASE_GROWTH.usual(), 0.5);
        assertEquals(hem - wrist, Threshold.WRIST_EASE_GROWTH.usual(), 0.5);
    }

    /** A finished sleeve lengthens by 30 mm per 120 mm of height, which is less than the arm does. */
    @Test
    void shortfallOfLengthIsThatOfAFinishedSleeve() {
        double sleeve = sleeve("gost-12-4-111-82-jacket-by-height", GarmentDimension.SLEEVE_LENGTH) * 80 / 120;
        double arm = arm(BodyDimension.ARM_LENGTH, BodyDimension.STATURE, 80);
        assertEquals(arm - sleeve, Threshold.LENGTH_SHORTFALL.usual(), 1);
    }

    @Test
    void aSleeveThatGrowsAsAPublishedOneRaisesNoAlarm() {
        assertEquals(List.of(), bicepGrowingBy(round(GarmentDimension.SLEEVE_WIDTH_TOP_HALF)));
    }

    @Test
    void aSleeveThatGrowsByAThirdMoreThanAPublishedOneIsCautioned() {
        List<Finding> found = bicepGrowingBy(round(GarmentDimension.SLEEVE_WIDTH_TOP_HALF) * 4 / 3);
        assertTrue(found.stream().anyMatch(finding -> finding.severity() == Severity.CAUTION), found.toString());
    }

    @Test
    void aSleeveThatGrowsByHalfOfTheArmIsStopped() {
        List<Finding> found =
                bicepGrowingBy(arm(BodyDimension.UPPER_ARM_GIRTH, BodyDimension.BUST_GIRTH, BUST_STEP) / 2);
        assertTrue(found.stream().anyMatch(finding -> finding.severity() == Severity.STOP), found.toString());
    }
}
