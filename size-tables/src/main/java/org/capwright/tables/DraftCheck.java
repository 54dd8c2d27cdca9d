package org.capwright.tables;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.regex.Pattern;
import org.capwright.quantity.InvalidMeasuresException;
import org.capwright.quantity.Unit;
import org.capwright.quantity.Violation;
import org.capwright.tables.TableSubject.Field;
import org.capwright.words.Text;

/** Checks a user's table and collects everything that is wrong with it. */
final class DraftCheck {

    private static final Pattern ID = Pattern.compile("[a-z0-9]+(-[a-z0-9]+)*");
    private static final int ID_LENGTH = 64;
    private static final int TEXT_LENGTH = 500;
    private static final int SIZE_LENGTH = 32;
    private static final int MOST_SIZES = 100;
    private static final int MOST_ROWS = 40;
    private static final Interval GARMENT_RANGE = new Interval(10, 3000);

    private final TableDraft draft;
    private final List<Violation> violations = new ArrayList<>();

    DraftCheck(TableDraft draft) {
        this.draft = draft;
    }

    SizeTable build() {
        checkId();
        checkText(Field.TITLE, draft.title());
        checkText(Field.SOURCE, draft.source());
        checkText(Field.LICENCE, draft.licence());
        checkText(Field.FIGURE_TYPE, draft.figureType());
        checkText(Field.POPULATION, draft.population());
        checkSizes();
        Optional<Unit> unit = Unit.find(draft.unit());
        if (unit.isEmpty()) {
            violations.add(Violation.other(Field.UNIT, shown(draft.unit()), "mm, cm or in"));
        }
        Optional<BodyDimension> key = BodyDimension.find(draft.key());
        if (key.isEmpty()) {
            violations.add(
                    Violation.other(Field.KEY, shown(draft.key()), "a body dimension, such as bustGirth or stature"));
        }
        Map<TableDimension, Integer> places = rowPlaces();
        if (unit.isPresent()) {
            checkRanges(unit.get(), places);
            checkPairs(places);
            key.ifPresent(k -> checkGrowth(k, places));
        }
        if (!violations.isEmpty() || unit.isEmpty()) {
            throw new InvalidMeasuresException(violations);
        }
        return table(unit.get(), key, places);
    }

    private void checkId() {
        if (draft.id().length() > ID_LENGTH || !ID.matcher(draft.id()).matches()) {
            violations.add(Violation.other(
                    Field.ID,
                    shown(draft.id()),
                    Text.of("kebab-case of a-z and 0-9, 1 to {most} characters").with("most", ID_LENGTH)));
        } else if (SizeTables.find(draft.id()).isPresent()) {
            violations.add(Violation.other(Field.ID, draft.id(), "an id that no published table has"));
        }
    }

    private void checkText(Field field, String text) {
        if (text.isBlank() || text.length() > TEXT_LENGTH) {
            violations.add(Violation.other(field, shown(text), characters(TEXT_LENGTH)));
        }
    }

    private static Text characters(int most) {
        return Text.of("1 to {most} characters, not blank").with("most", most);
    }

    private static Text figure(double value) {
        return Text.figures(String.format(Locale.ROOT, "%.4g", value));
    }

    private void checkSizes() {
        if (draft.sizes().isEmpty() || draft.sizes().size() > MOST_SIZES) {
            violations.add(Violation.other(
                    Field.SIZES,
                    draft.sizes().size() + " sizes",
                    Text.of("1 to {most} sizes").with("most", MOST_SIZES)));
        }
        Set<String> seen = new HashSet<>();
        for (int i = 0; i < draft.sizes().size(); i++) {
            String size = draft.sizes().get(i);
            if (size.isBlank() || size.length() > SIZE_LENGTH) {
                violations.add(Violation.other(new TableSubject.Size(i), shown(size), characters(SIZE_LENGTH)));
            } else if (!seen.add(size)) {
                violations.add(Violation.other(new TableSubject.Size(i), size, "each size once"));
            }
        }
    }

    private Map<TableDimension, Integer> rowPlaces() {
        List<RowDraft> rows = draft.rows();
        if (rows.isEmpty() || rows.size() > MOST_ROWS) {
            violations.add(Violation.other(
                    Field.ROWS,
                    rows.size() + " rows",
                    Text.of("1 to {most} rows").with("most", MOST_ROWS)));
        }
        Map<TableDimension, Integer> places = new LinkedHashMap<>();
        for (int i = 0; i < rows.size(); i++) {
            RowDraft row = rows.get(i);
            Optional<TableDimension> dimension = TableDimension.find(row.dimension());
            if (dimension.isEmpty()) {
                violations.add(Violation.other(
                        new TableSubject.RowDimension(i),
                        shown(row.dimension()),
                        "a known dimension, such as upperArmGirth"));
            } else if (places.putIfAbsent(dimension.get(), i) != null) {
                violations.add(
                        Violation.other(new TableSubject.RowDimension(i), row.dimension(), "each dimension once"));
            } else if (dimension.get() instanceof GarmentDimension && draft.kind() == TableKind.BODY) {
                violations.add(Violation.other(
                        new TableSubject.RowDimension(i), row.dimension(), "a body dimension in a body table"));
            }
            if (row.values().size() != draft.sizes().size()) {
                violations.add(Violation.other(
                        new TableSubject.RowValues(i),
                        row.values().size() + " values",
                        Text.of("{count} values, one per size; a gap is empty")
                                .with("count", draft.sizes().size())));
            }
        }
        return places;
    }

