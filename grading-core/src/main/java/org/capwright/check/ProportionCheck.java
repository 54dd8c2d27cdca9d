package org.capwright.check;

import java.util.List;
import java.util.OptionalDouble;
import org.capwright.quantity.Quantity;

/** The ratio of cap height to bicep: a cap that gets flatter or steeper with the size changes how the sleeve hangs. */
final class ProportionCheck implements GradeCheck {

    @Override
    public String code() {
        return "proportion-drift";
    }

    @Override
    public List<Finding> check(CheckedGrade grade, Thresholds thresholds) {
        OptionalDouble base = ratio(grade, grade.base());
        int worst = grade.base();
        double most = 0;
        for (int i = 0; base.isPresent() && i < grade.sizes().size(); i++) {
            OptionalDouble ratio = ratio(grade, i);
            if (ratio.isPresent() && Math.abs(ratio.getAsDouble() - base.getAsDouble()) > Math.abs(most)) {
                most = ratio.getAsDouble() - base.getAsDouble();
                worst = i;
            }
        }
        double caution = thresholds.get(Threshold.PROPORTION_CAUTION);
        if (base.isEmpty() || Math.abs(most) <= caution) {
            return List.of();
        }
        boolean stop = Math.abs(most) > thresholds.get(Threshold.PROPORTION_STOP);
        return List.of(new Finding(
                code(),
                stop ? Severity.STOP : Severity.CAUTION,
                List.of(grade.label(grade.base()), grade.label(worst)),
                CheckedMeasure.CAP_HEIGHT,
                Quantity.RATIO,
                OptionalDouble.of(base.getAsDouble() + most),
                Expected.between(base.getAsDouble() - caution, base.getAsDouble() + caution),
                most < 0
                        ? "the cap is flatter against the bicep than in the base size, so that the sleeve stands off more"
                        : "the cap is steeper against the bicep than in the base size, so that the sleeve hangs closer and lifts less",
                thresholds.source(stop ? Threshold.PROPORTION_STOP : Threshold.PROPORTION_CAUTION),
                "Let the cap height grow in proportion to the bicep."));
    }

    private static OptionalDouble ratio(CheckedGrade grade, int size) {
        OptionalDouble height = grade.value(size, CheckedMeasure.CAP_HEIGHT);
        OptionalDouble bicep = grade.value(size, CheckedMeasure.BICEP);
        return height.isPresent() && bicep.isPresent() && bicep.getAsDouble() > 0
                ? OptionalDouble.of(height.getAsDouble() / bicep.getAsDouble())
                : OptionalDouble.empty();
    }
}
