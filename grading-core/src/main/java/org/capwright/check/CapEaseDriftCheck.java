package org.capwright.check;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.capwright.quantity.Quantity;

/** Cap ease that differs from size to size: cap line and armhole grow apart. */
final class CapEaseDriftCheck implements GradeCheck {

    @Override
    public String code() {
        return "cap-ease-drift";
    }

    @Override
    public List<Finding> check(CheckedGrade grade, Thresholds thresholds) {
        Optional<Extremes> ease = Extremes.of(grade, CheckedMeasure.CAP_EASE);
        double leeway = ease.map(e -> e.leeway(grade, CheckedMeasure.CAP_EASE)).orElse(0.0);
        double caution = thresholds.get(Threshold.CAP_EASE_DRIFT_CAUTION) + leeway;
        if (ease.isEmpty() || ease.get().spread() <= caution) {
            return List.of();
        }
        boolean stop = ease.get().spread() > thresholds.get(Threshold.CAP_EASE_DRIFT_STOP) + leeway;
        boolean shrinks = ease.get().largest() < ease.get().smallest();
        return List.of(new Finding(
                code(),
                stop ? Severity.STOP : Severity.CAUTION,
                ease.get().sizes(grade),
                CheckedMeasure.CAP_EASE,
                Quantity.LENGTH,
                OptionalDouble.of(ease.get().spread()),
                Expected.between(0, caution),
                shrinks
                        ? "the armhole grows faster than the cap line, so that the ease to be worked in falls"
                                + " with the size"
                        : "the cap line grows faster than the armhole, so that the ease to be worked in rises"
                                + " with the size",
                thresholds.source(stop ? Threshold.CAP_EASE_DRIFT_STOP : Threshold.CAP_EASE_DRIFT_CAUTION),
                shrinks
                        ? "Grade cap height or bicep more, or the armhole less; or let the cap height follow"
                                + " the armhole."
                        : "Grade cap height or bicep less, or the armhole more; or let the cap height follow"
                                + " the armhole."));
    }
}
