package org.capwright;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.DoublePredicate;
import java.util.function.Predicate;
import org.capwright.draft.CapFit;
import org.capwright.grade.GradeRule;
import org.capwright.measure.Dimension;
import org.capwright.measure.SleeveSubject;
import org.capwright.measure.SleeveSubject.Option;
import org.capwright.quantity.InvalidMeasuresException;
import org.capwright.quantity.Quantity;
import org.capwright.quantity.Subject;
import org.capwright.quantity.Violation;

/**
 * Says what would work instead of what was refused: every bound has been tried in every size of the run and with all its pieces. A draft finds out in stages what is wrong with it, so each value that is
 * complained of is set to the nearest bound until nothing is wrong, and where that does not come to an end, to values further inside; then every range is tried with the others mended. Where one value alone mends all, it alone is named.
 */
final class WorkingValues {

    /** How often a draft may find something wrong before the search is given up. */
    private static final int ROUNDS = 24;

    /** How many sizes are tried with their pieces in all before ranges are no longer widened. */
    private static final int MOST_SIZES = 800;

    /** The time that a size takes with its pieces, in shares; a cap whose halves are fitted apart takes longer by about as much. */
    private static final int SHARES = 10;

    /** The time that a size takes without pieces, in shares. */
    private static final int DRAFT = 1;

    /** The time that the base size takes without pieces where halves are fitted apart, in shares. */
    private static final int BASE = 2;

    /** A bound that does not hold is moved inward by this, then by twice as much and so on, mm or as a share. */
    private static final double NUDGE = 0.01;

    /** Callers see lengths to this, mm. */
    private static final double SHOWN = 1e-3;

    /** What binary fractions leave of a whole number of steps. */
    private static final double NOISE = 1e-6;

    /**
     * How bounds are sought: at the bounds themselves, else further inside, where pleats have more room. Of pleats given by number and depth the depth is sought, or the number.
     *
     * @param inward share of a range by which its end is passed
     * @param number whether the number of pleats is sought before their depth
     */
    private record Way(double inward, boolean number) {}

    private static final List<Way> WAYS = List.of(
            new Way(0, false), new Way(0.15, false), new Way(0.4, false), new Way(0.15, true), new Way(0.7, false));

    private final Attempt asked;
    private final Way way;
    private final List<Violation> found = new ArrayList<>();
    private final Map<Subject, Violation> first = new LinkedHashMap<>();
    private final Map<Subject, Double> mended = new LinkedHashMap<>();
    private final boolean slow;
    private Attempt now;
    private int left;

    private WorkingValues(Attempt asked, Way way) {
        this.asked = asked;
        this.way = way;
        this.now = asked;
        this.slow = asked.style().fit() instanceof CapFit.HalvesFor;
        this.left = MOST_SIZES * (slow ? 1 : SHARES) / asked.sizes().labels().size();
    }

    /** The refusal with bounds that work. */
    static InvalidMeasuresException instead(InvalidMeasuresException refused, Attempt asked) {
        WorkingValues first = new WorkingValues(asked, WAYS.get(0));
        if (first.mend(refused.violations())) {
            return new InvalidMeasuresException(first.named(refused.violations(), true));
        }
        for (Way way : WAYS.subList(1, WAYS.size())) {
            WorkingValues other = new WorkingValues(asked, way);
            if (other.mend(refused.violations())) {
                return new InvalidMeasuresException(other.named(refused.violations(), true));
            }
        }
        List<Violation> growths = growths(asked);
        return new InvalidMeasuresException(growths.isEmpty() ? first.named(refused.violations(), false) : growths);
    }

    /** As much of an increment as every size can be made with. */
    private static Optional<Violation> growth(Attempt asked, SleeveSubject subject, double increment) {
        if (increment == 0) {
            return Optional.empty();
        }
        Violation growth = Violation.lengthOutside(
                subject,
                "with this growth not every size can be drafted",
                increment,
                Math.min(0, increment),
                Math.max(0, increment));
        return WorkingRange.fine(
                growth, Attempt.ends(subject), new WorkingValues(asked, WAYS.get(0)).trial(asked, subject));
    }

