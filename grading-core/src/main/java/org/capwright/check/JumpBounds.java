package org.capwright.check;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.capwright.tables.BodyDimension;
import org.capwright.tables.Interval;
import org.capwright.tables.survey.ConfidenceInterval;

/**
 * Between what a jump of the garment must lie so that the body's jump is neither eaten from the ease nor overdone.
 *
 * <p>The lower bound is the lesser of the table's jump and the lower end of the survey's confidence interval: a class mean wobbles by chance, so a jump is called too small only
 * when table and survey agree. The upper bound is the greater of the two plus the stated growth of ease, scaled to the step of the sizes.
 *
 * @param body jump of the table, mm
 * @param least least jump that passes, mm
 * @param greatest greatest jump that passes, mm
 * @param stopLeast least jump that does not stop the grade, mm
 * @param stopGreatest greatest jump that does not stop the grade, mm
 * @param source the table, and the survey if it was asked
 */
record JumpBounds(double body, double least, double greatest, double stopLeast, double stopGreatest, String source) {

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
        if (jump.isEmpty() || step.isEmpty()) {
            return Optional.empty();
        }
        Optional<ConfidenceInterval> growth = body.growth(from, to, dimension);
        double table = jump.getAsDouble();
        double low = Math.min(table, growth.map(g -> g.interval().lower()).orElse(table));
        double high = Math.max(table, growth.map(g -> g.interval().upper()).orElse(table));
        boolean byStature = body.key() == BodyDimension.STATURE;
        double steps = Math.abs(step.getAsDouble()) / (byStature ? 80 : 40);
        if (limits.measure == CheckedMeasure.LENGTH) {
            // A sleeve need not follow the little height that comes with a larger bust, nor all of an arm's growth with
            // height.
            low = byStature ? Math.max(0, low - steps * thresholds.get(Threshold.LENGTH_SHORTFALL)) : Math.min(0, low);
        }
        high += steps * thresholds.get(limits.easeGrowth);
        return Optional.of(new JumpBounds(
                table,
                low,
                high,
                low - thresholds.get(limits.shrinkStop),
                high + thresholds.get(Threshold.BALLOON_STOP),
                source(body, dimension)));
    }

    static String source(BodyReference body, BodyDimension dimension) {
        String table = body.table().info().title() + " (" + body.table().info().source() + "), " + dimension.id();
        return body.fit(dimension).isPresent()
                ? table + "; " + body.survey().orElseThrow().source()
                : table;
    }

    Interval stops() {
        return new Interval(stopLeast, stopGreatest);
    }
}
