package org.capwright.words;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;

/**
 * Reads a catalogue in the PO form of GNU gettext: {@code msgid "English"}, {@code msgstr "translation"}, each over as many quoted lines as it needs. Comments, and what is not translated yet, are passed over.
 * Contexts and plural forms are not used here; a test has the file judged by gettext itself.
 */
final class Catalogue {

    private final Map<String, String> texts = new HashMap<>();
    private final StringBuilder english = new StringBuilder();
    private final StringBuilder translated = new StringBuilder();
    private StringBuilder open = english;

    private Catalogue() {}

    static Optional<Map<String, String>> find(String code) {
        try (InputStream in = Catalogue.class.getResourceAsStream(code + ".po")) {
            return in == null ? Optional.empty() : Optional.of(read(in));
        } catch (IOException e) {
            throw new UncheckedIOException("the catalogue " + code, e);
        }
    }

    static Map<String, String> read(InputStream in) throws IOException {
        Catalogue catalogue = new Catalogue();
        BufferedReader lines = new BufferedReader(new InputStreamReader(in, StandardCharsets.UTF_8));
        for (String line = lines.readLine(); line != null; line = lines.readLine()) {
            catalogue.take(line.strip());
        }
        catalogue.close();
        return Map.copyOf(catalogue.texts);
    }

    private void take(String line) {
        if (line.startsWith("msgid ")) {
            close();
            open = english;
        } else if (line.startsWith("msgstr ")) {
            open = translated;
        } else if (!line.startsWith("\"")) {
            return;
        }
        open.append(unquoted(line.substring(line.indexOf('"') + 1, line.lastIndexOf('"'))));
    }

    private void close() {
        if (!english.isEmpty() && !translated.isEmpty()) {
            texts.put(english.toString(), translated.toString());
        }
        english.setLength(0);
        translated.setLength(0);
    }

    private static String unquoted(String quoted) {
        return quoted.replace("\\\"", "\"").replace("\\n", "\n").replace("\\\\", "\\");
    }
}
