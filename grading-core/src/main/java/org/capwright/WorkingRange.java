package org.capwright;

import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.DoublePredicate;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import org.capwright.quantity.Quantity;
import org.capwright.quantity.Violation;

/** Finds the part of a range in which a value really works, by trying. Whoever sends an end of it back finds it taken. */
final class WorkingRange {

    /** How much of the way into the range is gone at each trial, until something works: each time twice as much. */
    private static final double[] SHARES = nearing(11, 0.5);

    /** The same where only a few places are tried, each four times as far. */
    private static final double[] FEW = nearing(4, 0.25);

    /** The same where the whole range of a field lies open: what works may be a small part of it, and is looked for closely, at the other end too. */
    private static final double[] MANY = DoubleStream.concat(
                    IntStream.rangeClosed(2, 24).mapToDouble(i -> Math.pow(2, -(26 - i) / 2.0)),
                    IntStream.rangeClosed(3, 24).mapToDouble(i -> 1 - Math.pow(2, -i / 2.0)))
            .toArray();

    /** Halvings between what works and what does not. */
    private static final int HALVINGS = 8;

    /** Callers see lengths to this, mm; ratios to a hundredth of it. */
    private static final double SHOWN = 0.01;

    private final DoublePredicate works;
    private final DoublePredicate mayWork;
    private final double grid;
    private final double[] shares;

    private static double[] nearing(int steps, double nearer) {
        return IntStream.rangeClosed(0, steps)
                .mapToDouble(i -> Math.pow(nearer, steps - i))
                .toArray();
    }

    /** Whether a value works: what {@code mayWork} says is known sooner, and mostly right; both may be one. */
    record Trial(DoublePredicate mayWork, DoublePredicate works) {}

    private WorkingRange(Trial trial, Quantity quantity, double[] shares) {
        this.works = trial.works;
        this.mayWork = trial.mayWork;
        this.shares = shares;
        this.grid = quantity == Quantity.COUNT ? 1 : quantity == Quantity.LENGTH ? SHOWN : SHOWN / 100;
    }

    /** The same violation with bounds that work, at least one of them; nothing where nothing works. */
    static Optional<Violation> of(Violation violation, double[] ends, Trial trial) {
        return of(violation, ends, new WorkingRange(trial, violation.quantity(), SHARES));
    }

    /** The same with few trials. */
    static Optional<Violation> coarse(Violation violation, double[] ends, Trial trial) {
        return of(violation, ends, new WorkingRange(trial, violation.quantity(), FEW));
    }

    /** The same with many trials. */
    static Optional<Violation> fine(Violation violation, double[] ends, Trial trial) {
        return of(violation, ends, new WorkingRange(trial, violation.quantity(), MANY));
    }

    /** The same violation from a value that works to as far as it works on the way to its other bound. */
    static Violation from(Violation violation, double near, double[] ends, Trial trial) {
        WorkingRange range = new WorkingRange(trial, violation.quantity(), SHARES);
        boolean up = near > violation.value().orElse(near);
        OptionalDouble asked = up ? violation.greatest() : violation.least();
        OptionalDouble far = asked.isEmpty()
                ? asked
                : OptionalDouble.of(range.last(near, Math.min(ends[1], Math.max(ends[0], asked.getAsDouble()))));
        OptionalDouble one = OptionalDouble.of(near);
        // What else was mended may have moved the range beyond the bound that was asked for.
        boolean lowest = far.isPresent() ? near < far.getAsDouble() : up;
        return with(violation, lowest ? one : far, lowest ? far : one);
    }

    private static Violation with(Violation violation, OptionalDouble least, OptionalDouble greatest) {
        return new Violation(
                violation.subject(),
                violation.size(),
                violation.reason(),
                violation.quantity(),
                violation.value(),
                least,
                greatest,
                violation.given());
    }

    /** A value as a caller would send it, without the noise of binary fractions. */
    static double clean(double value) {
        return Math.rint(value * 1e7) / 1e7;
    }

    private static Optional<Violation> of(Violation violation, double[] ends, WorkingRange range) {
        double value = violation.value().orElse(Double.NaN);
        double low = Math.max(ends[0], violation.least().orElse(ends[0]));
        double high = Math.min(ends[1], violation.greatest().orElse(ends[1]));
        if (low > high) {
            return Optional.empty(); // what would work is nothing that is taken
        }
        if (value < low) {
            return range.from(violation, low, high, violation.greatest().isPresent());
        }
        if (value > high) {
            return range.from(violation, high, low, violation.least().isPresent());
        }
        return range.from(violation, value, high, violation.greatest().isPresent())
                .or(() -> range.from(violation, value, low, violation.least().isPresent()));
    }

    private Optional<Violation> from(Violation violation, double near, double far, boolean farAsked) {
        if (!(Math.abs(far - near) >= 0)) {
            return Optional.empty();
        }
        OptionalDouble first = first(near, far);
        if (first.isEmpty()) {
            return Optional.empty();
        }
        double one = first.getAsDouble();
        double other = farAsked ? last(one, far) : Double.NaN;
        boolean up = far >= near;
        double least = up ? one : other;
        double greatest = up ? other : one;
        return Optional.of(with(
                violation,
                Double.isNaN(least) ? OptionalDouble.empty() : OptionalDouble.of(least),
                Double.isNaN(greatest) ? OptionalDouble.empty() : OptionalDouble.of(greatest)));
    }

    /** The value nearest to an end, on the way to the other, that works. */
    private OptionalDouble first(double near, double far) {
        if (works(near)) {
            return OptionalDouble.of(near);
        }
        double before = near;
        for (double share : shares) {
            double tried = snapped(near + (far - near) * share, far);
            if (tried != before && (mayWork == works || mayWork.test(clean(tried))) && works(tried)) {
                return OptionalDouble.of(between(tried, before));
            }
            before = tried;
        }
        return OptionalDouble.empty();
    }

    /** The furthest value on the way to an end that works, if all between do. */
    private double last(double good, double end) {
        return works(end) ? end : between(good, end);
    }

    /** The place is looked for by what is known soon; where that was wrong, once more on this side of it. */
    private double between(double good, double bad) {
        double found = between(good, bad, mayWork);
        return mayWork == works || found == good || works(found) ? found : between(good, found, works);
    }

    private double between(double good, double bad, DoublePredicate trial) {
        double works = good;
        double fails = bad;
        for (int i = 0; i < HALVINGS && Math.abs(works - fails) > grid * 1.5; i++) {
            double middle = snapped((works + fails) / 2, works);
            if (middle == works || middle == fails) {
                break;
            }
            if (trial.test(clean(middle))) {
                works = middle;
            } else {
                fails = middle;
            }
        }
        return works;
    }

    /** A value on the grid that callers see, on the side of another. */
    private double snapped(double value, double towards) {
        double steps = value / grid;
        return (towards >= value ? Math.ceil(steps - 1e-9) : Math.floor(steps + 1e-9)) * grid;
    }

    private boolean works(double value) {
        return works.test(clean(value));
    }
}
