package org.capwright.gradeimport;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.capwright.check.CheckedGrade;
import org.capwright.check.CheckedMeasure;
import org.capwright.check.CheckedSize;
import org.capwright.check.RowGrids;
import org.capwright.exchange.ForeignFile;
import org.capwright.exchange.ForeignInputException;
import org.capwright.exchange.table.CsvGrid;

/**
 * Reads a spec table made elsewhere as delimited text. Cells may be parted by commas, semicolons or tabs; numbers may have a decimal point, a decimal comma or a fraction; the unit may
 * stand in a cell, a column, a row, a heading or a sentence; points of measure may go down and sizes across, the other way round, or one value to a line. Points of measure are
 * known by their whole names; what is not known is left out and told.
 */
public final class SpecTableReader {

    /** The most bytes of a file that is read. */
    public static final int MOST_BYTES = 4_000_000;

    private SpecTableReader() {}

    /**
     * Reads a table.
     *
     * @param file comma-separated, semicolon-separated or tab-separated text in UTF-8, UTF-16 with its mark, or windows-1252
     * @param options unit for a table that states none; base size
     * @return the sizes, smallest first where their labels are numbers or S, M, L, else in the order of the table; and how it was read
     * @throws ForeignInputException if there is no table, no known point of measure, no size, no unit, or a cell that should be a length is none
     */
    public static ForeignGrade read(ForeignFile file, ForeignOptions options) throws ForeignInputException {
        file.atMost(MOST_BYTES);
        ImportNotes traces = new ImportNotes(file.name());
        CsvGrid grid = CsvGrid.of(file);
        if (grid.encoding().equals("windows-1252")) {
            traces.assumed(0, ImportNote.FILE, "not UTF-8, so read as windows-1252");
        }
        traces.found(
                0,
                ImportNote.FILE,
                "cells parted by "
                        + switch (grid.delimiter()) {
                            case '\t' -> "tabs";
                            case ';' -> "semicolons";
                            default -> "commas";
                        });
        TableContext context = TableContext.of(file, grid, options, traces);
        TableContent content = layout(context);
        return grade(context, content);
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
        List<CsvGrid.Row> rows = context.grid().rows();
        for (int r = 0; r < rows.size(); r++) {
            Set<CheckedMeasure> known = EnumSet.noneOf(CheckedMeasure.class);
            for (int c = 0; c < rows.get(r).cells().size(); c++) {
                Optional<PointNames.Match> match = PointNames.match(rows.get(r).cell(c));
                if (match.isPresent()) {
                    known.add(match.get().measure());
                    down.get(c).add(match.get().measure());
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
            throw new ForeignInputException(
                    context.file(),
                    0,
                    "no point of measure is known by its name; name one bicep, sleeve length, cap height, armhole,"
                            + " elbow or wrist");
        }
        if (down.get(column).size() >= across) {
            PointsDown points = new PointsDown(context, column);
            if (points.header() >= 0) {
                return points.isLong() ? points.oneToALine() : points.wide();
            }
        }
        return new PointsAcross(context, row).content();
    }

    private static ForeignGrade grade(TableContext context, TableContent content) throws ForeignInputException {
        Map<String, Map<CheckedMeasure, Double>> bySize = new LinkedHashMap<>();
        content.sizes().forEach(size -> bySize.put(size, new EnumMap<>(CheckedMeasure.class)));
        content.values()
                .forEach((size, values) -> bySize.computeIfAbsent(size, s -> new EnumMap<>(CheckedMeasure.class))
                        .putAll(values));
        if (bySize.isEmpty() || bySize.values().stream().allMatch(Map::isEmpty)) {
            throw new ForeignInputException(context.file(), 0, "the table holds no figure of any size");
        }
        List<String> labels = List.copyOf(bySize.keySet());
        List<String> ordered = SizeScale.order(labels).stream().map(labels::get).toList();
        Optional<String> ofIncrements = Increments.added(context, ordered, bySize);
        List<CheckedSize> sizes = ordered.stream()
                .map(label -> new CheckedSize(label, bySize.getOrDefault(label, Map.of())))
                .toList();
        if (!ordered.equals(labels)) {
            context.traces().found(0, ImportNote.FILE, "sizes put in the order of their labels, smallest first");
        }
        int base = BaseSize.of(
                context.file(), ordered, context.options(), content.base().or(() -> ofIncrements), context.traces());
        return new ForeignGrade(
                new CheckedGrade(sizes, base, Optional.empty(), RowGrids.of(sizes, content.factors())),
                context.traces().list());
    }
}
