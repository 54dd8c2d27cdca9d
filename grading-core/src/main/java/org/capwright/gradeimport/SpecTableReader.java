package org.capwright.gradeimport;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.capwright.check.CheckedGrade;
import org.capwright.check.CheckedMeasure;
import org.capwright.check.CheckedSize;
import org.capwright.check.RowGrids;
import org.capwright.exchange.ForeignFile;
import org.capwright.exchange.ForeignInputException;
import org.capwright.exchange.table.CsvGrid;
import org.capwright.words.Text;

/**
 * Reads a spec table made elsewhere, as delimited text or as a workbook. Cells may be parted by commas, semicolons, bars, tabs or wide blanks; numbers may have a decimal point, a decimal comma or a fraction; the unit may
 * stand in a cell, a column, a row, a heading or a sentence; points of measure may go down and sizes across, the other way round, or one value to a line. Points of measure are
 * known by their whole names or as the sender says; what is not known is told, with what it may be, and not read.
 */
public final class SpecTableReader {

    /** The most bytes of a file that is read. */
    public static final int MOST_BYTES = 4_000_000;

    /** Rows beyond are told, but nothing is proposed for them. */
    private static final int MOST_PROPOSED = 20;

    private static final String BOUND = ".*\\b(?:min|max|minimum|maximum)\\.?";

    private SpecTableReader() {}

    /**
     * Reads a table.
     *
     * @param file a workbook, or delimited text in UTF-8, UTF-16, the encoding that is declared, or the legacy one in which most names are known
     * @param options unit for a table that states none; base size
     * @return the sizes, smallest first where their labels are numbers or S, M, L, else in the order of the table; and how it was read
     * @throws ForeignInputException if there is no table, no known point of measure, no size, no unit, or a cell that should be a length is none
     */
    public static ForeignGrade read(ForeignFile file, ForeignOptions options) throws ForeignInputException {
        file.atMost(MOST_BYTES);
        ImportNotes traces = new ImportNotes(file.name());
        CsvGrid grid = file.isArchive() ? WorkbookTable.grid(file, traces) : delimited(file, traces);
        TableContext context = TableContext.of(file, grid, options, traces);
        TableContent content = layout(context);
        return grade(context, content);
    }

    private static CsvGrid delimited(ForeignFile file, ImportNotes traces) throws ForeignInputException {
        file.notOfAnotherFormat();
        CsvGrid grid = SheetEncoding.grid(file, traces);
        traces.found(
                0,
                ImportNote.FILE,
                Text.of(
                        switch (grid.delimiter()) {
                            case '\t' -> "cells parted by tabs";
                            case '|' -> "cells parted by bars";
                            case ' ' -> "cells parted by blanks";
                            case ';' -> "cells parted by semicolons";
                            default -> "cells parted by commas";
                        }));
        return grid;
    }

    private static TableContent layout(TableContext context) throws ForeignInputException {
        // A point named twice in one row, by its code and by its name, is one point: it does not make a row of
        // headings.
        List<Set<CheckedMeasure>> down = new ArrayList<>();
        for (int c = 0; c < context.grid().columns(); c++) {
            down.add(EnumSet.noneOf(CheckedMeasure.class));
        }
        int column = 0;
        int row = 0;
        int across = 0;
        int beside = 0;
        Set<Integer> named = new TreeSet<>();
        List<CsvGrid.Row> rows = context.grid().rows();
        for (int r = 0; r < rows.size(); r++) {
            Set<CheckedMeasure> known = EnumSet.noneOf(CheckedMeasure.class);
            for (int c = 0; c < rows.get(r).cells().size(); c++) {
                Optional<PointNames.Match> match = context.match(rows.get(r).cell(c));
                if (match.isPresent()) {
                    known.add(match.get().measure());
                    down.get(c).add(match.get().measure());
                    beside += figures(context, rows.get(r).cells());
                    named.add(c);
                }
            }
            if (known.size() > across) {
                across = known.size();
                row = r;
            }
        }
        for (int c = 0; c < down.size(); c++) {
            column = down.get(c).size() > down.get(column).size() ? c : column;
        }
        if (across == 0) {
            throw new ForeignInputException(context.file(), 0, noneKnown(unknownNames(context)));
        }
        // Where one point alone is known, the figures tell whether they stand beside its name or below.
        int most = down.get(column).size();
        int below = across > 1
                ? 0
                : (int) rows.stream()
                        .flatMap(each -> named.stream().map(each::cell))
                        .filter(context::isFigure)
                        .count();
        if (most > across || most == across && (across > 1 || beside >= below)) {
            PointsDown points = new PointsDown(context, column);
            if (points.header() >= 0) {
                return points.isLong() ? points.oneToALine() : points.wide();
            }
        }
        return new PointsAcross(context, row).content();
    }

