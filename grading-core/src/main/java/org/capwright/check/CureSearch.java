package org.capwright.check;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.capwright.quantity.Rounding;
import org.capwright.tables.Interval;

/**
 * Looks for the fewest figures whose change leaves no finding as grave as the gravest, and creates none. Every value tried is drafted and put before all checks but the opinion of the survey, which is
 * only information. One figure is tried before several; of figures that cure alike the one is taken that leaves least to be seen and makes its row most even.
 */
final class CureSearch {

    /** How finely bounds are told, mm. */
    private static final double FINE = 0.1;
    /** Bounds hold this much beyond themselves, so that a figure read back from text holds them too, mm. */
    private static final double SURE = 0.004;
    /** Nobody asks how far beyond this a figure may go, mm. */
    private static final double FARTHEST = 60;

    /** So many sizes are drafted in one search; a long run with faults all over must not be tried for minutes. */
    private static final int MOST_DRAFTED = 40_000;

    /** The same for figures of a sheet, which may be wrong all over. */
    private static final int MOST_READ = 20_000;

    private static final int MOST_CURES = 8;
    private static final int REFINED = 5;

    /** Findings about the spread over the whole run, whichever sizes it is measured between. */
    private static final Set<String> OF_THE_RUN = Set.of(
            "cap-ease-drift",
            "cap-ease-range",
            "proportion-drift",
            "pleat-depth-drift",
            "pleat-layers",
            "front-back-balance");

    private final Thresholds thresholds;
    private final Rounding grid;
    private final Severity aim;
    private final Map<String, Severity> before = new HashMap<>();
    private int drafted;

    /**
     * One figure changed.
     *
     * @param cell which
     * @param old what stood there before any change
     * @param proposed what is proposed
     * @param passing from the least to the greatest value that passes as well
     * @param cured findings that go with the change
     */
    record Step(Changeable.Cell cell, double old, double proposed, Interval passing, List<Finding> cured) {}

    /**
     * The outcome.
     *
     * @param steps changes, the most telling first
     * @param changed the grade with all of them
     * @param left findings of the gravest kind that are left
     */
    record Outcome(List<Step> steps, Changeable changed, List<Finding> left) {}

    /** What is left of the findings after a change. */
    private record Score(int graves, double alarms, double notes) implements Comparable<Score> {
        @Override
        public int compareTo(Score other) {
            return Comparator.comparingInt(Score::graves)
                    .thenComparingDouble(Score::alarms)
                    .thenComparingDouble(Score::notes)
                    .compare(this, other);
        }

        boolean asGoodAs(Score other) {
            return graves <= other.graves && alarms <= other.alarms + 1e-9;
        }
    }

    private record Trial(Changeable.Cell cell, double value, Changeable changed, List<Finding> findings, Score score) {}

    CureSearch(Thresholds thresholds, Rounding grid, Severity aim, List<Finding> findings) {
        this.thresholds = thresholds;
        this.grid = grid;
        this.aim = aim;
        for (Finding finding : findings) {
            before.merge(key(finding), finding.severity(), (a, b) -> a.compareTo(b) > 0 ? a : b);
        }
    }

    static String key(Finding finding) {
        return finding.code()
                + ' '
                + finding.subject().code()
                + (OF_THE_RUN.contains(finding.code()) ? "" : " " + finding.sizes());
    }

    Outcome search(Changeable start) {
        List<Step> steps = new ArrayList<>();
        Changeable now = start;
        List<Finding> findings = GradeChecks.judged(now.grade(), thresholds);
        while (steps.size() < MOST_CURES && graves(findings) > 0) {
            Optional<Trial> best = best(now, findings);
            if (best.isEmpty()) {
                break;
            }
            Trial taken = best.get();
            Set<String> left = keys(taken.findings);
            List<Finding> cured = findings.stream()
                    .filter(finding -> finding.severity() != Severity.INFO && !left.contains(key(finding)))
                    .toList();
            add(new Step(taken.cell, start.value(taken.cell), taken.value, passing(now, taken), cured), steps);
            now = taken.changed;
            findings = taken.findings;
        }
        return new Outcome(
                List.copyOf(steps),
                now,
                findings.stream()
                        .filter(finding -> finding.severity().compareTo(aim) >= 0)
                        .toList());
    }

