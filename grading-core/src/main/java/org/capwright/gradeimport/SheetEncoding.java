package org.capwright.gradeimport;

import java.nio.charset.Charset;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.capwright.exchange.ForeignFile;
import org.capwright.exchange.ForeignInputException;
import org.capwright.exchange.table.CsvGrid;
import org.capwright.words.Text;

/**
 * The encoding of a sheet that is neither UTF-8 nor says what it is. Of the encodings that sewing rooms' programs write, the one is taken in which most names of points of measure are known; words
 * tell that better than the frequencies of letters in so short a text.
 */
final class SheetEncoding {

    /** The likeliest first: of two in which as many names are known the first is taken. */
    private static final List<String> LEGACY = List.of(
            "windows-1252",
            "windows-1250",
            "ISO-8859-2",
            "windows-1254",
            "windows-31j",
            "EUC-JP",
            "IBM850",
            "IBM852",
            "IBM857",
            "x-MacRoman",
            "x-MacCentralEurope");

    private record Reading(CsvGrid grid, long names, long words) {
        boolean isBetterThan(Reading other) {
            return names > other.names || names == other.names && words > other.words;
        }
    }

    private static final BitSet SIGNS = new BitSet();

    static {
        for (int type : new int[] {
            Character.MATH_SYMBOL,
            Character.CURRENCY_SYMBOL,
            Character.MODIFIER_SYMBOL,
            Character.OTHER_SYMBOL,
            Character.OTHER_NUMBER,
            Character.CONTROL,
            Character.PRIVATE_USE,
            Character.UNASSIGNED
        }) {
            SIGNS.set(type);
        }
    }

    private SheetEncoding() {}

    /** The cells of a sheet, read in the encoding that is declared, shows itself, or makes most sense. */
    static CsvGrid grid(ForeignFile file, ImportNotes traces) throws ForeignInputException {
        CsvGrid grid = CsvGrid.of(file);
        if (file.declared().isPresent()) {
            if (!file.declared().get().name().equals(grid.encoding())) {
                traces.assumed(
                        0,
                        ImportNote.FILE,
                        Text.of("read as {encoding}, though {declared} is declared")
                                .with("encoding", grid.encoding())
                                .with("declared", file.declared().get().name()));
            }
            return grid;
        }
        if (!grid.encoding().equals(LEGACY.get(0))) {
            return grid;
        }
        List<Reading> readings = new ArrayList<>();
        for (String name : LEGACY) {
            if (Charset.isSupported(name)) {
                reading(file, name).ifPresent(readings::add);
            }
        }
        Reading best = readings.isEmpty() ? new Reading(grid, 0, 0) : readings.get(0);
        for (Reading reading : readings) {
            best = reading.isBetterThan(best) ? reading : best;
        }
        long most = best.names;
        String others = readings.stream()
                .filter(reading -> reading.names == most && most > 0)
                .map(reading -> reading.grid.encoding())
                .limit(4)
                .collect(Collectors.joining(", "));
        traces.assumed(
                0,
                ImportNote.FILE,
                Text.of(
                                most == 0
                                        ? "not UTF-8, and no encoding is declared; read as {encoding}"
                                        : others.contains(", ")
                                                ? "not UTF-8, and no encoding is declared; read as {encoding}, in"
                                                        + " which {known} of its names with other letters than English"
                                                        + " ones are known (the same in {others})"
                                                : "not UTF-8, and no encoding is declared; read as {encoding}, in"
                                                        + " which {known} of its names with other letters than English"
                                                        + " ones are known")
                        .with("encoding", best.grid.encoding())
                        .with("known", most)
                        .with("others", others));
        return best.grid;
    }

    /** Only names with other letters than English ones tell encodings apart. */
    private static Optional<Reading> reading(ForeignFile file, String name) {
        try {
            CsvGrid grid = CsvGrid.of(file.declared(Charset.forName(name)));
            List<String> strange = grid.rows().stream()
                    .flatMap(row -> row.cells().stream())
                    .filter(cell -> cell.chars().anyMatch(letter -> letter > 127))
                    .distinct()
                    .toList();
            List<String> words =
                    strange.stream().filter(SheetEncoding::isWritten).toList();
            long known = words.stream().filter(SheetEncoding::isKnown).count();
            return Optional.of(new Reading(grid, known, words.size()));
        } catch (ForeignInputException e) {
            // Bytes that this encoding has not.
            return Optional.empty();
        }
    }

    private static boolean isKnown(String cell) {
        return PointNames.match(cell).isPresent() || TableContext.isHeading(cell);
    }

    /** Whether a person may have written it: no sign within a word, and no strange capital after a small letter. */
    private static boolean isWritten(String cell) {
        for (int i = 0; i < cell.length(); i++) {
            char c = cell.charAt(i);
            boolean afterLetter = i > 0 && Character.isLetter(cell.charAt(i - 1));
            boolean beforeLetter = i + 1 < cell.length() && Character.isLetter(cell.charAt(i + 1));
            boolean sign = !Character.isLetter(c) && (afterLetter || beforeLetter) && SIGNS.get(Character.getType(c));
            boolean capital = Character.isUpperCase(c) && afterLetter && Character.isLowerCase(cell.charAt(i - 1));
            if (c > 127 && (sign || capital || Character.isISOControl(c) || !Character.isDefined(c))) {
                return false;
            }
        }
        return true;
    }
}
