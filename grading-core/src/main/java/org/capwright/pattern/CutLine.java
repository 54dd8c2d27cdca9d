package org.capwright.pattern;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.capwright.geometry.Box;
import org.capwright.geometry.Cubic;
import org.capwright.geometry.Point;

/**
 * The line to cut along: the seam lines of a piece, each moved out by its own allowance.
 *
 * @param points counter-clockwise, first point not repeated
 * @param corners positions in {@code points} of true corners
 */
record CutLine(List<Point> points, List<Integer> corners) {

    /** Cosine of the angle of a needle: 8 degrees. */
    private static final double NEEDLE = Math.cos(Math.toRadians(8));

    /** A needle narrower than this where it ends is none, mm. */
    static final double WIDTH = 5 * Piece.FLATTENING;

    /** Segments shorter than this are left by the rounding of cuts near joints, mm; their tangents mean nothing. */
    private static final double CRUMB = 1e-4;

    /** Points of a hollow where no crossing was found, and the raw line goes by the corner of the seam line. */
    private static final int TO_THE_SEAM = 3;

    /** Cosine of the least turn of a line that turns straight back: 178 degrees. */
    private static final double STRAIGHT_BACK = Math.cos(Math.toRadians(178));

    /** The share of a segment after which it is seen to which side it runs. */
    private static final double NEAR_END = 0.2;

    /** Cosine of the greatest turn between chords of a smooth line: 10 degrees. */
    private static final double STRAIGHT_ON = Math.cos(Math.toRadians(10));

    /** A smooth part of a seam line and its parallel, of which the points {@code first} to {@code last} remain. */
    private static final class Run {
        final List<Cubic> seam;
        final double allowance;
        final boolean fold;
        final PieceEdge edge;
        final List<Point> parallel;
        int first;
        int last;

        Run(PieceEdge edge, List<Cubic> seam) {
            this.edge = edge;
            this.seam = seam;
            this.allowance = edge.allowance();
            this.fold = edge.kind() == EdgeKind.FOLD;
            this.parallel = fold ? List.of() : EdgeOffset.of(seam, allowance);
            this.last = parallel.size() - 1;
        }

        Point startTangent() {
            return seam.get(0).tangentAt(0);
        }

        Point endTangent() {
            return seam.get(seam.size() - 1).tangentAt(1);
        }
    }

    /**
     * Draws the cut line.
     *
     * @param edges seam lines, counter-clockwise and closed; a fold edge must lie on x = 0, with the piece at x ≥ 0
     * @param kind how corners are turned
     * @return the cut line, or nothing if the allowances leave no simple one
     */
    static Optional<CutLine> around(List<PieceEdge> edges, CornerKind kind) {
        List<Run> runs = runs(edges);
        List<List<Point>> turns = new ArrayList<>(runs.size());
        int room = 0;
        for (int i = 0; i < runs.size(); i++) {
            turns.add(turned(runs.get(i), runs.get((i + 1) % runs.size()), kind));
            room += runs.get(i).parallel.size() + turns.get(i).size();
        }
        CutPoints points = new CutPoints(room);
        for (int i = 0; i < runs.size(); i++) {
            Run run = runs.get(i);
            for (int k = run.first; k <= run.last; k++) {
                points.add(run.parallel.get(k));
            }
            turns.get(i).forEach(points::turn);
        }
        Optional<CutLine> line = Untangling.untangled(points.closed());
        List<Point> parallels = new ArrayList<>(room);
        for (int i = 0; i < runs.size(); i++) {
            Run before = runs.get((i + runs.size() - 1) % runs.size());
            Run after = runs.get((i + 1) % runs.size());
            for (Point point : runs.get(i).parallel) {
                if (!beyond(before, point) && !beyond(after, point)) {
                    parallels.add(point);
                }
            }
        }
        boolean onFold = runs.stream().anyMatch(run -> run.fold);
        boolean untouched = line.isPresent()
                && turns.stream()
                        .filter(turn -> turn.size() == TO_THE_SEAM)
                        .noneMatch(turn -> line.get().points().contains(turn.get(1)));
        boolean overFold =
                onFold && line.isPresent() && Box.of(line.get().points()).left() < -Outline.ONE_POINT;
        if (untouched && !overFold && SeamStrips.enclosed(parallels, line.get().points(), onFold)) {
            return finished(line, runs, onFold);
        }
        return finished(united(runs, turns, onFold), runs, onFold);
    }

