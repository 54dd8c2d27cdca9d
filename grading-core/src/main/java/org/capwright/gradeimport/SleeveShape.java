package org.capwright.gradeimport;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import org.capwright.geometry.Placing;
import org.capwright.geometry.Point;
import org.capwright.words.Text;

/**
 * A sleeve as its outline shows it, whole, in mm, y up, origin where the vertical through the apex meets the bicep line, the front half (the left one, as drawn) at negative x.
 *
 * @param cap cap line from the left underarm point over the apex to the right one
 * @param lower the rest of the outline, from the left underarm point down, along the hem and up to the right one
 * @param apex position of the apex in {@code cap}
 * @param half the half that is drawn, where the piece lies on the fold
 * @param placing from the drawing to here
 * @param how what shows which way up it lies, in words
 */
record SleeveShape(List<Point> cap, List<Point> lower, int apex, Half half, Placing placing, Text how) {

    /** A turn of the outline by more than this is a corner, degrees. A flattened curve turns by less unless its radius is below half a millimetre. */
    private static final double CORNER = 30;

    /** A turn by less than this belongs to a smooth line, degrees. */
    private static final double SMOOTH = 20;

    private static final Text UNTOLD = Text.name("");

    /** A turn by more than this shows which way a line bends, degrees. */
    private static final double BEND = 3;

    /** A vertex that turns so many times as much as those beside it, and {@link #BEND} more, is a kink. */
    private static final double KINK = 2;

    static final double STRAIGHT = 0.1;

    /** A corner nearer to the apex than this is a snip or a peak, mm. */
    private static final double AT_APEX = 15;

    /** An apex farther than this share of a chord from the highest vertex lies between two vertices. */
    private static final double BETWEEN = 0.15;

    /** Vertices as high as the highest but for this are as high, mm. */
    private static final double LEVEL = 1e-4;

    /** Vertices nearer than this are one, mm. */
    private static final double SAME = 1e-3;

    /** What is drawn of the piece. */
    enum Half {
        NONE,
        LEFT,
        RIGHT
    }

    /** Which place of the outline is taken for the underarm point. */
    enum Underarm {
        /** The first one down from the apex: the cap line of a sleeve has no corner. */
        FIRST_CORNER,
        /** The place farthest out, corner or not: the top edge of an overlay has corners where it is cut for its pleats. */
        OUTERMOST
    }

    /** Why an outline is no sleeve. */
    static final class NoSleeve extends Exception {

        private static final long serialVersionUID = 1L;

        private final transient Text reason;

        NoSleeve(Text reason) {
            super(reason.toString(), null, false, false);
            this.reason = reason;
        }

        Text reason() {
            return reason;
        }
    }

    /** The same shape, told how it was stood upright. */
    SleeveShape shown(Text way) {
        return new SleeveShape(cap, lower, apex, half, placing, way);
    }

    /** The same shape, so many times as large, with its lines where they were. */
    SleeveShape times(double factor) {
        return new SleeveShape(
                cap.stream().map(point -> point.times(factor)).toList(),
                lower.stream().map(point -> point.times(factor)).toList(),
                apex,
                half,
                Placing.scale(factor).after(placing),
                how);
    }

    /** Whether both underarm points lie on one level, give or take 0.25 degrees. */
    boolean level() {
        return Math.abs(cap.get(0).y() - cap.get(cap.size() - 1).y()) <= 0.0044 * bicep();
    }

    /** Positions of the corners of an outline. */
    static List<Integer> corners(List<Point> ring) {
        List<Integer> corners = new ArrayList<>();
        for (int i = 0; i < ring.size(); i++) {
            if (isCorner(ring, i)) {
                corners.add(i);
            }
        }
        return corners;
    }

    /** A turn that is neither one vertex moved out of a smooth line, nor beside one. */
    private static boolean isCorner(List<Point> ring, int at) {
        return Math.abs(turn(ring, at)) > CORNER && !astray(ring, at) && !astray(ring, at - 1) && !astray(ring, at + 1);
    }

