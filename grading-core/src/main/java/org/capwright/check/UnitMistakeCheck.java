package org.capwright.check;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import org.capwright.quantity.Quantity;
import org.capwright.quantity.Subject;

/**
 * Figures written in another unit. A figure that is off the median of its row by a factor of millimetre, centimetre and inch to one another, give or take a fifth for the growth of the
 * run, is one; a whole row that lies outside anything a sleeve can have is one as well.
 */
final class UnitMistakeCheck implements PlausibilityCheck {

    private static final double[] FACTORS = {10, 25.4, 2.54, 1 / 10.0, 1 / 25.4, 1 / 2.54};
    private static final double LEEWAY = Math.log(1.25);

    @Override
    public String code() {
        return "unit-mistake";
    }

    @Override
    public Sifted sift(CheckedGrade grade, Thresholds thresholds) {
        List<Finding> found = new ArrayList<>();
        List<Map<CheckedMeasure, Double>> factors = new ArrayList<>();
        for (int i = 0; i < grade.sizes().size(); i++) {
            factors.add(new EnumMap<>(CheckedMeasure.class));
        }
        List<CheckedMeasure> wholeRows = new ArrayList<>();
        for (CheckedMeasure measure : PlausibilityCheck.GROWING) {
            row(grade, measure, factors, wholeRows);
        }
        List<CheckedSize> rest = new ArrayList<>(grade.sizes());
        for (CheckedMeasure measure : wholeRows) {
            Extremes extremes = Extremes.of(grade, measure).orElseThrow();
            found.add(finding(
                    List.of(grade.label(0), grade.label(grade.sizes().size() - 1)),
                    measure,
                    extremes.least() < measure.least() ? extremes.least() : extremes.greatest(),
                    Expected.between(measure.least(), measure.greatest()),
                    "no sleeve has such figures in any size: the row seems to be written in another unit"));
            rest.replaceAll(size -> size.without(measure));
        }
        for (int i = 0; i < rest.size(); i++) {
            Map<CheckedMeasure, Double> off = factors.get(i);
            off.keySet().removeAll(wholeRows);
            if (!off.isEmpty()) {
                size(grade, i, off, found, rest);
            }
        }
        return new Sifted(List.copyOf(found), grade.with(rest));
    }

    private void size(
            CheckedGrade grade, int i, Map<CheckedMeasure, Double> off, List<Finding> found, List<CheckedSize> rest) {
        boolean whole = off.size() > 1 && off.values().stream().distinct().count() == 1;
        for (Map.Entry<CheckedMeasure, Double> entry : off.entrySet()) {
            double value = grade.value(i, entry.getKey()).orElseThrow();
            double meant = value / entry.getValue();
            found.add(finding(
                    List.of(grade.label(i)),
                    whole ? WHOLE_SIZE : entry.getKey(),
                    value,
                    Expected.between(meant / 1.25, meant * 1.25),
                    whole
                            ? "the figures of this size seem to be written in another unit than those of the others"
                            : "this figure seems to be written in another unit than its row"));
            if (whole) {
                break;
            }
        }
        CheckedSize size = rest.get(i);
        if (whole) {
            rest.set(i, size.blank());
        } else {
            for (CheckedMeasure measure : off.keySet()) {
                size = size.without(measure);
            }
            rest.set(i, size);
        }
    }

    private static void row(
            CheckedGrade grade,
            CheckedMeasure measure,
            List<Map<CheckedMeasure, Double>> factors,
            List<CheckedMeasure> wholeRows) {
        double[] known = grade.sizes().stream()
                .map(size -> size.value(measure))
                .filter(OptionalDouble::isPresent)
                .mapToDouble(OptionalDouble::getAsDouble)
                .sorted()
                .toArray();
        if (known.length == 0) {
            return;
        }
        if (known[known.length - 1] < measure.least() || known[0] > measure.greatest()) {
            wholeRows.add(measure);
            return;
        }
        double median = known[known.length / 2];
        if (known.length < 3 || Arrays.stream(known).anyMatch(v -> v <= 0)) {
            return;
        }
        for (int i = 0; i < grade.sizes().size(); i++) {
            OptionalDouble value = grade.value(i, measure);
            for (double factor : FACTORS) {
                if (value.isPresent() && Math.abs(Math.log(value.getAsDouble() / median / factor)) < LEEWAY) {
                    factors.get(i).put(measure, factor);
                }
            }
        }
    }

    private Finding finding(List<String> sizes, Subject measure, double value, Expected expected, String message) {
        return new Finding(
                code(),
                Severity.STOP,
                sizes,
                measure,
                Quantity.LENGTH,
                OptionalDouble.of(value),
                expected,
                message,
                Finding.PRACTICE,
                "Look up in which unit it was written; it is left out of the other checks.");
    }
}