    private static Optional<CutLine> finished(Optional<CutLine> line, List<Run> runs, boolean onFold) {
        if (runs.stream().allMatch(run -> run.fold || run.allowance == 0)) {
            // What is cut on the seam line all round has the points of the seam line, and its tips, however thin.
            return line.map(cut -> cut.withoutRepeats(0));
        }
        double widest = runs.stream().mapToDouble(run -> run.allowance).max().orElse(0);
        return line.map(CutLine::withoutRepeats)
                .map(cut -> Needles.blunted(
                        cut, widest, point -> onFold && point.x() < Outline.ONE_POINT || onNet(runs, point)));
    }

    /** Whether a point is the corner of a seam line that is cut net. */
    private static boolean onNet(List<Run> runs, Point point) {
        return runs.stream()
                .anyMatch(run -> run.allowance == 0
                        && (run.seam.get(0).start().distanceTo(point) < Outline.ONE_POINT
                                || run.seam.get(run.seam.size() - 1).end().distanceTo(point) < Outline.ONE_POINT));
    }

    /** The line where hollows are so tight that the parallels cannot be cleaned: the outline of all that the allowances add. */
    private static Optional<CutLine> united(List<Run> runs, List<List<Point>> turns, boolean onFold) {
        Set<Point> corners = new HashSet<>();
        turns.forEach(corners::addAll);
        SeamStrips strips = new SeamStrips();
        for (int i = 0; i < runs.size(); i++) {
            Run run = runs.get(i);
            Run next = runs.get((i + 1) % runs.size());
            if (run.fold) {
                strips.onFold(run.seam);
                continue;
            }
            strips.beside(run.seam, run.allowance);
            if (!next.fold && turns.get(i).size() < TO_THE_SEAM) {
                List<Point> around = new ArrayList<>();
                around.add(next.seam.get(0).start());
                around.add(EdgeOffset.beside(next.seam.get(0).start(), run.endTangent(), run.allowance));
                around.addAll(turns.get(i));
                around.add(EdgeOffset.beside(next.seam.get(0).start(), next.startTangent(), next.allowance));
                strips.corner(around);
            }
        }
        return strips.outline(onFold).map(points -> {
            List<Integer> turned = new ArrayList<>();
            for (int i = 0; i < points.size(); i++) {
                Point before = points.get((i + points.size() - 1) % points.size());
                Point in = points.get(i).minus(before).unit();
                Point on =
                        points.get((i + 1) % points.size()).minus(points.get(i)).unit();
                if (corners.contains(points.get(i)) || in.dot(on) < STRAIGHT_ON) {
                    turned.add(i);
                }
            }
            return new CutLine(points, turned);
        });
    }

    /** Slits without width are left out. Neighbouring points that a knife could not tell apart are one: a corner where one of them is, else the earlier one. */
    CutLine withoutRepeats() {
        return withoutRepeats(WIDTH);
    }

    private CutLine withoutRepeats(double width) {
        Point[] kept = new Point[points.size()];
        BitSet turning = new BitSet(points.size());
        BitSet turned = new BitSet(points.size());
        corners.forEach(turned::set);
        int count = 0;
        for (int i = 0; i < points.size(); i++) {
            Point point = points.get(i);
            while (count > 1 && isSlit(kept[count - 2], kept[count - 1], point, width)) {
                count--;
                turning.set(count - 1);
            }
            if (count > 0 && kept[count - 1].distanceTo(point) < Outline.ONE_POINT) {
                if (turned.get(i) && !turning.get(count - 1)) {
                    kept[count - 1] = point;
                    turning.set(count - 1);
                }
            } else {
                kept[count] = point;
                turning.set(count++, turned.get(i));
            }
        }
        int last = count - 1;
        if (last > 0 && kept[last].distanceTo(kept[0]) < Outline.ONE_POINT) {
            if (turning.get(last) && !turning.get(0)) {
                kept[0] = kept[last];
                turning.set(0);
            }
            count--;
        }
        turning.clear(count, turning.length() + count);
        List<Integer> places = new ArrayList<>(turning.cardinality());
        for (int i = turning.nextSetBit(0); i >= 0; i = turning.nextSetBit(i + 1)) {
            places.add(i);
        }
        return new CutLine(List.of(Arrays.copyOf(kept, count)), List.copyOf(places));
    }