    private void checkRanges(Unit unit, Map<TableDimension, Integer> places) {
        places.forEach((dimension, place) -> {
            Interval range = dimension instanceof BodyDimension body ? body.plausible() : GARMENT_RANGE;
            List<OptionalDouble> values = draft.rows().get(place).values();
            for (int i = 0; i < values.size(); i++) {
                OptionalDouble value = values.get(i);
                if (value.isPresent() && !range.contains(unit.toMillimetres(value.getAsDouble()))) {
                    violations.add(Violation.other(
                            new TableSubject.Figure(place, i),
                            value.getAsDouble() + " " + unit.symbol(),
                            Text.of("{measure} from {least} to {greatest} {unit}")
                                    .with("measure", Text.of(dimension.id()))
                                    .with("least", figure(unit.fromMillimetres(range.lower())))
                                    .with("greatest", figure(unit.fromMillimetres(range.upper())))
                                    .with("unit", unit.symbol())));
                }
            }
        });
    }

    private void checkPairs(Map<TableDimension, Integer> places) {
        for (BodyProportion pair : BodyProportion.ALL) {
            Integer smaller = places.get(pair.part());
            Integer larger = places.get(pair.whole());
            if (smaller == null || larger == null || pair.greatest() > 1) {
                continue;
            }
            List<OptionalDouble> low = draft.rows().get(smaller).values();
            List<OptionalDouble> high = draft.rows().get(larger).values();
            for (int i = 0; i < Math.min(low.size(), high.size()); i++) {
                if (low.get(i).isPresent()
                        && high.get(i).isPresent()
                        && low.get(i).getAsDouble() >= high.get(i).getAsDouble()) {
                    violations.add(Violation.other(
                            new TableSubject.Figure(smaller, i),
                            given(low.get(i)),
                            Text.of("{part} below {whole}, here {value}")
                                    .with("part", Text.of(pair.part().id()))
                                    .with("whole", Text.of(pair.whole().id()))
                                    .with("value", Text.figures(given(high.get(i))))));
                }
            }
        }
    }

    /**
     * The key must grow from size to size; girths must not shrink where the bust orders the sizes, lengths must not
     * shrink where the stature does. A girth by stature, or a length by bust, may go either way.
     */
    private void checkGrowth(BodyDimension key, Map<TableDimension, Integer> places) {
        Integer keyPlace = places.get(key);
        if (keyPlace == null) {
            violations.add(Violation.other(Field.KEY, key.id(), "the dimension of one of the rows"));
            return;
        }
        List<OptionalDouble> keys = draft.rows().get(keyPlace).values();
        for (int i = 0; i < keys.size(); i++) {
            if (keys.get(i).isEmpty()) {
                violations.add(Violation.other(
                        new TableSubject.Figure(keyPlace, i),
                        "none",
                        Text.of("a value for every size, as {measure} orders the sizes")
                                .with("measure", Text.of(key.id()))));
            }
        }
        places.forEach((dimension, place) -> {
            boolean isKey = dimension == key;
            if (isKey || dimension instanceof BodyDimension body && body.family() == key.family()) {
                checkGrowth(draft.rows().get(place), place, isKey);
            }
        });
    }

    private void checkGrowth(RowDraft row, int place, boolean strictly) {
        OptionalDouble before = OptionalDouble.empty();
        for (int i = 0; i < row.values().size(); i++) {
            OptionalDouble value = row.values().get(i);
            if (value.isEmpty()) {
                continue;
            }
            if (before.isPresent()) {
                double last = before.getAsDouble();
                if (value.getAsDouble() < last || strictly && value.getAsDouble() == last) {
                    violations.add(Violation.other(
                            new TableSubject.Figure(place, i),
                            given(value),
                            Text.of(
                                            strictly
                                                    ? "{measure} above {value} of the size before"
                                                    : "{measure} not below {value} of the size before")
                                    .with("measure", Text.of(row.dimension()))
                                    .with("value", Text.figures(given(before)))));
                }
            }
            before = value;
        }
    }

    private SizeTable table(Unit unit, Optional<BodyDimension> key, Map<TableDimension, Integer> places) {
        List<Row> rows = new ArrayList<>();
        places.forEach((dimension, place) -> {
            Map<String, TableValue> values = new LinkedHashMap<>();
            for (int i = 0; i < draft.sizes().size(); i++) {
                OptionalDouble value = draft.rows().get(place).values().get(i);
                if (value.isPresent()) {
                    values.put(
                            draft.sizes().get(i),
                            new TableValue(unit.toMillimetres(value.getAsDouble()), Provenance.USER_SUPPLIED));
                }
            }
            rows.add(new Row(dimension, values, Map.of(), OptionalDouble.empty()));
        });
        TableInfo info = new TableInfo(
                draft.id(),
                draft.title(),
                draft.source(),
                draft.licence(),
                "given by a user",
                Confidence.NOT_JUDGED,
                draft.figureType(),
                draft.population(),
                unit,
                draft.kind(),
                Statistic.STANDARD_FIGURE,
                key,
                List.of());
        return new SizeTable(info, draft.sizes(), Map.of(), Map.of(), rows);
    }

    private String given(OptionalDouble value) {
        return value.getAsDouble() + " " + draft.unit();
    }

    private static String shown(String text) {
        return text.length() <= 60 ? text : text.substring(0, 60) + "...";
    }
}