    private static int figures(TableContext context, List<String> cells) {
        return (int) cells.stream().filter(context::isFigure).count();
    }

    /** The first names of rows with figures. */
    private static String unknownNames(TableContext context) {
        String names = context.grid().rows().stream()
                .filter(row -> figures(context, row.cells()) > 1 && !context.isFigure(row.cell(0)))
                .map(row -> "\u201c" + ForeignInputException.shown(row.cell(0)) + "\u201d")
                .filter(name -> name.length() > 2)
                .limit(4)
                .collect(Collectors.joining(", "));
        return names;
    }

    private static Text noneKnown(String names) {
        return names.isEmpty()
                ? Text.of("no point of measure is known by its name; say what they are by the mapping, or name one"
                        + " bicep, sleeve length, cap height, armhole, elbow or wrist")
                : Text.of("no point of measure is known by its name: {names}; say what they are by the mapping,"
                                + " or name one bicep, sleeve length, cap height, armhole, elbow or wrist")
                        .with("names", names);
    }

    private static ForeignGrade grade(TableContext context, TableContent content) throws ForeignInputException {
        Map<String, Map<CheckedMeasure, Double>> bySize = new LinkedHashMap<>();
        content.sizes().forEach(size -> bySize.put(size, new EnumMap<>(CheckedMeasure.class)));
        content.values()
                .forEach((size, values) -> bySize.computeIfAbsent(size, s -> new EnumMap<>(CheckedMeasure.class))
                        .putAll(values));
        if (bySize.isEmpty() || bySize.values().stream().allMatch(Map::isEmpty)) {
            throw new ForeignInputException(context.file(), 0, Text.of("the table holds no figure of any size"));
        }
        List<String> labels = List.copyOf(bySize.keySet());
        List<String> ordered = Increments.spans(
                context, SizeScale.order(labels).stream().map(labels::get).toList(), bySize);
        askBounds(context, labels);
        askSeveral(context, labels);
        Optional<String> ofIncrements = Increments.added(context, ordered, bySize);
        if (!ordered.equals(labels)) {
            context.traces()
                    .found(0, ImportNote.FILE, Text.of("sizes put in the order of their labels, smallest first"));
        }
        Set<CheckedMeasure> doubtful = Doubts.of(context, ordered, bySize);
        List<CheckedSize> read = ordered.stream()
                .map(label -> new CheckedSize(label, bySize.getOrDefault(label, Map.of())))
                .toList();
        bySize.values().forEach(values -> values.keySet().removeAll(doubtful));
        List<CheckedSize> sizes = ordered.stream()
                .map(label -> new CheckedSize(label, bySize.getOrDefault(label, Map.of())))
                .toList();
        int base = BaseSize.of(
                context.file(), ordered, context.options(), content.base().or(() -> ofIncrements), context.traces());
        List<UnreadRow> unread = unread(context, read.get(base).values());
        RowGrids grids = RowGrids.of(sizes, content.factors());
        return new ForeignGrade(
                new CheckedGrade(sizes, base, Optional.empty(), grids),
                context.traces().list(),
                read,
                context.questions(),
                unread);
    }

