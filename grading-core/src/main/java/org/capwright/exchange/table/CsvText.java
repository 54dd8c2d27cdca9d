package org.capwright.exchange.table;

import org.capwright.quantity.FileBytes;

/** Writes text fields of comma-separated values by RFC 4180. */
public final class CsvText {

    private CsvText() {}

    /**
     * Writes a text field, in quotes where it needs them. A text that a spreadsheet would take for a formula is led by an apostrophe, so that a style name can
     * run nothing on the reader's machine.
     *
     * @param out where it goes, as UTF-8
     * @param raw the text
     */
    public static void field(FileBytes out, String raw) {
        String text = !raw.isEmpty() && "=+-@\t\r".indexOf(raw.charAt(0)) >= 0 ? "'" + raw : raw;
        if (holds(text, ',') || holds(text, '"') || holds(text, '\r') || holds(text, '\n')) {
            out.put('"');
            out.text(text.replace("\"", "\"\""));
            out.put('"');
        } else {
            out.text(text);
        }
    }

    /**
     * Writes a text field that is not the first of its line.
     *
     * @param out where it goes, after a comma
     * @param raw the text
     */
    public static void next(FileBytes out, String raw) {
        out.put(',');
        field(out, raw);
    }

    private static boolean holds(String text, char letter) {
        return text.indexOf(letter) >= 0;
    }
}
