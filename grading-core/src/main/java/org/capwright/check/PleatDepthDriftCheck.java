package org.capwright.check;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.capwright.quantity.Quantity;

/** Pleats that get deeper or shallower with the size, because top edge and attach span grow apart. */
final class PleatDepthDriftCheck implements GradeCheck {

    @Override
    public String code() {
        return "pleat-depth-drift";
    }

    @Override
    public List<Finding> check(CheckedGrade grade, Thresholds thresholds) {
        Optional<Extremes> depth = Extremes.of(grade, CheckedMeasure.PLEAT_DEPTH);
        double leeway =
                depth.map(d -> d.leeway(grade, CheckedMeasure.PLEAT_DEPTH)).orElse(0.0);
        double caution = thresholds.get(Threshold.PLEAT_DEPTH_DRIFT_CAUTION) + leeway;
        if (depth.isEmpty() || depth.get().spread() <= caution) {
            return List.of();
        }
        boolean stop = depth.get().spread() > thresholds.get(Threshold.PLEAT_DEPTH_DRIFT_STOP) + leeway;
        boolean grows = depth.get().largest() > depth.get().smallest();
        return List.of(new Finding(
                code(),
                stop ? Severity.STOP : Severity.CAUTION,
                depth.get().sizes(grade),
                CheckedMeasure.PLEAT_DEPTH,
                Quantity.LENGTH,
                OptionalDouble.of(depth.get().spread()),
                Expected.between(0, caution),
                grows
                        ? "the pleats get deeper with the size: the overlay's edge grows faster than the span"
                                + " it is sewn to"
                        : "the pleats get shallower with the size: the overlay's edge grows more slowly than"
                                + " the span it is sewn to",
                thresholds.source(stop ? Threshold.PLEAT_DEPTH_DRIFT_STOP : Threshold.PLEAT_DEPTH_DRIFT_CAUTION),
                "Grade the rise or the gaps, so that edge and span grow alike; or change the number of pleats"
                        + " from size to size."));
    }
}
