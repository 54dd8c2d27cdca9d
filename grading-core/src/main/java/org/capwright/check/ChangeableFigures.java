package org.capwright.check;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.IntStream;
import org.capwright.geometry.Point;
import org.capwright.quantity.Quantity;
import org.capwright.quantity.Subject;

/**
 * Somebody's own figures, of a sheet or measured on outlines; its cells are the figure of a size, the jump to the next size with all figures beyond it, and the one jump of an even row. On outlines the
 * cap line is stretched with its width and its height, as it would be drawn.
 */
final class ChangeableFigures implements Changeable {

    /** What of an outline is a figure of its own; the rest follows from it. */
    private static final Set<CheckedMeasure> DRAWN = EnumSet.of(
            CheckedMeasure.BICEP,
            CheckedMeasure.CAP_HEIGHT,
            CheckedMeasure.LENGTH,
            CheckedMeasure.ELBOW,
            CheckedMeasure.WRIST);

    private static final Set<CheckedMeasure> OF_PLEATS = EnumSet.of(
            CheckedMeasure.PLEAT_DEPTH,
            CheckedMeasure.OVERLAY_EDGE,
            CheckedMeasure.ATTACH_SPAN,
            CheckedMeasure.RISE,
            CheckedMeasure.ARMHOLE);

    /** Findings that no other figure mends: sizes to exchange, to draw anew or to supply. */
    private static final Set<String> NO_FIGURE =
            Set.of("sizes-swapped", "mirrored-piece", "moved-point", "missing-size", "not-read", "open-question");

    /** Figures are proposed to this where the sheet shows no grid, mm. */
    private static final double FINEST = 0.1;

    private final CheckedGrade grade;

    ChangeableFigures(CheckedGrade grade) {
        this.grade = grade;
    }

    @Override
    public CheckedGrade grade() {
        return grade;
    }

    @Override
    public List<Cell> suspects(List<Finding> findings) {
        Set<CheckedMeasure> suspected = EnumSet.noneOf(CheckedMeasure.class);
        findings.stream()
                .filter(finding -> !NO_FIGURE.contains(finding.code()))
                .forEach(finding -> suspected.addAll(behind(finding.subject())));
        suspected.removeIf(measure -> measure.quantity() != Quantity.LENGTH || isFollowing(measure));
        List<Cell> cells = new ArrayList<>();
        for (CheckedMeasure measure : suspected) {
            List<Integer> known = known(measure);
            known.forEach(size -> cells.add(new Cell(measure, size, size)));
            for (int k = 0; k + 1 < known.size(); k++) {
                Cell jump = new Cell(measure, known.get(k), known.get(k + 1));
                if (figures(jump) > 1) {
                    cells.add(jump);
                }
            }
            if (known.size() > 2 && EvenGrowth.of(grade, measure).isStraight()) {
                cells.add(new Cell(measure, known.get(0), known.get(known.size() - 1)));
            }
        }
        return cells;
    }

    private Set<CheckedMeasure> behind(Subject subject) {
        if (!(subject instanceof CheckedMeasure measure)) {
            return grade.isMeasured()
                    ? EnumSet.of(CheckedMeasure.BICEP, CheckedMeasure.CAP_HEIGHT)
                    : EnumSet.noneOf(CheckedMeasure.class);
        }
        return switch (measure) {
            case CAP_HEIGHT -> EnumSet.of(CheckedMeasure.CAP_HEIGHT, CheckedMeasure.BICEP);
            case CAP_EASE -> EnumSet.of(CheckedMeasure.CAP_EASE, CheckedMeasure.CAP_LINE, CheckedMeasure.ARMHOLE);
            case PLEAT_DEPTH, PLEAT_LAYERS, OVERLAY_EDGE, ATTACH_SPAN -> EnumSet.copyOf(OF_PLEATS);
            case CAP_LINE,
                    FRONT_WIDTH,
                    BACK_WIDTH,
                    FRONT_CAP_LINE,
                    BACK_CAP_LINE,
                    FRONT_INFLECTIONS,
                    BACK_INFLECTIONS ->
                grade.isMeasured() ? EnumSet.of(CheckedMeasure.BICEP, CheckedMeasure.CAP_HEIGHT) : EnumSet.of(measure);
            default -> EnumSet.of(measure);
        };
    }

