package org.capwright.gradeimport;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import org.capwright.check.CheckedMeasure;
import org.capwright.exchange.ForeignInputException;
import org.capwright.quantity.Quantity;

/**
 * A sheet of increments: one size with its measurements, and steps with their signs to either side (common practice, no source). The steps may be from size to size, or from the base size; they
 * are from the base size where they grow with the distance from it.
 */
final class Increments {

    /** Nothing round or along a sleeve is as short in full as this, and no step from the base size as long, mm. */
    private static final double BETWEEN = 60;

    /** Steps from the base size grow at least so much from one column to the next but one; steps from size to size vary less. */
    private static final double GROWTH = 1.6;

    private static final Set<CheckedMeasure> MAY_BE_SMALL = Set.of(
            CheckedMeasure.CAP_EASE, CheckedMeasure.RISE, CheckedMeasure.PLEAT_DEPTH, CheckedMeasure.OVERLAY_LENGTH);

    private final TableContext context;
    private final List<String> sizes;
    private final Map<String, Map<CheckedMeasure, Double>> values;

    private Increments(TableContext context, List<String> sizes, Map<String, Map<CheckedMeasure, Double>> values) {
        this.context = context;
        this.sizes = sizes;
        this.values = values;
    }

    /**
     * Adds the steps up, where the values are steps.
     *
     * @param sizes smallest first, as the steps are added along them
     * @param values of each size; changed where they are steps
     * @return the base size of a sheet of increments
     * @throws ForeignInputException if a length of a sleeve is not above 0
     */
    static Optional<String> added(
            TableContext context, List<String> sizes, Map<String, Map<CheckedMeasure, Double>> values)
            throws ForeignInputException {
        Increments increments = new Increments(context, sizes, values);
        Optional<Integer> base = increments.base();
        base.ifPresent(increments::add);
        increments.refuseNegative();
        return base.map(sizes::get);
    }

    private static boolean isFull(CheckedMeasure measure) {
        return measure.quantity() == Quantity.LENGTH && !MAY_BE_SMALL.contains(measure);
    }

    /** The one size that has full measurements, if all others have steps. */
    private Optional<Integer> base() {
        Set<Integer> full = new TreeSet<>();
        Set<Integer> steps = new TreeSet<>();
        for (int i = 0; i < sizes.size(); i++) {
            for (Map.Entry<CheckedMeasure, Double> entry : of(i).entrySet()) {
                if (isFull(entry.getKey())) {
                    (Math.abs(entry.getValue()) > BETWEEN ? full : steps).add(i);
                }
            }
        }
        boolean apart = full.size() == 1 && !steps.isEmpty() && steps.stream().noneMatch(full::contains);
        return apart ? full.stream().findFirst() : Optional.empty();
    }

    private Map<CheckedMeasure, Double> of(int size) {
        return required(sizes.get(size));
    }

    private Map<CheckedMeasure, Double> required(String size) {
        return Objects.requireNonNull(values.get(size));
    }

    private void add(int base) {
        boolean fromBase = isFromBase(base);
        // Below the base size a room may write the steps with or without their minus.
        int below = allStepsNotNegative() ? -1 : 1;
        Map<CheckedMeasure, Double> full = new EnumMap<>(of(base));
        for (int side : new int[] {-1, 1}) {
            Map<CheckedMeasure, Double> running = new EnumMap<>(full);
            for (int i = base + side; i >= 0 && i < sizes.size(); i += side) {
                for (Map.Entry<CheckedMeasure, Double> entry : of(i).entrySet()) {
                    Double from = (fromBase ? full : running).get(entry.getKey());
                    if (from != null) {
                        entry.setValue(from + (side < 0 ? below : 1) * entry.getValue());
                        running.put(entry.getKey(), entry.getValue());
                    }
                }
            }
        }
        context.traces()
                .assumed(
                        0,
                        ImportNote.FILE,
                        "only size " + ForeignInputException.shown(sizes.get(base))
                                + " has full measurements, so the other columns were read as increments "
                                + (fromBase ? "from that size" : "from size to size, starting at that size"));
    }

    private boolean allStepsNotNegative() {
        return values.values().stream()
                .flatMap(of -> of.entrySet().stream())
                .filter(entry -> isFull(entry.getKey()))
                .allMatch(entry -> entry.getValue() >= 0);
    }

    /** Steps from the base size grow with the distance from it. */
    private boolean isFromBase(int base) {
        List<Double> growth = new ArrayList<>();
        for (int side : new int[] {-1, 1}) {
            for (CheckedMeasure measure : of(base).keySet()) {
                int near = base + side;
                int far = base + 2 * side;
                if (far < 0 || far >= sizes.size()) {
                    continue;
                }
                Double one = of(near).get(measure);
                Double two = of(far).get(measure);
                if (one != null && two != null && Math.abs(one) > 0) {
                    growth.add(Math.abs(two) / Math.abs(one));
                }
            }
        }
        growth.sort(null);
        return !growth.isEmpty() && growth.get(growth.size() / 2) >= GROWTH;
    }

    private void refuseNegative() throws ForeignInputException {
        for (String size : sizes) {
            for (Map.Entry<CheckedMeasure, Double> entry : required(size).entrySet()) {
                if (isFull(entry.getKey()) && !(entry.getValue() > 0)) {
                    throw new ForeignInputException(
                            context.file(),
                            0,
                            entry.getKey().code() + " of size " + ForeignInputException.shown(size)
                                    + " is " + Math.round(entry.getValue() * 100) / 100.0
                                    + " mm; a sleeve measures more than 0. A sheet of increments needs one size with full measurements"
                                    + " in every row, and steps in all others");
                }
            }
        }
    }
}
