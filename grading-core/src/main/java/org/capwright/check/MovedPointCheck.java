package org.capwright.check;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.capwright.geometry.Point;
import org.capwright.quantity.Quantity;
import org.capwright.words.Text;

/**
 * One point of a cap line that lies off the line through the points on either side of it. What it changes, the length of the cap line and its crossings and bends, is not told again: the checks after this one see
 * the line without the point.
 */
final class MovedPointCheck implements PlausibilityCheck {

    /** A point nearer to the line than this may be rounded, mm. Common practice, no source. */
    private static final double LEAST = 0.75;

    /** How many times as far off as any other point of the line it lies. */
    private static final double ALONE = 3;

    /** A point whose neighbours lie at distances more unlike than this is not judged. */
    private static final double UNLIKE = 4;

    /** Off by more than this the line cannot be sewn as drawn, mm. Common practice, no source. */
    private static final double STOP = 2;

    /** A corner nearer to the end of its line than this may be rounded, mm. Common practice, no source. */
    private static final double CORNER = 2;

    /** A cap line turns twice; one more at each end may be the corner's own. */
    private static final int MOST_BENDS = 4;

    /** What changes with a corner. */
    private static final List<CheckedMeasure> OF_CORNERS = List.of(
            CheckedMeasure.BICEP,
            CheckedMeasure.CAP_HEIGHT,
            CheckedMeasure.CAP_LINE,
            CheckedMeasure.FRONT_WIDTH,
            CheckedMeasure.BACK_WIDTH,
            CheckedMeasure.FRONT_CAP_LINE,
            CheckedMeasure.BACK_CAP_LINE,
            CheckedMeasure.FRONT_INFLECTIONS,
            CheckedMeasure.BACK_INFLECTIONS);

    @Override
    public String code() {
        return "moved-point";
    }

    @Override
    public Sifted sift(CheckedGrade grade, Thresholds thresholds) {
        List<Finding> found = new ArrayList<>();
        List<CheckedSize> rest = new ArrayList<>(grade.sizes());
        corners(grade, found, rest);
        for (int i = 0; i < grade.sizes().size(); i++) {
            Optional<NestLine> line = rest.get(i).line(NestLine.Kind.CAP_LINE);
            if (line.isEmpty() || !grade.isMeasured()) {
                continue;
            }
            List<Point> points = line.get().points();
            List<Integer> moved = moved(points);
            if (!moved.isEmpty()) {
                found.add(finding(grade.label(i), points, moved.get(0)));
                rest.set(i, without(rest.get(i), points, moved));
            }
        }
        return new Sifted(List.copyOf(found), grade.with(rest));
    }

    /** An underarm corner that does not end its cap line as the corners of the other sizes do. */
    private void corners(CheckedGrade grade, List<Finding> found, List<CheckedSize> rest) {
        int n = grade.sizes().size();
        double[][] off = new double[n][2];
        double next = 0;
        int size = 0;
        int end = 0;
        for (int i = 0; i < n && grade.isMeasured(); i++) {
            List<Point> points = capLine(grade.sizes().get(i));
            off[i][0] = Math.max(beyond(points), along(grade, i, 0));
            off[i][1] = Math.max(beyond(reversed(points)), along(grade, i, 1));
            for (int e = 0; e < 2; e++) {
                size = off[i][e] > off[size][end] ? i : size;
                end = size == i && off[i][e] >= off[i][1 - e] ? e : end;
            }
        }
        for (int i = 0; i < n; i++) {
            for (int e = 0; e < 2; e++) {
                // A line that was drawn as a half has both corners moved.
                next = i == size ? next : Math.max(next, off[i][e]);
            }
        }
        List<Point> line = grade.isMeasured() ? capLine(grade.sizes().get(size)) : List.of();
        for (int i = 2; i < line.size() - 2; i++) {
            next = Math.max(next, off(line, i));
        }
        if (n > 2 && off[size][end] > Math.max(CORNER, ALONE * next) && bends(line) <= MOST_BENDS) {
            found.add(corner(grade.label(size), off[size][end], end, off[size][1 - end] > off[size][end] / 2));
            CheckedSize judged = rest.get(size).withLines(List.of());
            for (CheckedMeasure measure : OF_CORNERS) {
                judged = judged.without(measure);
            }
            rest.set(size, judged);
        }
    }

