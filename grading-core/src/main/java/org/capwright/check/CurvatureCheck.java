package org.capwright.check;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.capwright.geometry.Curve;
import org.capwright.geometry.Point;
import org.capwright.quantity.Quantity;

/**
 * How often the curvature of each half of the cap line changes its sign: once, from the round of the cap to the hollow under the arm. More often is a wobble. Where only an outline is
 * known, it is walked in equal steps and the turns from step to step are counted, leaving out turns so small that they may come from the flattening of the curve.
 */
final class CurvatureCheck implements GradeCheck {

    private static final int STEPS = 20;
    /** Radians; a curve flattened to 0.05 mm and walked in steps of 10 mm turns by up to 0.01 without meaning it. */
    private static final double NOISE = 0.012;

    @Override
    public String code() {
        return "curvature-sign";
    }

    @Override
    public List<Finding> check(CheckedGrade grade, Thresholds thresholds) {
        List<Finding> found = new ArrayList<>();
        for (int i = 0; i < grade.sizes().size(); i++) {
            for (CheckedMeasure half : List.of(CheckedMeasure.FRONT_INFLECTIONS, CheckedMeasure.BACK_INFLECTIONS)) {
                OptionalDouble changes = changes(grade.sizes().get(i), half);
                double limit = thresholds.get(Threshold.INFLECTIONS);
                if (changes.isPresent() && changes.getAsDouble() > limit) {
                    found.add(
                            new Finding(
                                    code(),
                                    changes.getAsDouble() > limit + 2 ? Severity.STOP : Severity.CAUTION,
                                    List.of(grade.label(i)),
                                    half,
                                    Quantity.COUNT,
                                    changes,
                                    Expected.atMost(limit),
                                    "the cap line wobbles: it changes between round and hollow more often than a cap does",
                                    thresholds.source(Threshold.INFLECTIONS),
                                    "Draw the half fair again in this size; a wobble often comes from a grade point that was moved alone."));
                }
            }
        }
        return List.copyOf(found);
    }

    private static OptionalDouble changes(CheckedSize size, CheckedMeasure half) {
        OptionalDouble given = size.value(half);
        Optional<NestLine> line = size.line(NestLine.Kind.CAP_LINE);
        return given.isPresent() || line.isEmpty()
                ? given
                : OptionalDouble.of(signChanges(half(line.get().points(), half == CheckedMeasure.FRONT_INFLECTIONS)));
    }

    /** The points of one half, from the highest point outward; the apex is the highest point. */
    static List<Point> half(List<Point> points, boolean front) {
        int apex = 0;
        for (int i = 1; i < points.size(); i++) {
            if (points.get(i).y() > points.get(apex).y()) {
                apex = i;
            }
        }
        return front ? points.subList(0, apex + 1) : points.subList(apex, points.size());
    }

    static int signChanges(List<Point> points) {
        if (points.size() < 3) {
            return 0;
        }
        Curve curve = Curve.polyline(points);
        double step = curve.length() / STEPS;
        int changes = 0;
        double last = 0;
        Point before = curve.start();
        Point here = curve.pointAtLength(step);
        for (int i = 2; i <= STEPS; i++) {
            Point next = curve.pointAtLength(i * step);
            Point in = here.minus(before);
            Point out = next.minus(here);
            double turn = Math.atan2(in.cross(out), in.dot(out));
            if (Math.abs(turn) > NOISE) {
                changes += last * turn < 0 ? 1 : 0;
                last = turn;
            }
            before = here;
            here = next;
        }
        return changes;
    }
}
