package org.capwright.check;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.capwright.geometry.Point;
import org.capwright.measure.Quantity;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.Polygon;

/**
 * Lines of neighbouring sizes that cross. On fold line and bicep line the cap of a larger size lies outside that of a smaller one wherever bicep and cap height both grow. (On the apex or
 * the underarm point nearly parallel caps may cross rightly: a wider cap is a flatter one.) The depth of a crossing is how far the larger line dips inside the smaller one.
 */
final class CrossingLinesCheck implements GradeCheck {

    private static final GeometryFactory FACTORY = new GeometryFactory();
    /** Below this the lines touch, as equal lines do. */
    private static final double TOUCH = 0.1;

    @Override
    public String code() {
        return "crossing-lines";
    }

    @Override
    public List<Finding> check(CheckedGrade grade, Thresholds thresholds) {
        List<Finding> found = new ArrayList<>();
        for (NestLine.Kind kind : List.of(NestLine.Kind.CAP_LINE, NestLine.Kind.OVERLAY_EDGE)) {
            for (int i = 0; i < grade.intervals(); i++) {
                Optional<NestLine> smaller = grade.sizes().get(i).line(kind);
                Optional<NestLine> larger = grade.sizes().get(i + 1).line(kind);
                if (smaller.isPresent() && larger.isPresent()) {
                    crossing(grade, kind, i, smaller.get(), larger.get(), thresholds, found);
                }
            }
        }
        return List.copyOf(found);
    }

    private void crossing(
            CheckedGrade grade,
            NestLine.Kind kind,
            int interval,
            NestLine smaller,
            NestLine larger,
            Thresholds thresholds,
            List<Finding> found) {
        Geometry inner = area(smaller);
        Geometry outer = area(larger);
        Geometry outside = inner.difference(outer);
        double depth = depth(outside, outer);
        if (depth <= TOUCH) {
            return;
        }
        boolean grows = outer.getEnvelopeInternal().getWidth()
                        >= inner.getEnvelopeInternal().getWidth()
                && outer.getEnvelopeInternal().getHeight()
                        >= inner.getEnvelopeInternal().getHeight();
        boolean stop = grows && kind == NestLine.Kind.CAP_LINE && depth > thresholds.get(Threshold.CROSSING_STOP);
        found.add(new Finding(
                code(),
                stop ? Severity.STOP : Severity.CAUTION,
                grade.pair(interval),
                kind == NestLine.Kind.CAP_LINE ? Measure.CAP_LINE.code() : Measure.OVERLAY_EDGE.code(),
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

    /** The area under a line, closed along the bicep line between its ends. */
    private static Geometry area(NestLine line) {
        List<Point> points = line.points();
        Coordinate[] ring = new Coordinate[points.size() + 1];
        for (int i = 0; i < points.size(); i++) {
            ring[i] = new Coordinate(points.get(i).x(), points.get(i).y());
        }
        ring[points.size()] = ring[0];
        if (ring.length < 4) {
            return FACTORY.createPolygon();
        }
        Polygon polygon = FACTORY.createPolygon(ring);
        return polygon.isValid() ? polygon : polygon.buffer(0);
    }

    /** Measured to the whole boundary, so that slivers along the bicep line count as nothing. */
    private static double depth(Geometry outside, Geometry outer) {
        Geometry boundary = outer.getBoundary();
        double depth = 0;
        for (Coordinate corner : outside.getCoordinates()) {
            depth = Math.max(depth, FACTORY.createPoint(corner).distance(boundary));
        }
        return depth;
    }
}
