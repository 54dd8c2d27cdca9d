package org.capwright.gradeimport;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashSet;
import java.util.IdentityHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.capwright.check.CheckedMeasure;
import org.capwright.exchange.ForeignInputException;
import org.capwright.exchange.table.CsvGrid;
import org.capwright.quantity.Unit;
import org.capwright.words.Text;

/** A table whose points of measure stand under one another: with a column per size, or with one value to a line and the size beside it. */
final class PointsDown {

    private record Point(CsvGrid.Row row, PointNames.Match match, Optional<Unit> unit) {}

    private record Column(int at, String size, Optional<Unit> unit) {}

    private final TableContext context;
    private final int column;
    private final int header;
    private final List<Point> points = new ArrayList<>();
    private final int unitColumn;
    /** Rows below a heading of their own, by what it says; only where one of the headings says sleeve. */
    private final Map<CsvGrid.Row, String> sections = new IdentityHashMap<>();

    PointsDown(TableContext context, int column) {
        this.context = context;
        this.column = column;
        List<CsvGrid.Row> rows = context.grid().rows();
        int first = 0;
        while (context.match(rows.get(first).cell(column)).isEmpty()) {
            first++;
        }
        // A heading over the column may be a name of a point by itself; then the sizes stand beside it.
        this.header = header(rows, first);
        this.unitColumn = unitColumn(rows, first);
        sections(rows);
        for (CsvGrid.Row row : rows.subList(header < 0 ? first : header + 1, rows.size())) {
            Optional<Unit> unit = unitColumn < 0 ? Optional.empty() : UnitWords.alone(row.cell(unitColumn));
            match(row)
                    .ifPresent(match ->
                            points.add(new Point(row, match, unit.or(() -> context.unitOf(row.cell(column))))));
        }
    }

    private void sections(List<CsvGrid.Row> rows) {
        Map<CsvGrid.Row, String> found = new IdentityHashMap<>();
        String heading = "";
        for (CsvGrid.Row row : rows.subList(Math.max(header, 0), rows.size())) {
            String name = row.cell(column);
            if (!name.isEmpty()
                    && row.cells().stream().filter(cell -> !cell.isEmpty()).count() == 1) {
                heading = name;
            } else if (!heading.isEmpty()) {
                found.put(row, heading);
            }
        }
        if (found.values().stream().anyMatch(PointsDown::isSleeve)) {
            sections.putAll(found);
        }
    }

    private static boolean isSleeve(String heading) {
        return PieceName.of(heading) == PieceName.SLEEVE;
    }

    /** What the name of a row means below its heading: a length below the word body is none of the sleeve, an opening below the word sleeve is. */
    private Optional<PointNames.Match> match(CsvGrid.Row row) {
        String name = row.cell(column);
        String heading = sections.getOrDefault(row, "");
        Optional<PointNames.Match> match = context.match(name);
        if (heading.isEmpty() || name.isEmpty() || !context.said(name).isEmpty()) {
            return match;
        }
        if (!isSleeve(heading)) {
            return PointNames.isGeneral(name) ? Optional.empty() : match;
        }
        return match.or(() -> context.match(heading + " " + name))
                .or(() -> context.match(name + " " + heading))
                .or(() -> context.match(heading + name));
    }

    private int header(List<CsvGrid.Row> rows, int first) {
        List<Integer> figures = new ArrayList<>();
        List<CsvGrid.Row> known = rows.stream()
                .filter(row -> context.match(row.cell(column)).isPresent())
                .toList();
        for (int c = 0; c < context.grid().columns(); c++) {
            int at = c;
            long filled = known.stream()
                    .mapToInt(row -> context.isFigure(row.cell(at)) ? 1 : TableContext.isBlank(row.cell(at)) ? 0 : -1)
                    .sum();
            if (c != column && filled > 0) {
                figures.add(c);
            }
        }
        // Rows of points that are not known may stand between the sizes and the first one that is.
        int sizes = -1;
        for (int r = first - 1; r >= 0 && !figures.isEmpty(); r--) {
            CsvGrid.Row row = rows.get(r);
            boolean full = figures.stream()
                    .noneMatch(c -> TableContext.isBlank(row.cell(c))
                            || UnitWords.alone(row.cell(c)).isPresent());
            long different = figures.stream().map(row::cell).distinct().count();
            boolean words = figures.size() > 1
                    && different > 1
                    && figures.stream().anyMatch(c -> !context.isFigure(row.cell(c)));
            if (full && words) {
                return r;
            }
            boolean labels = full && figures.stream().allMatch(c -> SizeScale.isLabel(TableContext.label(row.cell(c))));
            if (labels && TableContext.isSizeSystem(row.cell(column))) {
                return r;
            }
            sizes = labels ? r : sizes;
        }
        return sizes >= 0 ? sizes : headed(rows, first);
    }