    /** Whether a vertex stands out of a line that is smooth without it. */
    private static boolean astray(List<Point> ring, int at) {
        int n = ring.size();
        Point before = ring.get(Math.floorMod(at - 1, n));
        Point after = ring.get(Math.floorMod(at + 1, n));
        return n > 8
                && Math.abs(turn(ring, Math.floorMod(at, n))) > CORNER
                && Math.abs(turn(ring.get(Math.floorMod(at - 2, n)), before, after)) < SMOOTH
                && Math.abs(turn(before, after, ring.get(Math.floorMod(at + 2, n)))) < SMOOTH;
    }

    /** Finds the parts of a sleeve in a closed outline that stands upright after a placing. */
    static SleeveShape of(List<Point> outline, Placing upright, Underarm underarm) throws NoSleeve {
        List<Point> ring = cleaned(outline, upright);
        Top top = Top.of(ring);
        if (top.fold == Half.NONE) {
            return whole(ring, top, upright, underarm);
        }
        if (top.fold == Half.LEFT) {
            // Drawn to the left of its fold: mirror, find, mirror back.
            List<Point> mirrored = new ArrayList<>(ring.size());
            for (int i = ring.size() - 1; i >= 0; i--) {
                mirrored.add(ring.get(i).mirrored());
            }
            return half(mirrored, Top.of(mirrored), upright, Half.LEFT, underarm);
        }
        return half(ring, top, upright, Half.RIGHT, underarm);
    }

    /** Counter-clockwise, without vertices that lie on one another. */
    static List<Point> cleaned(List<Point> outline, Placing upright) throws NoSleeve {
        List<Point> ring = new ArrayList<>(outline.size());
        for (Point point : outline) {
            Point here = upright.at(point.x(), point.y());
            if (ring.isEmpty() || ring.get(ring.size() - 1).distanceTo(here) > SAME) {
                ring.add(here);
            }
        }
        while (ring.size() > 1 && ring.get(0).distanceTo(ring.get(ring.size() - 1)) <= SAME) {
            ring.remove(ring.size() - 1);
        }
        if (ring.size() < 4) {
            throw new NoSleeve(Text.of("it has fewer than four points"));
        }
        double area = area(ring);
        if (Math.abs(area) < 100) {
            throw new NoSleeve(Text.of("it encloses less than a square centimetre"));
        }
        if (area < 0) {
            Collections.reverse(ring);
        }
        return ring;
    }

    static double area(List<Point> ring) {
        double twice = 0;
        Point origin = ring.get(0);
        for (int i = 1; i + 1 < ring.size(); i++) {
            twice += ring.get(i).minus(origin).cross(ring.get(i + 1).minus(origin));
        }
        return twice / 2;
    }

    /**
     * The highest place of an outline.
     *
     * @param first position of its first highest vertex, counter-clockwise
     * @param count how many vertices are as high
     * @param fold on which side of a straight edge downward from there the piece lies, if there is one
     */
    private record Top(int first, int count, Half fold) {

        static Top of(List<Point> ring) {
            int n = ring.size();
            double highest = ring.stream().mapToDouble(Point::y).max().orElseThrow();
            double lowest = ring.stream().mapToDouble(Point::y).min().orElseThrow();
            int first = 0;
            while (ring.get(first).y() < highest) {
                first++;
            }
            while (ring.get((first + n - 1) % n).y() >= highest - LEVEL && first > -n) {
                first--;
            }
            first = Math.floorMod(first, n);
            int count = 1;
            while (count < n && ring.get((first + count) % n).y() >= highest - LEVEL) {
                count++;
            }
            double needed = 0.4 * (highest - lowest);
            int last = (first + count - 1) % n;
            // Counter-clockwise the outline comes up on the right and goes down on the left.
            boolean down = straight(ring, last, 1) >= needed;
            boolean up = straight(ring, first, -1) >= needed;
            return new Top(first, count, down == up ? Half.NONE : down ? Half.RIGHT : Half.LEFT);
        }

        /** How far the outline goes straight down from a vertex. */
        private static double straight(List<Point> ring, int from, int step) {
            int n = ring.size();
            Point start = ring.get(from);
            double reached = 0;
            for (int k = 1; k < n; k++) {
                Point next = ring.get(Math.floorMod(from + step * k, n));
                double down = start.y() - next.y();
                if (Math.abs(next.x() - start.x()) > STRAIGHT || down < reached) {
                    break;
                }
                reached = down;
            }
            return reached;
        }
    }

