package org.capwright.check;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Supplier;
import org.capwright.tables.BodyDimension;
import org.capwright.tables.Interval;
import org.capwright.words.Text;

/**
 * Between what a jump of the garment must lie so that the body's jump is neither eaten from the ease nor overdone.
 *
 * <p>The lower bound is the lesser of the table's jump and the lower end of the survey's confidence interval: a class mean wobbles by chance, so a jump is called too small only
 * when table and survey agree. The upper bound is the greater of the two plus the stated growth of ease, scaled to the step of the sizes. Standards that print no arm give the step of bust girth
 * and stature only; there the survey's growth over this step stands alone.
 *
 * @param body jump of the table, mm; empty where the table has no such row and the survey speaks alone
 * @param least least jump that passes, mm
 * @param greatest greatest jump that passes, mm
 * @param stopLeast least jump that does not stop the grade, mm
 * @param stopGreatest greatest jump that does not stop the grade, mm
 * @param extrapolated whether the bounds rest on a survey alone, beyond the people surveyed
 * @param told says the table, and the survey if it was asked; most bounds are kept, and nothing is said of them
 */
record JumpBounds(
        OptionalDouble body,
        double least,
        double greatest,
        double stopLeast,
        double stopGreatest,
        boolean extrapolated,
        Supplier<Text> told) {

    /** A smaller step of stature is what comes by chance with a larger bust; sizes for taller wearers lie farther apart, mm. Common practice, no source. */
    private static final double TALLER = 20;

    /** The measures that have a counterpart on the body, with their limits. */
    record Limits(
            CheckedMeasure measure, Threshold easeGrowth, Threshold shrinkStop, Optional<Threshold> easeLossStop) {}

    static final List<Limits> LIMITS = List.of(
            new Limits(
                    CheckedMeasure.BICEP,
                    Threshold.BICEP_EASE_GROWTH,
                    Threshold.BICEP_SHRINK_STOP,
                    Optional.of(Threshold.BICEP_EASE_LOSS_STOP)),
            new Limits(CheckedMeasure.LENGTH, Threshold.LENGTH_GROWTH, Threshold.LENGTH_SHRINK_STOP, Optional.empty()),
            new Limits(
                    CheckedMeasure.ELBOW,
                    Threshold.ELBOW_EASE_GROWTH,
                    Threshold.ELBOW_SHRINK_STOP,
                    Optional.of(Threshold.ELBOW_EASE_LOSS_STOP)),
            new Limits(
                    CheckedMeasure.WRIST,
                    Threshold.WRIST_EASE_GROWTH,
                    Threshold.WRIST_SHRINK_STOP,
                    Optional.of(Threshold.WRIST_EASE_LOSS_STOP)),
            new Limits(
                    CheckedMeasure.ARMHOLE,
                    Threshold.ARMHOLE_EASE_GROWTH,
                    Threshold.ARMHOLE_SHRINK_STOP,
                    Optional.empty()));

    static BodyDimension dimension(BodyReference body, CheckedMeasure measure) {
        return body.counterpart(measure).orElseThrow();
    }

    static Optional<JumpBounds> of(BodyReference body, Limits limits, String from, String to, Thresholds thresholds) {
        BodyDimension dimension = dimension(body, limits.measure);
        OptionalDouble jump = body.jump(from, to, dimension);
        OptionalDouble step = body.jump(from, to, body.key());
        Optional<SurveyedGrowth> growth = body.growth(from, to, dimension);
        if (jump.isEmpty() && growth.isEmpty() || step.isEmpty()) {
            return Optional.empty();
        }
        double low = Double.POSITIVE_INFINITY;
        double high = Double.NEGATIVE_INFINITY;
        if (jump.isPresent()) {
            low = jump.getAsDouble();
            high = jump.getAsDouble();
        }
        if (growth.isPresent()) {
            low = Math.min(low, growth.get().mean().interval().lower());
            high = Math.max(high, growth.get().mean().interval().upper());
        }
        double stature = growth.isPresent() ? growth.get().step().getOrDefault(BodyDimension.STATURE, 0.0) : 0;
        boolean byStature = body.key() == BodyDimension.STATURE;
        double steps = Math.abs(step.getAsDouble()) / (byStature ? 80 : 40);
        if (limits.measure == CheckedMeasure.LENGTH) {
            // A sleeve need not follow the little height that comes with a larger bust, nor all of an arm's growth with
            // height.
            double taller = byStature ? steps : Math.abs(stature) < TALLER ? 0 : Math.abs(stature) / 80;
            low = taller > 0
                    ? Math.max(0, low - taller * thresholds.get(Threshold.LENGTH_SHORTFALL))
                    : Math.min(0, low);
        }
        high += steps * thresholds.get(limits.easeGrowth);
        return Optional.of(new JumpBounds(
                jump,
                low,
                high,
                low - thresholds.get(limits.shrinkStop),
                high + thresholds.get(Threshold.BALLOON_STOP),
                jump.isEmpty() && growth.get().extrapolated(),
                () -> source(body, dimension, growth)));
    }

    /** The table, and the survey if it was asked; or the step of the table and the survey's growth over it. */
    static Text source(BodyReference body, BodyDimension dimension, Optional<SurveyedGrowth> growth) {
        Text measure = Text.of(dimension.id());
        if (growth.isEmpty()) {
            return Text.of("{table} ({source}), {measure}")
                    .with("table", body.table().info().title())
                    .with("source", body.table().info().source())
                    .with("measure", measure);
        }
        return Text.of(
                        body.hasRow(dimension)
                                ? "{table} ({source}), {measure}; {survey}"
                                : "{table} ({source}), step of {steps}; growth over it: {line}, {survey}, interval of"
                                        + " confidence {confidence}")
                .with("table", body.table().info().title())
                .with("source", body.table().info().source())
                .with("measure", measure)
                .with("survey", growth.get().fit().survey().source())
                .with("steps", growth.get().steps())
                .with("line", growth.get().line())
                .with("confidence", Text.figures(String.valueOf(body.confidence())));
    }

    Text source() {
        return told.get();
    }

    /** The growth over two neighbouring intervals together. */
    JumpBounds plus(JumpBounds next) {
        return new JumpBounds(
                body.isPresent() && next.body.isPresent()
                        ? OptionalDouble.of(body.getAsDouble() + next.body.getAsDouble())
                        : OptionalDouble.empty(),
                least + next.least,
                greatest + next.greatest,
                stopLeast + next.least,
                stopGreatest + next.greatest,
                extrapolated || next.extrapolated,
                told);
    }

    /** The same for figures that are rounded. */
    JumpBounds widened(double leeway) {
        return leeway == 0
                ? this
                : new JumpBounds(
                        body.isPresent() ? OptionalDouble.of(body.getAsDouble() - leeway) : body,
                        least - leeway,
                        greatest + leeway,
                        stopLeast - leeway,
                        stopGreatest + leeway,
                        extrapolated,
                        () -> Text.of("{source}; half a step of the sheet's own grid allowed for each figure")
                                .with("source", source()));
    }

    Interval stops() {
        return new Interval(stopLeast, stopGreatest);
    }
}