    /** The nearest row above that has more than a unit beside the names. */
    private int headed(List<CsvGrid.Row> rows, int below) {
        for (int r = below - 1; r >= 0; r--) {
            CsvGrid.Row row = rows.get(r);
            for (int c = 0; c < row.cells().size(); c++) {
                String cell = row.cell(c);
                if (c != column && !cell.isEmpty() && UnitWords.alone(cell).isEmpty()) {
                    return r;
                }
            }
        }
        return -1;
    }

    private int unitColumn(List<CsvGrid.Row> rows, int first) {
        for (int c = 0; c < context.grid().columns(); c++) {
            int units = 0;
            int others = 0;
            for (CsvGrid.Row row : rows.subList(first, rows.size())) {
                if (c != column && context.match(row.cell(column)).isPresent()) {
                    boolean unit = UnitWords.alone(row.cell(c)).isPresent();
                    units += unit ? 1 : 0;
                    others += unit || row.cell(c).isEmpty() ? 0 : 1;
                }
            }
            if (units > others) {
                return c;
            }
        }
        return -1;
    }

    /** Position of the row with the headings, or -1. */
    int header() {
        return header;
    }

    private CsvGrid.Row headings() {
        return context.grid().rows().get(header);
    }

    /** Whether a point stands in several lines, each with a size beside it. */
    boolean isLong() {
        Set<CheckedMeasure> seen = new HashSet<>();
        boolean repeated = points.stream().anyMatch(point -> !seen.add(point.match.measure()));
        return (repeated || figureColumns().size() == 1) && sizeColumn() >= 0 && valueColumn() >= 0;
    }

    private int sizeColumn() {
        for (int c = 0; c < headings().cells().size(); c++) {
            if (c != column && TableContext.isSizeHeading(headings().cell(c))) {
                return c;
            }
        }
        return -1;
    }

    private List<Integer> figureColumns() {
        List<Integer> found = new ArrayList<>();
        int size = sizeColumn();
        for (int c = 0; c < context.grid().columns(); c++) {
            int figures = 0;
            int others = 0;
            for (Point point : points) {
                String cell = point.row.cell(c);
                figures += context.isFigure(cell) ? 1 : 0;
                others += context.isFigure(cell) || TableContext.isBlank(cell) ? 0 : 1;
            }
            // Under the name of a size what is no figure is an error, not another kind of column.
            boolean named = SizeScale.isLabel(TableContext.label(headings().cell(c)));
            if (c != column && c != size && c != unitColumn && (named || figures > others)) {
                found.add(c);
            }
        }
        return found;
    }

    private int valueColumn() {
        int only = -1;
        int several = 0;
        for (int c : figureColumns()) {
            String name = PointNames.normal(UnitWords.without(headings().cell(c)));
            if (Set.of(
                            "value",
                            "values",
                            "measurement",
                            "measure",
                            "finished",
                            "spec",
                            "wert",
                            "length",
                            "mass",
                            "valeur")
                    .contains(name)) {
                return c;
            }
            if (!TableContext.isNoSize(headings().cell(c))) {
                only = c;
                several++;
            }
        }
        return several == 1 ? only : -1;
    }

