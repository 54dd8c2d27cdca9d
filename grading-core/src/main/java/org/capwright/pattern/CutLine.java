package org.capwright.pattern;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.capwright.geometry.Point;
import org.capwright.geometry.Points;
import org.capwright.geometry.PointsBuilder;

/**
 * The line to cut along: the seam lines of a piece, each moved out by its own allowance.
 *
 * @param ring counter-clockwise
 * @param corners places of true corners among its points
 */
record CutLine(Ring ring, List<Integer> corners) {

    /** Cosine of the angle of a needle: 8 degrees. */
    private static final double NEEDLE = Math.cos(Math.toRadians(8));

    /** A needle narrower than this where it ends is none, mm. */
    static final double WIDTH = 5 * Piece.FLATTENING;

    /** Cosine of an angle that is wider than any needle: 21 degrees. */
    private static final double SHARP = Math.cos(Math.toRadians(21));

    /** Cosine of the greatest turn between chords of a smooth line: 10 degrees. */
    private static final double STRAIGHT_ON = Math.cos(Math.toRadians(10));

    /** A place of a parallel may lie outside the cut line by this much, mm: it stands on it. */
    private static final double ON_LINE = Piece.FLATTENING / 2;

    CutLine(Points points, List<Integer> corners) {
        this(new Ring(points), corners);
    }

    /** The points, the first not repeated. */
    Points points() {
        return ring.points();
    }

    /**
     * Draws the cut line.
     *
     * @param edges seam lines, counter-clockwise and closed; a fold edge must lie on x = 0, with the piece at x ≥ 0
     * @param kind how corners are turned
     * @param parallels of the pieces of the size so far; those of this one are added
     * @return the cut line, or nothing if the allowances leave no simple one
     */
    static Optional<CutLine> around(List<PieceEdge> edges, CornerKind kind, EdgeOffset parallels) {
        List<SeamRun> runs = SeamRun.of(edges, parallels);
        List<List<Point>> turns = new ArrayList<>(runs.size());
        for (int i = 0; i < runs.size(); i++) {
            turns.add(CutTurn.between(runs.get(i), runs.get((i + 1) % runs.size()), kind));
        }
        CutLine raw = joined(runs, turns);
        Optional<CutLine> line = Untangling.untangled(raw);
        boolean onFold = isOnFold(runs);
        boolean whole = line.isPresent()
                && line.get().passesNo(turns)
                && !(onFold && line.get().comesOverFold())
                && line.get().encloses(runs, onFold, line.get() == raw);
        return (whole ? line : united(runs, turns, onFold)).map(drawn -> drawn.finished(runs, onFold));
    }

    private static boolean isOnFold(List<SeamRun> runs) {
        for (SeamRun run : runs) {
            if (run.fold) {
                return true;
            }
        }
        return false;
    }

    /** The raw line: what remains of the parallels, and the corners between them. */
    private static CutLine joined(List<SeamRun> runs, List<List<Point>> turns) {
        int room = 0;
        for (int i = 0; i < runs.size(); i++) {
            room += runs.get(i).remaining() + turns.get(i).size();
        }
        CutPoints points = new CutPoints(room);
        for (int i = 0; i < runs.size(); i++) {
            points.add(runs.get(i));
            for (Point corner : turns.get(i)) {
                points.turn(corner);
            }
        }
        return points.closed();
    }

    /** Whether the line goes by no corner of a seam line where a crossing was looked for. */
    private boolean passesNo(List<List<Point>> turns) {
        Points points = points();
        for (List<Point> turn : turns) {
            if (turn.size() == CutTurn.TO_THE_SEAM && points.contains(turn.get(1))) {
                return false;
            }
        }
        return true;
    }

    private boolean comesOverFold() {
        return ring.box().left() < -Outline.ONE_POINT;
    }

    /** Whether the line encloses the parallels, but for what lies beyond the fold. What remained of them when it was joined is on it, unless it was untangled since. */
    private boolean encloses(List<SeamRun> runs, boolean onFold, boolean asJoined) {
        for (int i = 0; i < runs.size(); i++) {
            SeamRun run = runs.get(i);
            SeamRun before = runs.get((i + runs.size() - 1) % runs.size());
            SeamRun after = runs.get((i + 1) % runs.size());
            boolean remains = asJoined && run.remaining() > 0;
            int first = remains ? run.first : run.end + 1;
            int last = remains ? run.last : run.end;
            if (!encloses(run, run.start, first - 1, before, after, onFold)
                    || !encloses(run, last + 1, run.end, before, after, onFold)) {
                return false;
            }
        }
        return true;
    }

    private boolean encloses(SeamRun run, int from, int to, SeamRun before, SeamRun after, boolean onFold) {
        for (int k = from; k <= to; k++) {
            boolean beyondFold = onFold && run.parallels.x(k) <= 0;
            if (!beyondFold && !encloses(run.parallels.get(k), before, after)) {
                return false;
            }
        }
        return true;
    }

    /** Whether a place of a parallel lies within the line or stands on it, or need not. */
    private boolean encloses(Point place, SeamRun before, SeamRun after) {
        return before.cutsOff(place) || after.cutsOff(place) || ring.contains(place) || ring.passes(place, ON_LINE);
    }

