package org.capwright.tables.survey;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.LongSummaryStatistics;
import java.util.Map;
import java.util.Objects;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.capwright.tables.BodyDimension;
import org.capwright.tables.TestCsv;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

class StatisticsFileTest {

    private static final List<Survey> WITH_PEOPLE =
            Stream.of(Survey.values()).filter(Survey::hasPeople).toList();

    private static final Path WRITTEN = Path.of("target", SufficientStatistics.FILE);

    /** The small file is what the sums over the per-person rows give, byte for byte; the test leaves what it should be in {@code target}. */
    @Test
    void isWhatThePeopleGive() throws IOException {
        String file;
        try (InputStream stream = Objects.requireNonNull(Survey.class.getResourceAsStream(SufficientStatistics.FILE))) {
            file = new String(stream.readAllBytes(), StandardCharsets.UTF_8);
        }
        StringBuilder sums = new StringBuilder(
                "# Sums over the per-person rows beside this file, in mm and mm2; written by StatisticsFileTest.\n"
                        + "survey,statistic,first,second,value\n");
        for (Survey survey : WITH_PEOPLE) {
            append(sums, survey, People.of(survey));
        }
        Files.writeString(WRITTEN, sums);
        assertEquals(sums.toString(), file, "copy " + WRITTEN + " over the file");
    }

    private static void append(StringBuilder sums, Survey survey, People people) {
        Line line = (statistic, first, second, value) ->
                sums.append(String.join(",", survey.id(), statistic, first, second, Long.toString(value)) + "\n");
        line.add("people", "", "", people.count());
        List<BodyDimension> dimensions = people.dimensions();
        for (int a = 0; a < dimensions.size(); a++) {
            String first = dimensions.get(a).id();
            short[] column = people.column(dimensions.get(a));
            LongSummaryStatistics summary =
                    IntStream.range(0, column.length).mapToLong(i -> column[i]).summaryStatistics();
            line.add("sum", first, "", summary.getSum());
            line.add("least", first, "", summary.getMin());
            line.add("greatest", first, "", summary.getMax());
            for (BodyDimension second : dimensions.subList(a, dimensions.size())) {
                short[] other = people.column(second);
                long product = IntStream.range(0, column.length)
                        .mapToLong(i -> (long) column[i] * other[i])
                        .sum();
                line.add("product", first, second.id(), product);
            }
        }
    }

    private interface Line {
        void add(String statistic, String first, String second, long value);
    }

    /** The same sums again from rows read by a plain line splitter. */
    @ParameterizedTest
    @EnumSource(value = Survey.class, names = ".*_WOMEN", mode = EnumSource.Mode.MATCH_ALL)
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
    @EnumSource(value = Survey.class, names = ".*_WOMEN", mode = EnumSource.Mode.MATCH_ALL)
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