    private static SleeveShape whole(List<Point> ring, Top top, Placing upright, Underarm underarm) throws NoSleeve {
        int n = ring.size();
        List<Point> turned = new ArrayList<>(n + 1);
        int apexAt = (top.first + (top.count - 1) / 2) % n;
        for (int i = 0; i < n; i++) {
            turned.add(ring.get((apexAt + i) % n));
        }
        Point apexPoint = turned.get(0);
        if (top.count == 2) {
            // A level chord at the top: the apex lies in its middle.
            apexPoint = apexPoint.towards(turned.get(1), 0.5);
            turned.add(turned.remove(0));
            turned.add(0, apexPoint);
        }
        between(turned);
        apexPoint = turned.get(0);
        int left = underarm(turned, 1, underarm);
        int right = underarm(turned, -1, underarm);
        if (left >= right) {
            throw new NoSleeve(Text.of("no two corners lie below its highest point, one on either side"));
        }
        Point leftUnderarm = turned.get(left);
        Point rightUnderarm = turned.get(right);
        double width = leftUnderarm.distanceTo(rightUnderarm);
        double level = apexPoint.x() - leftUnderarm.x();
        double share = level / (rightUnderarm.x() - leftUnderarm.x());
        if (!(share > 0.05 && share < 0.95)) {
            throw new NoSleeve(Text.of("its highest point does not lie between its underarm corners"));
        }
        // A hem may bulge, more on one side than on the other.
        if (underarm == Underarm.FIRST_CORNER && Math.abs(leftUnderarm.y() - rightUnderarm.y()) > 0.15 * width) {
            throw new NoSleeve(Text.of("its underarm corners do not lie on one level"));
        }
        Point foot = leftUnderarm.towards(rightUnderarm, share);
        checkCap(apexPoint.y() - foot.y(), width);
        Placing toOrigin = Placing.move(-foot.x(), -foot.y());
        List<Point> cap = new ArrayList<>();
        for (int i = right; i < turned.size(); i++) {
            cap.add(turned.get(i).minus(foot));
        }
        cap.addAll(moved(turned.subList(0, left + 1), foot));
        Collections.reverse(cap);
        List<Point> lower = moved(turned.subList(left, right + 1), foot);
        return new SleeveShape(List.copyOf(cap), List.copyOf(lower), left, Half.NONE, toOrigin.after(upright), UNTOLD);
    }

    /**
     * Puts the apex where the curve through the highest vertex and its neighbours is highest, a parabola, if that is clearly between two vertices, and so for either half by itself. Else the vertex is the
     * apex, and the halves on either side of it bend unlike.
     */
    private static void between(List<Point> turned) {
        Point a = turned.get(turned.size() - 1);
        Point b = turned.get(0);
        Point c = turned.get(1);
        if (!(a.x() > b.x() && b.x() > c.x()) || a.x() - c.x() > 4 * AT_APEX || Math.abs(turn(a, b, c)) > SMOOTH) {
            return;
        }
        double left = (b.y() - c.y()) / (b.x() - c.x());
        double right = (a.y() - b.y()) / (a.x() - b.x());
        double bend = (right - left) / (a.x() - c.x());
        double shift = 0.0 - (left + bend * (b.x() - c.x())) / (2 * bend);
        double gap = Math.min(a.x() - b.x(), b.x() - c.x());
        boolean both = turned.size() < 6
                || beside(b, a, turned.get(turned.size() - 2)) * Math.signum(shift) > Math.abs(shift) / 2
                        && beside(b, c, turned.get(2)) * Math.signum(shift) > Math.abs(shift) / 2;
        if (bend < 0 && both && Math.abs(shift) > BETWEEN * gap && Math.abs(shift) < gap) {
            Point apex = new Point(b.x() + shift, b.y() - bend * shift * shift);
            if (shift > 0) {
                turned.add(0, apex);
            } else {
                turned.add(1, apex);
                turned.add(turned.remove(0));
            }
        }
    }

    /** How far from the first of three points the parabola through them is highest, mm to the right. */
    private static double beside(Point first, Point second, Point third) {
        double near = (second.y() - first.y()) / (second.x() - first.x());
        double far = (third.y() - second.y()) / (third.x() - second.x());
        double bend = (far - near) / (third.x() - first.x());
        return 0.0 - (near + bend * (first.x() - second.x())) / (2 * bend);
    }