    /** Where the base size can be made and no other value mends the rest, it is the growth that is wrong. */
    private static List<Violation> growths(Attempt asked) {
        if (!asked.withoutGrowth().works()) {
            return List.of();
        }
        List<Violation> growths = new ArrayList<>();
        for (GradeRule rule : asked.rules()) {
            boolean even = rule.increments().stream().distinct().count() == 1;
            for (int i = 0; i < (even ? 1 : rule.increments().size()); i++) {
                SleeveSubject subject = even
                        ? new SleeveSubject.GradeOf(rule.dimension())
                        : new SleeveSubject.GrowthAt(rule.dimension(), i);
                growth(asked, subject, rule.increments().get(i)).ifPresent(growths::add);
            }
        }
        return growths;
    }

    /**
     * What works in place of values beyond what any sleeve has.
     *
     * @param outside the values, with the ends of what is taken at all
     * @param nearest the same run with each value at the nearer end
     */
    static List<Violation> inPlaceOf(List<Violation> outside, Attempt nearest) {
        if (outside.size() == 1) {
            Subject subject = outside.get(0).subject();
            WorkingValues search = new WorkingValues(nearest, WAYS.get(0));
            Optional<Violation> alone = WorkingRange.fine(
                    outside.get(0), Attempt.ends(subject), search.trial(nearest, nearest.canonical(subject)));
            if (alone.isPresent()) {
                return List.of(alone.get());
            }
        }
        List<Violation> working = new ArrayList<>(
                instead(new InvalidMeasuresException(outside), nearest).violations());
        outside.stream()
                .filter(violation -> working.stream().noneMatch(v -> v.subject().equals(violation.subject())))
                .forEach(working::add);
        return working;
    }

    private List<Violation> named(List<Violation> refused, boolean all) {
        List<Violation> named = new ArrayList<>();
        Map<Subject, Optional<Violation>> ranges = new LinkedHashMap<>();
        List<Subject> atFirst = refused.stream().map(this::subject).distinct().toList();
        if (atFirst.size() == 1 && (first.size() > 1 || !all)) {
            Optional<Violation> alone = alone(first.values().iterator().next());
            if (alone.isPresent()) {
                first.keySet().retainAll(atFirst);
                ranges.put(atFirst.get(0), alone);
            }
        }
        first.forEach((subject, violation) -> ranges.computeIfAbsent(subject, s -> range(violation, all)));
        Set<Subject> unmended = new HashSet<>();
        for (Violation violation : found) {
            Optional<Violation> range = ranges.getOrDefault(subject(violation), Optional.empty());
            // Without a range it is the same in every size, and said once.
            if (first.containsKey(subject(violation)) && (range.isPresent() || unmended.add(subject(violation)))) {
                named.add(range.map(r -> bounded(violation, r)).orElseGet(() -> unbounded(violation)));
            }
        }
        return List.copyOf(named);
    }

    /** Sets what is complained of to the nearest bound until nothing is wrong; true where that is so. */
    private boolean mend(List<Violation> refused) {
        List<Violation> wrong = refused;
        Map<Subject, Integer> rounds = new LinkedHashMap<>();
        for (int round = 0; round < ROUNDS && !wrong.isEmpty(); round++) {
            List<Violation> inBase = now.inBaseSize(wrong);
            boolean moved = false;
            for (Violation violation : merged(inBase)) {
                Subject subject = violation.subject();
                int times = rounds.merge(subject, 1, Integer::sum);
                OptionalDouble value = next(violation, times);
                if (!first.containsKey(subject)) {
                    first.put(subject, violation);
                    inBase.stream().filter(v -> subject(v).equals(subject)).forEach(found::add);
                }
                if (value.isPresent()) {
                    mended.put(subject, value.getAsDouble());
                    now = now.with(subject, value.getAsDouble()).orElse(now);
                    moved = true;
                }
            }
            if (!moved) {
                return false;
            }
            left -= SHARES;
            wrong = now.wrong();
        }
        return wrong.isEmpty();
    }

