package org.capwright.check;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;

/** One size off the line of its neighbours, so that the jump before it is too large and the one after it too small. */
final class UnevenJumpCheck implements GradeCheck {

    private static final List<CheckedMeasure> LOOKED_AT = List.of(
            CheckedMeasure.BICEP,
            CheckedMeasure.CAP_HEIGHT,
            CheckedMeasure.CAP_LINE,
            CheckedMeasure.ARMHOLE,
            CheckedMeasure.LENGTH,
            CheckedMeasure.ELBOW,
            CheckedMeasure.WRIST,
            CheckedMeasure.RISE,
            CheckedMeasure.OVERLAY_TOTAL_LENGTH);

    @Override
    public String code() {
        return "uneven-jump";
    }

    @Override
    public List<Finding> check(CheckedGrade grade, Thresholds thresholds) {
        List<Finding> found = new ArrayList<>();
        double limit = thresholds.get(Threshold.UNEVEN_CAUTION);
        double endLimit = thresholds.get(Threshold.UNEVEN_END_CAUTION);
        Map<CheckedMeasure, EvenGrowth> rows = new EnumMap<>(CheckedMeasure.class);
        for (CheckedMeasure measure : LOOKED_AT) {
            rows.put(measure, EvenGrowth.of(grade, measure));
        }
        for (CheckedMeasure measure : LOOKED_AT) {
            EvenGrowth growth = Objects.requireNonNull(rows.get(measure));
            int breaks = growth.isCoarse() && othersAreStraight(rows, measure) ? 0 : 1;
            // One size at a time: the next is sought among those that are left.
            for (int round = 0; round < grade.sizes().size() / 2; round++) {
                Optional<EvenGrowth.Outlier> outlier = growth.outlier(limit, endLimit, breaks);
                if (outlier.isEmpty()) {
                    break;
                }
                found.add(finding(grade, measure, outlier.get(), thresholds));
                growth = growth.without(outlier.get().size());
            }
        }
        return List.copyOf(found);
    }

    /** A rule that breaks does so in most rows, a slip stands in one. */
    private static boolean othersAreStraight(Map<CheckedMeasure, EvenGrowth> rows, CheckedMeasure measure) {
        List<EvenGrowth> others = rows.entrySet().stream()
                .filter(row -> row.getKey() != measure && row.getValue().isRow())
                .map(Map.Entry::getValue)
                .toList();
        return others.size() > 1 && others.stream().allMatch(EvenGrowth::isStraight);
    }

    private Finding finding(
            CheckedGrade grade, CheckedMeasure measure, EvenGrowth.Outlier outlier, Thresholds thresholds) {
        boolean stop = outlier.slip() > thresholds.get(Threshold.UNEVEN_STOP);
        double limit = thresholds.get(outlier.atEnd() ? Threshold.UNEVEN_END_CAUTION : Threshold.UNEVEN_CAUTION);
        return new Finding(
                code(),
                stop ? Severity.STOP : Severity.CAUTION,
                List.of(grade.label(outlier.size())),
                measure,
                measure.quantity(),
                OptionalDouble.of(outlier.value()),
                Expected.between(outlier.expected() - limit, outlier.expected() + limit),
                "this size lies off the line of its neighbours, so that the jumps beside it are uneven",
                thresholds.source(stop ? Threshold.UNEVEN_STOP : Threshold.UNEVEN_CAUTION),
                "Look for a slip in this size; if the rule changes here, let it change for at least two jumps.");
    }
}
