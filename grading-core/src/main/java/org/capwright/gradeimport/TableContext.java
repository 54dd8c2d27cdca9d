package org.capwright.gradeimport;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import org.capwright.exchange.ForeignFile;
import org.capwright.exchange.ForeignInputException;
import org.capwright.exchange.table.CsvGrid;
import org.capwright.quantity.Quantity;
import org.capwright.quantity.Unit;

/**
 * A table with what holds for all of its cells.
 *
 * @param file name of the file
 * @param grid its cells
 * @param comma how its commas are meant
 * @param unit the unit that a sentence of the table states
 * @param options what the sender says
 * @param traces where the steps are told
 */
record TableContext(
        String file,
        CsvGrid grid,
        Figure.Comma comma,
        Optional<Unit> unit,
        ForeignOptions options,
        ImportNotes traces) {

    /** No length of a sleeve comes near, mm. */
    private static final double FARTHEST = 20_000;

    private static final Set<String> NO_VALUE =
            Set.of("", "-", "--", "\u2013", "\u2014", "n/a", "na", "n.a.", "tbd", "?", ".");

    private static final Pattern NO_SIZE = Pattern.compile(
            "(?:tol|tolerances?|toleranz|jumps?|grade|grading|grade rule|increments?|diff|differences?|delta|steps?|rev"
                    + "|revision|no|nr|number|pos|position|id|code|item|comments?|remarks?|notes?|style|units?|base size|sample size|size"
                    + "|sizes|how measured|how to measure|tolerance source|description|definition|measurements?|points?"
                    + "|point of measure|points of measure|pom|name|min|max|plus|minus|total|date)(?: .*)?");

    static TableContext of(ForeignFile file, CsvGrid grid, ForeignOptions options, ImportNotes traces) {
        boolean decimalComma = false;
        boolean decimalPoint = false;
        Optional<Unit> unit = Optional.empty();
        for (CsvGrid.Row row : grid.rows()) {
            for (int c = 0; c < row.cells().size(); c++) {
                String cell = row.cell(c);
                if (cell.length() <= 40) {
                    decimalComma |= Figure.showsDecimalComma(cell);
                    decimalPoint |= Figure.showsDecimalPoint(cell);
                }
                if (unit.isEmpty() && cell.length() <= 120) {
                    unit = UnitWords.stated(cell)
                            .or(() -> row.cells().size() > 1 && isUnitHeading(cell) && filled(row) == 2
                                    ? row.cells().stream()
                                            .flatMap(other -> UnitWords.alone(other).stream())
                                            .findFirst()
                                    : Optional.empty());
                    unit.ifPresent(u ->
                            traces.found(row.line(), ImportNote.FILE, "unit " + u.symbol() + ", as the table states"));
                }
            }
        }
        Figure.Comma comma = decimalComma || !decimalPoint ? Figure.Comma.DECIMAL : Figure.Comma.THOUSANDS;
        if (decimalComma) {
            traces.found(0, ImportNote.FILE, "numbers with a decimal comma");
        }
        return new TableContext(file.name(), grid, comma, unit, options, traces);
    }

    private static boolean isUnitHeading(String cell) {
        String name = PointNames.normal(cell);
        return name.equals("unit") || name.equals("units");
    }

    private static long filled(CsvGrid.Row row) {
        return row.cells().stream().filter(cell -> !cell.isEmpty()).count();
    }

    /** Whether a heading cannot be that of a size. */
    static boolean isNoSize(String heading) {
        String bare = UnitWords.without(heading);
        if (SizeScale.named(bare).filter(SizeScale::isLabel).isPresent()) {
            return false;
        }
        String name = PointNames.normal(bare);
        return name.isEmpty() || NO_SIZE.matcher(name).matches() || heading.length() > 40;
    }

    static boolean isSizeHeading(String heading) {
        return Set.of("size", "sizes", "taille", "grosse", "groesse", "talla", "taglia", "maat", "size label")
                .contains(PointNames.normal(heading));
    }

    static boolean isBlank(String cell) {
        return NO_VALUE.contains(cell.toLowerCase(Locale.ROOT));
    }

    boolean isFigure(String cell) {
        return Figure.of(cell, comma).isPresent();
    }

    /** The label in a heading, without what marks the base size. */
    static String label(String heading) {
        String bare = UnitWords.without(heading).strip();
        String named = SizeScale.named(bare).orElse(bare);
        return isBaseMarked(heading)
                ? named.replaceAll("(?i)\\s*(?:\\*|\\(?\\b(?:base|sample)\\b\\)?)\\s*", " ")
                        .strip()
                : named;
    }

    static boolean isBaseMarked(String heading) {
        String lower = heading.toLowerCase(Locale.ROOT);
        return lower.endsWith("*") || lower.matches(".+\\b(?:base|sample)\\)?");
    }

    /**
     * A value in millimetres, or a count.
     *
     * @param units units of row, column and their headings, the nearest first
     */
    Optional<Double> value(CsvGrid.Row row, int column, String size, PointNames.Match point, List<Optional<Unit>> units)
            throws ForeignInputException {
        String cell = row.cell(column);
        if (isBlank(cell)) {
            return Optional.empty();
        }
        String where = "column " + (column + 1) + ", " + point.measure().code() + " of size "
                + ForeignInputException.shown(size) + ": ";
        Figure figure = Figure.of(cell, comma)
                .orElseThrow(() -> new ForeignInputException(
                        file,
                        row.line(),
                        where + "\u201c" + ForeignInputException.shown(cell)
                                + "\u201d is no length; write it like 36.5, 36,5 or 14 1/4"));
        if (point.measure().quantity() != Quantity.LENGTH) {
            return Optional.of(figure.number());
        }
        Unit of = figure.unit()
                .or(() -> units.stream().flatMap(Optional::stream).findFirst())
                .or(() -> unit)
                .or(options::unit)
                .orElseThrow(
                        () -> new ForeignInputException(
                                file,
                                row.line(),
                                where
                                        + "no unit is stated; give mm, cm or in, or write it into a heading such as \u201cBicep (cm)\u201d"));
        double millimetres = of.toMillimetres(figure.number()) * point.factor();
        if (!(Math.abs(millimetres) <= FARTHEST)) {
            throw new ForeignInputException(
                    file,
                    row.line(),
                    where + ForeignInputException.shown(cell) + " " + of.symbol() + " is out of all range; at most "
                            + of.format(FARTHEST) + " " + of.symbol() + " can be read");
        }
        return Optional.of(millimetres);
    }

    /** A label that no other size of the table has. */
    String fresh(String label, List<String> taken, int line) throws ForeignInputException {
        if (label.isEmpty() || label.length() > 40) {
            throw new ForeignInputException(
                    file, line, "a size without a name, or with one of more than 40 characters");
        }
        if (taken.contains(label)) {
            throw new ForeignInputException(
                    file, line, "size " + ForeignInputException.shown(label) + " is there twice");
        }
        return label;
    }
}
