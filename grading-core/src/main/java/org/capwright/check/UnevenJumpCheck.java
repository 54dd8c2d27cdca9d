package org.capwright.check;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;

/**
 * One size off the line of its neighbours. A size that is off by d makes one jump too large by d and the next too small by d; a rule that changes at a size only makes the jumps
 * differ once and go on so. So the second differences c tell them apart: c = (d, -2d, d) around a size that is off, c = (0, b, 0) at a break of the rule. At the first and the last size
 * the two cannot be told apart; there a difference counts when it is larger.
 */
final class UnevenJumpCheck implements GradeCheck {

    private static final List<Measure> LOOKED_AT = List.of(
            Measure.BICEP,
            Measure.CAP_HEIGHT,
            Measure.CAP_LINE,
            Measure.ARMHOLE,
            Measure.LENGTH,
            Measure.ELBOW,
            Measure.WRIST,
            Measure.RISE,
            Measure.OVERLAY_LENGTH);

    @Override
    public String code() {
        return "uneven-jump";
    }

    @Override
    public List<Finding> check(CheckedGrade grade, Thresholds thresholds) {
        List<Finding> found = new ArrayList<>();
        for (Measure measure : LOOKED_AT) {
            int from = 0;
            for (int i = 0; i <= grade.sizes().size(); i++) {
                if (i == grade.sizes().size() || grade.value(i, measure).isEmpty()) {
                    stretch(grade, measure, from, i, thresholds, found);
                    from = i + 1;
                }
            }
        }
        return List.copyOf(found);
    }

    /** Looks at an unbroken stretch of sizes, {@code to} excluded. */
    private void stretch(
            CheckedGrade grade, Measure measure, int from, int to, Thresholds thresholds, List<Finding> found) {
        int n = to - from;
        if (n < 3) {
            return;
        }
        double[] v = new double[n];
        for (int i = 0; i < n; i++) {
            v[i] = grade.value(from + i, measure).orElseThrow();
        }
        double[] c = new double[n];
        for (int i = 1; i < n - 1; i++) {
            c[i] = v[i - 1] - 2 * v[i] + v[i + 1];
        }
        double limit = thresholds.get(Threshold.UNEVEN_CAUTION);
        boolean[] told = new boolean[n];
        for (int i = 1; i < n - 1; i++) {
            double off = -c[i] / 2;
            boolean before = i > 1 && c[i - 1] * off > 0 && Math.abs(c[i - 1]) >= Math.abs(off) / 2;
            boolean after = i < n - 2 && c[i + 1] * off > 0 && Math.abs(c[i + 1]) >= Math.abs(off) / 2;
            boolean peak = Math.abs(c[i]) >= Math.abs(c[i - 1]) && Math.abs(c[i]) >= Math.abs(c[i + 1]);
            boolean needBefore = i > 1;
            boolean needAfter = i < n - 2;
            if (Math.abs(off) > limit
                    && peak
                    && (needBefore || needAfter)
                    && (!needBefore || before)
                    && (!needAfter || after)) {
                told[i] = true;
                found.add(finding(grade, measure, from + i, v[i], (v[i - 1] + v[i + 1]) / 2, limit, thresholds));
            }
        }
        double endLimit = thresholds.get(Threshold.UNEVEN_END_CAUTION);
        if (Math.abs(c[1]) > endLimit && !told[1] && (n < 4 || (!told[2] && Math.abs(c[2]) < Math.abs(c[1]) / 2))) {
            found.add(finding(grade, measure, from, v[0], 2 * v[1] - v[2], endLimit, thresholds));
        }
        if (n > 3
                && Math.abs(c[n - 2]) > endLimit
                && !told[n - 2]
                && !told[n - 3]
                && Math.abs(c[n - 3]) < Math.abs(c[n - 2]) / 2) {
            found.add(finding(grade, measure, to - 1, v[n - 1], 2 * v[n - 2] - v[n - 3], endLimit, thresholds));
        }
    }

    private Finding finding(
            CheckedGrade grade,
            Measure measure,
            int size,
            double value,
            double expected,
            double limit,
            Thresholds thresholds) {
        double off = Math.abs(value - expected);
        return new Finding(
                code(),
                off > thresholds.get(Threshold.UNEVEN_STOP) ? Severity.STOP : Severity.CAUTION,
                List.of(grade.label(size)),
                measure.code(),
                measure.quantity(),
                OptionalDouble.of(value),
                Expected.between(expected - limit, expected + limit),
                "this size lies off the line of its neighbours, so that the jumps beside it are uneven",
                thresholds.source(Threshold.UNEVEN_CAUTION),
                "Look for a slip in this size; if the rule changes here, let it change for at least two jumps.");
    }
}
