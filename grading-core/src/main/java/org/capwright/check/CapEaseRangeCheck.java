package org.capwright.check;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.capwright.quantity.Quantity;

/** Cap ease outside what is taught or used. Neighbouring sizes with the same verdict are told of once, with the value farthest out. */
final class CapEaseRangeCheck implements GradeCheck {

    private enum Verdict {
        FINE,
        BELOW_TAUGHT,
        LOW,
        FAR_TOO_LOW,
        HIGH,
        FAR_TOO_HIGH
    }

    @Override
    public String code() {
        return "cap-ease-range";
    }

    @Override
    public List<Finding> check(CheckedGrade grade, Thresholds thresholds) {
        List<Finding> found = new ArrayList<>();
        int first = 0;
        while (first < grade.sizes().size()) {
            Verdict verdict = verdict(grade, first, thresholds);
            double worst = grade.value(first, CheckedMeasure.CAP_EASE).orElse(0);
            int last = first;
            while (last + 1 < grade.sizes().size() && verdict(grade, last + 1, thresholds) == verdict) {
                last++;
                double ease = grade.value(last, CheckedMeasure.CAP_EASE).orElse(0);
                worst = verdict.compareTo(Verdict.HIGH) >= 0 ? Math.max(worst, ease) : Math.min(worst, ease);
            }
            if (verdict != Verdict.FINE) {
                found.add(finding(grade, verdict, first, last, worst, thresholds));
            }
            first = last + 1;
        }
        return List.copyOf(found);
    }

    private static Verdict verdict(CheckedGrade grade, int size, Thresholds thresholds) {
        OptionalDouble known = grade.value(size, CheckedMeasure.CAP_EASE);
        if (known.isEmpty()) {
            return Verdict.FINE;
        }
        // Rounded to a micrometre, so that a limit itself passes.
        double ease = Math.rint(known.getAsDouble() * 1000) / 1000;
        double margin = thresholds.get(Threshold.CAP_EASE_STOP_MARGIN);
        double leeway = grade.leeway(size, CheckedMeasure.CAP_EASE);
        double least = thresholds.get(Threshold.CAP_EASE_LEAST) - leeway;
        double greatest = thresholds.get(Threshold.CAP_EASE_GREATEST) + leeway;
        if (ease < least) {
            return ease < least - margin ? Verdict.FAR_TOO_LOW : Verdict.LOW;
        }
        if (ease > greatest) {
            return ease > greatest + margin ? Verdict.FAR_TOO_HIGH : Verdict.HIGH;
        }
        return ease < thresholds.get(Threshold.CAP_EASE_TAUGHT) ? Verdict.BELOW_TAUGHT : Verdict.FINE;
    }

    private Finding finding(
            CheckedGrade grade, Verdict verdict, int first, int last, double worst, Thresholds thresholds) {
        Severity severity = switch (verdict) {
            case FAR_TOO_LOW, FAR_TOO_HIGH -> Severity.STOP;
            case LOW, HIGH -> Severity.CAUTION;
            default -> Severity.INFO;
        };
        boolean high = verdict == Verdict.HIGH || verdict == Verdict.FAR_TOO_HIGH;
        String message = switch (verdict) {
            case BELOW_TAUGHT ->
                "less cap ease than is taught for an eased cap; the industrial view asks for little or none";
            case LOW, FAR_TOO_LOW -> "the cap line is shorter than the armhole with the least ease";
            default -> "more cap ease than is taught; the cap will pucker unless it is gathered or pleated";
        };
        Threshold limit = high
                ? Threshold.CAP_EASE_GREATEST
                : verdict == Verdict.BELOW_TAUGHT ? Threshold.CAP_EASE_TAUGHT : Threshold.CAP_EASE_LEAST;
        return new Finding(
                code(),
                severity,
                first == last ? List.of(grade.label(first)) : List.of(grade.label(first), grade.label(last)),
                CheckedMeasure.CAP_EASE,
                Quantity.LENGTH,
                OptionalDouble.of(worst),
                Expected.between(
                        thresholds.get(
                                verdict == Verdict.BELOW_TAUGHT ? Threshold.CAP_EASE_TAUGHT : Threshold.CAP_EASE_LEAST),
                        thresholds.get(Threshold.CAP_EASE_GREATEST)),
                message,
                thresholds.source(limit),
                verdict == Verdict.BELOW_TAUGHT
                        ? "Fine for a flat or a stiff cap; raise the cap for a rounded one."
                        : high ? "Lower the cap, or lengthen the armhole." : "Raise the cap, or shorten the armhole.");
    }
}
