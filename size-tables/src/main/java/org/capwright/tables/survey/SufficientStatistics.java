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
 * Count, means, centred sums of products and extremes of a survey: all that least squares needs of it. Where the people are with the library they come from sums of whole millimetres and are
 * exact; else from the published means, standard deviations and correlations, to the digits of these.
 */
final class SufficientStatistics {

    static final String FILE = "statistics.csv";
    static final String SUMMARIES = "summaries.csv";
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
    private final double[] means;
    private final double[][] centred;
    private final double[] least;
    private final double[] greatest;

    private SufficientStatistics(int people, List<BodyDimension> dimensions) {
        int n = dimensions.size();
        this.people = people;
        this.dimensions = List.copyOf(dimensions);
        this.means = new double[n];
        this.centred = new double[n][n];
        this.least = new double[n];
        this.greatest = new double[n];
    }

    /** From the small files. */
    static SufficientStatistics of(Survey survey) {
        SufficientStatistics statistics = Holder.ALL.get(survey);
        if (statistics == null) {
            throw new IllegalStateException(FILE + " and " + SUMMARIES + " lack " + survey.id());
        }
        return statistics;
    }

    private static Map<Survey, SufficientStatistics> read() {
        try {
            List<CSVRecord> sums = records(FILE);
            List<CSVRecord> summaries = records(SUMMARIES);
            Map<Survey, SufficientStatistics> all = new EnumMap<>(Survey.class);
            for (Survey survey : Survey.values()) {
                List<CSVRecord> lines = survey.hasPeople() ? sums : summaries;
                all.put(
                        survey,
                        parse(lines.stream()
                                .filter(r -> r.get("survey").equals(survey.id()))
                                .toList()));
            }
            return all;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static List<CSVRecord> records(String file) throws IOException {
        try (InputStream stream = SufficientStatistics.class.getResourceAsStream(file)) {
            if (stream == null) {
                throw new IOException("missing data file " + file);
            }
            try (BufferedReader lines = new BufferedReader(new InputStreamReader(stream, StandardCharsets.UTF_8));
                    CSVParser parser = FORMAT.parse(lines)) {
                return parser.getRecords();
            }
        }
    }

    private static SufficientStatistics parse(List<CSVRecord> records) throws IOException {
        int people = 0;
        List<BodyDimension> dimensions = new ArrayList<>();
        for (CSVRecord line : records) {
            switch (line.get("statistic")) {
                case "people" -> people = Integer.parseInt(line.get("value"));
                case "sum", "mean" -> dimensions.add(dimension(line.get("first")));
                default -> {
                    // Needs the dimensions, in the second pass.
                }
            }
        }
        SufficientStatistics statistics = new SufficientStatistics(people, dimensions);
        long[] sums = new long[dimensions.size()];
        double[] deviations = new double[dimensions.size()];
        for (CSVRecord line : records) {
            String statistic = line.get("statistic");
            if (statistic.equals("sum")) {
                int first = dimensions.indexOf(dimension(line.get("first")));
                sums[first] = Long.parseLong(line.get("value"));
                statistics.means[first] = (double) sums[first] / people;
            } else if (statistic.equals("deviation")) {
                int first = dimensions.indexOf(dimension(line.get("first")));
                deviations[first] = Double.parseDouble(line.get("value"));
                statistics.centred[first][first] = (people - 1) * deviations[first] * deviations[first];
            }
        }
        for (CSVRecord line : records) {
            if (!line.get("statistic").equals("people")) {
                statistics.take(line, sums, deviations);
            }
        }
        return statistics;
    }

    private void take(CSVRecord line, long[] sums, double[] deviations) throws IOException {
        int first = dimensions.indexOf(dimension(line.get("first")));
        String value = line.get("value");
        switch (line.get("statistic")) {
            case "sum", "deviation" -> {
                // Taken in the first pass.
            }
            case "mean" -> means[first] = Double.parseDouble(value);
            case "least" -> least[first] = Double.parseDouble(value);
            case "greatest" -> greatest[first] = Double.parseDouble(value);
            case "product" -> {
                int second = dimensions.indexOf(dimension(line.get("second")));
                // Whole numbers, so nothing cancels: at most 2208 people of 2 m make 2208 x 2208 x 4e6 = 2e13, far
                // within 63 bits.
                put(first, second, (double) (people * Long.parseLong(value) - sums[first] * sums[second]) / people);
            }
            case "correlation" -> {
                int second = dimensions.indexOf(dimension(line.get("second")));
                put(first, second, Double.parseDouble(value) * (people - 1) * deviations[first] * deviations[second]);
            }
            default -> throw new IOException("unknown statistic " + line.get("statistic"));
        }
    }

    private void put(int first, int second, double product) {
        centred[first][second] = product;
        centred[second][first] = product;
    }

    private static BodyDimension dimension(String id) throws IOException {
        return BodyDimension.find(id).orElseThrow(() -> new IOException("unknown dimension " + id));
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
        return means[dimensions.indexOf(dimension)];
    }

    /** Sum of products of the deviations from the means. */
    double centredProduct(BodyDimension first, BodyDimension second) {
        return centred[dimensions.indexOf(first)][dimensions.indexOf(second)];
    }
}