    /** A figure that is changed a second time, as others were in between, is still one figure to change. */
    private static void add(Step step, List<Step> steps) {
        for (int i = 0; i < steps.size(); i++) {
            Step known = steps.get(i);
            if (known.cell.equals(step.cell)) {
                List<Finding> cured =
                        Stream.concat(known.cured.stream(), step.cured.stream()).toList();
                steps.set(i, new Step(step.cell, step.old, step.proposed, step.passing, cured));
                return;
            }
        }
        steps.add(step);
    }

    private static Set<String> keys(List<Finding> findings) {
        return findings.stream()
                .filter(finding -> finding.severity() != Severity.INFO)
                .map(CureSearch::key)
                .collect(Collectors.toSet());
    }

    private int graves(List<Finding> findings) {
        return (int) findings.stream()
                .filter(finding -> finding.severity().compareTo(aim) >= 0)
                .count();
    }

    private Optional<Trial> best(Changeable now, List<Finding> findings) {
        Score score = score(findings);
        List<Finding> alarms = findings.stream()
                .filter(finding -> finding.severity() != Severity.INFO)
                .toList();
        List<Trial> promising = new ArrayList<>();
        for (Changeable.Cell cell : now.suspects(alarms)) {
            Optional<Trial> best = Optional.empty();
            for (double value : worthTrying(now, cell)) {
                Optional<Trial> trial = trial(now, cell, value);
                if (trial.isPresent()
                        && trial.get().score.graves < score.graves
                        && (best.isEmpty() || trial.get().score.compareTo(best.get().score) < 0)) {
                    best = trial;
                }
            }
            best.ifPresent(promising::add);
        }
        Comparator<Trial> order = Comparator.<Trial>comparingInt(trial -> trial.score.graves)
                .thenComparingInt(trial -> now.figures(trial.cell))
                .thenComparingDouble(trial -> trial.score.alarms)
                .thenComparingDouble(
                        trial -> Math.rint(10 * (trial.changed.unevenness(trial.cell) - now.unevenness(trial.cell))))
                .thenComparingDouble(trial -> trial.score.notes)
                .thenComparingDouble(trial -> Math.abs(trial.value - now.value(trial.cell)));
        return promising.stream()
                .sorted(order)
                .limit(REFINED)
                .flatMap(trial -> nearest(now, trial).stream())
                .findFirst();
    }

    /** The likely values; where figures alone tell, only the best two of them, as drawing takes long. */
    private double[] worthTrying(Changeable now, Changeable.Cell cell) {
        double[] likely = now.likely(cell, thresholds);
        Optional<Changeable> light = likely.length > 2 ? now.light(cell) : Optional.empty();
        if (light.isEmpty()) {
            return likely;
        }
        Score score = score(GradeChecks.judged(light.get().grade(), thresholds));
        return Arrays.stream(likely)
                .boxed()
                .flatMap(value -> light.get().with(cell, value).stream()
                        .map(changed -> new Trial(
                                cell,
                                value,
                                changed,
                                List.of(),
                                score(GradeChecks.judged(changed.grade(), thresholds)))))
                .filter(trial -> trial.score.compareTo(score) < 0)
                .sorted(Comparator.comparing(Trial::score))
                .limit(2)
                .mapToDouble(Trial::value)
                .toArray();
    }