    /** Whether a figure is worked out of others. */
    private boolean isFollowing(CheckedMeasure measure) {
        return grade.isMeasured()
                ? !DRAWN.contains(measure)
                : measure == CheckedMeasure.CAP_EASE
                        && !known(CheckedMeasure.CAP_LINE).isEmpty()
                        && !known(CheckedMeasure.ARMHOLE).isEmpty();
    }

    private List<Integer> known(CheckedMeasure measure) {
        return IntStream.range(0, grade.sizes().size())
                .filter(size -> grade.value(size, measure).isPresent())
                .boxed()
                .toList();
    }

    private double figure(int size, CheckedMeasure measure) {
        return grade.value(size, measure).orElseThrow();
    }

    private static CheckedMeasure measure(Cell cell) {
        return (CheckedMeasure) cell.place();
    }

    @Override
    public double value(Cell cell) {
        CheckedMeasure measure = measure(cell);
        double last = figure(cell.last(), measure);
        return cell.isSize() ? last : (last - figure(cell.first(), measure)) / (cell.last() - cell.first());
    }

    private boolean isWholeRow(Cell cell) {
        List<Integer> known = known(measure(cell));
        return known.size() > 2 && cell.first() == known.get(0) && cell.last() == known.get(known.size() - 1);
    }

    @Override
    public int figures(Cell cell) {
        if (cell.isSize()) {
            return 1;
        }
        List<Integer> known = known(measure(cell));
        return isWholeRow(cell)
                ? known.size() - 1
                : (int) known.stream().filter(size -> isBeyond(cell, size)).count();
    }

    /** Whether a size lies beyond a jump, seen from the base size. */
    private boolean isBeyond(Cell jump, int size) {
        return jump.first() >= grade.base() ? size >= jump.last() : size <= jump.first();
    }

    @Override
    public double[] likely(Cell cell, Thresholds thresholds) {
        CheckedMeasure measure = measure(cell);
        List<Double> likely = cell.isSize()
                ? likelyFigures(measure, cell.first(), thresholds)
                : likelyJumps(measure, cell, thresholds);
        double now = value(cell);
        double step = grid(cell).orElse(FINEST);
        return likely.stream()
                .mapToDouble(value -> cell.isSize() ? step * Math.rint(value / step) : value)
                .filter(value -> Double.isFinite(value) && Math.abs(value - now) > 1e-6)
                .distinct()
                .toArray();
    }

    private List<Double> likelyFigures(CheckedMeasure measure, int size, Thresholds thresholds) {
        List<Double> likely = new ArrayList<>();
        Arrays.stream(EvenGrowth.of(grade, measure).expected(size)).forEach(likely::add);
        List<Integer> known = known(measure);
        int at = known.indexOf(size);
        if (at > 0 && at + 1 < known.size()) {
            int below = known.get(at - 1);
            int above = known.get(at + 1);
            double share = (double) (size - below) / (above - below);
            likely.add((1 - share) * figure(below, measure) + share * figure(above, measure));
        }
        for (int side : new int[] {-1, 1}) {
            if (at + 2 * side >= 0 && at + 2 * side < known.size()) {
                int near = known.get(at + side);
                int far = known.get(at + 2 * side);
                double jump = (figure(near, measure) - figure(far, measure)) / (near - far);
                likely.add(figure(near, measure) + jump * (size - near));
            }
            int neighbour = size + side;
            if (at + side >= 0 && at + side < known.size() && known.get(at + side) == neighbour) {
                double from = figure(neighbour, measure);
                bounds(measure, Math.min(size, neighbour), thresholds).ifPresent(bounds -> {
                    for (double share : new double[] {0.1, 0.5, 0.9}) {
                        likely.add(from - side * (bounds.least() + share * (bounds.greatest() - bounds.least())));
                    }
                });
            }
        }
        if (measure == CheckedMeasure.ARMHOLE || measure == CheckedMeasure.CAP_LINE) {
            likelyEase(measure, size).ifPresent(likely::add);
        }
        return likely;
    }