    /** The next value to try for what is complained of once more. */
    private OptionalDouble next(Violation violation, int times) {
        Subject subject = violation.subject();
        if (violation.value().isEmpty()
                || now.with(subject, violation.value().getAsDouble()).isEmpty()) {
            return OptionalDouble.empty();
        }
        if (violation.least().isEmpty() && violation.greatest().isEmpty()) {
            return WorkingRange.of(violation, Attempt.ends(subject), mending(subject))
                    .map(range -> OptionalDouble.of(nearest(range)))
                    .orElse(OptionalDouble.empty());
        }
        Double before = mended.get(subject);
        OptionalDouble given = first.getOrDefault(subject, violation).value();
        if (before != null
                && given.isPresent()
                && before != given.getAsDouble()
                && given.getAsDouble() >= violation.least().orElse(Double.POSITIVE_INFINITY)
                && given.getAsDouble() <= violation.greatest().orElse(Double.NEGATIVE_INFINITY)) {
            return given; // what else was mended since has moved the range to where it was asked for
        }
        double[] ends = Attempt.ends(subject);
        double nearest = inside(violation, nearest(violation), ends);
        double asked = first.getOrDefault(subject, violation).value().orElse(nearest);
        double inward = asked < nearest ? 1 : -1;
        double bound = shown(violation, nearest, inward);
        double grid = violation.quantity() == Quantity.COUNT
                ? 1
                : violation.quantity() == Quantity.LENGTH ? NUDGE : NUDGE / 100;
        double step = times == 1 ? 0 : grid * Math.pow(2, times - 2);
        double value = before == null || Math.abs(bound - before) > step ? bound : before + inward * step;
        return value < ends[0] || value > ends[1] ? OptionalDouble.empty() : OptionalDouble.of(value);
    }

    /** A bound passed by the share of the range that this way asks for; of what lies beyond it where the range has one end. */
    private double inside(Violation violation, double bound, double[] ends) {
        boolean least =
                violation.least().isPresent() && bound == violation.least().getAsDouble();
        double room = violation.least().isPresent() && violation.greatest().isPresent()
                ? Math.min(ends[1], violation.greatest().getAsDouble())
                        - Math.max(ends[0], violation.least().getAsDouble())
                : Math.min(Math.abs(bound), least ? ends[1] - bound : bound - ends[0]);
        double passed = bound + (least ? 1 : -1) * way.inward * Math.max(0, room);
        return violation.quantity() == Quantity.COUNT ? Math.rint(passed) : passed;
    }

    /** A bound as callers see it, never outside its range: lengths are shown to a thousandth of a millimetre. One value alone is left as it is. */
    private static double shown(Violation violation, double bound, double inward) {
        boolean alone = violation.least().isPresent() && violation.least().equals(violation.greatest());
        if (violation.quantity() != Quantity.LENGTH || alone) {
            return WorkingRange.clean(bound);
        }
        double steps = bound / SHOWN;
        return WorkingRange.clean((inward > 0 ? Math.ceil(steps - NOISE) : Math.floor(steps + NOISE)) * SHOWN);
    }

    /** The range of a value that mends all by itself, looked for further in than its own bound. */
    private Optional<Violation> alone(Violation violation) {
        if (violation.value().isEmpty()) {
            return Optional.empty();
        }
        return WorkingRange.coarse(violation, Attempt.ends(violation.subject()), trial(asked, violation.subject()));
    }

    /** From the value that was found to as far as it works. */
    private Optional<Violation> range(Violation violation, boolean all) {
        Subject subject = violation.subject();
        Double near = mended.get(subject);
        // Where not all can be mended, a range is named if it mends what is complained of here.
        if (near == null || !all && !mends(subject, near)) {
            return Optional.empty();
        }
        return Optional.of(WorkingRange.from(
                violation, near, Attempt.ends(subject), all ? trial(now, subject) : mending(subject)));
    }

    /** Whether nothing is wrong with a value; drafts mostly decide it, those of the base size where they take long. */
    private WorkingRange.Trial trial(Attempt attempt, Subject subject) {
        DoublePredicate works = value -> works(attempt, subject, value);
        Predicate<Attempt> soon = slow ? Attempt::draftsInBase : Attempt::drafts;
        return new WorkingRange.Trial(
                value -> spent(slow ? BASE : DRAFT)
                        && attempt.with(subject, value).filter(soon).isPresent(),
                works);
    }