    TableContent wide() throws ForeignInputException {
        List<Column> columns = columns();
        int steps = columns.size() == 1 ? stepColumn() : -1;
        if (steps >= 0) {
            return stepped(columns.get(0), steps);
        }
        Optional<Column> marked = columns.stream()
                .filter(c -> TableContext.isBaseMarked(headings().cell(c.at)))
                .findFirst();
        TableContent content = TableContent.of(
                columns.stream().map(Column::size).toList(),
                marked.map(Column::size).or(this::statedBase));
        Map<CheckedMeasure, Integer> lines = new EnumMap<>(CheckedMeasure.class);
        for (Point point : points) {
            CheckedMeasure measure = point.match.measure();
            Integer earlier = lines.putIfAbsent(measure, point.row.line());
            if (earlier != null) {
                context.traces()
                        .notRead(
                                point.row.line(),
                                measure.code(),
                                Text.of("read in line {line} already").with("line", earlier));
                continue;
            }
            tell(point);
            for (Column c : columns) {
                context.value(point.row, c.at, c.size, point.match, List.of(point.unit, c.unit, ofHeading()))
                        .ifPresent(value -> content.put(c.size, point.match, value));
            }
        }
        tellUnknown();
        return content;
    }

    /** A column of steps from size to size beside the one full size, or -1. */
    private int stepColumn() {
        for (int c = 0; c < headings().cells().size(); c++) {
            int at = c;
            if (c != column
                    && TableContext.isStepHeading(headings().cell(c))
                    && points.stream().anyMatch(point -> context.isFigure(point.row.cell(at)))) {
                return c;
            }
        }
        return -1;
    }

    /** One full size and a column of steps: the sizes stand in a row of their own. */
    private TableContent stepped(Column full, int steps) throws ForeignInputException {
        List<String> sizes = listedSizes(full.size);
        TableContent content = TableContent.of(sizes.isEmpty() ? List.of(full.size) : sizes, Optional.of(full.size));
        if (sizes.isEmpty()) {
            context.questions()
                    .add(new OpenQuestion(
                            headings().line(),
                            Unread.Part.FILE,
                            List.of(),
                            Text.of("a column of steps, \u201c{column}\u201d, stands beside the one"
                                            + " size {size}, but the other sizes are not named")
                                    .with(
                                            "column",
                                            ForeignInputException.shown(
                                                    headings().cell(steps)))
                                    .with("size", ForeignInputException.shown(full.size)),
                            Text.of("Write the sizes into a row above, such as Sizes, 36, 38, 40; if the"
                                    + " column holds tolerances, name it so.")));
        } else {
            context.traces()
                    .assumed(
                            headings().line(),
                            ImportNote.FILE,
                            Text.of("column \u201c{column}\u201d read as increments from size to size,"
                                            + " starting at size {size}")
                                    .with(
                                            "column",
                                            ForeignInputException.shown(
                                                    headings().cell(steps)))
                                    .with("size", ForeignInputException.shown(full.size)));
        }
        int base = sizes.indexOf(full.size);
        Set<CheckedMeasure> seen = new HashSet<>();
        for (Point point : points) {
            if (!seen.add(point.match.measure())) {
                context.traces()
                        .notRead(
                                point.row.line(),
                                point.match.measure().code(),
                                Text.of("read in a line before already"));
                continue;
            }
            tell(point);
            List<Optional<Unit>> units = List.of(point.unit, full.unit, ofHeading());
            Optional<Double> start = context.value(point.row, full.at, full.size, point.match, units);
            Optional<Double> step = context.value(point.row, steps, full.size, point.match, units);
            start.ifPresent(value -> content.put(full.size, point.match, value));
            for (int i = 0; i < sizes.size() && start.isPresent() && step.isPresent(); i++) {
                content.put(sizes.get(i), point.match, start.get() + (i - base) * step.get());
            }
        }
        tellUnknown();
        return content;
    }

    /** Sizes in a row above the headings that begins with a word for sizes, with the full one among them; smallest first. */
    private List<String> listedSizes(String full) {
        for (CsvGrid.Row row : context.grid().rows().subList(0, header)) {
            List<String> labels = new ArrayList<>();
            boolean headed = false;
            for (String cell : row.cells()) {
                if (!headed) {
                    headed = TableContext.isSizeHeading(cell.replaceAll("[:\uff1a]\\s*$", ""));
                } else if (!cell.isEmpty()) {
                    labels.addAll(
                            SizeScale.isLabel(TableContext.label(cell))
                                    ? List.of(cell)
                                    : List.of(cell.strip().split("\\s*[,;]\\s*|\\s+")));
                }
            }
            List<String> named = labels.stream().map(TableContext::label).toList();
            if (named.size() > 1 && named.contains(full) && Set.copyOf(named).size() == named.size()) {
                return SizeScale.order(named).stream().map(named::get).toList();
            }
        }
        return List.of();
    }

