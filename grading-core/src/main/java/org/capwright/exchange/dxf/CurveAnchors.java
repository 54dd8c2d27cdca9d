package org.capwright.exchange.dxf;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.DoubleStream;
import org.capwright.geometry.Cubic;
import org.capwright.geometry.Curve;
import org.capwright.geometry.Point;

/**
 * Places of a seam line or mark that correspond in all sizes: its ends; where the lines of pleats start on it; and its corners where every size has as many between these, as an edge
 * has that is cut for its pleats.
 */
final class CurveAnchors {

    /** A turn with a sine above this, or back, is a corner: 3 degrees. */
    private static final double CORNER = Math.sin(Math.toRadians(3));

    /** Places nearer than this are one, mm. */
    private static final double SAME = 1e-3;

    private CurveAnchors() {}

    /**
     * Finds the places.
     *
     * @param curves the line in every size
     * @param paths the same flattened
     * @param pleats per size: where lines of pleats start, as many in every size
     * @return per size: arc lengths along the path, ascending, from 0 to the length
     */
    static List<double[]> of(List<Curve> curves, List<Path> paths, List<List<Point>> pleats) {
        List<double[]> starts = new ArrayList<>(paths.size());
        List<double[]> corners = new ArrayList<>(paths.size());
        for (int size = 0; size < paths.size(); size++) {
            Path path = paths.get(size);
            List<Point> onEdge = pleats.get(size).stream()
                    .filter(point -> path.pointAt(path.locate(point)).distanceTo(point) < SAME)
                    .toList();
            starts.add(places(path, onEdge, List.of(0.0, path.length())));
            corners.add(places(path, corners(curves.get(size)), List.of()));
        }
        if (starts.stream().anyMatch(own -> own.length != starts.get(0).length)) {
            starts.replaceAll(own -> new double[] {own[0], own[own.length - 1]});
        }
        return withCorners(starts, corners);
    }

    /** Adds the corners between two starts where every size has as many there. */
    private static List<double[]> withCorners(List<double[]> starts, List<double[]> corners) {
        List<List<Double>> places = new ArrayList<>(starts.size());
        starts.forEach(own -> places.add(new ArrayList<>(List.of(own[0]))));
        for (int i = 1; i < starts.get(0).length; i++) {
            List<double[]> between = new ArrayList<>(starts.size());
            for (int size = 0; size < starts.size(); size++) {
                double from = starts.get(size)[i - 1] + SAME;
                double to = starts.get(size)[i] - SAME;
                between.add(DoubleStream.of(corners.get(size))
                        .filter(at -> at > from && at < to)
                        .toArray());
            }
            boolean same = between.stream().allMatch(own -> own.length == between.get(0).length);
            for (int size = 0; size < starts.size(); size++) {
                if (same) {
                    DoubleStream.of(between.get(size)).forEach(places.get(size)::add);
                }
                places.get(size).add(starts.get(size)[i]);
            }
        }
        return places.stream()
                .map(own -> own.stream().mapToDouble(Double::doubleValue).toArray())
                .toList();
    }

    /** The places of points and those known already, each once, ascending. */
    private static double[] places(Path path, List<Point> points, List<Double> known) {
        List<Double> places = new ArrayList<>(known);
        for (Point point : points) {
            double at = path.locate(point);
            if (places.stream().noneMatch(other -> Math.abs(other - at) < SAME)) {
                places.add(at);
            }
        }
        return places.stream().mapToDouble(Double::doubleValue).sorted().toArray();
    }

    private static List<Point> corners(Curve curve) {
        // Shorter segments are left by the rounding of cuts near joints; their tangents mean nothing.
        List<Cubic> segments = curve.segments().stream()
                .filter(segment -> segment.start().distanceTo(segment.end()) > SAME)
                .toList();
        List<Point> corners = new ArrayList<>();
        for (int i = 1; i < segments.size(); i++) {
            Point in = segments.get(i - 1).tangentAt(1);
            Point on = segments.get(i).tangentAt(0);
            if (Math.abs(in.cross(on)) > CORNER || in.dot(on) < 0) {
                corners.add(segments.get(i).start());
            }
        }
        return corners;
    }
}
