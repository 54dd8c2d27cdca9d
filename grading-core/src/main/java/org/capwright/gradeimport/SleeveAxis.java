package org.capwright.gradeimport;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.capwright.exchange.dxf.DrawnLine;
import org.capwright.geometry.Point;
import org.capwright.words.Text;

/**
 * Which way up a sleeve lies, by what the piece itself shows. The cap is the edge between two corners that stands out farthest for its width; where a straight edge runs down square to the
 * end of such an edge, the piece is a half and that is its fold. The direction of a half is its fold. That of a whole sleeve is square to the line between its underarm points, and
 * something else must agree: the grain line, the hem, a line inside, its own mirror image, or the sheet.
 *
 * @param degrees by how much it must be turned counter-clockwise to stand upright
 * @param how what shows it, in words
 */
record SleeveAxis(double degrees, Text how) {

    /** Directions nearer than this agree, degrees: 1.5 mm over the width of a bicep line. */
    private static final double AGREE = 0.25;

    /** What is as square to the sheet as this was drawn square, degrees. */
    private static final double EXACT = 0.02;

    /** A grain line farther off than this lies on the bias and shows no direction of the piece, degrees. */
    private static final double ALONG = 8;

    /** Deviation from square of the cap line at the fold, degrees; a spline through points may start a little aslant. */
    private static final double SQUARE = 12;

    /** A rival edge that stands out this much as far as the best one leaves doubt which is the cap. */
    private static final double RIVAL = 0.6;

    /** An edge that may be the cap, how far it stands out for its width, the direction of up, and whether that is a fold. */
    private record Cap(int from, int to, double share, Point up, boolean fold) {}

    /**
     * Finds the direction.
     *
     * @param ring counter-clockwise
     * @param marks straight lines in the piece
     * @return nothing where no edge looks like a cap
     * @throws SleeveShape.NoSleeve if two edges could be the cap, or nothing agrees with the underarm points
     */
    static Optional<SleeveAxis> of(List<Point> ring, List<DrawnLine> marks) throws SleeveShape.NoSleeve {
        List<Integer> corners = SleeveShape.corners(ring);
        List<Cap> caps = new ArrayList<>();
        for (int k = 0; k < corners.size() && corners.size() > 1 && corners.size() <= 200; k++) {
            int next = (k + 1) % corners.size();
            whole(ring, corners.get(k), corners.get(next)).ifPresent(caps::add);
            half(ring, corners, k, next, true).ifPresent(caps::add);
            half(ring, corners, k, next, false).ifPresent(caps::add);
        }
        caps.sort(Comparator.comparingDouble(cap -> -cap.share));
        if (caps.isEmpty()) {
            return Optional.empty();
        }
        Cap best = caps.get(0);
        for (Cap other : caps.subList(1, caps.size())) {
            if (other.share > RIVAL * best.share && apart(heading(other.up), heading(best.up), 360) > AGREE) {
                throw new SleeveShape.NoSleeve(Text.of("two of its edges could be the cap line"));
            }
        }
        double up = heading(best.up);
        return Optional.of(
                best.fold ? upright(up, Text.of("upright by its fold edge")) : whole(ring, best, corners, marks, up));
    }

    /** The other way up. */
    SleeveAxis turned() {
        return new SleeveAxis(degrees + 180, how);
    }

