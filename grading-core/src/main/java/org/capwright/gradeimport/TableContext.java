package org.capwright.gradeimport;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.UnaryOperator;
import java.util.regex.Pattern;
import org.capwright.check.CheckedMeasure;
import org.capwright.exchange.ForeignFile;
import org.capwright.exchange.ForeignInputException;
import org.capwright.exchange.table.CsvGrid;
import org.capwright.quantity.Quantity;
import org.capwright.quantity.Unit;
import org.capwright.words.Text;

/**
 * A table with what holds for all of its cells.
 *
 * @param file name of the file
 * @param grid its cells
 * @param comma how its commas are meant
 * @param unit the unit that a sentence of the table states
 * @param options what the sender says
 * @param mapping what the sender says of names, by the names in lower case without accents
 * @param unnamed rows or columns whose names are not known; filled while the table is read
 * @param written how each known point is written; filled while the table is read
 * @param questions what only the sender knows; filled while the table is read
 * @param traces where the steps are told
 */
record TableContext(
        String file,
        CsvGrid grid,
        Figure.Comma comma,
        Optional<Unit> unit,
        ForeignOptions options,
        Map<String, String> mapping,
        List<Unnamed> unnamed,
        List<OpenQuestion> questions,
        Map<CheckedMeasure, WrittenRow> written,
        ImportNotes traces) {

    /** A row or column whose name is not known, with its figures, mm. */
    record Unnamed(int line, String name, List<Double> figures) {}

    /** No length of a sleeve comes near, mm. */
    private static final double FARTHEST = 20_000;

    private static final Set<String> SIZES = Set.of(
            "size",
            "sizes",
            "size range",
            "size label",
            "grosse",
            "groesse",
            "grossen",
            "groessen",
            "konfektionsgrosse",
            "taille",
            "tailles",
            "talla",
            "tallas",
            "taglia",
            "taglie",
            "tamanho",
            "tamanhos",
            "maat",
            "maten",
            "rozmiar",
            "rozmiary",
            "beden",
            "bedenler",
            PointNames.normal("サイズ"),
            "gr");

    private static final Set<String> SYSTEMS = Set.of(
            "eu", "eur", "uk", "gb", "us", "usa", "fr", "f", "de", "d", "it", "i", "es", "e", "jp", "int", "intl", "ru",
            "au");

    private static final Set<String> EITHER_WAY = Set.of("+/-", "+-", "\u00b1", "-/+", "+", "\u0394", "\u2206");

    private static final Set<String> NO_VALUE =
            Set.of("", "-", "--", "\u2013", "\u2014", "n/a", "na", "n.a.", "tbd", "?", ".");

    /** What stands over a column of steps (common practice, no source). */
    private static final Pattern STEPS = Pattern.compile("(?:grade|grading|grade rule|grade step|grade"
            + " jump|graded?|jumps?|increments?|increase|diff|differences?|delta|steps?|step per size|per"
            + " size|sprung|sprungwert|spr|stufe|stufung|abstufung|gradierung|gradiersprung|differenz|evolution|evolutions|gradation|saut|par"
            + " taille|escalado|salto|incremento|incrementos|por talla|diferencia|sviluppo|sviluppi|scatto|differenza|per"
            + " taglia|graduacao|diferenca|acrescimo|por tamanho|sprong|graderen|gradering|per"
            + " maat|verschil|stopniowanie|skok|roznica|na rozmiar|seri farki|artis|fark|beden"
            + " farki|ヒッチ|グレーティンク|寸法差|差|δ)(?: .*)?");

    private static final Pattern NO_SIZE = Pattern.compile(
            "(?:tolerancia|tolerancja|tolerans|tolerantie|tolleranza|tolerances?|許容差|公差|bemerkung|bemerkungen|remarques?|notas?|not|opmerking|opmerkingen|uwagi|備考|nr|lp|sira|num|ref|unidad|unidade|unite|einheit|eenheid|jednostka|birim|単位|tol|tolerances?|toleranz|jumps?|grade|grading|grade"
                    + " rule|increments?|diff|differences?|delta|steps?|rev|revision|no|nr|number|pos|position|id|code|item|comments?|remarks?|notes?|style|units?|base"
                    + " size|sample"
                    + " size|size|sizes|sum|average|mean|avg|median|summe|gesamt|mittelwert|durchschnitt|somme|moyenne|promedio|media|suma|somma|soma|totale|totaal|gemiddelde|srednia|razem|toplam|ortalama|合計|平均|how"
                    + " measured|how to measure|tolerance source|description|definition|measurements?|points?|point of"
                    + " measure|points of measure|pom|name|min|max|plus|minus|total|totals|date)(?: .*)?");

    /** {@code 36 in}: behind a number it is a unit. */
    private static final Pattern INCHES = Pattern.compile("^\\s*(\\d{1,3})\\s*(?i:in)\\.?\\s*$");

    /** {@code 36 spec}: what is asked for. */
    private static final Pattern ASKED_FOR = Pattern.compile(
            "(?i)(\\S.*?)["
                    + " :_-]+(?:specs?|specification|target|requested|asked|graded|nominal|soll|demand\u00e9e?|cible|voulue?|objetivo|pedido|richiesto|gevraagd)\\.?");
    /** {@code 36 actual}: what was measured on something sewn. */
    private static final Pattern MEASURED = Pattern.compile(
            "(?i)(\\S.*?)["
                    + " :_-]+(?:actual|act|measured|meas|received|ist|gemessen|mesur\u00e9e?|r\u00e9el(?:le)?|medido|real|misurato|rilevato|gemeten)\\.?");

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
                    unit.ifPresent(u -> traces.found(
                            row.line(),
                            ImportNote.FILE,
                            Text.of("unit {unit}, as the table states").with("unit", u.symbol())));
                }
            }
        }
        Figure.Comma comma = decimalComma || !decimalPoint ? Figure.Comma.DECIMAL : Figure.Comma.THOUSANDS;
        if (decimalComma) {
            traces.found(0, ImportNote.FILE, Text.of("numbers with a decimal comma"));
        }
        Map<String, String> mapping = new HashMap<>();
        options.mapping().forEach((name, meaning) -> mapping.put(PointNames.normal(name), meaning.strip()));
        return new TableContext(
                file.name(),
                grid,
                comma,
                unit,
                options,
                mapping,
                new ArrayList<>(),
                new ArrayList<>(),
                new EnumMap<>(CheckedMeasure.class),
                traces);
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
        if (SizeScale.named(bare).isPresent() && SizeScale.isLabel(label(heading))) {
            return false;
        }
        String name = PointNames.normal(bare);
        return name.isEmpty()
                || NO_SIZE.matcher(name).matches()
                || STEPS.matcher(name).matches()
                || heading.length() > 40;
    }

    /** Whether a heading stands over steps from size to size. */
    static boolean isStepHeading(String heading) {
        String bare = UnitWords.without(heading).strip();
        return STEPS.matcher(PointNames.normal(bare)).matches() || EITHER_WAY.contains(bare.replace(" ", ""));
    }

    /** What a cell of a row or a column is called, and what that means: as the sender says, else as the trade does. */
    Optional<PointNames.Match> match(String cell) {
        String meaning = said(cell);
        if (meaning.isEmpty()) {
            return PointNames.match(cell);
        }
        return meaning.equals(ForeignOptions.IGNORED)
                ? Optional.empty()
                : PointNames.match(meaning).map(match -> match.said(meaning));
    }

    /** What the sender says of a name, or nothing. */
    String said(String cell) {
        if (cell.isEmpty() || mapping.isEmpty()) {
            return "";
        }
        String bare = mapping.getOrDefault(PointNames.normal(UnitWords.without(cell)), "");
        return mapping.getOrDefault(PointNames.normal(cell), bare);
    }

    /** The unit that a name carries, or that the sender says. */
    Optional<Unit> unitOf(String cell) {
        return UnitWords.within(said(cell)).or(() -> UnitWords.within(cell));
    }

    static boolean isSizeHeading(String heading) {
        return SIZES.contains(PointNames.normal(heading));
    }

    /** Whether a cell is one of the words that stand over columns. */
    static boolean isHeading(String cell) {
        String name = PointNames.normal(UnitWords.without(cell));
        return isSizeHeading(cell)
                || NO_SIZE.matcher(name).matches()
                || STEPS.matcher(name).matches();
    }

    /** Whether a row is headed by a country or a system of sizes: its figures are names of sizes. */
    static boolean isSizeSystem(String heading) {
        return isSizeHeading(heading) || SYSTEMS.contains(PointNames.normal(heading));
    }

    static boolean isBlank(String cell) {
        return NO_VALUE.contains(cell.toLowerCase(Locale.ROOT));
    }

    boolean isFigure(String cell) {
        return Figure.of(cell, comma).isPresent();
    }

    /** Whether a column holds what was measured on something sewn. */
    static boolean isMeasured(String heading) {
        return MEASURED.matcher(heading.strip()).matches();
    }

    /** The unit in a heading over a column of a size. */
    static Optional<Unit> unitOfSize(String heading) {
        return INCHES.matcher(heading).matches() ? Optional.of(Unit.INCH) : UnitWords.within(heading);
    }

    /** A heading without the word that its figures were measured. */
    static String meant(String heading) {
        return MEASURED.matcher(heading.strip()).replaceFirst("$1");
    }

    /** The label in a heading, without what marks the base size. */
    static String label(String heading) {
        String bare = ASKED_FOR
                .matcher(UnitWords.without(INCHES.matcher(heading).replaceFirst("$1"))
                        .strip())
                .replaceFirst("$1");
        String named = SizeScale.named(bare).orElse(bare);
        return isBaseMarked(heading)
                ? named.replaceAll("(?i)\\s*(?:\\*|\\(?\\b(?:base|sample|basis)\\b\\)?)\\s*(?:size\\b\\s*)?", " ")
                        .strip()
                : named;
    }

    static boolean isBaseMarked(String heading) {
        String lower = heading.toLowerCase(Locale.ROOT);
        return lower.endsWith("*")
                || lower.matches(".+\\b(?:base|sample|basis)\\)?")
                || lower.matches("(?:base|sample|basis)\\b.*\\S");
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
        UnaryOperator<Text> here = wrong -> Text.of("column {column}, {measure} of size {size}: {wrong}")
                .with("column", column + 1)
                .with("measure", Text.of(point.measure().code()))
                .with("size", ForeignInputException.shown(size))
                .with("wrong", wrong);
        Figure figure = Figure.of(cell, comma)
                .orElseThrow(() -> new ForeignInputException(
                        file,
                        row.line(),
                        here.apply(Text.of("\u201c{cell}\u201d is no length; write it like 36.5, 36,5 or 14 1/4")
                                .with("cell", ForeignInputException.shown(cell)))));
        if (point.measure().quantity() != Quantity.LENGTH) {
            return Optional.of(figure.number());
        }
        Unit of = figure.unit()
                .or(() -> units.stream().flatMap(Optional::stream).findFirst())
                .or(() -> unit)
                .or(options::unit)
                .orElseThrow(() -> new ForeignInputException(
                        file,
                        row.line(),
                        here.apply(Text.of("no unit is stated; give mm, cm or in, or write it into a heading such"
                                + " as \u201cBicep (cm)\u201d"))));
        Optional.ofNullable(written.get(point.measure()))
                .ifPresent(own -> own.units().add(of));
        double millimetres = of.toMillimetres(number(row, cell, figure, point, of)) * point.factor();
        if (!(Math.abs(millimetres) <= FARTHEST)) {
            throw new ForeignInputException(
                    file,
                    row.line(),
                    here.apply(Text.of("{cell} {unit} is out of all range; at most {most} {unit} can be read")
                            .with("cell", ForeignInputException.shown(cell))
                            .with("most", Text.figures(of.format(FARTHEST)))
                            .with("unit", of.symbol())));
        }
        return Optional.of(millimetres);
    }

    /** Of {@code 1.234} or {@code 1,234} the meaning that a sleeve can have. No measure has a range so wide that both could be meant. */
    private double number(CsvGrid.Row row, String cell, Figure figure, PointNames.Match point, Unit of) {
        CheckedMeasure measure = point.measure();
        double decimal = Math.abs(of.toMillimetres(figure.number()) * point.factor());
        Optional<Double> thousands = Figure.inThousands(cell)
                .filter(number -> Math.abs(of.toMillimetres(number) * point.factor()) <= measure.greatest());
        if (thousands.isEmpty() || thousands.get() == figure.number() || decimal >= measure.least()) {
            return figure.number();
        }
        traces.assumed(
                row.line(),
                measure.code(),
                Text.of("\u201c{figure}\u201d read as thousands, since no sleeve is so small")
                        .with("figure", ForeignInputException.shown(cell)));
        return thousands.get();
    }

    /** Tells what a name was taken for. */
    void known(int line, String name, PointNames.Match match) {
        written.put(match.measure(), WrittenRow.of(line, name, match));
        traces.found(
                line,
                match.measure().code(),
                Text.of("\u201c{name}\u201d, {how}")
                        .with("name", ForeignInputException.shown(name))
                        .with("how", match.how()));
    }

    /** Figures of cells that may be no figures at all. */
    List<Double> figures(List<String> cells, Optional<Unit> near) {
        List<Double> found = new ArrayList<>();
        for (String cell : cells) {
            Figure.of(cell, comma)
                    .ifPresent(figure -> figure.unit()
                            .or(() -> near)
                            .or(() -> unit)
                            .or(options::unit)
                            .ifPresent(of -> found.add(of.toMillimetres(figure.number()))));
        }
        return found;
    }

    /** Tells of a row or column that is no known point of measure. With figures in it, it may be one under another name. */
    void unknown(int line, String name, boolean filled, List<Double> figures) {
        String shown = ForeignInputException.shown(name);
        if (name.contains("%")) {
            traces.leftOut(
                    line,
                    ImportNote.FILE,
                    Text.of("\u201c{name}\u201d is a share and no length").with("name", shown));
        } else if (said(name).equals(ForeignOptions.IGNORED)) {
            traces.leftOut(
                    line,
                    ImportNote.FILE,
                    Text.of("\u201c{name}\u201d is no part of the sleeve, as the sender says")
                            .with("name", shown));
        } else if (PointNames.isBesideTheChecks(name)) {
            traces.leftOut(
                    line,
                    ImportNote.FILE,
                    Text.of("\u201c{name}\u201d is a point of measure that no check judges")
                            .with("name", shown));
        } else if (filled) {
            unnamed.add(new Unnamed(line, name, figures));
        } else {
            traces.leftOut(
                    line,
                    ImportNote.FILE,
                    Text.of("\u201c{name}\u201d has no figures").with("name", shown));
        }
    }

    /** A label that no other size of the table has. */
    String fresh(String label, List<String> taken, int line) throws ForeignInputException {
        if (label.isEmpty() || label.length() > 40) {
            throw new ForeignInputException(
                    file, line, Text.of("a size without a name, or with one of more than 40 characters"));
        }
        if (taken.contains(label)) {
            throw new ForeignInputException(
                    file, line, Text.of("size {size} is there twice").with("size", ForeignInputException.shown(label)));
        }
        return label;
    }
}
