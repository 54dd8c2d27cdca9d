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
import org.capwright.draft.CapFit;
import org.capwright.draft.SleeveStyle;
import org.capwright.grade.GradeRule;
import org.capwright.grade.GradedSize;
import org.capwright.grade.SizeRun;
import org.capwright.grade.SpecTable;
import org.capwright.measure.Dimension;
import org.capwright.measure.Dimensions;
import org.capwright.quantity.InvalidMeasuresException;
import org.capwright.quantity.Subject;

/** A run drafted here; its cells are the increments of its rules, and it is drafted anew with every change. */
final class ChangeableRules implements Changeable {

    private static final List<Dimension> ALL_OF_A_SIZE = List.of(
            Dimension.BICEP,
            Dimension.CAP_HEIGHT,
            Dimension.ARMHOLE,
            Dimension.LENGTH,
            Dimension.ELBOW,
            Dimension.WRIST);

    static final Set<Dimension> OF_THE_OVERLAY = EnumSet.of(
            Dimension.RISE,
            Dimension.OVERLAY_LENGTH,
            Dimension.SIDE_DEPTH,
            Dimension.HEM_SAGITTA,
            Dimension.EXTRA_WIDTH,
            Dimension.FRONT_GAP,
            Dimension.BACK_GAP,
            Dimension.PLEAT_DEPTH);

    private static final Map<Dimension, CheckedMeasure> MEASURED = measured();

    /** How far a half may be off its share of the bicep and still follow it, mm. */
    private static final double IN_PROPORTION = 0.5;

    private final SizeRun run;
    private final Optional<BodyReference> body;
    private final CheckedGrade grade;
    private final Dimensions base;

    ChangeableRules(SizeRun run, Optional<BodyReference> body) {
        this(run, body, CheckedGrade.of(run));
    }

    private ChangeableRules(SizeRun run, Optional<BodyReference> body, CheckedGrade drafted) {
        this.run = run;
        this.body = body;
        this.grade = body.map(drafted::against).orElse(drafted);
        this.base = run.baseSize().draft().dimensions();
    }

    @Override
    public Optional<Changeable> light(Cell cell) {
        if (run.style().overlay().isEmpty() || OF_THE_OVERLAY.contains((Dimension) cell.place())) {
            return Optional.empty();
        }
        SleeveStyle plain =
                new SleeveStyle(run.style().fit(), Optional.empty(), run.style().underSleeve());
        List<GradeRule> rules = run.rules().stream()
                .filter(rule -> !OF_THE_OVERLAY.contains(rule.dimension()))
                .toList();
        SizeRun light = SizeRun.grade(plain, base, labels(), run.base(), rules);
        return Optional.of(new ChangeableRules(light, body, CheckedGrade.of(SpecTable.of(light))));
    }

    private List<String> labels() {
        return run.sizes().stream().map(GradedSize::label).toList();
    }

    private static Map<Dimension, CheckedMeasure> measured() {
        Map<Dimension, CheckedMeasure> measured = new EnumMap<>(Dimension.class);
        for (Dimension dimension : Dimension.values()) {
            CheckedMeasure.ofCode(dimension.gradeName()).ifPresent(measure -> measured.put(dimension, measure));
        }
        return measured;
    }

    SizeRun run() {
        return run;
    }

    @Override
    public CheckedGrade grade() {
        return grade;
    }

    @Override
    public List<Cell> suspects(List<Finding> findings) {
        Set<Dimension> suspected = EnumSet.noneOf(Dimension.class);
        findings.forEach(finding -> suspected.addAll(behind(finding.subject())));
        suspected.removeIf(dimension -> !base.has(dimension) || follows(dimension));
        List<Cell> cells = new ArrayList<>();
        for (Dimension dimension : suspected) {
            if (grade.intervals() > 1 && isUniform(dimension)) {
                cells.add(new Cell(dimension, 0, grade.intervals()));
            }
            for (int k = 0; k < grade.intervals(); k++) {
                cells.add(new Cell(dimension, k, k + 1));
            }
            for (int i = 1; i < grade.intervals(); i++) {
                if (i != grade.base()) {
                    cells.add(new Cell(dimension, i, i));
                }
            }
        }
        return cells;
    }

