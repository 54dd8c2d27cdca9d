package org.capwright.check;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.capwright.tables.BodyDimension;
import org.capwright.tables.SizeTable;
import org.capwright.tables.TableValue;

/**
 * The size of a table that a wearer comes nearest to.
 *
 * @param table the table
 * @param size the size, by the dimension that orders the table
 * @param departures what of the wearer departs from that size
 */
public record NearestSize(SizeTable table, String size, List<Departure> departures) {

    /** Less is within what measuring twice makes, mm. Common practice, no source. */
    private static final double LEAST_DEPARTURE = 5;

    /**
     * Copies the departures.
     *
     * @param table the table
     * @param size the size, by the dimension that orders the table
     * @param departures what of the wearer departs from that size
     */
    public NearestSize {
        departures = List.copyOf(departures);
    }

    /**
     * A dimension in which the wearer departs from the size.
     *
     * @param dimension which
     * @param wearer the wearer's, mm
     * @param table the table's, mm
     * @param nearest the size that is nearest in this dimension alone
     */
    public record Departure(BodyDimension dimension, double wearer, double table, String nearest) {}

    /**
     * Looks for the nearest size.
     *
     * @param table the table
     * @param given the wearer's measurements, mm
     * @return the size; empty where the wearer's key dimension was not given or no size has it
     */
    public static Optional<NearestSize> of(SizeTable table, Map<BodyDimension, Double> given) {
        Optional<BodyDimension> key = table.info().key().filter(given::containsKey);
        Optional<String> size = key.flatMap(dimension -> nearest(table, dimension, value(given, dimension)));
        return size.map(name -> new NearestSize(table, name, departures(table, name, given)));
    }

    private static double value(Map<BodyDimension, Double> given, BodyDimension dimension) {
        return given.getOrDefault(dimension, Double.NaN);
    }

    private static Optional<String> nearest(SizeTable table, BodyDimension dimension, double value) {
        Optional<String> nearest = Optional.empty();
        double least = Double.POSITIVE_INFINITY;
        for (String size : table.sizes()) {
            Optional<TableValue> there = table.value(size, dimension);
            if (there.isPresent() && Math.abs(there.get().millimetres() - value) < least) {
                least = Math.abs(there.get().millimetres() - value);
                nearest = Optional.of(size);
            }
        }
        return nearest;
    }

    private static List<Departure> departures(SizeTable table, String size, Map<BodyDimension, Double> given) {
        List<Departure> departures = new ArrayList<>();
        given.forEach((dimension, value) -> table.value(size, dimension).ifPresent(there -> {
            double distance = Math.abs(value - there.millimetres());
            if (distance > Math.max(LEAST_DEPARTURE, halfStep(table, size, dimension))) {
                departures.add(new Departure(
                        dimension,
                        value,
                        there.millimetres(),
                        nearest(table, dimension, value).orElse(size)));
            }
        }));
        return departures;
    }

    /** Half of the wider step from the size to its neighbours: what a wearer of the size may be off by. */
    private static double halfStep(SizeTable table, String size, BodyDimension dimension) {
        return table.increments(dimension).stream()
                        .filter(step ->
                                step.fromSize().equals(size) || step.toSize().equals(size))
                        .mapToDouble(step -> Math.abs(step.millimetres()))
                        .max()
                        .orElse(0)
                / 2;
    }
}