    private List<Column> columns() throws ForeignInputException {
        List<Column> columns = new ArrayList<>();
        List<String> taken = new ArrayList<>();
        for (int c : figureColumns()) {
            String heading = headings().cell(c);
            if (TableContext.isNoSize(heading)) {
                if (!heading.isEmpty()) {
                    leaveOut(heading, Text.of("column \u201c{name}\u201d is no size"));
                }
                continue;
            }
            if (isSecond(c)) {
                leaveOut(heading, Text.of("column \u201c{name}\u201d holds no other figures of its size"));
                continue;
            }
            String label =
                    context.fresh(TableContext.label(heading), taken, headings().line());
            taken.add(label);
            columns.add(new Column(c, label, unitOver(c)));
        }
        tellUnused();
        for (CsvGrid.Row row : context.grid().rows().subList(0, header)) {
            if (TableContext.isSizeSystem(row.cell(column)) && row.cells().size() > 1) {
                context.traces()
                        .leftOut(
                                row.line(),
                                ImportNote.FILE,
                                Text.of("row \u201c{name}\u201d has other names for the sizes")
                                        .with("name", ForeignInputException.shown(row.cell(column))));
            }
        }
        if (columns.isEmpty()) {
            throw new ForeignInputException(
                    context.file(),
                    headings().line(),
                    Text.of("no column of this heading is a size with figures under it"));
        }
        return columns;
    }

    private void leaveOut(String heading, Text why) {
        context.traces()
                .leftOut(headings().line(), ImportNote.FILE, why.with("name", ForeignInputException.shown(heading)));
    }

    /** Whether a column stands beside another of its size: what was measured on a sample beside what is asked for, the same in another unit, or the zeros of the
     * base size beside its full figures. */
    private boolean isSecond(int c) {
        String heading = headings().cell(c);
        String label = TableContext.label(TableContext.meant(heading));
        return figureColumns().stream()
                .filter(other -> other != c
                        && !TableContext.isMeasured(headings().cell(other))
                        && TableContext.label(headings().cell(other)).equals(label))
                .anyMatch(other -> TableContext.isMeasured(heading)
                        || TableContext.isBaseMarked(headings().cell(other)) && isWithoutStep(c)
                        || other < c && isInAnotherUnit(other, c));
    }

    /** Whether a column has the lengths of another in another unit. */
    private boolean isInAnotherUnit(int one, int other) {
        Optional<Unit> unit = unitOver(one);
        Optional<Unit> second = unitOver(other);
        return unit.isPresent()
                && second.isPresent()
                && !unit.equals(second)
                && points.stream().allMatch(point -> {
                    List<Double> first = context.figures(List.of(point.row.cell(one)), unit);
                    List<Double> same = context.figures(List.of(point.row.cell(other)), second);
                    return first.size() == same.size()
                            && (first.isEmpty() || Figure.isRounded(first.get(0), same.get(0)));
                });
    }

    private Optional<Unit> unitOver(int c) {
        return TableContext.unitOfSize(headings().cell(c)).or(() -> unitUnder(c));
    }

    private boolean isWithoutStep(int c) {
        return points.stream()
                .map(point -> point.row.cell(c))
                .allMatch(cell -> TableContext.isBlank(cell)
                        || context.figures(List.of(cell), Optional.of(Unit.MILLIMETRE))
                                .equals(List.of(0.0)));
    }

    private void tellUnused() {
        List<Integer> figures = figureColumns();
        for (int c = 0; c < headings().cells().size(); c++) {
            String heading = headings().cell(c);
            if (c != column && c != unitColumn && !figures.contains(c) && !TableContext.isNoSize(heading)) {
                context.traces()
                        .leftOut(
                                headings().line(),
                                ImportNote.FILE,
                                Text.of("column \u201c{name}\u201d holds too few figures to be a size")
                                        .with("name", ForeignInputException.shown(heading)));
            }
        }
    }

