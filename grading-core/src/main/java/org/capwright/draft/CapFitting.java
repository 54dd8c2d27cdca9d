package org.capwright.draft;

import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.DoubleFunction;
import org.apache.commons.math3.analysis.UnivariateFunction;
import org.apache.commons.math3.analysis.solvers.BrentSolver;
import org.apache.commons.math3.exception.TooManyEvaluationsException;
import org.capwright.measure.Dimension;
import org.capwright.measure.Dimensions;
import org.capwright.measure.SleeveSubject.Option;
import org.capwright.quantity.InvalidMeasuresException;
import org.capwright.quantity.Violation;
import org.capwright.words.Text;

/**
 * Fits the cap to the armhole: finds the cap height, or the bicep, whose cap line has the length of the armhole plus the ease. The length grows with either, so
 * the root is bracketed outward from a guess and found by Brent's method (Commons Math) to 1e-9 mm.
 */
public final class CapFitting {

    private static final double ACCURACY = 1e-10;
    private static final double STEP = 1.04;

    /** How near to where no line can be drawn any more one is looked for, mm. */
    private static final double EDGE = 1e-6;

    /** How many values are tried of a whole range. */
    private static final int STEPS = 200;

    private CapFitting() {}

    /**
     * The dimensions with those filled in that follow from the fit asked for.
     *
     * @param dimensions of one size
     * @param fit what follows from what
     * @return the dimensions with bicep and cap height both present
     * @throws InvalidMeasuresException if no sleeve has that ease, naming the measure that stops it and the nearest value that works
     */
    public static Dimensions fitted(Dimensions dimensions, CapFit fit) {
        if (fit instanceof CapFit.CapHeightFor wanted) {
            return dimensions.with(Dimension.CAP_HEIGHT, capHeight(dimensions, wanted.ease()));
        }
        if (fit instanceof CapFit.BicepFor wanted) {
            double armhole = dimensions.get(Dimension.ARMHOLE);
            return dimensions.with(
                    Dimension.BICEP,
                    bicep(dimensions, armhole, armhole + wanted.ease().over(armhole)));
        }
        if (fit instanceof CapFit.HalvesFor wanted) {
            return halves(dimensions, wanted);
        }
        return dimensions;
    }

    /**
     * The cap height whose cap line has the length of the armhole plus an ease.
     *
     * @param dimensions of one size, with an armhole and a bicep
     * @param ease how much longer the cap line is
     * @return millimetres; nothing if no cap height gives that ease
     */
    public static OptionalDouble findCapHeight(Dimensions dimensions, CapEase ease) {
        double armhole = dimensions.get(Dimension.ARMHOLE);
        double target = armhole + ease.over(armhole);
        double half = target / 2 / 1.03;
        double width = dimensions.get(Dimension.BICEP) / 2;
        double guess = Math.sqrt(Math.max(half * half - width * width, 0.04 * width * width));
        return find(byHeight(dimensions), guess, Dimension.CAP_HEIGHT, target);
    }

    private static double capHeight(Dimensions dimensions, CapEase ease) {
        double armhole = dimensions.get(Dimension.ARMHOLE);
        return findCapHeight(dimensions, ease)
                .orElseThrow(() -> new InvalidMeasuresException(explained(
                        byHeight(dimensions),
                        Dimension.CAP_HEIGHT,
                        armhole + ease.over(armhole),
                        new Seam(Option.CAP_EASE, armhole))));
    }

    private static DoubleFunction<OptionalDouble> byHeight(Dimensions dimensions) {
        return height -> capLength(dimensions.with(Dimension.CAP_HEIGHT, height));
    }

    private static double bicep(Dimensions dimensions, double armhole, double target) {
        double half = target / 2 / 1.03;
        double height = dimensions.get(Dimension.CAP_HEIGHT);
        double guess = 2 * Math.sqrt(Math.max(half * half - height * height, 0.04 * half * half));
        return root(
                bicep -> capLength(dimensions.with(Dimension.BICEP, bicep)),
                guess,
                Dimension.BICEP,
                target,
                new Seam(Option.CAP_EASE, armhole));
    }

