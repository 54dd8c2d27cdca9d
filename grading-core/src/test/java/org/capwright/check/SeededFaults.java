package org.capwright.check;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.function.Predicate;
import org.capwright.draft.StyleSpace;
import org.capwright.geometry.Point;

/**
 * Puts faults into clean runs and counts how many are found and named right, and how often a clean run raises an alarm.
 */
final class SeededFaults {

    /** What can go wrong with somebody's grade. */
    enum Kind {
        BICEP_OFF,
        SIZES_SWAPPED,
        CROSSING_LINES,
        EASE_DRIFT,
        UNIT_MISTAKE,
        MIRRORED_PIECE,
        MISSING_SIZE
    }

    /** A grade with one fault, and what names it right. */
    record Fault(CheckedGrade grade, Predicate<Finding> named) {}

    /** The outcome of one kind. */
    record Count(int seeded, int found) {}

    /** The outcome of all. */
    record Table(Map<Kind, Count> faults, int clean, int alarms, List<String> missed, List<String> falseAlarms) {

        int seeded() {
            return faults.values().stream().mapToInt(Count::seeded).sum();
        }

        int found() {
            return faults.values().stream().mapToInt(Count::found).sum();
        }

        String text() {
            StringBuilder text = new StringBuilder("fault            seeded  found\n");
            faults.forEach((kind, count) ->
                    text.append(String.format(Locale.ROOT, "%-16s %6d %6d%n", kind, count.seeded, count.found)));
            return text.append(String.format(
                            Locale.ROOT,
                            "%-16s %6d %6d  %.1f %%%n",
                            "all",
                            seeded(),
                            found(),
                            100.0 * found() / seeded()))
                    .append(String.format(
                            Locale.ROOT,
                            "clean runs       %6d, false alarms %d  %.1f %%%n",
                            clean,
                            alarms,
                            100.0 * alarms / clean))
                    .toString();
        }
    }

    private SeededFaults() {}

    static Table count(long firstSeed, int faults) {
        Map<Kind, Count> counts = new EnumMap<>(Kind.class);
        List<String> missed = new ArrayList<>();
        List<String> falseAlarms = new ArrayList<>();
        int alarms = 0;
        for (int i = 0; i < faults; i++) {
            Kind kind = Kind.values()[i % Kind.values().length];
            long seed = firstSeed + i;
            CheckedGrade clean = CheckedGrade.of(CleanRuns.of(seed));
            List<Finding> onClean = alarms(clean);
            if (!onClean.isEmpty()) {
                alarms++;
                falseAlarms.add("seed " + seed + ": " + onClean.get(0));
            }
            while (kind == Kind.MIRRORED_PIECE && !tellsFrontFromBack(clean)) {
                seed += 1_000_000;
                clean = CheckedGrade.of(CleanRuns.of(seed));
            }
            Fault fault = fault(kind, clean, new Random(seed));
            List<Finding> found = alarms(fault.grade);
            boolean named = found.stream().anyMatch(fault.named);
            Count before = counts.getOrDefault(kind, new Count(0, 0));
            counts.put(kind, new Count(before.seeded + 1, before.found + (named ? 1 : 0)));
            if (!named) {
                missed.add(kind + " seed " + seed + ": " + found);
            }
        }
        return new Table(counts, faults, alarms, missed, falseAlarms);
    }

    static List<Finding> alarms(CheckedGrade grade) {
        return GradeChecks.run(grade, Thresholds.usual()).stream()
                .filter(finding -> finding.severity() != Severity.INFO)
                .toList();
    }

    /** A sleeve with equal halves cannot be mirrored by mistake. */
    static boolean tellsFrontFromBack(CheckedGrade grade) {
        CheckedSize size = grade.baseSize();
        return Math.abs(size.values().get(CheckedMeasure.FRONT_CAP_LINE)
                        - size.values().get(CheckedMeasure.BACK_CAP_LINE))
                > 1;
    }