    /** The dimensions that a finding can come from. */
    private static Set<Dimension> behind(Subject subject) {
        if (!(subject instanceof CheckedMeasure measure)) {
            return EnumSet.copyOf(ALL_OF_A_SIZE);
        }
        return switch (measure) {
            case BICEP -> EnumSet.of(Dimension.BICEP);
            case LENGTH -> EnumSet.of(Dimension.LENGTH);
            case ARMHOLE -> EnumSet.of(Dimension.ARMHOLE);
            // Without a rule of its own the elbow follows from what is above and below it.
            case ELBOW -> EnumSet.of(Dimension.ELBOW, Dimension.WRIST, Dimension.LENGTH, Dimension.BICEP);
            case WRIST -> EnumSet.of(Dimension.WRIST);
            case CAP_HEIGHT -> EnumSet.of(Dimension.CAP_HEIGHT, Dimension.BICEP);
            case CAP_EASE -> EnumSet.of(Dimension.ARMHOLE, Dimension.CAP_HEIGHT, Dimension.BICEP);
            case RISE -> EnumSet.of(Dimension.RISE);
            case OVERLAY_TOTAL_LENGTH -> EnumSet.of(Dimension.OVERLAY_LENGTH);
            case OVERLAY_EDGE, ATTACH_SPAN, PLEAT_DEPTH, PLEAT_COUNT, PLEAT_LAYERS ->
                EnumSet.of(
                        Dimension.RISE,
                        Dimension.FRONT_GAP,
                        Dimension.BACK_GAP,
                        Dimension.EXTRA_WIDTH,
                        Dimension.PLEAT_DEPTH,
                        Dimension.ARMHOLE,
                        Dimension.CAP_HEIGHT,
                        Dimension.BICEP);
            case CAP_LINE,
                    FRONT_WIDTH,
                    BACK_WIDTH,
                    FRONT_CAP_LINE,
                    BACK_CAP_LINE,
                    FRONT_INFLECTIONS,
                    BACK_INFLECTIONS ->
                EnumSet.of(
                        Dimension.CAP_HEIGHT,
                        Dimension.BICEP,
                        Dimension.FRONT_WIDTH,
                        Dimension.CAP_OUTWARD,
                        Dimension.CAP_INWARD,
                        Dimension.FRONT_CAP_OUTWARD,
                        Dimension.FRONT_CAP_INWARD,
                        Dimension.BACK_CAP_OUTWARD,
                        Dimension.BACK_CAP_INWARD);
        };
    }

    private boolean follows(Dimension dimension) {
        CapFit fit = run.style().fit();
        return dimension == Dimension.BICEP && fit instanceof CapFit.BicepFor
                || dimension == Dimension.CAP_HEIGHT
                        && (fit instanceof CapFit.CapHeightFor || fit instanceof CapFit.HalvesFor);
    }

    private boolean isUniform(Dimension dimension) {
        return rule(dimension).increments().stream().distinct().count() <= 1;
    }

    private GradeRule rule(Dimension dimension) {
        return run.rules().stream()
                .filter(rule -> rule.dimension() == dimension)
                .findFirst()
                .orElseGet(() -> GradeRule.uniform(dimension, 0, run.sizes().size()));
    }

    private double graded(Dimension dimension, int size) {
        return rule(dimension).apply(base.get(dimension), grade.base(), size);
    }

    @Override
    public double value(Cell cell) {
        Dimension dimension = (Dimension) cell.place();
        return cell.isSize()
                ? graded(dimension, cell.first())
                : rule(dimension).increments().get(cell.first());
    }

    @Override
    public int figures(Cell cell) {
        return cell.isSize() ? 2 : 1;
    }

    @Override
    public OptionalDouble grid(Cell cell) {
        return OptionalDouble.empty();
    }

    @Override
    public boolean isWritten() {
        return false;
    }

    @Override
    public double unevenness(Cell cell) {
        return unevenness(rule((Dimension) cell.place()).increments());
    }

    private static double unevenness(List<Double> increments) {
        double sum = 0;
        for (int k = 1; k < increments.size(); k++) {
            sum += Math.abs(increments.get(k) - increments.get(k - 1));
        }
        return sum;
    }

    @Override
    public double[] likely(Cell cell, Thresholds thresholds) {
        Dimension dimension = (Dimension) cell.place();
        List<Double> increments = rule(dimension).increments();
        double[] likely = cell.isSize()
                ? likelySizes(dimension, cell.first())
                : IntStream.range(cell.first(), cell.last())
                        .boxed()
                        .flatMapToDouble(k -> Arrays.stream(likelyJumps(dimension, increments, k, thresholds)))
                        .toArray();
        if (cell.last() - cell.first() > 1) {
            likely = spread(likely);
        }
        double now = value(cell);
        return Arrays.stream(likely)
                .filter(value -> Double.isFinite(value) && Math.abs(value - now) > 1e-6)
                .distinct()
                .toArray();
    }

    /** Where one increment serves all jumps, a few between the least and the greatest that single jumps would like. */
    private static double[] spread(double[] likely) {
        double least = Arrays.stream(likely).min().orElse(0);
        double greatest = Arrays.stream(likely).max().orElse(0);
        double[] sorted = Arrays.stream(likely).sorted().toArray();
        double[] spread = new double[10];
        for (int i = 0; i < 8; i++) {
            spread[i] = least + (greatest - least) * i / 7;
        }
        spread[8] = sorted.length == 0 ? Double.NaN : sorted[sorted.length / 2];
        spread[9] = 0;
        return spread;
    }

    private double[] likelySizes(Dimension dimension, int size) {
        List<Double> likely = new ArrayList<>();
        likely.add((graded(dimension, size - 1) + graded(dimension, size + 1)) / 2);
        if (size >= 2) {
            likely.add(2 * graded(dimension, size - 1) - graded(dimension, size - 2));
        }
        if (size + 2 < grade.sizes().size()) {
            likely.add(2 * graded(dimension, size + 1) - graded(dimension, size + 2));
        }
        return likely.stream().mapToDouble(Double::doubleValue).toArray();
    }

