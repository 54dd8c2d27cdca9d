package org.capwright.exchange.table;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import javax.xml.stream.XMLInputFactory;
import javax.xml.stream.XMLStreamConstants;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamReader;
import org.capwright.exchange.ForeignFile;
import org.capwright.exchange.ForeignInputException;
import org.capwright.words.Text;

/**
 * A workbook of ISO/IEC 29500 (.xlsx, .xlsm): the cells of its sheets as they are shown. Formulas are not computed, their stored results are read; macros, pictures and all else are passed over.
 * Nothing is unpacked beyond a limit, and no entity or document type is read.
 */
public final class Workbook {

    /** All parts together unpack to no more, bytes. */
    static final int MOST_UNPACKED = 20_000_000;

    private static final int MOST_PARTS = 2000;
    private static final int MOST_SHEETS = 100;
    private static final int BLOCK = 8192;

    /**
     * A sheet that is not empty.
     *
     * @param name its name
     * @param shown whether it is not hidden
     * @param grid its cells, as far as they were read
     * @param refused why it cannot be read to its end, if so
     */
    public record Sheet(String name, boolean shown, CsvGrid grid, Optional<ForeignInputException> refused) {}

    /** What of an element is of use, and what happens at each. */
    private interface Visitor {
        void visit(XMLStreamReader xml) throws XMLStreamException, ForeignInputException;
    }

    private final ForeignFile file;
    private final Map<String, byte[]> parts = new HashMap<>();
    private final List<String> texts = new ArrayList<>();
    private final List<CellFormat> formats = new ArrayList<>();

    private Workbook(ForeignFile file) {
        this.file = file;
    }

    /**
     * Reads a workbook.
     *
     * @param file its file
     * @return its sheets in their order, without empty ones
     * @throws ForeignInputException if it is no such workbook, is broken, or holds more than is unpacked
     */
    public static List<Sheet> sheets(ForeignFile file) throws ForeignInputException {
        Workbook book = new Workbook(file);
        try {
            book.unpack();
            return book.read();
        } catch (IOException | XMLStreamException | IllegalArgumentException e) {
            throw book.refused(
                    Text.of("the workbook is broken; open it and save it again as .xlsx, or its table as CSV"));
        }
    }

    private ForeignInputException refused(Text why) {
        return new ForeignInputException(file.name(), 0, why);
    }

    private void unpack() throws IOException, ForeignInputException {
        long unpacked = 0;
        int count = 0;
        byte[] block = new byte[BLOCK];
        try (ZipInputStream zip = new ZipInputStream(new ByteArrayInputStream(file.bytes()))) {
            for (ZipEntry entry = zip.getNextEntry(); entry != null; entry = zip.getNextEntry()) {
                boolean kept = entry.getName().matches("(?i).*\\.(?:xml|rels)");
                var content = new ByteArrayOutputStream();
                for (int read = zip.read(block); read >= 0; read = zip.read(block)) {
                    unpacked += read;
                    if (unpacked > MOST_UNPACKED) {
                        throw refused(
                                Text.of("a workbook that unpacks to more than {most} million bytes is not read; save"
                                                + " its table as CSV")
                                        .with("most", MOST_UNPACKED / 1_000_000));
                    }
                    if (kept) {
                        content.write(block, 0, read);
                    }
                }
                if (kept) {
                    parts.put(plain(entry.getName()), content.toByteArray());
                }
                if (++count > MOST_PARTS) {
                    throw refused(Text.of("an archive of more than {most} files is not read; save its table as CSV")
                            .with("most", MOST_PARTS));
                }
            }
        }
        if (!parts.containsKey(plain("xl/workbook.xml"))) {
            throw refused(
                    Text.of("an archive or a workbook of another kind, which is not read; save it as .xlsx, or its"
                            + " table as CSV"));
        }
    }

    /** Names of parts are the same whatever their case, and may begin with a stroke. */
    private static String plain(String name) {
        return name.toLowerCase(Locale.ROOT).replaceFirst("^/", "");
    }