    static Fault fault(Kind kind, CheckedGrade clean, Random random) {
        int n = clean.sizes().size();
        int size = random.nextInt(n);
        String label = clean.label(size);
        return switch (kind) {
            case BICEP_OFF -> {
                double off = random.nextBoolean() ? 3 : -3;
                double bicep = clean.value(size, CheckedMeasure.BICEP).orElseThrow();
                yield new Fault(
                        with(clean, size, clean.sizes().get(size).with(CheckedMeasure.BICEP, bicep + off)),
                        f -> f.code().equals("uneven-jump")
                                && f.subject().code().equals("bicep")
                                && f.sizes().equals(List.of(label)));
            }
            case SIZES_SWAPPED -> swapped(clean, size, random);
            case CROSSING_LINES -> crossing(clean, size, random);
            case EASE_DRIFT -> drifting(clean, random);
            case UNIT_MISTAKE -> wrongUnit(clean, size, random);
            case MIRRORED_PIECE ->
                new Fault(
                        with(clean, size, mirrored(clean.sizes().get(size))),
                        f -> f.code().equals("mirrored-piece") && f.sizes().equals(List.of(label)));
            case MISSING_SIZE -> missing(clean, size, random);
        };
    }

    private static CheckedGrade with(CheckedGrade grade, int size, CheckedSize changed) {
        List<CheckedSize> sizes = new ArrayList<>(grade.sizes());
        sizes.set(size, changed);
        return grade.with(sizes);
    }

    private static Fault swapped(CheckedGrade clean, int size, Random random) {
        int n = clean.sizes().size();
        int other = (size + 1 + random.nextInt(n - 1)) % n;
        int first = Math.min(size, other);
        int second = Math.max(size, other);
        List<CheckedSize> sizes = new ArrayList<>(clean.sizes());
        sizes.set(first, clean.sizes().get(second).labelled(clean.label(first)));
        sizes.set(second, clean.sizes().get(first).labelled(clean.label(second)));
        List<String> pair = List.of(clean.label(first), clean.label(second));
        return new Fault(
                clean.with(sizes),
                f -> f.code().equals("sizes-swapped") && f.sizes().equals(pair));
    }

    /** Pushes the cap line of one size in or out over a stretch, a good way beyond its neighbour's. */
    private static Fault crossing(CheckedGrade clean, int size, Random random) {
        CheckedSize healthy = clean.sizes().get(size);
        boolean inward = size == clean.sizes().size() - 1 || size > 0 && random.nextBoolean();
        List<Point> points = healthy.line(NestLine.Kind.CAP_LINE).orElseThrow().points();
        double left = points.get(0).x();
        double right = points.get(points.size() - 1).x();
        double middle = left + (right - left) * StyleSpace.between(random, 0.2, 0.8);
        int neighbour = inward ? size - 1 : size + 1;
        double jump = Math.abs(clean.value(neighbour, CheckedMeasure.BICEP).orElseThrow()
                        - clean.value(size, CheckedMeasure.BICEP).orElseThrow())
                + Math.abs(clean.value(neighbour, CheckedMeasure.CAP_HEIGHT).orElseThrow()
                        - clean.value(size, CheckedMeasure.CAP_HEIGHT).orElseThrow());
        double push = (jump + StyleSpace.between(random, 2, 6)) * (inward ? -1 : 1);
        double breadth = (right - left) * StyleSpace.between(random, 0.08, 0.2);
        List<Point> pushed = points.stream()
                .map(p -> p.plus(new Point(0, push * Math.exp(-Math.pow((p.x() - middle) / breadth, 2)))))
                .toList();
        List<NestLine> lines = new ArrayList<>(healthy.lines());
        lines.set(0, new NestLine(NestLine.Kind.CAP_LINE, pushed));
        List<String> pair = List.of(clean.label(Math.min(size, neighbour)), clean.label(Math.max(size, neighbour)));
        return new Fault(
                with(clean, size, healthy.withLines(lines)),
                f -> f.code().equals("crossing-lines") && f.sizes().equals(pair));
    }