    /** Whether a line goes to a point and back beside itself, out or in, by a needle that no knife could cut. */
    private static boolean isSlit(Point from, Point tip, Point to, double width) {
        double dot = (from.x() - tip.x()) * (to.x() - tip.x()) + (from.y() - tip.y()) * (to.y() - tip.y());
        return dot > 0
                && dot > NEEDLE * from.distanceTo(tip) * to.distanceTo(tip)
                && (Outline.near(from, tip, to, width) || Outline.near(tip, to, from, width))
                && tip.distanceTo(to) >= Outline.ONE_POINT;
    }

    private static List<Run> runs(List<PieceEdge> edges) {
        List<Run> runs = new ArrayList<>(edges.size());
        for (PieceEdge edge : edges) {
            List<Cubic> segments = new ArrayList<>(edge.curve().segments().size());
            for (Cubic segment : edge.curve().segments()) {
                if (segment.start().distanceTo(segment.end()) > CRUMB) {
                    segments.add(segment);
                }
            }
            int start = 0;
            for (int i = 1; i <= segments.size(); i++) {
                if (i == segments.size() || bent(segments.get(i - 1), segments.get(i))) {
                    runs.add(new Run(edge, segments.subList(start, i)));
                    start = i;
                }
            }
        }
        return runs;
    }

    /** Segments of one curve join smoothly but for rounding; anything beyond a thousandth of a radian is a corner. */
    private static boolean bent(Cubic before, Cubic after) {
        Point arriving = before.tangentAt(1);
        Point leaving = after.tangentAt(0);
        return Math.abs(arriving.cross(leaving)) > 1e-3 || arriving.dot(leaving) < 0;
    }

    /** Cuts both runs back where they must be, and gives the corner points between them. */
    private static List<Point> turned(Run before, Run after, CornerKind kind) {
        if (before.fold && after.fold) {
            return List.of();
        }
        if (after.fold) {
            return ontoFold(before, kind);
        }
        if (before.fold) {
            return offFold(after, kind);
        }
        Corner corner = new Corner(
                after.seam.get(0).start(),
                before.endTangent(),
                after.startTangent(),
                before.allowance,
                after.allowance);
        if (isPoint(before, after, corner)) {
            corner = new Corner(
                    corner.vertex(),
                    corner.before(),
                    corner.before().times(-1),
                    corner.allowanceBefore(),
                    corner.allowanceAfter());
        }
        return switch (corner.turn()) {
            case SMOOTH -> List.of();
            case POINTS ->
                // Within an edge only pleats make corners: the layers are mirrored there, and so the lines run on until
                // they meet.
                corner.points(before.edge == after.edge || cutNet(before) || cutNet(after) ? CornerKind.MITRED : kind);
            case CROSSING -> crossing(before, after, corner);
        };
    }

    /** Whether lines that turn straight back enclose cloth, as where a bowed hem comes to a point, though their tangents say that they turn the other way by a hair. */
    private static boolean isPoint(Run before, Run after, Corner corner) {
        if (corner.before().dot(corner.after()) > STRAIGHT_BACK
                || corner.before().cross(corner.after()) > 0) {
            return false;
        }
        Point from = before.seam.get(before.seam.size() - 1).pointAt(1 - NEAR_END);
        Point to = after.seam.get(0).pointAt(NEAR_END);
        return corner.vertex().minus(from).cross(to.minus(corner.vertex())) > 0;
    }

    /** A seam with an allowance runs on to the line of a hem that is cut net. */
    private static boolean cutNet(Run run) {
        return run.edge.kind() == EdgeKind.HEM && run.allowance == 0;
    }