    /** The smallest change that is as good as one that was found, on the room's grid where that passes too; of somebody's own figures the one that was found. */
    private Optional<Trial> nearest(Changeable now, Trial found) {
        if (now.isWritten()) {
            return Optional.of(found);
        }
        double old = now.value(found.cell);
        double direction = Math.signum(found.value - old);
        double edge = edge(now, found, old, direction);
        double steps = edge / grid.step();
        double readable = (direction > 0 ? Math.ceil(steps - 1e-9) : Math.floor(steps + 1e-9)) * grid.step();
        return trial(now, found.cell, readable)
                .filter(trial -> trial.score.asGoodAs(found.score))
                .or(() -> trial(now, found.cell, edge).filter(trial -> trial.score.asGoodAs(found.score)))
                .or(() -> Optional.of(found));
    }

    /** From a value that passes towards another: the last that passes, by halves. */
    private double edge(Changeable now, Trial found, double towards, double direction) {
        double fine = now.grid(found.cell).orElse(FINE);
        long good = Math.round(found.value / fine);
        long bad = Math.round(towards / fine) - (long) direction;
        if (!passes(now, found, good * fine)) {
            return found.value;
        }
        while (Math.abs(good - bad) > 1) {
            long middle = (good + bad) / 2;
            if (passes(now, found, middle * fine - direction * SURE)) {
                good = middle;
            } else {
                bad = middle;
            }
        }
        return good * fine;
    }

    private Interval passing(Changeable now, Trial taken) {
        return new Interval(end(now, taken, -1), end(now, taken, 1));
    }

    private double end(Changeable now, Trial taken, int direction) {
        double fine = now.grid(taken.cell).orElse(FINE);
        double reached = taken.value;
        for (double step = Math.ceil(1 / fine - 1e-9) * fine; step <= FARTHEST; step *= 2) {
            double next = taken.value + direction * step;
            if (!passes(now, taken, next)) {
                Trial from = new Trial(taken.cell, reached, taken.changed, taken.findings, taken.score);
                double edge = edge(now, from, next, -direction);
                return passes(now, taken, edge) ? sureOfHalves(now, taken, edge, direction) : taken.value;
            }
            reached = next;
        }
        return reached;
    }

    /** A figure between two steps of a grid has no leeway; within the bounds such a one passes too. */
    private double sureOfHalves(Changeable now, Trial taken, double edge, int direction) {
        OptionalDouble step = now.grid(taken.cell);
        double sure = edge;
        while (step.isPresent()
                && direction * (sure - taken.value) > step.getAsDouble() / 4
                && !passes(now, taken, sure - direction * step.getAsDouble() / 2)) {
            sure -= direction * step.getAsDouble();
        }
        return direction * (sure - taken.value) > 0 ? sure : taken.value;
    }

    private boolean passes(Changeable now, Trial like, double value) {
        return trial(now, like.cell, value)
                .filter(trial -> trial.score.asGoodAs(like.score))
                .isPresent();
    }

    /** Drafted and checked; empty where it cannot be drafted or creates a finding. */
    private Optional<Trial> trial(Changeable now, Changeable.Cell cell, double value) {
        drafted += now.grade().sizes().size();
        if (drafted > (now.isWritten() ? MOST_READ : MOST_DRAFTED)) {
            return Optional.empty();
        }
        return now.with(cell, value).flatMap(changed -> {
            List<Finding> findings = GradeChecks.judged(changed.grade(), thresholds);
            boolean creates = findings.stream().anyMatch(this::isNew);
            return creates ? Optional.empty() : Optional.of(new Trial(cell, value, changed, findings, score(findings)));
        });
    }

    private boolean isNew(Finding finding) {
        Severity known = before.get(key(finding));
        return finding.severity() != Severity.INFO && (known == null || known.compareTo(finding.severity()) < 0);
    }

    private Score score(List<Finding> findings) {
        double alarms = 0;
        double notes = 0;
        for (Finding finding : findings) {
            switch (finding.severity()) {
                case STOP -> alarms += 100;
                case CAUTION -> alarms += 1;
                case INFO -> notes += 1;
            }
        }
        return new Score(graves(findings), alarms, notes);
    }
}
