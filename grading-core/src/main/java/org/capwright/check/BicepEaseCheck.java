package org.capwright.check;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.capwright.quantity.Quantity;
import org.capwright.tables.BodyDimension;

/** Ease of the bicep over the arm of the table. */
final class BicepEaseCheck implements GradeCheck {

    @Override
    public String code() {
        return "bicep-ease";
    }

    @Override
    public List<Finding> check(CheckedGrade grade, Thresholds thresholds) {
        if (grade.body().isEmpty()) {
            return List.of();
        }
        BodyReference body = grade.body().get();
        BodyDimension arm = JumpBounds.dimension(body, CheckedMeasure.BICEP);
        List<Finding> found = new ArrayList<>();
        for (int i = 0; i < grade.sizes().size(); i++) {
            OptionalDouble bicep = grade.value(i, CheckedMeasure.BICEP);
            OptionalDouble girth = body.value(grade.label(i), arm);
            if (bicep.isPresent() && girth.isPresent()) {
                double ease = bicep.getAsDouble() - girth.getAsDouble();
                if (ease + grade.leeway(i, CheckedMeasure.BICEP) < thresholds.get(Threshold.BICEP_EASE_ADVISED)) {
                    found.add(finding(grade, i, ease, body, arm, thresholds));
                }
            }
        }
        return List.copyOf(found);
    }

    private Finding finding(
            CheckedGrade grade, int size, double ease, BodyReference body, BodyDimension arm, Thresholds thresholds) {
        double most = ease + grade.leeway(size, CheckedMeasure.BICEP);
        boolean stop = most < thresholds.get(Threshold.BICEP_EASE_STOP);
        boolean low = most < thresholds.get(Threshold.BICEP_EASE_LEAST);
        Threshold limit = low ? Threshold.BICEP_EASE_LEAST : Threshold.BICEP_EASE_ADVISED;
        return new Finding(
                code(),
                stop ? Severity.STOP : low ? Severity.CAUTION : Severity.INFO,
                List.of(grade.label(size)),
                CheckedMeasure.BICEP,
                Quantity.LENGTH,
                OptionalDouble.of(ease),
                Expected.atLeast(thresholds.get(limit)),
                stop
                        ? "hardly any ease over the arm of this size: the arm will not go in or not bend"
                        : low ? "less ease over the arm than is taught" : "less ease over the arm than is advised",
                thresholds.source(limit) + "; arm: " + body.table().info().title() + ", " + arm.id(),
                "Widen the bicep, or choose the size table the sleeve is made for.");
    }
}
