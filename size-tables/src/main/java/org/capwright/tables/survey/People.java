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
import java.util.zip.GZIPInputStream;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.capwright.tables.BodyDimension;
import org.jspecify.annotations.Nullable;

/** The per-person rows of a survey in whole millimetres, column by column; read when first asked for. */
final class People {

    private static final CSVFormat FORMAT =
            CSVFormat.RFC4180.builder().setHeader().setSkipHeaderRecord(true).get();
    private static final Map<Survey, People> LOADED = new EnumMap<>(Survey.class);

    private final List<BodyDimension> dimensions;
    private final short[][] columns;

    private People(List<BodyDimension> dimensions, short[][] columns) {
        this.dimensions = dimensions;
        this.columns = columns;
    }

    static People of(Survey survey) {
        synchronized (LOADED) {
            @Nullable People people = LOADED.get(survey);
            if (people == null) {
                people = read(survey);
                LOADED.put(survey, people);
            }
            return people;
        }
    }

    private static People read(Survey survey) {
        String name = survey.id() + ".csv.gz";
        try (InputStream stream = People.class.getResourceAsStream(name)) {
            if (stream == null) {
                throw new IOException("missing data file " + name);
            }
            try (BufferedReader lines = new BufferedReader(
                            new InputStreamReader(new GZIPInputStream(stream), StandardCharsets.US_ASCII));
                    CSVParser parser = FORMAT.parse(lines)) {
                List<BodyDimension> dimensions = new ArrayList<>();
                for (String header : parser.getHeaderNames()) {
                    dimensions.add(BodyDimension.find(header)
                            .orElseThrow(() -> new IOException("unknown dimension " + header + " in " + name)));
                }
                List<CSVRecord> rows = parser.getRecords();
                short[][] columns = new short[dimensions.size()][rows.size()];
                for (int person = 0; person < rows.size(); person++) {
                    for (int column = 0; column < columns.length; column++) {
                        columns[column][person] =
                                Short.parseShort(rows.get(person).get(column));
                    }
                }
                return new People(List.copyOf(dimensions), columns);
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    int count() {
        return columns[0].length;
    }

    List<BodyDimension> dimensions() {
        return dimensions;
    }

    /** One dimension of everybody, in millimetres. The caller must not write to it. */
    short[] column(BodyDimension dimension) {
        return columns[dimensions.indexOf(dimension)];
    }
}