    private List<Sheet> read() throws XMLStreamException, ForeignInputException {
        Map<String, String> targets = new HashMap<>();
        Map<String, String> kinds = new HashMap<>();
        each("xl/_rels/workbook.xml.rels", xml -> {
            if (xml.getLocalName().equals("Relationship")) {
                String given = attribute(xml, "Target");
                String target = plain(given.startsWith("/") ? given : "xl/" + given);
                targets.put(attribute(xml, "Id"), target);
                kinds.put(attribute(xml, "Type").replaceFirst(".*/", ""), target);
            }
        });
        texts(kinds.getOrDefault("sharedStrings", "xl/sharedstrings.xml"));
        formats(kinds.getOrDefault("styles", "xl/styles.xml"));
        record Listed(String name, boolean shown, String part) {}
        List<Listed> listed = new ArrayList<>();
        each("xl/workbook.xml", xml -> {
            if (xml.getLocalName().equals("sheet") && listed.size() < MOST_SHEETS) {
                String state = attribute(xml, "state");
                String part = targets.getOrDefault(
                        attribute(xml, "id"), "xl/worksheets/sheet" + attribute(xml, "sheetId") + ".xml");
                listed.add(new Listed(attribute(xml, "name"), state.isEmpty() || state.equals("visible"), part));
            }
        });
        if (listed.stream().map(Listed::part).distinct().count() < listed.size()) {
            throw new IllegalArgumentException("one sheet under several names");
        }
        List<Sheet> sheets = new ArrayList<>();
        for (Listed each : listed) {
            List<CsvGrid.Row> rows = new ArrayList<>();
            Optional<ForeignInputException> refused = Optional.empty();
            try {
                rows(each.part(), rows);
            } catch (ForeignInputException e) {
                refused = Optional.of(e);
            }
            if (!rows.isEmpty() || refused.isPresent()) {
                // As if it had been pasted from the spreadsheet.
                sheets.add(new Sheet(each.name(), each.shown(), CsvGrid.of(rows, '\t', "UTF-8"), refused));
            }
        }
        return List.copyOf(sheets);
    }

    private void texts(String part) throws XMLStreamException, ForeignInputException {
        StringBuilder all = new StringBuilder();
        List<Integer> begins = new ArrayList<>();
        each(part, xml -> {
            switch (xml.getLocalName()) {
                case "si" -> begins.add(all.length());
                case "t" -> all.append(xml.getElementText());
                case "rPh" -> skip(xml);
                default -> {
                    // fonts and the like
                }
            }
        });
        for (int i = 0; i < begins.size(); i++) {
            texts.add(all.substring(begins.get(i), i + 1 < begins.size() ? begins.get(i + 1) : all.length()));
        }
    }

    private void formats(String part) throws XMLStreamException, ForeignInputException {
        Map<Integer, CellFormat> own = new HashMap<>();
        boolean[] within = new boolean[1];
        each(part, xml -> {
            String name = xml.getLocalName();
            if (name.equals("numFmt")) {
                own.put(number(attribute(xml, "numFmtId")), CellFormat.of(attribute(xml, "formatCode")));
            } else if (name.equals("cellXfs") || name.equals("cellStyleXfs")) {
                within[0] = name.equals("cellXfs");
            } else if (name.equals("xf") && within[0]) {
                int number = number(attribute(xml, "numFmtId"));
                formats.add(own.getOrDefault(number, CellFormat.builtIn(number)));
            }
        });
    }

    private void rows(String part, List<CsvGrid.Row> rows) throws XMLStreamException, ForeignInputException {
        List<String> cells = new ArrayList<>();
        int[] row = new int[1];
        each(part, xml -> {
            if (xml.getLocalName().equals("row")) {
                CsvGrid.add(file, rows, cells, row[0]);
                cells.clear();
                String given = attribute(xml, "r");
                row[0] = given.isEmpty() ? row[0] + 1 : number(given);
                if (row[0] > CsvGrid.MOST_LINES) {
                    CsvGrid.refuseLines(file, row[0]);
                }
            } else if (xml.getLocalName().equals("c")) {
                int column = column(attribute(xml, "r"), cells.size());
                if (column < cells.size()) {
                    throw new IllegalArgumentException("cells out of order");
                }
                // Beyond the most that is read the row is refused when it ends.
                while (cells.size() < Math.min(column, CsvGrid.MOST_COLUMNS)) {
                    cells.add("");
                }
                String cell = cell(xml, row[0]);
                if (column < CsvGrid.MOST_COLUMNS || !cell.isBlank()) {
                    cells.add(cell);
                }
            }
        });
        CsvGrid.add(file, rows, cells, row[0]);
    }

