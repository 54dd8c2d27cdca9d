package org.capwright.tables;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.apache.commons.math3.stat.regression.SimpleRegression;
import org.junit.jupiter.api.Test;

/**
 * How much an arm grows from one size to the next: the standard's bust step times the survey's growth of the arm.
 *
 * <p>Sources: EN 13402-3:2004 (classes of 40 mm of bust up to 102 cm); ANSUR 1988, NATICK/TR-89/044, and ANSUR II 2012,
 * NATICK/TR-15/007 (growth); GOST 12.4.111-82 (cross-check on a finished sleeve).
 */
class BodyGrowthTest {

    private static double slope(String survey, String response, String predictor) {
        SimpleRegression regression = new SimpleRegression();
        TestCsv.read("survey/" + survey + ".csv.gz")
                .forEach(person -> regression.addData(
                        Double.parseDouble(person.get(predictor)), Double.parseDouble(person.get(response))));
        return regression.getSlope();
    }

    /** The classes of EN 13402-3 from 74 to 102 cm. */
    private static double bustStep() {
        List<Increment> steps =
                SizeTables.find("en-13402-3-women-bust-classes").orElseThrow().increments(BodyDimension.BUST_GIRTH);
        for (Increment step : steps.subList(0, 6)) {
            assertEquals(40, step.millimetres(), 1e-9);
        }
        return steps.get(0).millimetres();
    }

    @Test
    void upperArmGrowsByElevenToTwelvePointThreeMillimetresPerClass() {
        double step = bustStep();
        double relaxed1988 = step * slope("ansur-1988-women", "upperArmGirth", "bustGirth");
        double flexed2012 = step * slope("ansur-2012-women", "upperArmGirthFlexed", "bustGirth");
        // Stated by the summaries of the surveys: 12.32 mm relaxed in 1988, 11.10 mm flexed in 2012.
        assertEquals(12.32, relaxed1988, 0.005);
        assertEquals(11.10, flexed2012, 0.005);
        for (double growth : new double[] {relaxed1988, flexed2012}) {
            assertTrue(growth >= 11 && growth <= 12.35, "growth " + growth);
        }
    }

    /** The table's own class means must tell the same story as the fit through all the people. */
    @Test
    void meanIncrementOfTheWomensTableAgreesWithTheFit() {
        SizeTable table = SizeTables.find("women-en-13402-3-bust").orElseThrow();
        List<Increment> steps = table.increments(BodyDimension.UPPER_ARM_GIRTH).subList(0, 6);
        double mean =
                steps.stream().mapToDouble(Increment::millimetres).average().orElseThrow();
        assertEquals((320.1 - 247.6) / 6, mean, 1e-9);
        assertTrue(mean >= 11 && mean <= 12.35, "mean " + mean);
    }

    @Test
    void armLengthGrowsByTwentyNineMillimetresPerEightyOfStatureAndHardlyWithTheBust() {
        for (String survey : List.of("ansur-1988-women", "ansur-2012-women")) {
            assertEquals(29.15, 80 * slope(survey, "armLength", "stature"), 0.05, survey);
            assertTrue(40 * slope(survey, "armLength", "bustGirth") < 3.5, survey);
        }
        // The class means, a statistic of their own, agree within what their sampling noise allows.
        for (String id : List.of("ansur-1988-women-by-stature", "ansur-2012-women-by-stature")) {
            SizeTable table = SizeTables.find(id).orElseThrow();
            for (Increment step : table.increments(BodyDimension.ARM_LENGTH)) {
                assertEquals(25.5, step.millimetres(), 3.5, step.toString());
            }
        }
    }

    /**
     * GOST 12.4.111-82, a men's jacket: sleeve top +16 mm flat, so 32 mm round, per 80 mm of chest, or 16 mm round per
     * 40 mm. That is more than the arm's own growth, 12.3 mm for the women and 13.0 mm for the men of 1988: the ease of a
     * finished sleeve grows with the size. Sleeve length +30 mm per 120 mm of height, or 20 mm per 80 mm: less than the
     * arm's 29 mm.
     */
    @Test
    void finishedSleeveOfGostGrowsFasterThanTheArmInGirthAndSlowerInLength() {
        double girthPer40 = SizeTables.find("gost-12-4-111-82-jacket-by-chest")
                        .orElseThrow()
                        .increments(GarmentDimension.SLEEVE_WIDTH_TOP_HALF)
                        .get(0)
                        .millimetres()
                * 2
                / 80
                * 40;
        assertEquals(16, girthPer40, 1e-9);
        assertTrue(girthPer40 > 40 * slope("ansur-1988-women", "upperArmGirth", "bustGirth"));
        assertTrue(girthPer40 > menOf1988("upperArmGirth", "bustGirth", 40));
        double lengthPer80 = SizeTables.find("gost-12-4-111-82-jacket-by-height")
                        .orElseThrow()
                        .increments(GarmentDimension.SLEEVE_LENGTH)
                        .get(0)
                        .millimetres()
                / 120
                * 80;
        assertEquals(20, lengthPer80, 1e-9);
        assertTrue(lengthPer80 < 80 * slope("ansur-1988-women", "armLength", "stature"));
        assertTrue(lengthPer80 < menOf1988("armLength", "stature", 80));
    }

    /** The growth of the men, of whom only the summary of the fit is kept. */
    private static double menOf1988(String response, String predictor, double step) {
        return TestCsv.read("survey/published-regressions.csv").stream()
                .filter(fit -> fit.get("survey").equals("ansur-1988-men")
                        && fit.get("response").equals(response)
                        && fit.get("predictor").equals(predictor))
                .mapToDouble(fit -> step * Double.parseDouble(fit.get("slope")))
                .findFirst()
                .orElseThrow();
    }
}
