package org.capwright.grade.derive;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import org.capwright.tables.BodyDimension;
import org.capwright.tables.SizeTable;
import org.capwright.tables.TableValue;
import org.capwright.tables.survey.Survey;

/** Where the bodies come from that rules are derived for. */
public sealed interface BodySource {

    /**
     * A body figure.
     *
     * @param value millimetres
     * @param estimated true if it comes from a survey's fit because the table has a gap
     */
    record Figure(double value, boolean estimated) {}

    /**
     * A table alone; a gap stays a gap.
     *
     * @param table a body table
     */
    record OfTable(SizeTable table) implements BodySource {
        @Override
        public Optional<Figure> figure(String size, BodyDimension dimension) {
            return table.value(size, dimension).map(value -> new Figure(value.millimetres(), false));
        }

        @Override
        public String name() {
            return table.info().title() + " (" + table.info().source() + ")";
        }
    }

    /**
     * A table whose gaps a survey fills: the survey's line on the table's key, moved so that it runs through the table's value nearest in key. Where the table has no such row at all, on bust girth and
     * stature as far as it gives them for every size, since the length of the arm follows the stature.
     *
     * @param table a body table whose sizes a body dimension orders
     * @param survey the survey
     */
    record OfTableAndSurvey(SizeTable table, Survey survey) implements BodySource {
        @Override
        public Optional<Figure> figure(String size, BodyDimension dimension) {
            Optional<Figure> known = new OfTable(table).figure(size, dimension);
            OptionalDouble key = key(size);
            if (known.isPresent() || key.isEmpty() || !has(dimension)) {
                return known;
            }
            if (table.row(dimension).isEmpty()) {
                return Optional.of(new Figure(ofPeopleLike(size, dimension), true));
            }
            BodyDimension by = table.info().key().orElseThrow();
            var fit = survey.regression(dimension, by);
            double slope = fit.slope(by).value();
            double nearest = Double.POSITIVE_INFINITY;
            double value = Double.NaN;
            for (String other : table.sizes()) {
                Optional<TableValue> there = table.value(other, dimension);
                OptionalDouble otherKey = key(other);
                if (there.isPresent()
                        && otherKey.isPresent()
                        && Math.abs(otherKey.getAsDouble() - key.getAsDouble()) < nearest) {
                    nearest = Math.abs(otherKey.getAsDouble() - key.getAsDouble());
                    value = there.get().millimetres() + slope * (key.getAsDouble() - otherKey.getAsDouble());
                }
            }
            return Optional.of(new Figure(value, true));
        }

        private double ofPeopleLike(String size, BodyDimension dimension) {
            Map<BodyDimension, Double> people = new LinkedHashMap<>();
            Stream.of(table.info().key().orElseThrow(), BodyDimension.BUST_GIRTH, BodyDimension.STATURE)
                    .filter(by -> by != dimension
                            && survey.dimensions().contains(by)
                            && table.sizes().stream()
                                    .allMatch(each -> table.value(each, by).isPresent()))
                    .forEach(by ->
                            people.put(by, table.value(size, by).orElseThrow().millimetres()));
            return survey.regression(dimension, people.keySet().toArray(BodyDimension[]::new))
                    .mean(people, 0.95)
                    .estimate();
        }

        private OptionalDouble key(String size) {
            var value = table.info().key().flatMap(by -> table.value(size, by));
            return value.isPresent() ? OptionalDouble.of(value.get().millimetres()) : OptionalDouble.empty();
        }

        private boolean has(BodyDimension dimension) {
            BodyDimension by = table.info().key().orElse(dimension);
            return by != dimension
                    && survey.dimensions().contains(dimension)
                    && survey.dimensions().contains(by);
        }

        @Override
        public String name() {
            return new OfTable(table).name() + "; gaps: " + survey.source();
        }
    }

    /**
     * A survey alone: the mean body at a value of one dimension.
     *
     * @param survey the survey
     * @param key the dimension that orders the sizes
     * @param bySize value of the key by size, mm, within the surveyed range
     */
    record OfSurvey(Survey survey, BodyDimension key, Map<String, Double> bySize) implements BodySource {

        /**
         * Copies the map.
         *
         * @param survey the survey
         * @param key the dimension that orders the sizes
         * @param bySize value of the key by size, mm, within the surveyed range
         */
        public OfSurvey {
            bySize = Map.copyOf(bySize);
        }

        @Override
        public Optional<Figure> figure(String size, BodyDimension dimension) {
            Double at = bySize.get(size);
            if (at == null || !survey.dimensions().contains(dimension)) {
                return Optional.empty();
            }
            if (dimension == key) {
                return Optional.of(new Figure(at, false));
            }
            double mean = survey.regression(dimension, key)
                    .mean(Map.of(key, at), 0.95)
                    .estimate();
            return Optional.of(new Figure(mean, true));
        }

        @Override
        public String name() {
            return survey.source() + ", mean at " + key.id();
        }
    }

    /**
     * The body of a size.
     *
     * @param size name of the size
     * @param dimension which
     * @return the figure, or empty where there is a gap
     */
    Optional<Figure> figure(String size, BodyDimension dimension);

    /**
     * What the figures come from.
     *
     * @return title and source
     */
    String name();
}
