package org.capwright.exchange.table;

import java.io.IOException;
import java.io.StringReader;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.regex.Pattern;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.capwright.exchange.FileText;
import org.capwright.exchange.ForeignFile;
import org.capwright.exchange.ForeignInputException;
import org.capwright.words.Text;

/**
 * The cells of a delimited file, or of a sheet of a workbook.
 *
 * @param rows rows that hold something
 * @param columns the greatest number of cells in a row
 * @param delimiter tab, bar, semicolon or comma; a blank where two or more of them part the cells
 * @param encoding name of the encoding it was read in
 */
public record CsvGrid(List<Row> rows, int columns, char delimiter, String encoding) {

    static final int MOST_LINES = 5000;
    static final int MOST_COLUMNS = 256;
    static final int LONGEST_CELL = 2000;

    private static final int SAMPLE = 200;

    /** Two blanks or more between cells, of which no comma stands at either end; or before the first. */
    private static final Pattern APART = Pattern.compile("(?<=[^\\s,])[ \u00a0]{2,}(?=[^\\s,])");

    private static final Pattern WIDE =
            Pattern.compile("(?<=\\S)[ \u00a0]{2,}(?=\\S)|^[ \u00a0]{2,}(?=\\S)", Pattern.MULTILINE);

    /**
     * A row.
     *
     * @param line the line of the file that it begins on, the first is 1
     * @param cells its cells, without space around them
     */
    public record Row(int line, List<String> cells) {

        /**
         * The cell of a column.
         *
         * @param column the first is 0
         * @return its text; blank beyond the end of the row
         */
        public String cell(int column) {
            return column < cells.size() ? cells.get(column) : "";
        }
    }

    /**
     * Cuts a file into cells.
     *
     * @param file delimited text
     * @return its cells
     * @throws ForeignInputException if it is no text, holds no table, or has more lines, columns or longer cells than are read
     */
    public static CsvGrid of(ForeignFile file) throws ForeignInputException {
        FileText read = FileText.of(file);
        String text = read.text().replace("\u001a", "");
        limitLines(file, text);
        boolean spaced = isSpaced(text);
        char delimiter = spaced ? ' ' : delimiter(text);
        List<Row> rows = spaced
                ? even(file, parse(file, WIDE.matcher(text).replaceAll("\t"), '\t'))
                : parse(file, text, delimiter);
        if (rows.isEmpty()) {
            throw new ForeignInputException(file.name(), 0, Text.of("the file holds no table"));
        }
        return of(rows, delimiter, read.encoding());
    }

    static CsvGrid of(List<Row> rows, char delimiter, String encoding) {
        return new CsvGrid(
                rows, rows.stream().mapToInt(row -> row.cells.size()).max().orElse(0), delimiter, encoding);
    }

    /** Whether most lines are columns of a text, parted by two blanks or more and by nothing else. */
    private static boolean isSpaced(String text) {
        List<String> lines =
                text.lines().filter(line -> !line.isBlank()).limit(SAMPLE).toList();
        long spaced = lines.stream()
                .filter(line -> line.indexOf('\t') < 0
                        && line.indexOf('|') < 0
                        && line.indexOf(';') < 0
                        && line.indexOf('"') < 0
                        && APART.matcher(line).results().count() > 1)
                .count();
        return spaced > 1 && 5 * spaced >= 3 * lines.size();
    }

    /** Blanks show no empty cell: a row with another number of figures than the most would be read in the wrong columns. */
    private static List<Row> even(ForeignFile file, List<Row> rows) throws ForeignInputException {
        int most = rows.stream().mapToInt(row -> row.cells.size()).max().orElse(0);
        for (Row row : rows) {
            if (row.cells.size() > 2 && row.cells.size() < most) {
                throw new ForeignInputException(
                        file.name(),
                        row.line,
                        Text.of("blanks alone part the cells, and this line has {cells} of {most}; part them by tabs,"
                                        + " commas or semicolons")
                                .with("cells", row.cells.size())
                                .with("most", most));
            }
        }
        return rows;
    }

