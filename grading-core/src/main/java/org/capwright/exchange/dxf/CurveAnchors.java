package org.capwright.exchange.dxf;

import java.util.ArrayList;
import java.util.List;
import org.capwright.geometry.Cubic;
import org.capwright.geometry.Curve;
import org.capwright.geometry.Point;

/** Places of a seam line or mark that correspond in all sizes: its ends, and its corners where every size has as many, as an edge has that is cut for its pleats. */
final class CurveAnchors {

    /** A turn with a sine above this, or back, is a corner: 3 degrees. */
    private static final double CORNER = Math.sin(Math.toRadians(3));

    private CurveAnchors() {}

    /** Per size: arc lengths along the path, ascending, from 0 to the length. */
    static List<double[]> of(List<Curve> curves, List<Path> paths) {
        List<List<Point>> corners = curves.stream().map(CurveAnchors::corners).toList();
        int count = corners.get(0).size();
        boolean same = corners.stream().allMatch(ofSize -> ofSize.size() == count);
        List<double[]> anchors = new ArrayList<>(paths.size());
        for (int size = 0; size < paths.size(); size++) {
            Path path = paths.get(size);
            double[] own = new double[same ? count + 2 : 2];
            int vertex = 0;
            for (int i = 1; i + 1 < own.length; i++) {
                vertex = path.vertex(corners.get(size).get(i - 1), vertex + 1);
                own[i] = path.at(vertex);
            }
            own[own.length - 1] = path.length();
            anchors.add(own);
        }
        return anchors;
    }

    private static List<Point> corners(Curve curve) {
        List<Cubic> segments = curve.segments();
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