    /** The column of a reference such as B7, the first is 0. */
    private static int column(String reference, int next) {
        int column = 0;
        for (int i = 0; i < reference.length() && Character.isLetter(reference.charAt(i)) && column < 100_000; i++) {
            column = 26 * column + Character.toUpperCase(reference.charAt(i)) - 'A' + 1;
        }
        return column < 1 ? next : column - 1;
    }

    private String cell(XMLStreamReader xml, int row) throws XMLStreamException, ForeignInputException {
        String kind = attribute(xml, "t");
        String style = attribute(xml, "s");
        StringBuilder text = new StringBuilder();
        boolean computed = false;
        int depth = 1;
        while (depth > 0) {
            int event = next(xml);
            depth += event == XMLStreamConstants.START_ELEMENT ? 1 : event == XMLStreamConstants.END_ELEMENT ? -1 : 0;
            if (event == XMLStreamConstants.START_ELEMENT) {
                switch (xml.getLocalName()) {
                    case "v" -> {
                        text.setLength(0);
                        text.append(xml.getElementText());
                        depth--;
                    }
                    case "t" -> {
                        text.append(xml.getElementText());
                        depth--;
                    }
                    case "f" -> computed = true;
                    case "rPh" -> {
                        skip(xml);
                        depth--;
                    }
                    default -> {
                        // runs of text
                    }
                }
            }
        }
        String value = text.toString();
        if (computed && value.isBlank() && !kind.equals("str")) {
            throw new ForeignInputException(
                    file.name(),
                    row,
                    Text.of("a formula whose result is not stored in the workbook; open it in a spreadsheet program and"
                            + " save it, or its table as CSV"));
        }
        return switch (kind) {
            case "s" -> text(number(value));
            case "", "n" -> value.isBlank() ? "" : format(style).shown(finite(value));
            default -> value;
        };
    }

    private String text(int number) {
        if (number >= texts.size()) {
            throw new IllegalArgumentException("no text " + number);
        }
        return texts.get(number);
    }

    private CellFormat format(String style) {
        int number = style.isEmpty() ? 0 : number(style);
        return number < formats.size() ? formats.get(number) : CellFormat.GENERAL;
    }

    private static double finite(String value) {
        double number = Double.parseDouble(value.strip());
        if (!Double.isFinite(number)) {
            throw new IllegalArgumentException(value);
        }
        return number;
    }

    private static int number(String digits) {
        return Integer.parseUnsignedInt(digits.strip()) & Integer.MAX_VALUE;
    }

    private static String attribute(XMLStreamReader xml, String name) {
        for (int i = 0; i < xml.getAttributeCount(); i++) {
            if (xml.getAttributeLocalName(i).equals(name)) {
                return xml.getAttributeValue(i);
            }
        }
        return "";
    }

    private static void skip(XMLStreamReader xml) throws XMLStreamException {
        int depth = 1;
        while (depth > 0) {
            int event = next(xml);
            depth += event == XMLStreamConstants.START_ELEMENT ? 1 : event == XMLStreamConstants.END_ELEMENT ? -1 : 0;
        }
    }

    /** The next event; a document type has no place in a workbook (ISO/IEC 29500-2, 8.2.5), and entities could grow without end. */
    private static int next(XMLStreamReader xml) throws XMLStreamException {
        int event = xml.next();
        if (event == XMLStreamConstants.DTD || event == XMLStreamConstants.ENTITY_REFERENCE) {
            throw new XMLStreamException("document type");
        }
        return event;
    }

    /** Visits the elements of a part; one that is not there has none. */
    private void each(String part, Visitor visitor) throws XMLStreamException, ForeignInputException {
        byte[] content = parts.get(part);
        if (content == null) {
            return;
        }
        XMLInputFactory factory = XMLInputFactory.newDefaultFactory();
        factory.setProperty(XMLInputFactory.SUPPORT_DTD, false);
        factory.setProperty(XMLInputFactory.IS_SUPPORTING_EXTERNAL_ENTITIES, false);
        factory.setProperty(XMLInputFactory.IS_COALESCING, true);
        XMLStreamReader xml = factory.createXMLStreamReader(new ByteArrayInputStream(content));
        try {
            while (xml.hasNext()) {
                if (next(xml) == XMLStreamConstants.START_ELEMENT) {
                    visitor.visit(xml);
                }
            }
        } finally {
            xml.close();
        }
    }
}
