package org.capwright.check;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.capwright.quantity.Quantity;

/** Front and back that grow apart: the share of the front in bicep line and cap line, against the base size, as a length. */
final class BalanceCheck implements GradeCheck {

    @Override
    public String code() {
        return "front-back-balance";
    }

    @Override
    public List<Finding> check(CheckedGrade grade, Thresholds thresholds) {
        List<Finding> found = new ArrayList<>();
        shift(grade, CheckedMeasure.FRONT_WIDTH, CheckedMeasure.BACK_WIDTH, thresholds, found);
        shift(grade, CheckedMeasure.FRONT_CAP_LINE, CheckedMeasure.BACK_CAP_LINE, thresholds, found);
        return List.copyOf(found);
    }

    private void shift(
            CheckedGrade grade, CheckedMeasure front, CheckedMeasure back, Thresholds thresholds, List<Finding> found) {
        OptionalDouble base = share(grade, grade.base(), front, back);
        int worst = grade.base();
        double most = 0;
        for (int i = 0; base.isPresent() && i < grade.sizes().size(); i++) {
            OptionalDouble share = share(grade, i, front, back);
            if (share.isPresent()) {
                double whole = grade.value(i, front).orElseThrow()
                        + grade.value(i, back).orElseThrow();
                double shift = (share.getAsDouble() - base.getAsDouble()) * whole;
                if (Math.abs(shift) > Math.abs(most)) {
                    most = shift;
                    worst = i;
                }
            }
        }
        // Each of four figures moves the shift by about half of its own leeway.
        double leeway = (grade.leeway(worst, front)
                        + grade.leeway(worst, back)
                        + grade.leeway(grade.base(), front)
                        + grade.leeway(grade.base(), back))
                / 2;
        double caution = thresholds.get(Threshold.BALANCE_CAUTION) + leeway;
        if (Math.abs(most) <= caution) {
            return;
        }
        boolean stop = Math.abs(most) > thresholds.get(Threshold.BALANCE_STOP) + leeway;
        found.add(new Finding(
                code(),
                stop ? Severity.STOP : Severity.CAUTION,
                List.of(grade.label(grade.base()), grade.label(worst)),
                front,
                Quantity.LENGTH,
                OptionalDouble.of(most),
                Expected.between(-caution, caution),
                most > 0
                        ? "the front has more of the whole than in the base size, so that the sleeve turns backward"
                        : "the front has less of the whole than in the base size, so that the sleeve turns forward",
                thresholds.source(stop ? Threshold.BALANCE_STOP : Threshold.BALANCE_CAUTION),
                "Grade front and back in proportion to their parts of the base size."));
    }

    private static OptionalDouble share(CheckedGrade grade, int size, CheckedMeasure front, CheckedMeasure back) {
        OptionalDouble a = grade.value(size, front);
        OptionalDouble b = grade.value(size, back);
        return a.isPresent() && b.isPresent() && a.getAsDouble() + b.getAsDouble() > 0
                ? OptionalDouble.of(a.getAsDouble() / (a.getAsDouble() + b.getAsDouble()))
                : OptionalDouble.empty();
    }
}
