package org.capwright.check;

import java.util.ArrayList;
import java.util.Arrays;
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

    @Override
    public String code() {
        return "moved-point";
    }

    @Override
    public Sifted sift(CheckedGrade grade, Thresholds thresholds) {
        List<Finding> found = new ArrayList<>();
        List<CheckedSize> rest = new ArrayList<>(grade.sizes());
        for (int i = 0; i < grade.sizes().size(); i++) {
            Optional<NestLine> line = grade.sizes().get(i).line(NestLine.Kind.CAP_LINE);
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
        Point expected = new Point(0, 0);
        for (int k = 0; k < 4; k++) {
            double weight = 1;
            for (int j = 0; j < 4; j++) {
                weight *= j == k ? 1 : (place - places[j]) / (places[k] - places[j]);
            }
            expected = expected.plus(beside[k].times(weight));
        }
        return expected.distanceTo(points.get(at));
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
        return new Finding(
                code(),
                off > STOP ? Severity.STOP : Severity.CAUTION,
                List.of(size),
                CheckedMeasure.CAP_LINE,
                Quantity.LENGTH,
                OptionalDouble.of(off),
                Expected.atMost(0),
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
                Text.of(Finding.PRACTICE),
                Text.of("Put this point back on the line; all other points of the cap line may stay as they are."));
    }

    private static String percent(double share) {
        return Math.round(100 * share) + " %";
    }
}
