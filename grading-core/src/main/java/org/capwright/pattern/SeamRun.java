package org.capwright.pattern;

import java.util.ArrayList;
import java.util.List;
import org.capwright.geometry.Cubic;
import org.capwright.geometry.Point;
import org.capwright.geometry.PointsBuilder;

/**
 * A smooth part of a seam line and its parallel, which stands in one line of points with those of all parts of a piece. Corners cut it back: of its points there those from {@code first} to {@code last} remain.
 */
final class SeamRun {

    /** Segments shorter than this are left by the rounding of cuts near joints, mm; their tangents mean nothing. */
    private static final double CRUMB = 1e-4;

    /** Segments of one curve join smoothly but for rounding; a turn beyond a thousandth of a radian is a corner. */
    private static final double SMOOTH = 1e-3;

    /** A control point nearer than this to its end tells no direction, mm. */
    private static final double ON_END = 1e-9;

    final PieceEdge edge;
    final double allowance;
    final boolean fold;
    final PointsBuilder parallels;

    /** The places of all of its parallel. */
    final int start;

    int end;
    int first;
    int last;

    private final int firstSegment;
    private int lastSegment;
    private final Cubic begins;
    private Cubic ends;

    private SeamRun(PieceEdge edge, int number, Cubic segment, PointsBuilder parallels) {
        this.edge = edge;
        this.firstSegment = number;
        this.begins = segment;
        this.ends = segment;
        this.allowance = edge.allowance();
        this.fold = edge.kind() == EdgeKind.FOLD;
        this.parallels = parallels;
        this.start = parallels.size();
    }

    /** The smooth parts of seam lines in order, their parallels drawn behind those that stand there. */
    static List<SeamRun> of(List<PieceEdge> edges, EdgeOffset offset) {
        List<SeamRun> runs = new ArrayList<>(4 * edges.size());
        for (PieceEdge edge : edges) {
            List<Cubic> segments = edge.curve().segments();
            SeamRun run = null;
            offset.follow(edge);
            for (int i = 0; i < segments.size(); i++) {
                Cubic segment = segments.get(i);
                if (isCrumb(segment)) {
                    continue;
                }
                if (run == null || bent(run.ends, segment)) {
                    run = new SeamRun(edge, i, segment, offset.parallels());
                    runs.add(run);
                }
                run.goOn(i, segment, offset);
            }
        }
        return runs;
    }

    private static boolean isCrumb(Cubic segment) {
        double x = segment.end().x() - segment.start().x();
        double y = segment.end().y() - segment.start().y();
        return x * x + y * y <= CRUMB * CRUMB;
    }

    private void goOn(int number, Cubic segment, EdgeOffset offset) {
        if (!fold) {
            if (number == firstSegment) {
                offset.begin(segment);
            }
            offset.goOn(edge.curve(), number);
        }
        lastSegment = number;
        ends = segment;
        end = parallels.size() - 1;
        first = start;
        last = end;
    }

    private static boolean bent(Cubic before, Cubic after) {
        double inX = before.end().x() - before.control2().x();
        double inY = before.end().y() - before.control2().y();
        double onX = after.control1().x() - after.start().x();
        double onY = after.control1().y() - after.start().y();
        double in = inX * inX + inY * inY;
        double on = onX * onX + onY * onY;
        if (in < ON_END * ON_END || on < ON_END * ON_END) {
            Point arriving = before.tangentAt(1);
            Point leaving = after.tangentAt(0);
            return Math.abs(arriving.cross(leaving)) > SMOOTH || arriving.dot(leaving) < 0;
        }
        double cross = inX * onY - inY * onX;
        return cross * cross > SMOOTH * SMOOTH * in * on || inX * onX + inY * onY < 0;
    }

    /** The segments of the seam line. */
    List<Cubic> seam() {
        List<Cubic> seam = new ArrayList<>(lastSegment - firstSegment + 1);
        for (Cubic segment : edge.curve().segments().subList(firstSegment, lastSegment + 1)) {
            if (!isCrumb(segment)) {
                seam.add(segment);
            }
        }
        return seam;
    }

    Point seamStart() {
        return begins.start();
    }

    Point seamEnd() {
        return ends.end();
    }

    Point startTangent() {
        return begins.tangentAt(0);
    }

    Point endTangent() {
        return ends.tangentAt(1);
    }

    /** The place of the seam line at a parameter of its first segment. */
    Point nearStart(double t) {
        return begins.pointAt(t);
    }

    /** The place of the seam line at a parameter of its last segment. */
    Point nearEnd(double t) {
        return ends.pointAt(t);
    }

    /** A seam with an allowance runs on to the line of a hem that is cut net. */
    boolean isNetHem() {
        return edge.kind() == EdgeKind.HEM && allowance == 0;
    }

    /** Whether a place of a neighbour's parallel lies beyond a hem that is cut net: the cut line ends there. */
    boolean cutsOff(Point place) {
        return isNetHem() && startTangent().cross(place.minus(seamStart())) < 0;
    }

    /** How many points of the parallel remain. */
    int remaining() {
        return Math.max(0, last - first + 1);
    }
}
