package org.capwright.tables;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.capwright.quantity.Unit;

/**
 * Reads the data files: lines {@code # name: text} about the table, then CSV lines {@code size,dimension,value,lower,
 * upper,provenance} in the published unit. A broken file is a fault of the build, not of a caller.
 */
final class TableFile {

    private static final CSVFormat FORMAT =
            CSVFormat.RFC4180.builder().setHeader().setSkipHeaderRecord(true).get();

    private final Map<String, String> about = new LinkedHashMap<>();
    private final Map<String, String> labels = new LinkedHashMap<>();
    private final Map<String, Integer> people = new LinkedHashMap<>();
    private final Map<String, Double> tolerances = new LinkedHashMap<>();
    private final List<String> notes = new ArrayList<>();

    private TableFile() {}

    static List<String> ids() {
        try (BufferedReader lines = open("data/tables.txt")) {
            return lines.lines().filter(line -> !line.isBlank()).toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    static SizeTable read(String id) {
        try (BufferedReader lines = open("data/" + id + ".csv")) {
            return new TableFile().table(lines);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static BufferedReader open(String name) throws IOException {
        InputStream stream = TableFile.class.getResourceAsStream(name);
        if (stream == null) {
            throw new IOException("missing data file " + name);
        }
        return new BufferedReader(new InputStreamReader(stream, StandardCharsets.UTF_8));
    }

    private SizeTable table(BufferedReader lines) throws IOException {
        lines.mark(1 << 16);
        String line = lines.readLine();
        while (line != null && line.startsWith("# ")) {
            metadata(line.substring(2));
            lines.mark(1 << 16);
            line = lines.readLine();
        }
        lines.reset();
        Unit unit = Unit.find(text("unit").toLowerCase(Locale.ROOT)).orElseThrow();
        List<String> sizes = new ArrayList<>();
        Map<TableDimension, Map<String, TableValue>> values = new LinkedHashMap<>();
        Map<TableDimension, Map<String, Interval>> limits = new LinkedHashMap<>();
        try (CSVParser parser = FORMAT.parse(lines)) {
            for (CSVRecord row : parser) {
                String size = row.get("size");
                if (!sizes.contains(size)) {
                    sizes.add(size);
                }
                TableDimension dimension = dimension(row.get("dimension"));
                TableValue value = new TableValue(
                        unit.toMillimetres(new BigDecimal(row.get("value"))),
                        Provenance.valueOf(row.get("provenance")));
                if (values.computeIfAbsent(dimension, d -> new LinkedHashMap<>())
                                .put(size, value)
                        != null) {
                    throw new IOException("value given twice: " + text("id") + " " + size + " " + dimension.id());
                }
                if (!row.get("lower").isEmpty()) {
                    Interval interval = new Interval(
                            unit.toMillimetres(new BigDecimal(row.get("lower"))),
                            unit.toMillimetres(new BigDecimal(row.get("upper"))));
                    limits.computeIfAbsent(dimension, d -> new LinkedHashMap<>())
                            .put(size, interval);
                }
            }
        }
        List<Row> rows = new ArrayList<>();
        values.forEach((dimension, bySize) -> {
            Double tolerance = tolerances.get(dimension.id());
            rows.add(new Row(
                    dimension,
                    bySize,
                    limits.getOrDefault(dimension, Map.of()),
                    tolerance == null ? OptionalDouble.empty() : OptionalDouble.of(unit.toMillimetres(tolerance))));
        });
        return new SizeTable(info(unit), sizes, labels, people, rows);
    }

    private void metadata(String line) throws IOException {
        int colon = line.indexOf(": ");
        if (colon < 0) {
            throw new IOException("metadata without a colon: " + line);
        }
        String name = line.substring(0, colon);
        String text = line.substring(colon + 2);
        int equals = text.indexOf(" = ");
        switch (name) {
            case "note" -> notes.add(text);
            case "label" -> labels.put(text.substring(0, equals), text.substring(equals + 3));
            case "people" -> people.put(text.substring(0, equals), Integer.valueOf(text.substring(equals + 3)));
            case "tolerance" -> tolerances.put(text.substring(0, equals), Double.valueOf(text.substring(equals + 3)));
            default -> about.put(name, text);
        }
    }

    private TableInfo info(Unit unit) throws IOException {
        String key = text("key");
        Optional<BodyDimension> keyDimension = BodyDimension.find(key);
        if (keyDimension.isEmpty() && !key.equals("none")) {
            throw new IOException("unknown key " + key);
        }
        return new TableInfo(
                text("id"),
                text("title"),
                text("source"),
                text("licence"),
                text("read from"),
                Confidence.valueOf(text("confidence")),
                text("figure type"),
                text("population"),
                unit,
                TableKind.valueOf(text("kind")),
                Statistic.valueOf(text("statistic")),
                keyDimension,
                notes);
    }

    private String text(String name) throws IOException {
        String text = about.get(name);
        if (text == null || text.isBlank()) {
            throw new IOException("metadata missing: " + name);
        }
        return text;
    }

    private static TableDimension dimension(String id) throws IOException {
        return TableDimension.find(id).orElseThrow(() -> new IOException("unknown dimension " + id));
    }
}
