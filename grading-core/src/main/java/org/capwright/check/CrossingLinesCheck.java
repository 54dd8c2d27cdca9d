package org.capwright.check;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.capwright.quantity.Quantity;
import org.locationtech.jts.geom.Envelope;

/**
 * Lines of neighbouring sizes that cross. On fold line and bicep line the cap of a larger size lies outside that of a smaller one wherever bicep and cap height both grow. (On the apex or
 * the underarm point nearly parallel caps may cross rightly: a wider cap is a flatter one.) The depth of a crossing is how far the larger line dips inside the smaller one.
 */
final class CrossingLinesCheck implements GradeCheck {

    @Override
    public String code() {
        return "crossing-lines";
    }

    @Override
    public List<Finding> check(CheckedGrade grade, Thresholds thresholds) {
        List<Finding> found = new ArrayList<>();
        List<Crossing> crossings = Crossing.of(grade);
        for (int i = 0; i < crossings.size(); i++) {
            Crossing crossing = crossings.get(i);
            double depth = crossing.depth();
            while (i + 1 < crossings.size() && same(crossing, crossings.get(i + 1))) {
                i++;
                depth = Math.max(depth, crossings.get(i).depth());
            }
            crossing(grade, crossing.kind(), crossing.interval(), depth, thresholds, found);
        }
        return List.copyOf(found);
    }

    private static boolean same(Crossing one, Crossing other) {
        return one.kind() == other.kind() && one.interval() == other.interval();
    }

    private void crossing(
            CheckedGrade grade,
            NestLine.Kind kind,
            int interval,
            double depth,
            Thresholds thresholds,
            List<Finding> found) {
        Envelope inner = envelope(grade, interval, kind);
        Envelope outer = envelope(grade, interval + 1, kind);
        boolean grows = outer.getWidth() >= inner.getWidth() && outer.getHeight() >= inner.getHeight();
        boolean stop = grows && kind == NestLine.Kind.CAP_LINE && depth > thresholds.get(Threshold.CROSSING_STOP);
        found.add(new Finding(
                code(),
                stop ? Severity.STOP : Severity.CAUTION,
                grade.pair(interval),
                kind == NestLine.Kind.CAP_LINE ? CheckedMeasure.CAP_LINE : CheckedMeasure.OVERLAY_EDGE,
                Quantity.LENGTH,
                OptionalDouble.of(depth),
                Expected.atMost(0),
                grows
                        ? "the lines cross in the nest although width and height grow: the larger line dips inside the smaller one"
                        : "the lines cross in the nest, as width and height do not both grow",
                thresholds.source(Threshold.CROSSING_STOP),
                grows
                        ? "Draw the line of one of the two sizes fair; its curve differs from its neighbours'."
                        : "Let bicep and cap height grow together, if the lines should nest."));
    }

    private static Envelope envelope(CheckedGrade grade, int size, NestLine.Kind kind) {
        return Crossing.area(grade.sizes().get(size).line(kind).orElseThrow()).getEnvelopeInternal();
    }
}