    private static SleeveAxis whole(
            List<Point> ring, Cap cap, List<Integer> corners, List<DrawnLine> marks, double bicep)
            throws SleeveShape.NoSleeve {
        OptionalDouble hem = hem(ring, cap, corners);
        double width = ring.get(cap.from).distanceTo(ring.get(cap.to));
        List<Double> grains = new ArrayList<>();
        boolean inside = false;
        boolean besideHem = false;
        for (DrawnLine mark : marks) {
            double along = heading(mark.end().minus(mark.start()));
            boolean grain = LineRole.of(mark.layer()) == LineRole.GRAIN;
            if (grain && apart(along, bicep, 180) <= ALONG) {
                grains.add(bicep + Math.IEEEremainder(along - bicep, 180));
            }
            boolean shows = !grain && mark.start().distanceTo(mark.end()) > width / 4 && !isEdge(ring, mark);
            inside |= shows && apart(along, bicep, 90) <= AGREE;
            besideHem |= shows && hem.isPresent() && apart(along, hem.getAsDouble(), 90) <= AGREE;
        }
        double grain = grains.isEmpty() ? bicep : grains.get(0);
        if (grains.stream().anyMatch(other -> apart(other, grain, 180) > AGREE)) {
            throw new SleeveShape.NoSleeve(Text.of("its grain lines point different ways"));
        }
        boolean agrees = apart(grain, bicep, 180) <= AGREE;
        boolean hemAgrees = hem.isPresent() && apart(hem.getAsDouble(), bicep, 360) <= AGREE;
        if (!grains.isEmpty() && agrees) {
            return upright(
                    hem.isPresent() && apart(hem.getAsDouble(), bicep, 360) <= EXACT ? bicep : grain,
                    Text.of("upright by its grain line, which agrees with its underarm points"));
        }
        if (hemAgrees) {
            return upright(
                    bicep,
                    Text.of(
                            grains.isEmpty()
                                    ? "upright by its underarm points and its hem"
                                    : "upright by its underarm points and its hem; its grain line lies askew"));
        }
        if (!grains.isEmpty()) {
            boolean told = hem.isPresent() && apart(grain, hem.getAsDouble(), 180) <= AGREE || square(grain);
            if (told) {
                return upright(grain, Text.of("upright by its grain line; its underarm points do not lie level"));
            }
            throw unsure(bicep, hem, OptionalDouble.of(apart(grain, bicep, 180)));
        }
        if (inside) {
            return upright(bicep, Text.of("upright by its underarm points and a line inside"));
        }
        if (besideHem && apart(hem.getAsDouble(), bicep, 360) <= ALONG) {
            return upright(
                    hem.getAsDouble(),
                    Text.of("upright by its hem and a line inside; its underarm points do not lie level"));
        }
        if (square(bicep)) {
            return upright(bicep, Text.of("upright as drawn, its underarm points level"));
        }
        if (mirrors(ring, cap)) {
            return upright(bicep, Text.of("upright by its underarm points, as one half of it mirrors the other"));
        }
        if (hem.isPresent() && square(hem.getAsDouble()) && apart(hem.getAsDouble(), bicep, 360) <= ALONG) {
            return upright(
                    hem.getAsDouble(),
                    Text.of("upright as drawn, its hem level; its underarm points do not lie level"));
        }
        throw unsure(bicep, hem, OptionalDouble.empty());
    }

    private static SleeveShape.NoSleeve unsure(double bicep, OptionalDouble hem, OptionalDouble grain) {
        List<Text> shown = new ArrayList<>();
        grain.ifPresent(off ->
                shown.add(Text.of("its grain line is {degrees} degrees off").with("degrees", degrees(off))));
        shown.add(
                hem.isPresent()
                        ? Text.of("its hem and the line between its underarm points lie {degrees} degrees apart")
                                .with("degrees", degrees(apart(hem.getAsDouble(), bicep, 360)))
                        : Text.of("only its underarm points show a direction"));
        return new SleeveShape.NoSleeve(
                Text.of("which way up it lies is not certain: {shown}; draw a grain line along its centre, or turn it"
                                + " upright")
                        .with("shown", Text.joined(shown, ", ")));
    }

    private static Text degrees(double angle) {
        return Text.figures(Double.toString(Math.rint(10 * angle) / 10));
    }

    private static boolean square(double heading) {
        return apart(heading, 0, 90) <= EXACT;
    }

    private static SleeveAxis upright(double up, Text how) {
        double turn = 90 - up;
        double quarter = 90 * Math.rint(turn / 90);
        return new SleeveAxis(Math.abs(turn - quarter) <= EXACT / 100 ? quarter : turn, how);
    }

    /** An edge that bulges out from the chord between its ends, with all the rest behind the chord. */
    private static Optional<Cap> whole(List<Point> ring, int from, int to) {
        Point start = ring.get(from);
        Point chord = ring.get(to).minus(start);
        double width = chord.norm();
        Point up = chord.unit().left().times(-1);
        double highest = 0;
        double lowest = 0;
        double rest = 0;
        int n = ring.size();
        for (int k = from; k != to; k = (k + 1) % n) {
            double y = ring.get(k).minus(start).dot(up);
            highest = Math.max(highest, y);
            lowest = Math.min(lowest, y);
        }
        for (int k = to; k != from; k = (k + 1) % n) {
            rest = Math.max(rest, ring.get(k).minus(start).dot(up));
        }
        boolean caps =
                highest > 0.08 * width && highest < 2.5 * width && lowest > -0.05 * width && rest < 0.25 * highest;
        return caps ? Optional.of(new Cap(from, to, highest / width, up, false)) : Optional.empty();
    }