    /** A unit beside the words over the points of measure. */
    private Optional<Unit> ofHeading() {
        return UnitWords.within(headings().cell(column));
    }

    /** A row of units between the headings and the first point. */
    private Optional<Unit> unitUnder(int c) {
        List<CsvGrid.Row> rows = context.grid().rows();
        for (int r = header + 1;
                r < rows.size() && context.match(rows.get(r).cell(column)).isEmpty();
                r++) {
            Optional<Unit> unit = UnitWords.alone(rows.get(r).cell(c));
            if (unit.isPresent()) {
                return unit;
            }
        }
        return Optional.empty();
    }

    private Optional<String> statedBase() {
        for (int c = 0; c < headings().cells().size(); c++) {
            String name = PointNames.normal(headings().cell(c));
            if (name.equals("base size") || name.equals("sample size") || name.equals("base")) {
                int at = c;
                return points.stream()
                        .map(point -> point.row.cell(at))
                        .filter(cell -> !cell.isEmpty())
                        .findFirst();
            }
        }
        return context.grid().rows().stream()
                .flatMap(row -> row.cells().stream())
                .flatMap(cell -> SizeScale.namedBase(cell).stream())
                .findFirst();
    }

    TableContent oneToALine() throws ForeignInputException {
        int sizes = sizeColumn();
        int values = valueColumn();
        Set<String> labels = new LinkedHashSet<>();
        for (Point point : points) {
            labels.add(TableContext.label(point.row.cell(sizes)));
        }
        Optional<Unit> unit = UnitWords.within(headings().cell(values)).or(() -> unitUnder(values));
        TableContent content = TableContent.of(List.copyOf(labels), statedBase());
        Set<CheckedMeasure> told = new HashSet<>();
        for (Point point : points) {
            String size = TableContext.label(point.row.cell(sizes));
            if (size.isEmpty() || size.length() > 40) {
                throw new ForeignInputException(
                        context.file(),
                        point.row.line(),
                        Text.of("a value without a size, or with a name of more than 40 characters"));
            }
            if (told.add(point.match.measure())) {
                tell(point);
            }
            Optional<Double> value =
                    context.value(point.row, values, size, point.match, List.of(point.unit, unit, ofHeading()));
            if (value.isPresent() && content.of(size).containsKey(point.match.measure())) {
                throw new ForeignInputException(
                        context.file(),
                        point.row.line(),
                        Text.of("{measure} of size {size} is there twice")
                                .with("measure", Text.of(point.match.measure().code()))
                                .with("size", ForeignInputException.shown(size)));
            }
            value.ifPresent(known -> content.put(size, point.match, known));
        }
        tellUnknown();
        return content;
    }

    private void tell(Point point) {
        // A column of codes is one of this engine's own spec table, whose figures go all round.
        boolean own = PointNames.normal(headings().cell(column)).equals("code");
        context.known(point.row.line(), point.row.cell(column), own ? point.match.ofCode() : point.match);
    }

    private void tellUnknown() {
        List<CsvGrid.Row> rows = context.grid().rows();
        List<Integer> figures = figureColumns();
        Set<String> told = new HashSet<>();
        for (CsvGrid.Row row : rows.subList(header + 1, rows.size())) {
            String name = row.cell(column);
            if (UnitWords.alone(name).isPresent() || match(row).isPresent()) {
                continue;
            }
            boolean filled = figures.stream().anyMatch(c -> context.isFigure(row.cell(c)));
            if ((filled || !name.isEmpty()) && told.add(name)) {
                Optional<Unit> unit = unitColumn < 0 ? Optional.empty() : UnitWords.alone(row.cell(unitColumn));
                context.unknown(
                        row.line(),
                        name,
                        filled,
                        context.figures(
                                figures.stream().map(row::cell).toList(),
                                unit.or(() -> UnitWords.within(name)).or(this::ofHeading)));
            }
        }
    }
}