    private CutLine finished(List<SeamRun> runs, boolean onFold) {
        if (isPlain()) {
            return this;
        }
        double widest = 0;
        for (SeamRun run : runs) {
            widest = Math.max(widest, run.allowance);
        }
        // What is cut on the seam line all round has the points of the seam line, and its tips, however thin.
        return widest == 0
                ? cleared(0)
                : Needles.blunted(
                        cleared(WIDTH), widest, point -> onFold && point.x() < Outline.ONE_POINT || onNet(runs, point));
    }

    /** Whether a point is the corner of a seam line that is cut net. */
    private static boolean onNet(List<SeamRun> runs, Point point) {
        return runs.stream()
                .anyMatch(run -> run.allowance == 0
                        && (run.seamStart().distanceTo(point) < Outline.ONE_POINT
                                || run.seamEnd().distanceTo(point) < Outline.ONE_POINT));
    }

    /** The line where hollows are so tight that the parallels cannot be cleaned: the outline of all that the allowances add. */
    private static Optional<CutLine> united(List<SeamRun> runs, List<List<Point>> turns, boolean onFold) {
        Set<Point> corners = new HashSet<>();
        turns.forEach(corners::addAll);
        SeamStrips strips = new SeamStrips();
        for (int i = 0; i < runs.size(); i++) {
            SeamRun run = runs.get(i);
            SeamRun next = runs.get((i + 1) % runs.size());
            if (run.fold) {
                strips.onFold(run.seam());
                continue;
            }
            strips.beside(run.seam(), run.allowance);
            if (!next.fold && turns.get(i).size() < CutTurn.TO_THE_SEAM) {
                List<Point> around = new ArrayList<>();
                around.add(next.seamStart());
                around.add(EdgeOffset.beside(next.seamStart(), run.endTangent(), run.allowance));
                around.addAll(turns.get(i));
                around.add(EdgeOffset.beside(next.seamStart(), next.startTangent(), next.allowance));
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
            return new CutLine(Points.of(points), turned);
        });
    }

    /** Slits without width are left out. Neighbouring points that a knife could not tell apart are one: a corner where one of them is, else the earlier one. */
    CutLine withoutRepeats() {
        return isPlain() ? this : cleared(WIDTH);
    }

    private CutLine cleared(double width) {
        Points points = points();
        PointsBuilder kept = new PointsBuilder(points.size());
        BitSet turning = new BitSet(points.size());
        BitSet turned = new BitSet(points.size());
        corners.forEach(turned::set);
        for (int i = 0; i < points.size(); i++) {
            double x = points.x(i);
            double y = points.y(i);
            while (kept.size() > 1 && isSlit(kept, x, y, width)) {
                kept.cutBack(kept.size() - 1);
                turning.set(kept.size() - 1);
            }
            int last = kept.size() - 1;
            if (last >= 0 && Outline.areOne(kept.x(last), kept.y(last), x, y)) {
                if (turned.get(i) && !turning.get(last)) {
                    kept.set(last, x, y);
                    turning.set(last);
                }
            } else {
                kept.add(x, y);
                turning.set(last + 1, turned.get(i));
            }
        }
        int last = kept.size() - 1;
        if (last > 0 && Outline.areOne(kept.x(last), kept.y(last), kept.x(0), kept.y(0))) {
            if (turning.get(last) && !turning.get(0)) {
                kept.set(0, kept.x(last), kept.y(last));
                turning.set(0);
            }
            kept.cutBack(last);
        }
        List<Integer> places = new ArrayList<>(turning.cardinality());
        for (int i = turning.nextSetBit(0); i >= 0 && i < kept.size(); i = turning.nextSetBit(i + 1)) {
            places.add(i);
        }
        return new CutLine(kept.points(), List.copyOf(places));
    }

    /** Whether all points are apart, and the line turns back so sharply nowhere that it might be a slit or a needle. */
    private boolean isPlain() {
        Points points = points();
        int last = points.size() - 1;
        double backX = points.x(last) - points.x(0);
        double backY = points.y(last) - points.y(0);
        for (int i = 0; i <= last; i++) {
            double onX = points.x(i + 1) - points.x(i);
            double onY = points.y(i + 1) - points.y(i);
            double on = onX * onX + onY * onY;
            double dot = backX * onX + backY * onY;
            if (on < Outline.ONE_POINT * Outline.ONE_POINT
                    || dot > 0 && dot * dot > SHARP * SHARP * on * (backX * backX + backY * backY)) {
                return false;
            }
            backX = -onX;
            backY = -onY;
        }
        return true;
    }

    private static boolean isSlit(PointsBuilder line, double x, double y, double width) {
        int tip = line.size() - 1;
        return isSlit(line.x(tip - 1), line.y(tip - 1), line.x(tip), line.y(tip), x, y, width);
    }

    /** Whether a line goes to a point and back beside itself, out or in, by a needle that no knife could cut. */
    private static boolean isSlit(
            double fromX, double fromY, double tipX, double tipY, double toX, double toY, double width) {
        double inX = fromX - tipX;
        double inY = fromY - tipY;
        double onX = toX - tipX;
        double onY = toY - tipY;
        double dot = inX * onX + inY * onY;
        return dot > 0
                && dot > NEEDLE * Math.sqrt(inX * inX + inY * inY) * Math.sqrt(onX * onX + onY * onY)
                && (Outline.near(fromX, fromY, tipX, tipY, toX, toY, width)
                        || Outline.near(tipX, tipY, toX, toY, fromX, fromY, width))
                && !Outline.areOne(tipX, tipY, toX, toY);
    }
}
