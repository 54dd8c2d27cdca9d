package org.capwright.exchange.table;

/** Writes text fields of comma-separated values by RFC 4180. */
public final class CsvText {

    private CsvText() {}

    /**
     * Appends a text field, in quotes where it needs them. A text that a spreadsheet would take for a formula is led by an apostrophe, so that a style name can
     * run nothing on the reader's machine.
     *
     * @param out where it is appended
     * @param raw the text
     */
    public static void field(StringBuilder out, String raw) {
        String text = !raw.isEmpty() && "=+-@\t\r".indexOf(raw.charAt(0)) >= 0 ? "'" + raw : raw;
        boolean quoted = false;
        for (int i = 0; i < text.length() && !quoted; i++) {
            char c = text.charAt(i);
            quoted = c == ',' || c == '"' || c == '\r' || c == '\n';
        }
        if (quoted) {
            out.append('"').append(text.replace("\"", "\"\"")).append('"');
        } else {
            out.append(text);
        }
    }
}