    private static void limitLines(ForeignFile file, String text) throws ForeignInputException {
        int lines = 1;
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            boolean end = c == '\n' || c == '\r' && !(i + 1 < text.length() && text.charAt(i + 1) == '\n');
            if (end && ++lines > MOST_LINES) {
                refuseLines(file, lines);
            }
        }
    }

    static void refuseLines(ForeignFile file, int line) throws ForeignInputException {
        throw new ForeignInputException(
                file.name(),
                line,
                Text.of("a spec table of more than {most} lines is not read").with("most", MOST_LINES));
    }

    private static List<Row> parse(ForeignFile file, String text, char delimiter) throws ForeignInputException {
        CSVFormat format = CSVFormat.RFC4180
                .builder()
                .setDelimiter(delimiter)
                .setIgnoreEmptyLines(false)
                .setTrailingData(true)
                .setLenientEof(false)
                .get();
        List<Row> rows = new ArrayList<>();
        long line = 1;
        try (CSVParser parser = CSVParser.parse(new StringReader(text), format)) {
            Iterator<CSVRecord> records = parser.iterator();
            while (records.hasNext()) {
                CSVRecord next = records.next();
                add(file, rows, next.toList(), (int) line);
                line = parser.getCurrentLineNumber() + 1;
            }
        } catch (IOException | UncheckedIOException | IllegalStateException e) {
            throw new ForeignInputException(
                    file.name(),
                    (int) line,
                    Text.of("a quoted cell that begins here is not ended, or its quotes are not doubled"));
        }
        return rows;
    }

    /** Adds a row of cells, if one of them holds something. */
    static void add(ForeignFile file, List<Row> rows, List<String> next, int line) throws ForeignInputException {
        if (next.size() > MOST_COLUMNS) {
            throw new ForeignInputException(
                    file.name(),
                    line,
                    Text.of("{count} cells in a row; at most {most} are read")
                            .with("count", next.size())
                            .with("most", MOST_COLUMNS));
        }
        List<String> cells = new ArrayList<>(next.size());
        boolean blank = true;
        for (String cell : next) {
            if (cell.length() > LONGEST_CELL) {
                throw new ForeignInputException(
                        file.name(),
                        line,
                        Text.of("a cell of {count} characters; at most {most} are read")
                                .with("count", cell.length())
                                .with("most", LONGEST_CELL));
            }
            String plain = narrow(cell).replace('\u00a0', ' ').strip();
            // A spreadsheet marks text by an apostrophe in front.
            plain = plain.length() > 1 && plain.charAt(0) == '\'' && plain.charAt(1) != '\''
                    ? plain.substring(1).strip()
                    : plain;
            // Or by a formula that is a text.
            plain = plain.startsWith("=\"") && plain.endsWith("\"") && plain.length() > 3
                    ? plain.substring(2, plain.length() - 1).strip()
                    : plain;
            blank &= plain.isEmpty();
            cells.add(plain);
        }
        if (!blank) {
            rows.add(new Row(line, List.copyOf(cells)));
        }
    }

    /** Full-width forms of East Asian typing as the ASCII signs that they are. */
    private static String narrow(String cell) {
        StringBuilder out = new StringBuilder(cell.length());
        for (int i = 0; i < cell.length(); i++) {
            char c = cell.charAt(i);
            out.append(c >= '\uff01' && c <= '\uff5e' ? (char) (c - 0xfee0) : c == '\u3000' ? ' ' : c);
        }
        return out.toString();
    }

    /**
     * The sign that parts the cells: tab, else bar, else semicolon, else comma, the first that stands in most of the lines; a decimal comma stands beside tabs or semicolons, hardly the
     * other way round.
     */
    private static char delimiter(String text) {
        char[] signs = {'\t', '|', ';', ','};
        int[] lines = new int[signs.length];
        boolean[] seen = new boolean[signs.length];
        boolean quoted = false;
        boolean some = false;
        int filled = 0;
        for (int i = 0; i <= text.length() && filled < SAMPLE; i++) {
            char c = i < text.length() ? text.charAt(i) : '\n';
            if (c == '"') {
                quoted = !quoted;
            } else if ((c == '\n' || c == '\r') && !quoted || i == text.length()) {
                filled += some ? 1 : 0;
                for (int k = 0; k < signs.length; k++) {
                    lines[k] += seen[k] ? 1 : 0;
                    seen[k] = false;
                }
                some = false;
            } else if (!quoted) {
                some |= c > ' ';
                for (int k = 0; k < signs.length; k++) {
                    seen[k] |= c == signs[k];
                }
            }
        }
        for (int k = 0; k < signs.length; k++) {
            if (lines[k] > 0 && 5 * lines[k] >= 3 * filled) {
                return signs[k];
            }
        }
        int best = signs.length - 1;
        for (int k = 0; k < signs.length; k++) {
            best = lines[k] > lines[best] ? k : best;
        }
        return signs[best];
    }
}
