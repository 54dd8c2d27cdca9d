package org.capwright.check;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.capwright.draft.BaseSleeve;
import org.capwright.draft.Overlay;
import org.capwright.draft.SleeveDraft;
import org.capwright.geometry.Curve;
import org.capwright.geometry.Point;
import org.capwright.grade.GradedSize;
import org.capwright.grade.PointOfMeasure;
import org.capwright.grade.SizeRun;
import org.capwright.grade.SpecTable;
import org.capwright.tables.SizeTable;

/**
 * A grade to be checked, drafted here or read from somebody's spec table or outlines. Immutable.
 *
 * @param sizes smallest first, one or more
 * @param base position of the base size
 * @param body the bodies it is compared with; without them no check against bodies is made
 * @param grids to what its figures are rounded
 */
public record CheckedGrade(List<CheckedSize> sizes, int base, Optional<BodyReference> body, RowGrids grids) {

    private static final double FLATNESS = 0.02;

    /**
     * Copies the sizes.
     *
     * @param sizes smallest first, one or more
     * @param base position of the base size
     * @param body the bodies it is compared with; without them no check against bodies is made
     * @param grids to what its figures are rounded
     * @throws IllegalArgumentException if there is no size, or no base size at that position
     */
    public CheckedGrade {
        sizes = List.copyOf(sizes);
        if (base < 0 || base >= sizes.size()) {
            throw new IllegalArgumentException("base: " + base + " is not within 0 to " + (sizes.size() - 1));
        }
    }

    /**
     * A grade whose figures are not rounded.
     *
     * @param sizes smallest first, one or more
     * @param base position of the base size
     * @param body the bodies it is compared with; without them no check against bodies is made
     * @throws IllegalArgumentException if there is no size, or no base size at that position
     */
    public CheckedGrade(List<CheckedSize> sizes, int base, Optional<BodyReference> body) {
        this(sizes, base, body, RowGrids.NONE);
    }

    /**
     * A run drafted here, with its figures and lines.
     *
     * @param run the run
     * @return the grade, without bodies
     */
    public static CheckedGrade of(SizeRun run) {
        List<CheckedSize> figures = of(SpecTable.of(run)).sizes;
        List<CheckedSize> sizes = new ArrayList<>(figures.size());
        for (int i = 0; i < figures.size(); i++) {
            sizes.add(drafted(figures.get(i), run.sizes().get(i)));
        }
        return new CheckedGrade(sizes, run.base(), Optional.empty());
    }

    /**
     * A spec table. Rows whose code no measure has are left out.
     *
     * @param table the table
     * @return the grade, without lines and bodies
     */
    public static CheckedGrade of(SpecTable table) {
        List<CheckedSize> sizes = new ArrayList<>(table.sizes().size());
        for (int i = 0; i < table.sizes().size(); i++) {
            Map<CheckedMeasure, Double> values = new EnumMap<>(CheckedMeasure.class);
            for (PointOfMeasure row : table.rows()) {
                double value = row.values().get(i);
                CheckedMeasure.ofCode(row.code()).ifPresent(measure -> values.put(measure, value));
            }
            sizes.add(new CheckedSize(table.sizes().get(i), values));
        }
        return new CheckedGrade(sizes, table.base(), Optional.empty());
    }

    private static CheckedSize drafted(CheckedSize figures, GradedSize size) {
        SleeveDraft draft = size.draft();
        BaseSleeve base = draft.base();
        Map<CheckedMeasure, Double> values = new EnumMap<>(CheckedMeasure.class);
        values.putAll(figures.values());
        values.put(CheckedMeasure.FRONT_WIDTH, base.front().width());
        values.put(CheckedMeasure.BACK_WIDTH, base.back().width());
        values.put(CheckedMeasure.FRONT_CAP_LINE, base.front().length());
        values.put(CheckedMeasure.BACK_CAP_LINE, base.back().length());
        values.put(
                CheckedMeasure.FRONT_INFLECTIONS, (double) base.front().curve().inflections());
        values.put(CheckedMeasure.BACK_INFLECTIONS, (double) base.back().curve().inflections());
        List<NestLine> lines = new ArrayList<>(3);
        lines.add(line(NestLine.Kind.CAP_LINE, base.capLine()));
        draft.overlay().ifPresent(overlay -> addOverlay(values, lines, overlay));
        return new CheckedSize(size.label(), values).withLines(lines);
    }