    /** A half at the right of its fold: unfolded to the left. */
    private static SleeveShape half(List<Point> ring, Top top, Placing upright, Half drawn, Underarm underarmCorner)
            throws NoSleeve {
        int n = ring.size();
        int apexAt = (top.first + top.count - 1) % n;
        List<Point> turned = new ArrayList<>(n);
        for (int i = 0; i < n; i++) {
            turned.add(ring.get((apexAt + i) % n));
        }
        Point apexPoint = turned.get(0);
        int right = underarm(turned, -1, underarmCorner);
        if (right < 2) {
            throw new NoSleeve(Text.of("no corner lies between its highest point and its hem"));
        }
        Point underarm = turned.get(right);
        Point foot = new Point(apexPoint.x(), underarm.y());
        double width = underarm.x() - apexPoint.x();
        if (!(width > 10)) {
            throw new NoSleeve(Text.of("its underarm corner lies on the fold"));
        }
        checkCap(apexPoint.y() - foot.y(), 2 * width);
        List<Point> rightCap = new ArrayList<>();
        rightCap.add(new Point(0, apexPoint.y() - foot.y()));
        for (int i = n - 1; i >= right; i--) {
            rightCap.add(turned.get(i).minus(foot));
        }
        int bottom = 1;
        while (bottom + 1 < right && Math.abs(turned.get(bottom + 1).x() - apexPoint.x()) <= STRAIGHT) {
            bottom++;
        }
        List<Point> rightLower = moved(turned.subList(bottom, right + 1), foot);
        rightLower.set(0, new Point(0, rightLower.get(0).y()));
        Placing side = drawn == Half.LEFT ? Placing.stretch(-1, 1) : Placing.scale(1);
        return new SleeveShape(
                unfolded(rightCap),
                unfolded(rightLower),
                rightCap.size() - 1,
                drawn,
                Placing.move(-foot.x(), -foot.y()).after(side).after(upright),
                UNTOLD);
    }

    /** A line that starts on x = 0, with its mirror image in front of it. */
    private static List<Point> unfolded(List<Point> right) {
        List<Point> all = new ArrayList<>(2 * right.size());
        for (int i = right.size() - 1; i >= 1; i--) {
            all.add(right.get(i).mirrored());
        }
        all.addAll(right);
        return List.copyOf(all);
    }

    private static List<Point> moved(List<Point> points, Point origin) {
        List<Point> moved = new ArrayList<>(points.size());
        for (Point point : points) {
            moved.add(point.minus(origin));
        }
        return moved;
    }

    private static void checkCap(double height, double width) throws NoSleeve {
        if (!(height > 0.03 * width && height > 5)) {
            throw new NoSleeve(Text.of("it has no cap: its corners lie as high as its highest point"));
        }
        if (height > 2.5 * width) {
            throw new NoSleeve(Text.of("it is too narrow for its cap"));
        }
    }

    private static int underarm(List<Point> ring, int step, Underarm underarm) throws NoSleeve {
        return switch (underarm) {
            case FIRST_CORNER -> corner(ring, step);
            case OUTERMOST -> outermost(ring, step);
        };
    }

    /** The vertex farthest out from the top in one direction around the outline; of several above one another the upper one. */
    private static int outermost(List<Point> ring, int step) throws NoSleeve {
        int n = ring.size();
        Point top = ring.get(0);
        int best = 0;
        double farthest = 0;
        for (int k = 1; k < n; k++) {
            int at = Math.floorMod(step * k, n);
            double out = -step * (ring.get(at).x() - top.x());
            if (top.distanceTo(ring.get(at)) > AT_APEX && out > farthest + STRAIGHT) {
                best = at;
                farthest = out;
            }
        }
        if (best == 0) {
            throw new NoSleeve(Text.of("all of it lies on one side of its highest point"));
        }
        return best;
    }

    /**
     * Whether the cap line is jagged on both sides of the apex, as the top edge of an overlay is where it is cut for its pleats: kinks, and bends to and fro. Half of a smooth one bends to and fro
     * once, and the hem of an overlay that lies upside down has one corner on either side.
     */
    boolean jagged() {
        return unevenness(1, apex) > 1 && unevenness(apex + 1, cap.size() - 1) > 1;
    }