    /** What gives a size the cap ease of most others. */
    private OptionalDouble likelyEase(CheckedMeasure measure, int size) {
        double[] others = known(CheckedMeasure.CAP_EASE).stream()
                .filter(other -> other != size)
                .mapToDouble(other -> figure(other, CheckedMeasure.CAP_EASE))
                .sorted()
                .toArray();
        OptionalDouble ease = grade.value(size, CheckedMeasure.CAP_EASE);
        double sign = measure == CheckedMeasure.ARMHOLE ? 1 : -1;
        return others.length == 0 || ease.isEmpty()
                ? OptionalDouble.empty()
                : OptionalDouble.of(figure(size, measure) + sign * (ease.getAsDouble() - others[others.length / 2]));
    }

    private List<Double> likelyJumps(CheckedMeasure measure, Cell cell, Thresholds thresholds) {
        List<Double> likely = new ArrayList<>();
        List<Double> others = new ArrayList<>();
        List<Integer> known = known(measure);
        for (int k = 0; k + 1 < known.size(); k++) {
            int from = known.get(k);
            int to = known.get(k + 1);
            if (from != cell.first() || isWholeRow(cell)) {
                others.add((figure(to, measure) - figure(from, measure)) / (to - from));
            }
            if (to == from + 1 && from >= cell.first() && to <= cell.last()) {
                bounds(measure, from, thresholds).ifPresent(bounds -> {
                    likely.add(bounds.least() + 0.05);
                    likely.add((bounds.least() + bounds.greatest()) / 2);
                    likely.add(bounds.greatest() - 0.05);
                });
            }
        }
        Collections.sort(others);
        if (!others.isEmpty()) {
            likely.add(others.get(others.size() / 2));
        }
        OptionalDouble ease = grade.growth(cell.first(), cell.last(), CheckedMeasure.CAP_EASE);
        if (ease.isPresent() && (measure == CheckedMeasure.ARMHOLE || measure == CheckedMeasure.CAP_LINE)) {
            double sign = measure == CheckedMeasure.ARMHOLE ? 1 : -1;
            likely.add(value(cell) + sign * ease.getAsDouble() / (cell.last() - cell.first()));
        }
        if (measure == CheckedMeasure.CAP_HEIGHT || measure == CheckedMeasure.BICEP) {
            inProportion(measure, cell).ifPresent(likely::add);
        }
        return likely;
    }

    /** What keeps cap height and bicep in the proportion of the base size. */
    private OptionalDouble inProportion(CheckedMeasure measure, Cell cell) {
        CheckedMeasure other = measure == CheckedMeasure.BICEP ? CheckedMeasure.CAP_HEIGHT : CheckedMeasure.BICEP;
        OptionalDouble own = grade.value(grade.base(), measure);
        OptionalDouble beside = grade.value(grade.base(), other);
        OptionalDouble growth = grade.growth(cell.first(), cell.last(), other);
        return own.isPresent() && beside.isPresent() && growth.isPresent() && beside.getAsDouble() > 0
                ? OptionalDouble.of(
                        own.getAsDouble() / beside.getAsDouble() * growth.getAsDouble() / (cell.last() - cell.first()))
                : OptionalDouble.empty();
    }

    private Optional<JumpBounds> bounds(CheckedMeasure measure, int k, Thresholds thresholds) {
        return grade.body()
                .flatMap(reference -> JumpBounds.LIMITS.stream()
                        .filter(limits -> limits.measure() == measure)
                        .findFirst()
                        .flatMap(limits ->
                                JumpBounds.of(reference, limits, grade.label(k), grade.label(k + 1), thresholds)));
    }

    @Override
    public OptionalDouble grid(Cell cell) {
        Double step = grade.grids().steps().get(measure(cell));
        return step == null ? OptionalDouble.empty() : OptionalDouble.of(step);
    }

    @Override
    public boolean isWritten() {
        return true;
    }