    private static void addOverlay(Map<CheckedMeasure, Double> values, List<NestLine> lines, Overlay overlay) {
        lines.add(line(NestLine.Kind.OVERLAY_EDGE, overlay.topEdge()));
        List<Point> hem = new ArrayList<>(overlay.front().hem().mirrored().flattened(FLATNESS));
        hem.addAll(overlay.back().hem().reversed().flattened(FLATNESS));
        lines.add(new NestLine(NestLine.Kind.OVERLAY_HEM, hem));
        overlay.pleats().ifPresent(pleats -> {
            values.put(CheckedMeasure.PLEAT_COUNT, (double) pleats.count());
            values.put(CheckedMeasure.PLEAT_LAYERS, (double) pleats.greatestLayers());
        });
    }

    private static NestLine line(NestLine.Kind kind, Curve curve) {
        return new NestLine(kind, curve.flattened(FLATNESS));
    }

    /**
     * The same grade compared with bodies.
     *
     * @param reference the bodies
     * @return a new grade
     */
    public CheckedGrade against(BodyReference reference) {
        return new CheckedGrade(sizes, base, Optional.of(reference), grids);
    }

    /**
     * The same grade compared with a table, if there is one.
     *
     * @param table a table of bodies whose sizes a body dimension orders
     * @return a new grade
     */
    public CheckedGrade against(Optional<SizeTable> table) {
        List<String> labels = sizes.stream().map(CheckedSize::label).toList();
        return new CheckedGrade(sizes, base, table.map(BodyReference::of).map(bodies -> bodies.named(labels)), grids);
    }

    /**
     * The same grade with other figures.
     *
     * @param changed as many sizes
     * @return a new grade
     */
    public CheckedGrade with(List<CheckedSize> changed) {
        return new CheckedGrade(changed, base, body, grids);
    }

    /**
     * The base size.
     *
     * @return what is known of it
     */
    public CheckedSize baseSize() {
        return sizes.get(base);
    }

    /**
     * One figure.
     *
     * @param size position of the size
     * @param measure which
     * @return millimetres or a count, or empty when it is not known
     */
    public OptionalDouble value(int size, CheckedMeasure measure) {
        return sizes.get(size).value(measure);
    }

    /**
     * How far a figure may lie off what was meant, as the sheet is rounded.
     *
     * @param size position of the size
     * @param measure which
     * @return half a step of the grid that the figure lies on, mm; 0 for a figure that is not rounded or not known
     */
    double leeway(int size, CheckedMeasure measure) {
        if (measure == CheckedMeasure.CAP_EASE
                && value(size, CheckedMeasure.CAP_LINE).isPresent()
                && value(size, CheckedMeasure.ARMHOLE).isPresent()) {
            return leeway(size, CheckedMeasure.CAP_LINE) + leeway(size, CheckedMeasure.ARMHOLE);
        }
        OptionalDouble value = value(size, measure);
        return value.isPresent() ? grids.leeway(measure, value.getAsDouble()) : 0;
    }

    /**
     * The jump from one size to the next.
     *
     * @param interval position of the smaller size
     * @param measure which
     * @return millimetres, or empty when either figure is not known
     */
    public OptionalDouble jump(int interval, CheckedMeasure measure) {
        return growth(interval, interval + 1, measure);
    }

    /** The growth from one size to another, where both figures are known. */
    OptionalDouble growth(int smaller, int larger, CheckedMeasure measure) {
        OptionalDouble from = value(smaller, measure);
        OptionalDouble to = value(larger, measure);
        return from.isPresent() && to.isPresent()
                ? OptionalDouble.of(to.getAsDouble() - from.getAsDouble())
                : OptionalDouble.empty();
    }

    /**
     * How many jumps there are.
     *
     * @return one less than there are sizes
     */
    public int intervals() {
        return sizes.size() - 1;
    }

    /**
     * The name of a size.
     *
     * @param size its position
     * @return the label
     */
    public String label(int size) {
        return sizes.get(size).label();
    }

    /**
     * The names of two neighbouring sizes.
     *
     * @param interval position of the smaller one
     * @return two labels, the smaller size first
     */
    public List<String> pair(int interval) {
        return List.of(label(interval), label(interval + 1));
    }

    /** Whether the figures were measured on outlines, which show cap lines and no armhole. Single figures cannot be exchanged there, and no rule is known. */
    boolean isMeasured() {
        return sizes.stream()
                .allMatch(size -> size.line(NestLine.Kind.CAP_LINE).isPresent()
                        && size.value(CheckedMeasure.ARMHOLE).isEmpty());
    }
}
