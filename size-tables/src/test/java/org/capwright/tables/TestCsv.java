package org.capwright.tables;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.zip.GZIPInputStream;

/** A plain line splitter, so that the tests do not read data with the reader under test. */
public final class TestCsv {

    private TestCsv() {}

    /** Lines of a resource below org/capwright/tables as maps by header; gzip by its ending; # lines skipped. */
    public static List<Map<String, String>> read(String name) {
        InputStream found = Objects.requireNonNull(TestCsv.class.getResourceAsStream(name), name);
        try (InputStream stream = name.endsWith(".gz") ? new GZIPInputStream(found) : found;
                BufferedReader lines = new BufferedReader(new InputStreamReader(stream, StandardCharsets.UTF_8))) {
            List<Map<String, String>> rows = new ArrayList<>();
            String[] header = null;
            for (String line = lines.readLine(); line != null; line = lines.readLine()) {
                if (line.startsWith("#")) {
                    continue;
                }
                String[] cells = line.split(",", -1);
                if (header == null) {
                    header = cells;
                    continue;
                }
                Map<String, String> row = new LinkedHashMap<>();
                for (int i = 0; i < cells.length; i++) {
                    row.put(header[i], cells[i]);
                }
                rows.add(row);
            }
            return rows;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
