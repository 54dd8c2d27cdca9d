package org.capwright.service.styles;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.capwright.grade.PointOfMeasure;
import org.capwright.grade.SpecTable;
import org.capwright.json.problem.RequestPlaces;
import org.capwright.quantity.Unit;
import tools.jackson.databind.JsonNode;

/** Compares two bodies of a style field by field, and the sleeves drafted from them point of measure by point of measure. */
final class StyleComparison {

    /** Below a thousandth of a millimetre nothing can be cut. */
    private static final double SAME = 0.001;

    private StyleComparison() {}

    static List<StyleChanges.Field> fields(JsonNode before, JsonNode after) {
        List<StyleChanges.Field> differ = new ArrayList<>();
        walk("", before, after, differ);
        return List.copyOf(differ);
    }

    private static void walk(String pointer, JsonNode before, JsonNode after, List<StyleChanges.Field> differ) {
        if (before.isObject() && after.isObject()) {
            Set<String> names = new LinkedHashSet<>(before.propertyNames());
            names.addAll(after.propertyNames());
            for (String name : names) {
                walk(pointer + "/" + RequestPlaces.escaped(name), before.path(name), after.path(name), differ);
            }
        } else if (!same(before, after)) {
            differ.add(new StyleChanges.Field(pointer, shown(before), shown(after)));
        }
    }

    /** A field that is null counts as left out, and 36 is 36.0. */
    private static boolean same(JsonNode before, JsonNode after) {
        if (before.isNumber() && after.isNumber()) {
            return before.doubleValue() == after.doubleValue();
        }
        return shown(before).equals(shown(after));
    }

    private static Optional<String> shown(JsonNode node) {
        return node.isMissingNode() || node.isNull() ? Optional.empty() : Optional.of(node.toString());
    }

    static List<StyleChanges.Measure> measures(SpecTable before, SpecTable after, Unit unit) {
        Map<String, PointOfMeasure> old = byCode(before);
        Map<String, PointOfMeasure> young = byCode(after);
        Set<String> codes = new LinkedHashSet<>(old.keySet());
        codes.addAll(young.keySet());
        Set<String> sizes = new LinkedHashSet<>(before.sizes());
        sizes.addAll(after.sizes());
        List<StyleChanges.Measure> differ = new ArrayList<>();
        for (String code : codes) {
            Optional<PointOfMeasure> was = Optional.ofNullable(old.get(code));
            Optional<PointOfMeasure> is = Optional.ofNullable(young.get(code));
            String name = is.or(() -> was).map(PointOfMeasure::name).orElse(code);
            for (String size : sizes) {
                compare(code, name, size, value(was, before, size), value(is, after, size), unit)
                        .ifPresent(differ::add);
            }
        }
        return List.copyOf(differ);
    }

    private static Optional<StyleChanges.Measure> compare(
            String code, String name, String size, Optional<Double> was, Optional<Double> is, Unit unit) {
        Optional<Double> difference = was.flatMap(before -> is.map(after -> after - before));
        if (was.isEmpty() && is.isEmpty()
                || difference.filter(d -> Math.abs(d) < SAME).isPresent()) {
            return Optional.empty();
        }
        return Optional.of(new StyleChanges.Measure(
                code,
                name,
                size,
                was.map(length -> shown(length, unit)),
                is.map(length -> shown(length, unit)),
                difference.map(length -> shown(length, unit))));
    }

    private static Optional<Double> value(Optional<PointOfMeasure> row, SpecTable table, String size) {
        int place = table.sizes().indexOf(size);
        return place < 0 ? Optional.empty() : row.map(point -> point.values().get(place));
    }

    private static Map<String, PointOfMeasure> byCode(SpecTable table) {
        Map<String, PointOfMeasure> rows = new LinkedHashMap<>();
        table.rows().forEach(row -> rows.put(row.code(), row));
        return rows;
    }

    private static double shown(double millimetres, Unit unit) {
        return unit.figure(millimetres);
    }
}