    private static Fault drifting(CheckedGrade clean, Random random) {
        double drift = StyleSpace.between(random, 1.6, 4) * (random.nextBoolean() ? 1 : -1);
        List<CheckedSize> sizes = new ArrayList<>();
        for (int i = 0; i < clean.sizes().size(); i++) {
            CheckedSize size = clean.sizes().get(i);
            sizes.add(size.with(
                    CheckedMeasure.ARMHOLE,
                    size.value(CheckedMeasure.ARMHOLE).orElseThrow() + drift * (i - clean.base())));
        }
        return new Fault(clean.with(sizes), f -> f.code().equals("cap-ease-drift"));
    }

    private static Fault wrongUnit(CheckedGrade clean, int size, Random random) {
        double[] factors = {0.1, 1 / 25.4, 2.54, 1 / 2.54, 10};
        double factor = factors[random.nextInt(factors.length)];
        CheckedSize changed = clean.sizes().get(size);
        List<CheckedMeasure> known = PlausibilityCheck.GROWING.stream()
                .filter(clean.sizes().get(size).values()::containsKey)
                .toList();
        List<CheckedMeasure> wrong = random.nextBoolean() ? known : List.of(known.get(random.nextInt(known.size())));
        for (CheckedMeasure measure : wrong) {
            changed = changed.with(measure, changed.value(measure).orElseThrow() * factor);
        }
        String measure = wrong.size() > 1
                ? PlausibilityCheck.WHOLE_SIZE.code()
                : wrong.get(0).code();
        String label = clean.label(size);
        return new Fault(
                with(clean, size, changed),
                f -> f.code().equals("unit-mistake")
                        && f.sizes().equals(List.of(label))
                        && f.subject().code().equals(measure));
    }

    private static CheckedSize mirrored(CheckedSize size) {
        List<NestLine> lines = new ArrayList<>();
        for (NestLine line : size.lines()) {
            List<Point> points = new ArrayList<>();
            for (Point point : line.points()) {
                points.add(0, point.mirrored());
            }
            lines.add(new NestLine(line.kind(), points));
        }
        return size.withLines(lines)
                .with(
                        CheckedMeasure.FRONT_WIDTH,
                        size.value(CheckedMeasure.BACK_WIDTH).orElseThrow())
                .with(
                        CheckedMeasure.BACK_WIDTH,
                        size.value(CheckedMeasure.FRONT_WIDTH).orElseThrow())
                .with(
                        CheckedMeasure.FRONT_CAP_LINE,
                        size.value(CheckedMeasure.BACK_CAP_LINE).orElseThrow())
                .with(
                        CheckedMeasure.BACK_CAP_LINE,
                        size.value(CheckedMeasure.FRONT_CAP_LINE).orElseThrow());
    }

    /** Leaves a size out, with its label or with its figures alone. */
    private static Fault missing(CheckedGrade clean, int size, Random random) {
        int n = clean.sizes().size();
        if (random.nextBoolean()) {
            String label = clean.label(size);
            return new Fault(
                    with(clean, size, new CheckedSize(label, Map.of())),
                    f -> f.code().equals("missing-size") && f.sizes().equals(List.of(label)));
        }
        int inner = 1 + random.nextInt(n - 2);
        List<CheckedSize> sizes = new ArrayList<>(clean.sizes());
        sizes.remove(inner);
        int base = clean.base() > inner ? clean.base() - 1 : Math.min(clean.base(), n - 2);
        List<String> pair = List.of(clean.label(inner - 1), clean.label(inner + 1));
        return new Fault(
                new CheckedGrade(sizes, base, Optional.empty()),
                f -> f.code().equals("missing-size") && f.sizes().equals(pair));
    }
}