    /** Whether a place of a parallel lies beyond the end of its seam, past a neighbour that is cut net: the cut line ends at the neighbour there. */
    private static boolean beyond(Run neighbour, Point point) {
        return cutNet(neighbour)
                && neighbour
                                .startTangent()
                                .cross(point.minus(neighbour.seam.get(0).start()))
                        < 0;
    }

    /** A line that must be cut back is not prolonged: its prolongation may meet the other line at a place that the corner does not reach. */
    private static List<Point> crossing(Run before, Run after, Corner corner) {
        Point runOn = corner.runsOnBefore()
                ? corner.endBefore().plus(corner.before().times(corner.reach()))
                : corner.endBefore();
        Point startEarlier = corner.runsOnAfter()
                ? corner.startAfter().minus(corner.after().times(corner.reach()))
                : corner.startAfter();
        for (int i = before.last; i >= before.first; i--) {
            Point from = before.parallel.get(i);
            Point to = i == before.last ? runOn : before.parallel.get(i + 1);
            for (int k = after.first; k <= after.last; k++) {
                Point start = k == after.first ? startEarlier : after.parallel.get(k - 1);
                Optional<Point> hit = Crossing.of(from, to, start, after.parallel.get(k));
                if (hit.isPresent()) {
                    before.last = i;
                    after.first = k;
                    return List.of(hit.get());
                }
            }
        }
        return List.of(corner.endBefore(), corner.vertex(), corner.startAfter());
    }

    private static List<Point> ontoFold(Run before, CornerKind kind) {
        Point arriving = before.endTangent();
        Corner corner = new Corner(
                before.seam.get(before.seam.size() - 1).end(),
                arriving,
                new Point(arriving.x(), 0.0 - arriving.y()),
                before.allowance,
                before.allowance);
        if (corner.turn() == Corner.Turn.CROSSING) {
            while (before.last > before.first
                    && before.parallel.get(before.last - 1).x() <= 0) {
                before.last--;
            }
            Point outside = before.parallel.get(before.last);
            Point inside = before.parallel.get(Math.max(before.first, before.last - 1));
            before.last--;
            return List.of(onFold(inside, outside));
        }
        List<Point> turn = corner.turn() == Corner.Turn.SMOOTH ? List.of(corner.endBefore()) : corner.points(kind);
        Point first = turn.get(0);
        if (turn.size() == 1 || Math.abs(first.x()) < Outline.ONE_POINT) {
            before.last = dropOnFold(before, before.last);
            return List.of(new Point(0, first.y()));
        }
        return List.of(first, new Point(0, first.y()));
    }

    private static int dropOnFold(Run before, int last) {
        return Math.abs(before.parallel.get(last).x()) < Outline.ONE_POINT ? last - 1 : last;
    }

    private static List<Point> offFold(Run after, CornerKind kind) {
        Point leaving = after.startTangent();
        Corner corner = new Corner(
                after.seam.get(0).start(),
                new Point(leaving.x(), 0.0 - leaving.y()),
                leaving,
                after.allowance,
                after.allowance);
        if (corner.turn() == Corner.Turn.CROSSING) {
            while (after.first < after.last
                    && after.parallel.get(after.first + 1).x() <= 0) {
                after.first++;
            }
            Point outside = after.parallel.get(after.first);
            Point inside = after.parallel.get(Math.min(after.last, after.first + 1));
            after.first++;
            return List.of(onFold(inside, outside));
        }
        List<Point> turn = corner.turn() == Corner.Turn.SMOOTH ? List.of(corner.startAfter()) : corner.points(kind);
        Point last = turn.get(turn.size() - 1);
        if (turn.size() == 1 || Math.abs(last.x()) < Outline.ONE_POINT) {
            if (Math.abs(after.parallel.get(after.first).x()) < Outline.ONE_POINT) {
                after.first++;
            }
            return List.of(new Point(0, last.y()));
        }
        return List.of(new Point(0, last.y()), last);
    }

    private static Point onFold(Point inside, Point outside) {
        double share = inside.x() == outside.x() ? 0 : inside.x() / (inside.x() - outside.x());
        return new Point(0, inside.y() + (outside.y() - inside.y()) * share);
    }
}
