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
        double ofWorst = 0;
        for (int i = 0; base.isPresent() && i < grade.sizes().size(); i++) {
            OptionalDouble ratio = ratio(grade, i);
            double leeway = leeway(grade, i) + leeway(grade, grade.base());
            if (ratio.isPresent()
                    && Math.abs(ratio.getAsDouble() - base.getAsDouble()) - leeway > Math.abs(most) - ofWorst) {
                most = ratio.getAsDouble() - base.getAsDouble();
                ofWorst = leeway;
                worst = i;
            }
        }
        double caution = thresholds.get(Threshold.PROPORTION_CAUTION) + ofWorst;
        if (base.isEmpty() || Math.abs(most) <= caution) {
            return List.of();
        }
        boolean stop = Math.abs(most) > thresholds.get(Threshold.PROPORTION_STOP) + ofWorst;
        return List.of(new Finding(
                code(),
                stop ? Severity.STOP : Severity.CAUTION,
                List.of(grade.label(grade.base()), grade.label(worst)),
                CheckedMeasure.CAP_HEIGHT,
                Quantity.RATIO,
                OptionalDouble.of(base.getAsDouble() + most),
                Expected.between(base.getAsDouble() - caution, base.getAsDouble() + caution),
                most < 0
                        ? "the cap is flatter against the bicep than in the base size, so that the sleeve stands off"
                                + " more"
                        : "the cap is steeper against the bicep than in the base size, so that the sleeve hangs closer"
                                + " and lifts less",
                thresholds.source(stop ? Threshold.PROPORTION_STOP : Threshold.PROPORTION_CAUTION),
                "Let the cap height grow in proportion to the bicep."));
    }

    /** How far rounding can move the ratio. */
    private static double leeway(CheckedGrade grade, int size) {
        double bicep = grade.value(size, CheckedMeasure.BICEP).orElse(0);
        return bicep > 0
                ? (grade.leeway(size, CheckedMeasure.CAP_HEIGHT)
                                + ratio(grade, size).orElse(0) * grade.leeway(size, CheckedMeasure.BICEP))
                        / bicep
                : 0;
    }

    private static OptionalDouble ratio(CheckedGrade grade, int size) {
        OptionalDouble height = grade.value(size, CheckedMeasure.CAP_HEIGHT);
        OptionalDouble bicep = grade.value(size, CheckedMeasure.BICEP);
        return height.isPresent() && bicep.isPresent() && bicep.getAsDouble() > 0
                ? OptionalDouble.of(height.getAsDouble() / bicep.getAsDouble())
                : OptionalDouble.empty();
    }
}
