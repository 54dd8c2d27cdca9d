package org.capwright.tables.survey;

import static org.junit.jupiter.api.Assertions.assertEquals;

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
}
