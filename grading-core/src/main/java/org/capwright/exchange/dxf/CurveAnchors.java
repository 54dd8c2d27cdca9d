package org.capwright.exchange.dxf;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
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
            List<Double> onEdge = new ArrayList<>(List.of(0.0, path.length()));
            for (Point point : pleats.get(size)) {
                double at = path.locate(point);
                if (path.pointAt(at).distanceTo(point) < SAME) {
                    addOnce(onEdge, at);
                }
            }
            List<Double> turns = new ArrayList<>();
            for (Point corner : corners(curves.get(size))) {
                addOnce(turns, path.locate(corner));
            }
            starts.add(ascending(onEdge));
            corners.add(ascending(turns));
        }
        if (!asMany(starts)) {
            starts.replaceAll(own -> new double[] {own[0], own[own.length - 1]});
        }
        return withCorners(starts, corners);
    }

    /** Adds the corners between two starts where every size has as many there. */
    private static List<double[]> withCorners(List<double[]> starts, List<double[]> corners) {
        if (corners.stream().allMatch(own -> own.length == 0)) {
            return starts;
        }
        List<List<Double>> places = new ArrayList<>(starts.size());
        starts.forEach(own -> places.add(new ArrayList<>(List.of(own[0]))));
        for (int i = 1; i < starts.get(0).length; i++) {
            List<double[]> between = new ArrayList<>(starts.size());
            for (int size = 0; size < starts.size(); size++) {
                double[] own = starts.get(size);
                between.add(within(corners.get(size), own[i - 1] + SAME, own[i] - SAME));
            }
            boolean same = asMany(between);
            for (int size = 0; size < starts.size(); size++) {
                if (same) {
                    for (double corner : between.get(size)) {
                        places.get(size).add(corner);
                    }
                }
                places.get(size).add(starts.get(size)[i]);
            }
        }
        return places.stream().map(CurveAnchors::ascending).toList();
    }

    private static double[] within(double[] ascending, double from, double to) {
        int first = 0;
        while (first < ascending.length && ascending[first] <= from) {
            first++;
        }
        int end = first;
        while (end < ascending.length && ascending[end] < to) {
            end++;
        }
        return Arrays.copyOfRange(ascending, first, end);
    }

    private static boolean asMany(List<double[]> sizes) {
        for (double[] own : sizes) {
            if (own.length != sizes.get(0).length) {
                return false;
            }
        }
        return true;
    }

    private static void addOnce(List<Double> places, double at) {
        for (double other : places) {
            if (Math.abs(other - at) < SAME) {
                return;
            }
        }
        places.add(at);
    }

    private static double[] ascending(List<Double> places) {
        double[] ascending = new double[places.size()];
        for (int i = 0; i < ascending.length; i++) {
            ascending[i] = places.get(i);
        }
        Arrays.sort(ascending);
        return ascending;
    }

    private static List<Point> corners(Curve curve) {
        // Shorter segments are left by the rounding of cuts near joints; their tangents mean nothing.
        List<Cubic> segments = new ArrayList<>(curve.segments().size());
        for (Cubic segment : curve.segments()) {
            if (segment.start().distanceTo(segment.end()) > SAME) {
                segments.add(segment);
            }
        }
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