    private double[] likelyJumps(Dimension dimension, List<Double> increments, int k, Thresholds thresholds) {
        List<Double> likely = new ArrayList<>();
        List<Double> others = new ArrayList<>(increments);
        others.remove(k);
        if (!others.isEmpty()) {
            Collections.sort(others);
            likely.add(others.get(others.size() / 2));
            if (k > 0 && k + 1 < increments.size()) {
                likely.add((increments.get(k - 1) + increments.get(k + 1)) / 2);
            }
        }
        likely.add(0.0);
        bounds(dimension, k, thresholds).ifPresent(bounds -> {
            likely.add(bounds.least() + 0.05);
            likely.add((bounds.least() + bounds.greatest()) / 2);
            likely.add(bounds.greatest() - 0.05);
        });
        OptionalDouble cap = grade.jump(k, CheckedMeasure.CAP_LINE);
        OptionalDouble armhole = grade.jump(k, CheckedMeasure.ARMHOLE);
        double ratio = base.get(Dimension.CAP_HEIGHT) / base.get(Dimension.BICEP);
        switch (dimension) {
            case ARMHOLE -> cap.ifPresent(likely::add);
            case CAP_HEIGHT -> {
                likely.add(ratio * rule(Dimension.BICEP).increments().get(k));
                closing(cap, armhole, 1.1, increments.get(k)).ifPresent(likely::add);
            }
            case BICEP -> {
                likely.add(rule(Dimension.CAP_HEIGHT).increments().get(k) / ratio);
                closing(cap, armhole, 0.85, increments.get(k)).ifPresent(likely::add);
            }
            default -> {
                double share = base.get(dimension) / base.get(Dimension.BICEP);
                likely.add(share * rule(Dimension.BICEP).increments().get(k));
                likely.add(increments.get(k) + 2);
                likely.add(increments.get(k) - 2);
            }
        }
        return likely.stream().mapToDouble(Double::doubleValue).toArray();
    }

    /** What would make the cap line grow as the armhole does, at so much of cap line per millimetre. */
    private static OptionalDouble closing(OptionalDouble cap, OptionalDouble armhole, double slope, double increment) {
        return cap.isPresent() && armhole.isPresent()
                ? OptionalDouble.of(increment + (armhole.getAsDouble() - cap.getAsDouble()) / slope)
                : OptionalDouble.empty();
    }

    private Optional<JumpBounds> bounds(Dimension dimension, int k, Thresholds thresholds) {
        CheckedMeasure measure = MEASURED.get(dimension);
        return body.flatMap(reference -> JumpBounds.LIMITS.stream()
                .filter(limits -> limits.measure() == measure)
                .findFirst()
                .flatMap(limits -> JumpBounds.of(reference, limits, grade.label(k), grade.label(k + 1), thresholds)));
    }

    @Override
    public Optional<Changeable> with(Cell cell, double value) {
        Dimension dimension = (Dimension) cell.place();
        List<Double> increments = new ArrayList<>(rule(dimension).increments());
        if (cell.isSize()) {
            double change = value - value(cell);
            increments.set(cell.first() - 1, increments.get(cell.first() - 1) + change);
            increments.set(cell.first(), increments.get(cell.first()) - change);
        } else {
            for (int k = cell.first(); k < cell.last(); k++) {
                increments.set(k, value);
            }
        }
        try {
            SizeRun regraded = regraded(new GradeRule(dimension, increments));
            return Optional.of(
                    grade.sizes().get(0).lines().isEmpty()
                            ? new ChangeableRules(regraded, body, CheckedGrade.of(SpecTable.of(regraded)))
                            : new ChangeableRules(regraded, body));
        } catch (InvalidMeasuresException e) {
            return Optional.empty();
        }
    }

    private SizeRun regraded(GradeRule after) {
        Map<Dimension, GradeRule> rules = new EnumMap<>(Dimension.class);
        run.rules().forEach(rule -> rules.put(rule.dimension(), rule));
        if (after.dimension() == Dimension.BICEP && base.has(Dimension.FRONT_WIDTH)) {
            rules.put(Dimension.FRONT_WIDTH, followed(after));
        }
        rules.put(after.dimension(), after);
        return SizeRun.grade(run.style(), base, labels(), run.base(), new ArrayList<>(rules.values()));
    }

    /** The front half keeps its share of what is added to the bicep wherever it had that share before. */
    private GradeRule followed(GradeRule after) {
        double share = base.get(Dimension.FRONT_WIDTH) / base.get(Dimension.BICEP);
        List<Double> bicep = rule(Dimension.BICEP).increments();
        List<Double> front = new ArrayList<>(rule(Dimension.FRONT_WIDTH).increments());
        for (int k = 0; k < bicep.size(); k++) {
            if (Math.abs(front.get(k) - share * bicep.get(k)) < IN_PROPORTION) {
                front.set(k, front.get(k) + share * (after.increments().get(k) - bicep.get(k)));
            }
        }
        return new GradeRule(Dimension.FRONT_WIDTH, front);
    }
}
