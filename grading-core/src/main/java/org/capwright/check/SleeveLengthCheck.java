package org.capwright.check;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.capwright.quantity.Quantity;
import org.capwright.tables.BodyDimension;
import org.capwright.words.Text;

/**
 * Length of a long sleeve beside the arm, size by size. A sleeve much shorter than the arm is meant to be short and is not looked at, unless its lower edge is too narrow for the elbow:
 * then it is made for the wrist and does not reach it.
 */
final class SleeveLengthCheck implements GradeCheck {

    @Override
    public String code() {
        return "sleeve-length";
    }

    @Override
    public List<Finding> check(CheckedGrade grade, Thresholds thresholds) {
        if (grade.body().isEmpty()) {
            return List.of();
        }
        BodyReference body = grade.body().get();
        List<Finding> found = new ArrayList<>();
        for (int i = 0; i < grade.sizes().size(); i++) {
            OptionalDouble length = grade.value(i, CheckedMeasure.LENGTH);
            Optional<BodyFigure> arm = body.figure(grade.label(i), BodyDimension.ARM_LENGTH);
            if (length.isEmpty() || arm.isEmpty()) {
                continue;
            }
            double beyond = length.getAsDouble() - arm.get().millimetres();
            boolean isLong = length.getAsDouble()
                            >= thresholds.get(Threshold.LONG_SLEEVE) * arm.get().millimetres()
                    || madeForTheWrist(grade, i, body);
            double leeway = grade.leeway(i, CheckedMeasure.LENGTH) + arm.get().spread() + 1e-6;
            if (beyond > thresholds.get(Threshold.BEYOND_WRIST_CAUTION) + leeway
                    || beyond < -thresholds.get(Threshold.SHORT_OF_WRIST_CAUTION) - leeway && isLong) {
                found.add(finding(grade.label(i), beyond, leeway, arm.get(), thresholds));
            }
        }
        return List.copyOf(found);
    }

    private static boolean madeForTheWrist(CheckedGrade grade, int size, BodyReference body) {
        OptionalDouble edge = grade.value(size, CheckedMeasure.WRIST);
        Optional<BodyFigure> elbow = body.figure(grade.label(size), BodyDimension.ELBOW_GIRTH);
        return edge.isPresent()
                && elbow.isPresent()
                && edge.getAsDouble() < elbow.get().millimetres() - elbow.get().spread();
    }

    private Finding finding(String size, double beyond, double leeway, BodyFigure arm, Thresholds thresholds) {
        Threshold limit = beyond > 0 ? Threshold.BEYOND_WRIST_CAUTION : Threshold.SHORT_OF_WRIST_CAUTION;
        boolean stops = beyond > thresholds.get(Threshold.BEYOND_WRIST_STOP) + leeway;
        return new Finding(
                code(),
                stops ? Severity.STOP : Severity.CAUTION,
                List.of(size),
                CheckedMeasure.LENGTH,
                Quantity.LENGTH,
                OptionalDouble.of(beyond),
                Expected.between(
                        -thresholds.get(Threshold.SHORT_OF_WRIST_CAUTION) - arm.spread(),
                        thresholds.get(Threshold.BEYOND_WRIST_CAUTION) + arm.spread()),
                Text.of(
                        beyond > 0
                                ? "the sleeve is longer than the arm of this size by so much that it covers the hand"
                                : "the sleeve ends above the wrist of this size, and is too long, or too narrow at its"
                                        + " lower edge, for a short one"),
                thresholds.source(limit, arm),
                Text.of(
                        beyond > 0
                                ? "Shorten the sleeve, or choose the size table it is made for."
                                : "Lengthen the sleeve to the wrist, or shorten it clearly and widen its lower edge."));
    }
}