    /** How often a line turns the other way; one that waves leads nowhere. */
    private static int bends(List<Point> line) {
        int bends = 0;
        double before = 0;
        for (int i = 2; i < line.size() - 2; i++) {
            Point to = line.get(i).minus(line.get(i - 1));
            Point from = line.get(i + 1).minus(line.get(i));
            double turn = to.x() * from.y() - to.y() * from.x();
            bends += turn * before < 0 ? 1 : 0;
            before = turn == 0 ? before : turn;
        }
        return bends;
    }

    private static List<Point> capLine(CheckedSize size) {
        return size.line(NestLine.Kind.CAP_LINE).map(NestLine::points).orElse(List.of());
    }

    private static List<Point> reversed(List<Point> points) {
        List<Point> reversed = new ArrayList<>(points);
        Collections.reverse(reversed);
        return reversed;
    }

    /** How far the first point of a line lies off the cubic through the four after it, mm; 0 where they lie too unevenly to tell. */
    private static double beyond(List<Point> points) {
        if (points.size() < 12) {
            return 0;
        }
        double[] places = new double[4];
        double[] steps = {points.get(2).distanceTo(points.get(1)), 0, 0};
        for (int k = 1; k < 4; k++) {
            steps[k - 1] = points.get(k + 1).distanceTo(points.get(k));
            places[k] = places[k - 1] + steps[k - 1];
        }
        double first = points.get(0).distanceTo(points.get(1));
        Arrays.sort(steps);
        if (!(steps[0] > 0) || steps[2] > UNLIKE * steps[0] || first > UNLIKE * steps[2]) {
            return 0;
        }
        // The corner itself may be moved nearer or farther; where the line would end, its other points tell.
        Point heading = points.get(1).minus(points.get(2)).unit();
        double along = Math.max(0, points.get(0).minus(points.get(1)).dot(heading));
        Point expected = through(points.subList(1, 5), places, -along);
        return expected.distanceTo(points.get(0));
    }

    /** Where the sizes are drawn by as many points each: how much longer or shorter the last chord of a line is than those of the other sizes, mm, if the chord beside it is like theirs; else 0. */
    private static double along(CheckedGrade grade, int size, int end) {
        List<double[]> others = new ArrayList<>();
        int n = capLine(grade.sizes().get(size)).size();
        for (int i = 0; i < grade.sizes().size(); i++) {
            List<Point> points = capLine(grade.sizes().get(i));
            if (points.size() != n || n < 12) {
                return 0;
            }
            others.add(chords(end == 0 ? points : reversed(points)));
        }
        double[] own = others.remove(size);
        if (others.size() < 2) {
            return 0;
        }
        double[] last = others.stream().mapToDouble(chord -> chord[0]).sorted().toArray();
        double[] beside =
                others.stream().mapToDouble(chord -> chord[1]).sorted().toArray();
        boolean like = own[1] > 0.8 * beside[0] && own[1] < 1.25 * beside[beside.length - 1];
        return like ? Math.max(last[0] - own[0], own[0] - last[last.length - 1]) : 0;
    }

    private static double[] chords(List<Point> points) {
        return new double[] {
            points.get(0).distanceTo(points.get(1)), points.get(1).distanceTo(points.get(2))
        };
    }

    private static Point through(List<Point> points, double[] places, double place) {
        Point at = new Point(0, 0);
        for (int k = 0; k < 4; k++) {
            double weight = 1;
            for (int j = 0; j < 4; j++) {
                weight *= j == k ? 1 : (place - places[j]) / (places[k] - places[j]);
            }
            at = at.plus(points.get(k).times(weight));
        }
        return at;
    }

    private Finding corner(String size, double off, int end, boolean both) {
        return found(
                size,
                off,
                Text.of(
                                both
                                        ? "both underarm corners of size {size} lie off the end of the cap line, where"
                                                + " those of the other sizes lie on it"
                                        : end == 0
                                                ? "the front underarm corner of size {size} lies off the end of the cap"
                                                        + " line, where those of the other sizes lie on it"
                                                : "the back underarm corner of size {size} lies off the end of the cap"
                                                        + " line, where those of the other sizes lie on it")
                        .with("size", size),
                Text.of("Put the corner back to where the cap line leads; then bicep and cap height of this size are"
                        + " judged as well."));
    }