    private static Dimensions halves(Dimensions dimensions, CapFit.HalvesFor wanted) {
        double frontArmhole = Overlay.frontArmhole(dimensions);
        double backArmhole = dimensions.get(Dimension.ARMHOLE) - frontArmhole;
        double frontTarget = frontArmhole + wanted.front().over(frontArmhole);
        double backTarget = backArmhole + wanted.back().over(backArmhole);
        double bicep = dimensions.get(Dimension.BICEP);
        double total = frontTarget + backTarget;
        double guessWidth = bicep * frontTarget / total;
        double guess = Math.sqrt(
                Math.max(frontTarget * frontTarget / 1.06 - guessWidth * guessWidth, 0.04 * guessWidth * guessWidth));
        // With the front width that gives the front ease at each cap height, only the back cap line is left to fit.
        DoubleFunction<OptionalDouble> backLength = height -> {
            OptionalDouble front = frontWidth(dimensions, height, frontTarget);
            if (front.isEmpty() || front.getAsDouble() >= bicep) {
                return OptionalDouble.empty();
            }
            return length(BaseSleeve.Half.back(dimensions, bicep - front.getAsDouble(), height)
                    .find());
        };
        double height =
                root(backLength, guess, Dimension.CAP_HEIGHT, backTarget, new Seam(Option.BACK_CAP_EASE, backArmhole));
        double front = frontWidth(dimensions, height, frontTarget).orElseThrow();
        return dimensions.with(Dimension.CAP_HEIGHT, height).with(Dimension.FRONT_WIDTH, front);
    }

    private static OptionalDouble frontWidth(Dimensions dimensions, double height, double target) {
        double guess = Math.sqrt(Math.max(target * target / 1.06 - height * height, 0.04 * target * target));
        return find(
                width -> length(BaseSleeve.Half.front(dimensions, width, height).find()),
                guess,
                Dimension.FRONT_WIDTH,
                target);
    }

    private static OptionalDouble length(Optional<CapLine> line) {
        return line.isPresent() ? OptionalDouble.of(line.get().length()) : OptionalDouble.empty();
    }

    private static OptionalDouble capLength(Dimensions dimensions) {
        double frontWidth = BaseSleeve.frontWidth(dimensions);
        double height = dimensions.get(Dimension.CAP_HEIGHT);
        double backWidth = dimensions.get(Dimension.BICEP) - frontWidth;
        if (!(frontWidth > 0 && backWidth > 0)) {
            return OptionalDouble.empty();
        }
        BaseSleeve.Half front = BaseSleeve.Half.front(dimensions, frontWidth, height);
        BaseSleeve.Half back = BaseSleeve.Half.back(dimensions, backWidth, height);
        OptionalDouble frontLength = length(front.find());
        if (frontLength.isEmpty() || front.sameAs(back)) {
            return frontLength.isEmpty() ? frontLength : OptionalDouble.of(2 * frontLength.getAsDouble());
        }
        OptionalDouble backLength = length(back.find());
        return backLength.isEmpty()
                ? backLength
                : OptionalDouble.of(frontLength.getAsDouble() + backLength.getAsDouble());
    }

    /** The seam that a cap line is sewn to, and the ease over it. */
    private record Seam(Option ease, double armhole) {}

    private static double root(
            DoubleFunction<OptionalDouble> length, double guess, Dimension unknown, double target, Seam seam) {
        return find(length, guess, unknown, target)
                .orElseThrow(() -> new InvalidMeasuresException(explained(length, unknown, target, seam)));
    }

    /** Walks from the guess in steps of 4 % until the length passes the target, then solves. Where no line can be drawn the walk goes on: the set that works is an interval. */
    private static OptionalDouble find(
            DoubleFunction<OptionalDouble> length, double guess, Dimension unknown, double target) {
        Optional<Tried> start = start(length, inRange(guess, unknown), unknown);
        if (start.isEmpty()) {
            return OptionalDouble.empty();
        }
        double inside = start.get().value;
        double factor = start.get().length < target ? STEP : 1 / STEP;
        while (true) {
            double next = inRange(inside * factor, unknown);
            if (!(factor > 1 ? next > inside : next < inside)) {
                return OptionalDouble.empty();
            }
            OptionalDouble reached = length.apply(next);
            if (reached.isEmpty()) {
                // The edge of what can be drafted lies between; the root may still lie before it.
                next = edge(length, inside, next);
                reached = length.apply(next);
                if (reached.isEmpty() || (reached.getAsDouble() < target) == (factor > 1)) {
                    return OptionalDouble.empty();
                }
            }
            if ((reached.getAsDouble() < target) != (factor > 1)) {
                return solve(length, Math.min(inside, next), Math.max(inside, next), target);
            }
            inside = next;
        }
    }