    @Override
    public double unevenness(Cell cell) {
        CheckedMeasure measure = measure(cell);
        List<Integer> known = known(measure);
        double sum = 0;
        for (int k = 1; k + 1 < known.size(); k++) {
            sum += Math.abs(jump(known, k, measure) - jump(known, k - 1, measure));
        }
        return sum;
    }

    private double jump(List<Integer> known, int k, CheckedMeasure measure) {
        int from = known.get(k);
        int to = known.get(k + 1);
        return (figure(to, measure) - figure(from, measure)) / (to - from);
    }

    @Override
    public Optional<Changeable> light(Cell cell) {
        return Optional.empty();
    }

    @Override
    public Optional<Changeable> with(Cell cell, double value) {
        CheckedMeasure measure = measure(cell);
        double change = value - value(cell);
        List<CheckedSize> sizes = new ArrayList<>(grade.sizes());
        for (int size : known(measure)) {
            double figure = figure(size, measure);
            double changed = cell.isSize()
                    ? size == cell.first() ? value : figure
                    : isWholeRow(cell)
                            ? figure + (size - grade.base()) * change
                            : isBeyond(cell, size)
                                    ? figure
                                            + (cell.first() >= grade.base() ? change : -change)
                                                    * (cell.last() - cell.first())
                                    : figure;
            if (changed != figure) {
                if (!(changed > 0) && measure != CheckedMeasure.CAP_EASE && measure != CheckedMeasure.RISE) {
                    return Optional.empty();
                }
                sizes.set(size, changed(sizes.get(size), measure, cell.isSize() ? changed : onGrid(cell, changed)));
            }
        }
        return Optional.of(new ChangeableFigures(grade.with(sizes)));
    }

    private double onGrid(Cell cell, double figure) {
        OptionalDouble step = grid(cell);
        return step.isPresent() ? step.getAsDouble() * Math.rint(figure / step.getAsDouble()) : figure;
    }

    private CheckedSize changed(CheckedSize size, CheckedMeasure measure, double value) {
        Optional<NestLine> cap = size.line(NestLine.Kind.CAP_LINE);
        boolean stretched = measure == CheckedMeasure.BICEP || measure == CheckedMeasure.CAP_HEIGHT;
        double old = size.value(measure).orElseThrow();
        CheckedSize changed = size.with(measure, value);
        return cap.isEmpty() || !stretched || !(old > 0)
                ? changed
                : stretched(
                        changed,
                        cap.get(),
                        measure == CheckedMeasure.BICEP ? value / old : 1,
                        measure == CheckedMeasure.CAP_HEIGHT ? value / old : 1);
    }

    private static CheckedSize stretched(CheckedSize size, NestLine cap, double across, double up) {
        List<Point> points = cap.points().stream()
                .map(point -> new Point(point.x() * across, point.y() * up))
                .toList();
        NestLine line = new NestLine(NestLine.Kind.CAP_LINE, points);
        Map<CheckedMeasure, Double> factors = new EnumMap<>(CheckedMeasure.class);
        factors.put(CheckedMeasure.FRONT_WIDTH, across);
        factors.put(CheckedMeasure.BACK_WIDTH, across);
        double longer = length(points) / length(cap.points());
        factors.put(CheckedMeasure.CAP_LINE, longer);
        factors.put(CheckedMeasure.FRONT_CAP_LINE, longer);
        factors.put(CheckedMeasure.BACK_CAP_LINE, longer);
        CheckedSize changed = size;
        for (Map.Entry<CheckedMeasure, Double> factor : factors.entrySet()) {
            OptionalDouble value = size.value(factor.getKey());
            if (value.isPresent()) {
                changed = changed.with(factor.getKey(), value.getAsDouble() * factor.getValue());
            }
        }
        return changed.withLines(size.lines().stream()
                .map(each -> each.kind() == NestLine.Kind.CAP_LINE ? line : each)
                .toList());
    }

    private static double length(List<Point> points) {
        return IntStream.range(1, points.size())
                .mapToDouble(i -> points.get(i).distanceTo(points.get(i - 1)))
                .sum();
    }
}