    /** Columns of a least and a greatest figure of each size are no sizes. */
    private static void askBounds(TableContext context, List<String> labels) {
        List<String> bounds = labels.stream()
                .filter(label -> label.toLowerCase(Locale.ROOT).matches(BOUND))
                .toList();
        if (bounds.size() > 1) {
            context.questions()
                    .add(new OpenQuestion(
                            0,
                            Unread.Part.FILE,
                            List.of(),
                            Text.of("columns such as \u201c{name}\u201d seem to hold bounds of a figure, and"
                                            + " not the figure of a size")
                                    .with("name", ForeignInputException.shown(bounds.get(0))),
                            Text.of("Send one column for each size, with the figure that is meant.")));
        }
    }

    /** Several columns of one size, such as before and after washing, or short and long, are no run. */
    private static void askSeveral(TableContext context, List<String> labels) {
        Map<String, List<String>> bySize = new LinkedHashMap<>();
        for (String label : labels) {
            if (label.toLowerCase(Locale.ROOT).matches(BOUND)) {
                continue;
            }
            String size = label.replaceFirst("[\\s:_-]+\\p{L}[\\p{L} .]*$", "");
            if (!SizeScale.isLabel(label) && SizeScale.isLabel(size)) {
                bySize.computeIfAbsent(size, s -> new ArrayList<>()).add(label);
            }
        }
        bySize.values().stream()
                .filter(same -> same.size() > 1)
                .findFirst()
                .ifPresent(same -> context.questions()
                        .add(new OpenQuestion(
                                0,
                                Unread.Part.FILE,
                                List.of(),
                                Text.of("columns such as \u201c{one}\u201d and \u201c{other}\u201d hold several"
                                                + " figures of one size")
                                        .with("one", ForeignInputException.shown(same.get(0)))
                                        .with("other", ForeignInputException.shown(same.get(1))),
                                Text.of("Send one column for each size, with the figure that is meant."))));
    }

    private static List<Text> likely(String name, List<UnreadRow.Proposal> proposals) {
        List<Text> told = new ArrayList<>();
        if (name.isEmpty()) {
            return List.of(Text.of("its figures have no name"));
        }
        told.add(Text.of("\u201c{name}\u201d is not a name that is known for a point of measure of a sleeve")
                .with("name", name));
        for (UnreadRow.Proposal each : proposals) {
            String code = each.measure().code();
            told.add(Text.of("it may be {measure}, as {why}: mapping {mapping}")
                    .with("measure", Text.of(code))
                    .with("why", each.why())
                    .with("mapping", "{\"" + name + "\": \"" + code + "\"}"));
        }
        return told;
    }

    /** Tells of rows whose names are not known, and of what they may be. */
    private static List<UnreadRow> unread(TableContext context, Map<CheckedMeasure, Double> known) {
        List<UnreadRow> rows = new ArrayList<>();
        for (TableContext.Unnamed row : context.unnamed()) {
            List<UnreadRow.Proposal> proposals = rows.size() < MOST_PROPOSED ? Proposals.of(row, known) : List.of();
            rows.add(new UnreadRow(row.line(), row.name(), proposals));
            String name = ForeignInputException.shown(row.name());
            context.traces().notRead(row.line(), ImportNote.FILE, Text.joined(likely(name, proposals), "; "));
        }
        Set<String> cells = context.mapping().isEmpty()
                ? Set.of()
                : context.grid().rows().stream()
                        .flatMap(row -> row.cells().stream())
                        .flatMap(cell -> Stream.of(cell, UnitWords.without(cell)))
                        .map(PointNames::normal)
                        .collect(Collectors.toSet());
        context.mapping().keySet().stream()
                .filter(name -> !cells.contains(name))
                .sorted()
                .forEach(name -> context.traces()
                        .leftOut(
                                0,
                                ImportNote.FILE,
                                Text.of("the mapping names \u201c{name}\u201d, which is not in the table")
                                        .with("name", ForeignInputException.shown(name))));
        return rows;
    }
}
