package org.capwright.tables.survey;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;

/** Fits of other surveys, known by their summaries: the men of both army surveys and three studies of women. */
public final class PublishedFits {

    private static final String FILE = "published-regressions.csv";
    private static final String SOURCE = "# source: ";

    private PublishedFits() {}

    private static final class Holder {
        static final List<PublishedFit> ALL = read();
    }

    /**
     * All fits.
     *
     * @return an unmodifiable list in the order of the file
     */
    public static List<PublishedFit> all() {
        return Holder.ALL;
    }

    private static List<PublishedFit> read() {
        try (InputStream stream = PublishedFits.class.getResourceAsStream(FILE)) {
            if (stream == null) {
                throw new IOException("missing data file " + FILE);
            }
            try (BufferedReader lines = new BufferedReader(new InputStreamReader(stream, StandardCharsets.UTF_8))) {
                return parse(lines);
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static List<PublishedFit> parse(BufferedReader lines) throws IOException {
        Map<String, String> sources = new HashMap<>();
        StringBuilder csv = new StringBuilder();
        for (String line = lines.readLine(); line != null; line = lines.readLine()) {
            if (line.startsWith(SOURCE)) {
                int equals = line.indexOf(" = ");
                sources.put(line.substring(SOURCE.length(), equals), line.substring(equals + 3));
            } else if (!line.startsWith("#")) {
                csv.append(line).append('\n');
            }
        }
        List<PublishedFit> fits = new ArrayList<>();
        try (CSVParser parser = CSVParser.parse(
                csv.toString(),
                CSVFormat.RFC4180
                        .builder()
                        .setHeader()
                        .setSkipHeaderRecord(true)
                        .setRecordSeparator('\n')
                        .get())) {
            for (CSVRecord line : parser) {
                String source = sources.get(line.get("survey"));
                if (source == null) {
                    throw new IOException("no source for " + line.get("survey"));
                }
                fits.add(PublishedFit.parse(line.toMap(), source));
            }
        }
        return List.copyOf(fits);
    }
}
