package org.capwright.gradeimport;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.capwright.check.CheckedMeasure;
import org.capwright.exchange.ForeignInputException;
import org.capwright.exchange.table.CsvGrid;
import org.capwright.quantity.Unit;
import org.capwright.words.Text;

/** A table whose points of measure stand side by side in one row of headings, with a row per size below. */
final class PointsAcross {

    private record Column(int at, PointNames.Match match, Optional<Unit> unit) {}

    private final TableContext context;
    private final int header;

    PointsAcross(TableContext context, int header) {
        this.context = context;
        this.header = header;
    }

    TableContent content() throws ForeignInputException {
        List<CsvGrid.Row> rows = context.grid().rows();
        CsvGrid.Row headings = rows.get(header);
        long figures = headings.cells().stream().filter(context::isFigure).count();
        long names = headings.cells().stream()
                .filter(cell -> context.match(cell).isPresent())
                .count();
        if (figures > names) {
            throw new ForeignInputException(
                    context.file(),
                    headings.line(),
                    Text.of("a point of measure with figures beside it, but no row of sizes above; write the sizes"
                            + " over their columns"));
        }
        List<CsvGrid.Row> below = rows.subList(header + 1, rows.size());
        List<Column> columns = columns(headings, below);
        int sizes = sizeColumn(headings, columns);
        List<String> labels = new ArrayList<>();
        List<CsvGrid.Row> filled = new ArrayList<>();
        Optional<String> base = Optional.empty();
        for (CsvGrid.Row row : below) {
            if (columns.stream().noneMatch(c -> context.isFigure(row.cell(c.at)))) {
                continue;
            }
            String heading = row.cell(sizes);
            if (!heading.isEmpty() && TableContext.isNoSize(heading)) {
                context.traces()
                        .leftOut(
                                row.line(),
                                ImportNote.FILE,
                                Text.of("row \u201c{name}\u201d is no size")
                                        .with("name", ForeignInputException.shown(heading)));
                continue;
            }
            String label = context.fresh(TableContext.label(heading), labels, row.line());
            labels.add(label);
            filled.add(row);
            base = TableContext.isBaseMarked(heading) ? Optional.of(label) : base;
        }
        if (labels.isEmpty()) {
            throw new ForeignInputException(
                    context.file(), headings.line(), Text.of("no size with figures stands below this heading"));
        }
        TableContent content = TableContent.of(
                labels,
                base.or(() -> rows.stream()
                        .flatMap(row -> row.cells().stream())
                        .flatMap(cell -> SizeScale.namedBase(cell).stream())
                        .findFirst()));
        for (int i = 0; i < labels.size(); i++) {
            for (Column column : columns) {
                String label = labels.get(i);
                context.value(filled.get(i), column.at, label, column.match, List.of(column.unit))
                        .ifPresent(value -> content.put(label, column.match, value));
            }
        }
        return content;
    }

    private List<Column> columns(CsvGrid.Row headings, List<CsvGrid.Row> below) {
        List<Column> columns = new ArrayList<>();
        Map<CheckedMeasure, String> seen = new EnumMap<>(CheckedMeasure.class);
        for (int c = 0; c < headings.cells().size(); c++) {
            String heading = headings.cell(c);
            Optional<PointNames.Match> match = context.match(heading);
            String quoted = "\u201c" + ForeignInputException.shown(heading) + "\u201d";
            if (match.isEmpty()) {
                if (!heading.isEmpty() && !TableContext.isSizeHeading(heading)) {
                    int at = c;
                    boolean filled = !TableContext.isNoSize(heading)
                            && below.stream().anyMatch(row -> context.isFigure(row.cell(at)));
                    List<String> cells = below.stream().map(row -> row.cell(at)).toList();
                    context.unknown(
                            headings.line(), heading, filled, context.figures(cells, UnitWords.within(heading)));
                }
            } else if (seen.putIfAbsent(match.get().measure(), heading) != null) {
                context.traces()
                        .notRead(
                                headings.line(),
                                match.get().measure().code(),
                                Text.of("{name}: read in another column already")
                                        .with("name", quoted));
            } else {
                context.known(headings.line(), heading, match.get());
                int at = c;
                Optional<Unit> under = below.isEmpty()
                        ? Optional.empty()
                        : UnitWords.alone(below.get(0).cell(at));
                columns.add(new Column(c, match.get(), context.unitOf(heading).or(() -> under)));
            }
        }
        return columns;
    }

    private int sizeColumn(CsvGrid.Row headings, List<Column> columns) throws ForeignInputException {
        int first = -1;
        for (int c = 0; c < context.grid().columns(); c++) {
            int at = c;
            if (columns.stream().anyMatch(column -> column.at == at)) {
                continue;
            }
            if (TableContext.isSizeHeading(headings.cell(c))) {
                return c;
            }
            first = first < 0 ? c : first;
        }
        if (first < 0) {
            throw new ForeignInputException(
                    context.file(),
                    headings.line(),
                    Text.of("no column with the sizes stands beside the points of measure"));
        }
        context.traces()
                .assumed(
                        headings.line(),
                        ImportNote.FILE,
                        Text.of("column {column} taken for the sizes").with("column", first + 1));
        return first;
    }
}