    /** An edge that leaves a straight one at a right angle and falls away from there. */
    private static Optional<Cap> half(List<Point> ring, List<Integer> corners, int k, int next, boolean foldAfter) {
        int from = corners.get(k);
        int to = corners.get(next);
        int apexAt = foldAfter ? to : from;
        int footAt = foldAfter
                ? corners.get((next + 1) % corners.size())
                : corners.get(Math.floorMod(k - 1, corners.size()));
        Point apex = ring.get(apexAt);
        Point foot = ring.get(footAt);
        Point underarm = ring.get(foldAfter ? from : to);
        int n = ring.size();
        Point first = ring.get(Math.floorMod(foldAfter ? to - 1 : from + 1, n));
        Point up = apex.minus(foot).unit();
        double fold = apex.distanceTo(foot);
        double width = Math.abs(up.cross(underarm.minus(apex)));
        double height = apex.minus(underarm).dot(up);
        double slope = Math.abs(90 - apart(heading(first.minus(apex)), heading(up), 360));
        boolean bends = false;
        double highest = 0;
        double chord = apex.distanceTo(underarm);
        for (int i = (from + 1) % n; i != to; i = (i + 1) % n) {
            highest = Math.max(highest, ring.get(i).minus(apex).dot(up));
            bends |= ring.get(i).distanceTo(apex, underarm) > 0.015 * chord;
        }
        boolean straight = true;
        for (int i = foldAfter ? to : footAt; i != (foldAfter ? footAt : from); i = (i + 1) % n) {
            straight &= ring.get(i).distanceTo(foot, apex) <= SleeveShape.STRAIGHT;
        }
        boolean caps = straight
                && bends
                && width > 10
                && height > 0.12 * width
                && height < 5 * width
                && fold > height
                && highest <= 0.005 * chord + 0.2
                && slope <= SQUARE;
        return caps ? Optional.of(new Cap(from, to, height / (2 * width), up, true)) : Optional.empty();
    }

    /** The direction of up by the edge farthest from the cap that runs across. */
    private static OptionalDouble hem(List<Point> ring, Cap cap, List<Integer> corners) {
        double lowest = 0;
        OptionalDouble found = OptionalDouble.empty();
        for (int k = 0; k < corners.size(); k++) {
            Point a = ring.get(corners.get(k));
            Point b = ring.get(corners.get((k + 1) % corners.size()));
            double up = heading(b.minus(a).left());
            double low = a.towards(b, 0.5).minus(ring.get(cap.from)).dot(cap.up);
            if (corners.get(k) != cap.from && apart(up, heading(cap.up), 360) < 45 && low < lowest) {
                lowest = low;
                found = OptionalDouble.of(up);
            }
        }
        return found;
    }

    /** Whether a line is part of the outline. */
    private static boolean isEdge(List<Point> ring, DrawnLine mark) {
        Point middle = mark.start().towards(mark.end(), 0.5);
        for (int i = 0; i < ring.size(); i++) {
            if (middle.distanceTo(ring.get(i), ring.get((i + 1) % ring.size())) < 0.5) {
                return true;
            }
        }
        return false;
    }

    /** Whether the outline lies on its own mirror image about the middle of the line between its underarm points. */
    private static boolean mirrors(List<Point> ring, Cap cap) {
        Point middle = ring.get(cap.from).towards(ring.get(cap.to), 0.5);
        Point across = ring.get(cap.to).minus(ring.get(cap.from)).unit();
        int step = Math.max(1, ring.size() / 60);
        for (int k = 0; k < ring.size(); k += step) {
            Point from = ring.get(k).minus(middle);
            Point image = ring.get(k).minus(across.times(2 * from.dot(across)));
            double least = Double.POSITIVE_INFINITY;
            for (int i = 0; i < ring.size() && least > 0.5; i++) {
                least = Math.min(least, image.distanceTo(ring.get(i), ring.get((i + 1) % ring.size())));
            }
            if (least > 0.5) {
                return false;
            }
        }
        return true;
    }

    private static double heading(Point direction) {
        return Math.toDegrees(Math.atan2(direction.y(), direction.x()));
    }

    /** How far two directions lie apart, where a turn by the period makes no difference. */
    private static double apart(double one, double other, double period) {
        return Math.abs(Math.IEEEremainder(one - other, period));
    }
}
