package org.capwright.check;

import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import org.capwright.quantity.Quantity;

/**
 * The grids that a room has rounded the rows of its sheet to, as its figures show them: the coarsest of the customary ones on which nearly all figures lie. A figure on a grid may stand half a step
 * off what was meant; one that lies between is taken as it stands.
 *
 * @param steps distance of neighbouring figures of a row, mm; none for a row that shows no grid
 */
public record RowGrids(Map<CheckedMeasure, Double> steps) {

    /** Nothing is rounded: a run that was drafted here. */
    public static final RowGrids NONE = new RowGrids(Map.of());

    /** Steps of rulers and tapes, mm, the coarsest first: 1/2 in to 1/32 in and 10 to 0.5 mm (common practice, no source). */
    private static final List<Double> CUSTOMARY =
            List.of(12.7, 10.0, 6.35, 5.0, 3.175, 2.5, 2.0, 1.5875, 1.0, 0.79375, 0.5);

    /** The coarsest step that one row may have for itself; a coarser one must show in the whole sheet, mm. */
    private static final double COARSEST_OF_A_ROW = 6.35;

    /** A rounding of the written number: 13 1/8 in may stand as 13.13. */
    private static final double SAME = 0.13;

    /** Nearly all. */
    private static final double SHARE = 0.8;

    /** Fewer figures than this show no grid of a whole sheet. */
    private static final int FEWEST = 6;

    /**
     * Copies the map.
     *
     * @param steps distance of neighbouring figures of a row, mm; none for a row that shows no grid
     */
    public RowGrids {
        EnumMap<CheckedMeasure, Double> copy = new EnumMap<>(CheckedMeasure.class);
        copy.putAll(steps);
        steps = Collections.unmodifiableMap(copy);
    }

    /**
     * The grids of a sheet.
     *
     * @param sizes the figures as they were read
     * @param factors by what the figures of a row were multiplied when they were read: 2 for a half width; 1 where nothing is said
     * @return the grid of the sheet for every row; for a row that no other grid explains, a coarser one of its own
     */
    public static RowGrids of(List<CheckedSize> sizes, Map<CheckedMeasure, Double> factors) {
        Map<CheckedMeasure, List<Double>> rows = new EnumMap<>(CheckedMeasure.class);
        for (CheckedMeasure measure : CheckedMeasure.values()) {
            // What was worked out of two other rows was not rounded itself.
            if (measure.quantity() == Quantity.LENGTH && !isWorkedOut(sizes, measure)) {
                double factor = factors.getOrDefault(measure, 1.0);
                List<Double> row = sizes.stream()
                        .map(size -> size.value(measure))
                        .filter(OptionalDouble::isPresent)
                        .map(value -> value.getAsDouble() / factor)
                        .toList();
                if (!row.isEmpty()) {
                    rows.put(measure, row);
                }
            }
        }
        List<Double> all = rows.values().stream().flatMap(List::stream).toList();
        double ofSheet = all.size() < FEWEST ? 0 : coarsest(all, CUSTOMARY.get(0));
        Map<CheckedMeasure, Double> steps = new EnumMap<>(CheckedMeasure.class);
        rows.forEach((measure, row) -> {
            double factor = factors.getOrDefault(measure, 1.0);
            double own = coarsest(row, COARSEST_OF_A_ROW);
            boolean coarser =
                    own > ofSheet && row.size() >= 4 && !EvenGrowth.of(row).isEvenButForOne(ofSheet / 2);
            double step = coarser ? own : coarsest(row, ofSheet);
            if (step > 0) {
                steps.put(measure, step * factor);
            }
        });
        return new RowGrids(steps);
    }

    private static boolean isWorkedOut(List<CheckedSize> sizes, CheckedMeasure measure) {
        return measure == CheckedMeasure.CAP_EASE
                && sizes.stream()
                        .anyMatch(size -> size.value(CheckedMeasure.CAP_LINE).isPresent()
                                && size.value(CheckedMeasure.ARMHOLE).isPresent());
    }

    private static double coarsest(List<Double> figures, double most) {
        List<Double> known = new ArrayList<>(figures);
        known.removeIf(figure -> figure == 0);
        for (double step : CUSTOMARY) {
            long on = known.stream().filter(figure -> isOn(figure, step)).count();
            if (step <= most && !known.isEmpty() && on >= SHARE * known.size()) {
                return step;
            }
        }
        return 0;
    }

    private static boolean isOn(double figure, double step) {
        return Math.abs(figure - step * Math.rint(figure / step)) <= Math.min(SAME, step / 8);
    }

    /**
     * How far a figure may lie off what was meant.
     *
     * @param measure its row
     * @param figure mm
     * @return half a step of the grid, mm; 0 where the row shows no grid or the figure lies between
     */
    double leeway(CheckedMeasure measure, double figure) {
        double step = steps.getOrDefault(measure, 0.0);
        return step > 0 && isOn(figure, step) ? step / 2 : 0;
    }
}
