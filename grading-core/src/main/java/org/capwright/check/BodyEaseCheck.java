package org.capwright.check;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.capwright.quantity.Quantity;
import org.capwright.tables.BodyDimension;
import org.capwright.words.Text;

/**
 * Ease of a sleeve over the body at one level, size by size: what the garment measures more than the arm that goes through it.
 *
 * @param code name of the check
 * @param measure where the garment is measured
 * @param advised ease below which a hint is given, if any
 * @param least ease below which it is a caution
 * @param stop ease below which it stops the grade
 * @param tight what is the matter below the last
 * @param remedy what to change
 */
record BodyEaseCheck(
        String code,
        CheckedMeasure measure,
        Optional<Threshold> advised,
        Threshold least,
        Threshold stop,
        String tight,
        String remedy)
        implements GradeCheck {

    static final BodyEaseCheck BICEP = new BodyEaseCheck(
            "bicep-ease",
            CheckedMeasure.BICEP,
            Optional.of(Threshold.BICEP_EASE_ADVISED),
            Threshold.BICEP_EASE_LEAST,
            Threshold.BICEP_EASE_STOP,
            "hardly any ease over the arm of this size: the arm will not go in, or will not bend",
            "Widen the bicep, or choose the size table the sleeve is made for.");

    static final BodyEaseCheck ELBOW = new BodyEaseCheck(
            "elbow-ease",
            CheckedMeasure.ELBOW,
            Optional.empty(),
            Threshold.ELBOW_EASE_LEAST,
            Threshold.ELBOW_EASE_STOP,
            "hardly any ease over the straight elbow of this size, and a bent one is larger: the arm will not bend",
            "Widen the elbow, or choose the size table the sleeve is made for.");

    static final BodyEaseCheck WRIST = new BodyEaseCheck(
            "wrist-ease",
            CheckedMeasure.WRIST,
            Optional.empty(),
            Threshold.WRIST_EASE_LEAST,
            Threshold.WRIST_EASE_STOP,
            "the lower edge does not go round the wrist of this size",
            "Widen the lower edge, or choose the size table the sleeve is made for.");

    static final BodyEaseCheck ARMHOLE = new BodyEaseCheck(
            "armhole-ease",
            CheckedMeasure.ARMHOLE,
            Optional.empty(),
            Threshold.ARMHOLE_EASE_LEAST,
            Threshold.ARMHOLE_EASE_STOP,
            "the armhole does not go round the armscye of this size: it cuts in under the arm",
            "Deepen the armhole, or choose the size table the garment is made for.");

    /** From the shoulder down. */
    static final List<BodyEaseCheck> ALL = List.of(BICEP, ELBOW, WRIST, ARMHOLE);

    @Override
    public List<Finding> check(CheckedGrade grade, Thresholds thresholds) {
        if (grade.body().isEmpty()) {
            return List.of();
        }
        BodyReference body = grade.body().get();
        BodyDimension dimension = JumpBounds.dimension(body, measure);
        List<Finding> found = new ArrayList<>();
        for (int i = 0; i < grade.sizes().size(); i++) {
            OptionalDouble garment = grade.value(i, measure);
            Optional<BodyFigure> figure = body.figure(grade.label(i), dimension);
            if (garment.isPresent() && figure.isPresent()) {
                finding(grade, i, garment.getAsDouble(), figure.get(), thresholds)
                        .ifPresent(found::add);
            }
        }
        return List.copyOf(found);
    }

    private Optional<Finding> finding(
            CheckedGrade grade, int size, double garment, BodyFigure figure, Thresholds thresholds) {
        double ease = garment - figure.millimetres();
        // Rounding excuses ease that is a little short, but not cloth that is narrower than the body.
        double own = ease + figure.spread();
        double most = own < 0 ? own : own + grade.leeway(size, measure);
        boolean stops = most < thresholds.get(stop) - 1e-6;
        boolean low = stops || most < thresholds.get(least) - 1e-6;
        // What is only advised is not said of bodies that are only estimated.
        boolean hint = figure.spread() == 0 && advised.isPresent() && most < thresholds.get(advised.get()) - 1e-6;
        if (!low && !hint) {
            return Optional.empty();
        }
        Threshold limit = low ? least : advised.orElse(least);
        return Optional.of(new Finding(
                code,
                stops ? Severity.STOP : low ? Severity.CAUTION : Severity.INFO,
                List.of(grade.label(size)),
                measure,
                Quantity.LENGTH,
                OptionalDouble.of(ease),
                Expected.atLeast(thresholds.get(limit) - figure.spread()),
                own < 0
                        ? Text.of("the garment is narrower than the body here: {why}")
                                .with("why", Text.of(tight))
                        : Text.of(
                                stops
                                        ? tight
                                        : low
                                                ? "less ease over the body than is usual"
                                                : "less ease over the arm than is advised"),
                thresholds.source(limit, figure),
                Text.of(remedy)));
    }
}
