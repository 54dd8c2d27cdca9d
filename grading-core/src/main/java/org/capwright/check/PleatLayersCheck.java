package org.capwright.check;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.capwright.quantity.Quantity;

/** Neighbouring pleats that overlap, so that the seam gets bulky. Neighbouring sizes with as many layers are told of once. */
final class PleatLayersCheck implements GradeCheck {

    @Override
    public String code() {
        return "pleat-layers";
    }

    @Override
    public List<Finding> check(CheckedGrade grade, Thresholds thresholds) {
        List<Finding> found = new ArrayList<>();
        double limit = thresholds.get(Threshold.PLEAT_LAYERS_CAUTION);
        int first = 0;
        while (first < grade.sizes().size()) {
            OptionalDouble layers = grade.value(first, CheckedMeasure.PLEAT_LAYERS);
            int last = first;
            while (last + 1 < grade.sizes().size()
                    && grade.value(last + 1, CheckedMeasure.PLEAT_LAYERS).equals(layers)) {
                last++;
            }
            if (layers.isPresent() && layers.getAsDouble() > limit) {
                boolean stop = layers.getAsDouble() > thresholds.get(Threshold.PLEAT_LAYERS_STOP);
                found.add(new Finding(
                        code(),
                        stop ? Severity.STOP : Severity.CAUTION,
                        first == last ? List.of(grade.label(first)) : List.of(grade.label(first), grade.label(last)),
                        CheckedMeasure.PLEAT_LAYERS,
                        Quantity.COUNT,
                        layers,
                        Expected.atMost(limit),
                        "neighbouring pleats overlap, so that the seam gets bulky where they do",
                        thresholds.source(stop ? Threshold.PLEAT_LAYERS_STOP : Threshold.PLEAT_LAYERS_CAUTION),
                        "Take more and shallower pleats, less rise, or a longer attach span."));
            }
            first = last + 1;
        }
        return List.copyOf(found);
    }
}