    /** The one point that lies off, and its mirror image where the line was drawn as a half. */
    private static List<Integer> moved(List<Point> points) {
        int n = points.size();
        double[] off = new double[n];
        for (int i = 2; i < n - 2; i++) {
            off[i] = off(points, i);
        }
        int most = 0;
        for (int i = 1; i < n; i++) {
            most = off[i] > off[most] ? i : most;
        }
        int image = n - 1 - most;
        boolean half = points.get(most).distanceTo(points.get(image).mirrored()) < 1e-6;
        double next = 0;
        for (int i = 0; i < n; i++) {
            boolean beside = Math.abs(i - most) <= 2 || half && Math.abs(i - image) <= 2;
            next = beside ? next : Math.max(next, off[i]);
        }
        if (off[most] < Math.max(LEAST, ALONE * next)) {
            return List.of();
        }
        return half && image != most ? List.of(Math.max(most, image), Math.min(most, image)) : List.of(most);
    }

    /** How far a point lies off the cubic through the two points before it and the two after it, mm; 0 where they lie too unevenly to tell. */
    private static double off(List<Point> points, int at) {
        Point[] beside = {points.get(at - 2), points.get(at - 1), points.get(at + 1), points.get(at + 2)};
        double[] places = new double[4];
        for (int k = 1; k < 4; k++) {
            places[k] = places[k - 1] + beside[k].distanceTo(beside[k - 1]);
        }
        double chord = places[2] - places[1];
        double[] steps = {places[1], chord / 2, places[3] - places[2]};
        Arrays.sort(steps);
        if (!(steps[0] > 0) || steps[2] > UNLIKE * steps[0] || !(chord > 0)) {
            return 0;
        }
        double share = points.get(at).minus(beside[1]).dot(beside[2].minus(beside[1])) / (chord * chord);
        double place = places[1] + Math.max(0, Math.min(1, share)) * chord;
        return through(List.of(beside), places, place).distanceTo(points.get(at));
    }

    private static CheckedSize without(CheckedSize size, List<Point> points, List<Integer> moved) {
        List<Point> kept = new ArrayList<>(points);
        moved.forEach(at -> kept.remove(at.intValue()));
        List<NestLine> lines = new ArrayList<>();
        for (NestLine line : size.lines()) {
            lines.add(line.kind() == NestLine.Kind.CAP_LINE ? new NestLine(line.kind(), kept) : line);
        }
        CheckedSize rest = size.withLines(lines);
        for (CheckedMeasure measure :
                List.of(CheckedMeasure.CAP_LINE, CheckedMeasure.FRONT_CAP_LINE, CheckedMeasure.BACK_CAP_LINE)) {
            rest = rest.without(measure);
        }
        return rest;
    }

    private Finding finding(String size, List<Point> points, int at) {
        Point point = points.get(at);
        boolean front = point.x() < 0;
        double width = Math.abs(points.get(front ? 0 : points.size() - 1).x());
        double height = points.stream().mapToDouble(Point::y).max().orElse(1);
        double off = off(points, at);
        return found(
                size,
                off,
                Text.of(
                                front
                                        ? "one point of the cap line of size {size} lies off the line through the"
                                                + " points beside it: in the front half, at {across} of its width from"
                                                + " the centre and at {above} of the cap height above the bicep line"
                                        : "one point of the cap line of size {size} lies off the line through the"
                                                + " points beside it: in the back half, at {across} of its width from"
                                                + " the centre and at {above} of the cap height above the bicep line")
                        .with("size", size)
                        .with("across", percent(Math.abs(point.x()) / width))
                        .with("above", percent(point.y() / height)),
                Text.of("Put this point back on the line; all other points of the cap line may stay as they are."));
    }

    private Finding found(String size, double off, Text message, Text remedy) {
        return new Finding(
                code(),
                off > STOP ? Severity.STOP : Severity.CAUTION,
                List.of(size),
                CheckedMeasure.CAP_LINE,
                Quantity.LENGTH,
                OptionalDouble.of(off),
                Expected.atMost(0),
                message,
                Text.of(Finding.PRACTICE),
                remedy);
    }

    private static String percent(double share) {
        return Math.round(100 * share) + " %";
    }
}