    /** How many kinks there are, and how often the cap line changes its bend. */
    private int unevenness(int from, int to) {
        int found = 0;
        double last = 0;
        for (int i = from; i < to; i++) {
            double here = turn(cap.get(i - 1), cap.get(i), cap.get(i + 1));
            double beside = Math.max(turnAt(i - 1), turnAt(i + 1));
            if (Math.abs(here) > BEND) {
                found += last * here < 0 || Math.abs(here) > CORNER || Math.abs(here) > KINK * beside + BEND ? 1 : 0;
                last = here;
            }
        }
        return found;
    }

    /** By how much the cap line turns at a vertex, whichever way, degrees; its ends do not turn. */
    private double turnAt(int at) {
        return at < 1 || at > cap.size() - 2 ? 0 : Math.abs(turn(cap.get(at - 1), cap.get(at), cap.get(at + 1)));
    }

    /** How wide the piece is from its left end to its right one, mm. */
    double across() {
        double left = Double.POSITIVE_INFINITY;
        double right = Double.NEGATIVE_INFINITY;
        for (List<Point> line : List.of(cap, lower)) {
            for (Point point : line) {
                left = Math.min(left, point.x());
                right = Math.max(right, point.x());
            }
        }
        return right - left;
    }

    /** The first corner from the top in one direction around the outline; the top itself does not count. */
    private static int corner(List<Point> ring, int step) throws NoSleeve {
        int n = ring.size();
        for (int k = 1; k < n; k++) {
            int at = Math.floorMod(step * k, n);
            if (isCorner(ring, at) && turn(ring, at) > 0 && ring.get(0).distanceTo(ring.get(at)) > AT_APEX) {
                if (ring.get(0).y() - ring.get(at).y() <= 2) {
                    throw new NoSleeve(Text.of("it has no cap: its top is a level edge"));
                }
                return at;
            }
        }
        throw new NoSleeve(Text.of("it has no corners"));
    }

    /** By how much the outline turns to the left at a vertex, degrees. A line that runs straight back turns by 180. */
    private static double turn(List<Point> ring, int at) {
        int n = ring.size();
        return turn(ring.get(Math.floorMod(at - 1, n)), ring.get(at), ring.get((at + 1) % n));
    }

    static double turn(Point before, Point here, Point after) {
        Point in = here.minus(before);
        Point out = after.minus(here);
        double turn = Math.toDegrees(Math.atan2(in.cross(out), in.dot(out)));
        return turn < -179 ? 180 : turn;
    }

    double bicep() {
        return cap.get(0).distanceTo(cap.get(cap.size() - 1));
    }

    double capHeight() {
        return cap.get(apex).y();
    }

    double frontCapLine() {
        return length(cap.subList(0, apex + 1));
    }

    double backCapLine() {
        return length(cap.subList(apex, cap.size()));
    }

    static double length(List<Point> points) {
        double length = 0;
        for (int i = 1; i < points.size(); i++) {
            length += points.get(i - 1).distanceTo(points.get(i));
        }
        return length;
    }

    /** The hem, from its front end to its back end; nothing where the piece ends at the bicep line. */
    Optional<List<Point>> hem() {
        List<Integer> corners = new ArrayList<>();
        corners.add(0);
        for (int i = 1; i + 1 < lower.size(); i++) {
            double turn = turn(lower.get(i - 1), lower.get(i), lower.get(i + 1));
            if (Math.abs(turn) > CORNER && Math.abs(lower.get(i).x()) > 1) {
                corners.add(i);
            }
        }
        corners.add(lower.size() - 1);
        int best = -1;
        double lowest = 0;
        for (int k = 1; k < corners.size(); k++) {
            Point from = lower.get(corners.get(k - 1));
            Point to = lower.get(corners.get(k));
            Point along = to.minus(from);
            double deepest = Double.POSITIVE_INFINITY;
            for (int i = corners.get(k - 1); i <= corners.get(k); i++) {
                deepest = Math.min(deepest, lower.get(i).y());
            }
            if (Math.abs(along.x()) >= Math.abs(along.y()) && along.x() > 0 && deepest < lowest) {
                lowest = deepest;
                best = k;
            }
        }
        if (best < 0 || lowest > -5) {
            return Optional.empty();
        }
        return Optional.of(lower.subList(corners.get(best - 1), corners.get(best) + 1));
    }
}
