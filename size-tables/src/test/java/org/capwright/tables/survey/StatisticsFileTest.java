package org.capwright.tables.survey;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.capwright.tables.BodyDimension;
import org.capwright.tables.TestCsv;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

class StatisticsFileTest {

    /** The small file is what the program computes from the per-person rows, byte for byte. */
    @Test
    void isWhatTheProgramComputesFromThePeople() throws IOException {
        String file;
        try (InputStream stream = Objects.requireNonNull(Survey.class.getResourceAsStream(SufficientStatistics.FILE))) {
            file = new String(stream.readAllBytes(), StandardCharsets.UTF_8);
        }
        PrintStream before = System.out;
        ByteArrayOutputStream printed = new ByteArrayOutputStream();
        try (PrintStream out = new PrintStream(printed, true, StandardCharsets.UTF_8)) {
            System.setOut(out);
            SurveyProgram.main(new String[0]);
        } finally {
            System.setOut(before);
        }
        assertEquals(printed.toString(StandardCharsets.UTF_8), file);
    }

    /** The same sums again from rows read by a plain line splitter. */
    @ParameterizedTest
    @EnumSource(Survey.class)
    void agreesWithSumsOverAnIndependentReading(Survey survey) {
        List<Map<String, String>> people = TestCsv.read("survey/" + survey.id() + ".csv.gz");
        SufficientStatistics statistics = survey.statistics();
        assertEquals(people.size(), survey.people());
        assertEquals(
                List.copyOf(people.get(0).keySet()),
                survey.dimensions().stream().map(BodyDimension::id).toList());
        for (BodyDimension a : survey.dimensions()) {
            double meanA = mean(people, a);
            assertEquals(meanA, statistics.mean(a), 1e-9 * meanA);
            var values = people.stream()
                    .mapToInt(p -> Integer.parseInt(p.get(a.id())))
                    .summaryStatistics();
            assertEquals(values.getMin(), survey.range(a).lower());
            assertEquals(values.getMax(), survey.range(a).upper());
            for (BodyDimension b : survey.dimensions()) {
                double meanB = mean(people, b);
                double product = people.stream()
                        .mapToDouble(p -> (Double.parseDouble(p.get(a.id())) - meanA)
                                * (Double.parseDouble(p.get(b.id())) - meanB))
                        .sum();
                assertEquals(product, statistics.centredProduct(a, b), 1e-9 * Math.abs(product) + 1e-6);
            }
        }
    }

    private static double mean(List<Map<String, String>> people, BodyDimension dimension) {
        return people.stream()
                .mapToDouble(p -> Double.parseDouble(p.get(dimension.id())))
                .average()
                .orElseThrow();
    }

    /** The plausible range of a measurement leaves a margin round everybody who was measured. */
    @ParameterizedTest
    @EnumSource(Survey.class)
    void plausibleRangesHoldEverybodyWithAMargin(Survey survey) {
        for (BodyDimension dimension : survey.dimensions()) {
            assertTrue(
                    dimension.plausible().lower()
                            < 0.85 * survey.range(dimension).lower(),
                    dimension.id());
            assertTrue(
                    dimension.plausible().upper()
                            > 1.15 * survey.range(dimension).upper(),
                    dimension.id());
        }
    }

    /** Source: extremes of the men of 1988 (NATICK/TR-89/044) and 2012 (NATICK/TR-15/007), in mm. */
    @ParameterizedTest
    @CsvSource({
        "stature, 1491, 2042",
        "bustGirth, 774, 1469",
        "upperArmGirth, 245, 453",
        "upperArmGirthFlexed, 246, 490",
        "elbowGirth, 219, 339",
        "forearmGirthFlexed, 233, 372",
        "wristGirth, 143, 204",
        "armscyeGirth, 358, 553",
        "scyeDepth, 166, 284",
        "upperArmLength, 270, 415",
        "armLength, 481, 745",
    })
    void plausibleRangesHoldTheMenWithAMargin(String id, double least, double greatest) {
        BodyDimension dimension = BodyDimension.find(id).orElseThrow();
        assertTrue(dimension.plausible().lower() < 0.85 * least);
        assertTrue(dimension.plausible().upper() > 1.1 * greatest);
    }
}