    /** The nearest to the guess, in steps on both sides of it, where a line can be drawn. */
    private static Optional<Tried> start(DoubleFunction<OptionalDouble> length, double guess, Dimension unknown) {
        Optional<Tried> found = Tried.at(guess, length);
        double above = guess;
        double below = guess;
        boolean on = true;
        while (found.isEmpty() && on) {
            double higher = inRange(above * STEP, unknown);
            double lower = inRange(below / STEP, unknown);
            found = higher > above ? Tried.at(higher, length) : found;
            found = found.isEmpty() && lower < below ? Tried.at(lower, length) : found;
            on = higher > above || lower < below;
            above = higher;
            below = lower;
        }
        return found;
    }

    /** A value of the unknown, and the length that the line has with it. */
    private record Tried(double value, double length) {

        static Optional<Tried> at(double value, DoubleFunction<OptionalDouble> lengths) {
            OptionalDouble length = lengths.apply(value);
            return length.isPresent() ? Optional.of(new Tried(value, length.getAsDouble())) : Optional.empty();
        }
    }

    private static double inRange(double value, Dimension unknown) {
        return Math.min(Math.max(value, unknown.least()), unknown.greatest());
    }

    /** Nothing where lines cannot be drawn for all that lies between, so that no root is found. */
    private static OptionalDouble solve(DoubleFunction<OptionalDouble> length, double low, double high, double target) {
        UnivariateFunction excess = x -> length.apply(x).orElse(Double.NaN) - target;
        double atLow = excess.value(low);
        double atHigh = excess.value(high);
        if (atLow == 0 || atHigh == 0) {
            return OptionalDouble.of(atLow == 0 ? low : high);
        }
        try {
            return OptionalDouble.of(new BrentSolver(1e-14, ACCURACY, 1e-12).solve(100, excess, low, high));
        } catch (TooManyEvaluationsException e) {
            return OptionalDouble.empty();
        }
    }

    private static double edge(DoubleFunction<OptionalDouble> length, double inside, double outside) {
        double good = inside;
        double bad = outside;
        while (Math.abs(bad - good) > EDGE) {
            double middle = (good + bad) / 2;
            if (length.apply(middle).isPresent()) {
                good = middle;
            } else {
                bad = middle;
            }
        }
        return good;
    }

    /** Says between which eases the other measures allow a sleeve, at the ends of the range of the unknown. */
    private static Violation explained(
            DoubleFunction<OptionalDouble> length, Dimension unknown, double target, Seam seam) {
        double shortest = Double.POSITIVE_INFINITY;
        double longest = 0;
        double ratio = Math.pow(unknown.greatest() / unknown.least(), 1.0 / STEPS);
        double before = Double.NaN;
        for (int i = 0; i <= STEPS; i++) {
            double value = unknown.least() * Math.pow(ratio, i);
            OptionalDouble reached = length.apply(value);
            if (reached.isPresent()) {
                if (Double.isNaN(before) && i > 0) {
                    double first = edge(length, value, value / ratio);
                    shortest = Math.min(shortest, length.apply(first).orElse(reached.getAsDouble()));
                }
                shortest = Math.min(shortest, reached.getAsDouble());
                longest = Math.max(longest, reached.getAsDouble());
                before = value;
            } else if (!Double.isNaN(before)) {
                longest = Math.max(
                        longest, length.apply(edge(length, before, value)).orElse(longest));
                break;
            }
        }
        boolean bicep = unknown == Dimension.BICEP;
        return longest == 0
                ? Violation.of(
                        seam.ease,
                        Text.of(
                                bicep
                                        ? "no bicep gives a cap line with these displacements"
                                        : "no cap height gives a cap line with these displacements"))
                : Violation.lengthOutside(
                        seam.ease,
                        Text.of(
                                bicep
                                        ? "no bicep gives a cap line as long as the armhole with this ease"
                                        : "no cap height gives a cap line as long as the armhole with this ease"),
                        target - seam.armhole,
                        shortest - seam.armhole,
                        longest - seam.armhole);
    }
}
