package org.capwright.tables.survey;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.capwright.tables.BodyDimension;
import org.capwright.tables.Interval;

/**
 * Count, sums, sums of products and extremes of a survey: all that least squares needs of it. The measurements are whole
 * millimetres, so the sums are whole numbers and exact.
 */
final class SufficientStatistics {

    static final String FILE = "statistics.csv";
    private static final CSVFormat FORMAT = CSVFormat.RFC4180
            .builder()
            .setHeader()
            .setSkipHeaderRecord(true)
            .setCommentMarker('#')
            .get();

    private static final class Holder {
        static final Map<Survey, SufficientStatistics> ALL = read();
    }

    private final int people;
    private final List<BodyDimension> dimensions;
    private final long[] sums;
    private final long[][] products;
    private final int[] least;
    private final int[] greatest;

    private SufficientStatistics(int people, List<BodyDimension> dimensions) {
        int n = dimensions.size();
        this.people = people;
        this.dimensions = List.copyOf(dimensions);
        this.sums = new long[n];
        this.products = new long[n][n];
        this.least = new int[n];
        this.greatest = new int[n];
    }

    /** From the small file. */
    static SufficientStatistics of(Survey survey) {
        SufficientStatistics statistics = Holder.ALL.get(survey);
        if (statistics == null) {
            throw new IllegalStateException(FILE + " lacks " + survey.id());
        }
        return statistics;
    }

    private static Map<Survey, SufficientStatistics> read() {
        try (InputStream stream = SufficientStatistics.class.getResourceAsStream(FILE)) {
            if (stream == null) {
                throw new IOException("missing data file " + FILE);
            }
            try (BufferedReader lines = new BufferedReader(new InputStreamReader(stream, StandardCharsets.UTF_8));
                    CSVParser parser = FORMAT.parse(lines)) {
                List<CSVRecord> records = parser.getRecords();
                Map<Survey, SufficientStatistics> all = new EnumMap<>(Survey.class);
                for (Survey survey : Survey.values()) {
                    all.put(
                            survey,
                            parse(records.stream()
                                    .filter(r -> r.get("survey").equals(survey.id()))
                                    .toList()));
                }
                return all;
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static SufficientStatistics parse(List<CSVRecord> records) throws IOException {
        int people = 0;
        List<BodyDimension> dimensions = new ArrayList<>();
        for (CSVRecord line : records) {
            switch (line.get("statistic")) {
                case "people" -> people = Integer.parseInt(line.get("value"));
                case "sum" -> dimensions.add(dimension(line.get("first")));
                default -> {
                    // Needs the dimensions, in the second pass.
                }
            }
        }
        SufficientStatistics statistics = new SufficientStatistics(people, dimensions);
        for (CSVRecord line : records) {
            if (line.get("statistic").equals("people")) {
                continue;
            }
            int first = dimensions.indexOf(dimension(line.get("first")));
            long value = Long.parseLong(line.get("value"));
            switch (line.get("statistic")) {
                case "sum" -> statistics.sums[first] = value;
                case "least" -> statistics.least[first] = (int) value;
                case "greatest" -> statistics.greatest[first] = (int) value;
                case "product" -> {
                    int second = dimensions.indexOf(dimension(line.get("second")));
                    statistics.products[first][second] = value;
                    statistics.products[second][first] = value;
                }
                default -> throw new IOException("unknown statistic in " + FILE);
            }
        }
        return statistics;
    }

    private static BodyDimension dimension(String id) throws IOException {
        return BodyDimension.find(id).orElseThrow(() -> new IOException("unknown dimension " + id + " in " + FILE));
    }

    int people() {
        return people;
    }

    List<BodyDimension> dimensions() {
        return dimensions;
    }

    Interval range(BodyDimension dimension) {
        int i = dimensions.indexOf(dimension);
        return new Interval(least[i], greatest[i]);
    }

    double mean(BodyDimension dimension) {
        return (double) sums[dimensions.indexOf(dimension)] / people;
    }

    /**
     * Sum of products of the deviations from the means, (n sum(xy) - sum(x) sum(y)) / n. The difference is taken in whole
     * numbers, so nothing cancels: at most 2208 people of 2 m make 2208 x 2208 x 4e6 = 2e13, far within 63 bits.
     */
    double centredProduct(BodyDimension first, BodyDimension second) {
        int a = dimensions.indexOf(first);
        int b = dimensions.indexOf(second);
        return (double) (people * products[a][b] - sums[a] * sums[b]) / people;
    }
}