    private WorkingRange.Trial mending(Subject subject) {
        DoublePredicate mends = value -> mends(subject, value);
        return new WorkingRange.Trial(mends, mends);
    }

    /** Whether there is time left, which is taken. */
    private boolean spent(int share) {
        left -= share;
        return left + share > 0;
    }

    /** Whether nothing is wrong with a value. */
    private boolean works(Attempt attempt, Subject subject, double value) {
        return spent(SHARES)
                && attempt.with(subject, value).filter(Attempt::works).isPresent();
    }

    /** Whether nothing is wrong any more with the subject of a value, though something else may be. */
    private boolean mends(Subject subject, double value) {
        boolean ofAllowance = subject == Option.SEAM_ALLOWANCE || subject == Option.INTERFACING_OVERLAP;
        return spent(SHARES)
                && now.with(subject, value)
                        .map(ofAllowance ? Attempt::wrong : Attempt::wrongBeforeAllowances)
                        .filter(wrong ->
                                wrong.stream().noneMatch(v -> subject(v).equals(subject)))
                        .isPresent();
    }

    /** The end of the range that is nearest to the value: a value that was set to an end may lie inside by rounding alone. */
    private static double nearest(Violation violation) {
        double value = violation.value().orElseThrow();
        double least = violation.least().orElse(Double.NEGATIVE_INFINITY);
        double greatest = violation.greatest().orElse(Double.POSITIVE_INFINITY);
        if (Double.isInfinite(least) && Double.isInfinite(greatest)) {
            return value;
        }
        return Math.abs(value - least) <= Math.abs(greatest - value) ? least : greatest;
    }

    /** Nothing is promised where nothing was found. */
    private static Violation unbounded(Violation violation) {
        return new Violation(
                violation.subject(),
                violation.size(),
                violation.reason(),
                violation.quantity(),
                violation.value(),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                violation.given());
    }

    private static Violation bounded(Violation violation, Violation range) {
        return new Violation(
                range.subject(),
                violation.size(),
                violation.reason(),
                range.quantity(),
                range.value(),
                range.least(),
                range.greatest(),
                violation.given());
    }

    /** One violation per subject, with the bounds that hold for all sizes. */
    private List<Violation> merged(List<Violation> wrong) {
        Map<Subject, Violation> merged = new LinkedHashMap<>();
        for (Violation violation : wrong) {
            merged.merge(
                    subject(violation),
                    ofNumber(violation),
                    (a, b) -> new Violation(
                            a.subject(),
                            a.size(),
                            a.reason(),
                            a.quantity(),
                            a.value(),
                            both(a.least(), b.least(), true),
                            both(a.greatest(), b.greatest(), false),
                            a.given()));
        }
        return List.copyOf(merged.values());
    }

    private static OptionalDouble both(OptionalDouble a, OptionalDouble b, boolean greater) {
        if (a.isEmpty() || b.isEmpty()) {
            return a.isEmpty() ? b : a;
        }
        return OptionalDouble.of(
                greater ? Math.max(a.getAsDouble(), b.getAsDouble()) : Math.min(a.getAsDouble(), b.getAsDouble()));
    }

    private Subject subject(Violation violation) {
        return ofNumber(violation).subject();
    }

    /** Pleats that cannot be laid are mended by their depth where that was given, else by their number. */
    private Violation ofNumber(Violation violation) {
        Subject subject = asked.canonical(violation.subject());
        if (subject != Option.PLEATS || asked.plan().isEmpty()) {
            return new Violation(
                    subject,
                    violation.size(),
                    violation.reason(),
                    violation.quantity(),
                    violation.value(),
                    violation.least(),
                    violation.greatest(),
                    violation.given());
        }
        OptionalDouble depth = now.depth();
        return depth.isPresent() && !(way.number && now.counted())
                ? Violation.lengthAbove(
                        Dimension.PLEAT_DEPTH, violation.reason(), depth.getAsDouble(), depth.getAsDouble() - 0.01)
                : new Violation(
                        Option.PLEAT_COUNT,
                        violation.reason(),
                        Quantity.COUNT,
                        OptionalDouble.of(now.count()),
                        OptionalDouble.empty(),
                        OptionalDouble.empty());
    }
}
