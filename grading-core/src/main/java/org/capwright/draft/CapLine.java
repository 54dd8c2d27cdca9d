package org.capwright.draft;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.capwright.geometry.Cubic;
import org.capwright.geometry.Curve;
import org.capwright.geometry.Point;
import org.capwright.quantity.Subject;
import org.capwright.quantity.Violation;

/**
 * The cap line of half a sleeve: from the apex (0, capHeight), where it is horizontal, to the underarm point (width, 0), where it is tangent to the bicep
 * line. The slanted guide line between the two is divided in four; the cap line stands outward of it at the first division, crosses it at the middle and
 * is scooped inward at the third. It has continuous curvature and one inflection, near the middle. Guaranteed to be immutable.
 */
public final class CapLine {

    /** A cap line this steep would be all but leaning over the arm. */
    private static final double STEEPEST_DEGREES = 89;

    private final Curve curve;
    private final double width;
    private final double capHeight;
    private final double outward;
    private final double inward;
    private final double turn;

    private CapLine(Curve curve, double width, double capHeight, double outward, double inward, double turn) {
        this.curve = curve;
        this.width = width;
        this.capHeight = capHeight;
        this.outward = outward;
        this.inward = inward;
        this.turn = turn;
    }

    /**
     * Drafts the cap line of one half.
     *
     * @param width half width on the bicep line, mm, above 0
     * @param capHeight height of the cap, mm, above 0
     * @param outward outward displacement at the first division, mm, above 0
     * @param inward inward displacement at the third division, mm, above 0
     * @return the cap line, or nothing if no line through these points has a single inflection, or if it would lean over the vertical
     */
    public static Optional<CapLine> find(double width, double capHeight, double outward, double inward) {
        if (!(width > 0 && capHeight > 0 && outward > 0 && inward > 0)) {
            return Optional.empty();
        }
        double guide = Math.sqrt(width * width + capHeight * capHeight);
        double division = guide / 4;
        double slope = capHeight / width;
        if (outward >= slope * division || inward >= slope * division) {
            return Optional.empty();
        }
        Optional<FairLine> fair = FairLine.through(slope, outward / division, inward / division);
        if (fair.isEmpty() || steepest(fair.get(), slope) > Math.toRadians(STEEPEST_DEGREES)) {
            return Optional.empty();
        }
        return Optional.of(new CapLine(
                inSleeve(fair.get(), width, capHeight, division),
                width,
                capHeight,
                outward,
                inward,
                fair.get().turn() / 4));
    }

    /** The steepest descent against the bicep line, at the inflection. */
    private static double steepest(FairLine fair, double slope) {
        return Math.atan(slope) - Math.atan(fair.leastSlope());
    }

    private static Curve inSleeve(FairLine fair, double width, double capHeight, double division) {
        double guide = 4 * division;
        Point along = new Point(width / guide, -capHeight / guide);
        Point out = along.left();
        Point apex = new Point(0, capHeight);
        List<Cubic> segments = new ArrayList<>(FairLine.KNOTS.length - 1);
        Point start = apex;
        for (int k = 0; k + 1 < FairLine.KNOTS.length; k++) {
            double third = (FairLine.KNOTS[k + 1] - FairLine.KNOTS[k]) / 3;
            Point end = k + 2 == FairLine.KNOTS.length
                    ? new Point(width, 0)
                    : place(apex, along, out, division, FairLine.KNOTS[k + 1], fair.value(k + 1));
            segments.add(new Cubic(
                    start,
                    place(apex, along, out, division, FairLine.KNOTS[k] + third, fair.value(k) + third * fair.slope(k)),
                    place(
                            apex,
                            along,
                            out,
                            division,
                            FairLine.KNOTS[k + 1] - third,
                            fair.value(k + 1) - third * fair.slope(k + 1)),
                    end));
            start = end;
        }
        return Curve.of(segments);
    }

    private static Point place(Point apex, Point along, Point out, double division, double x, double y) {
        return new Point(
                apex.x() + division * (x * along.x() + y * out.x()),
                apex.y() + division * (x * along.y() + y * out.y()));
    }

    /**
     * Why no cap line can be drafted from these measures, and what would work: for each displacement the range that goes with the other measures.
     *
     * @param width half width on the bicep line, mm, above 0
     * @param capHeight height of the cap, mm, above 0
     * @param outward outward displacement, mm
     * @param inward inward displacement, mm
     * @param outwardSubject the dimension that the outward displacement is
     * @param inwardSubject the dimension that the inward displacement is
     * @return at least one violation, if {@link #find} gives nothing for these measures
     */
    public static List<Violation> violations(
            double width,
            double capHeight,
            double outward,
            double inward,
            Subject outwardSubject,
            Subject inwardSubject) {
        double limit = Math.sqrt(width * width + capHeight * capHeight) / 4 * capHeight / width;
        List<Violation> found = new ArrayList<>();
        Optional<double[]> outwardRange = range(
                limit, candidate -> find(width, capHeight, candidate, inward).isPresent());
        Optional<double[]> inwardRange = range(
                limit, candidate -> find(width, capHeight, outward, candidate).isPresent());
        String reason = "with the other measures no cap line through the five points turns only once";
        outwardRange.ifPresent(r -> found.add(Violation.lengthOutside(outwardSubject, reason, outward, r[0], r[1])));
        inwardRange.ifPresent(r -> found.add(Violation.lengthOutside(inwardSubject, reason, inward, r[0], r[1])));
        if (found.isEmpty()) {
            found.add(Violation.lengthOutside(outwardSubject, reason, outward, 0.3 * limit, 0.8 * limit));
            found.add(Violation.lengthOutside(inwardSubject, reason, inward, 0.3 * limit, 0.8 * limit));
        }
        return found;
    }

    /** The interval of displacements that work: the set is convex, so a grid finds a point of it and bisection its ends. */
    private static Optional<double[]> range(double limit, java.util.function.DoublePredicate works) {
        int steps = 40;
        double first = Double.NaN;
        double last = Double.NaN;
        for (int i = 1; i < steps; i++) {
            double candidate = limit * i / steps;
            if (works.test(candidate)) {
                first = Double.isNaN(first) ? candidate : first;
                last = candidate;
            }
        }
        if (Double.isNaN(first)) {
            return Optional.empty();
        }
        return Optional.of(
                new double[] {edge(works, first, first - limit / steps), edge(works, last, last + limit / steps)});
    }

    private static double edge(java.util.function.DoublePredicate works, double inside, double outside) {
        double good = inside;
        double bad = outside;
        for (int i = 0; i < 40; i++) {
            double middle = (good + bad) / 2;
            if (works.test(middle)) {
                good = middle;
            } else {
                bad = middle;
            }
        }
        return good;
    }

    /**
     * The line itself.
     *
     * @return from the apex to the underarm point; every division point is the end of a segment
     */
    public Curve curve() {
        return curve;
    }

    /**
     * The arc length of the line.
     *
     * @return millimetres
     */
    public double length() {
        return curve.length();
    }

    /**
     * A division point of the cap line.
     *
     * @param quarter 0 for the apex, 1 outward, 2 middle, 3 inward, 4 for the underarm point
     * @return the point
     */
    public Point division(int quarter) {
        return switch (quarter) {
            case 0 -> curve.start();
            case 1 -> curve.segments().get(1).end();
            case 2 -> curve.segments().get(4).end();
            case 3 -> curve.segments().get(7).end();
            case 4 -> curve.end();
            default -> throw new IllegalArgumentException("there is no division " + quarter);
        };
    }

    /**
     * The arc length from the apex to the point of the cap line that stands square over a place on the guide line.
     *
     * @param place 0 at the apex to 1 at the underarm point; 0.75 is the third division
     * @return millimetres
     */
    public OptionalDouble lengthTo(double place) {
        if (!(place >= 0 && place <= 1)) {
            return OptionalDouble.empty();
        }
        int segment = segmentAt(place);
        return OptionalDouble.of(curve.lengthTo(segment, parameterAt(place, segment)));
    }

    /** The point of the line that stands square over a place on the guide line, from 0 at the apex to 1 at the underarm point. */
    Point pointAt(double place) {
        int segment = segmentAt(place);
        return curve.segments().get(segment).pointAt(parameterAt(place, segment));
    }

    private static int segmentAt(double place) {
        int segment = 0;
        while (segment + 2 < FairLine.KNOTS.length && FairLine.KNOTS[segment + 1] <= 4 * place) {
            segment++;
        }
        return segment;
    }

    private static double parameterAt(double place, int segment) {
        double from = FairLine.KNOTS[segment];
        return (4 * place - from) / (FairLine.KNOTS[segment + 1] - from);
    }

    /**
     * Where the line turns from convex to hollow.
     *
     * @return share of the guide line from the apex, near 0.5
     */
    public double turn() {
        return turn;
    }

    /**
     * Half width on the bicep line.
     *
     * @return millimetres
     */
    public double width() {
        return width;
    }

    /**
     * Height of the cap.
     *
     * @return millimetres
     */
    public double capHeight() {
        return capHeight;
    }

    /**
     * Outward displacement at the first division.
     *
     * @return millimetres
     */
    public double outward() {
        return outward;
    }

    /**
     * Inward displacement at the third division.
     *
     * @return millimetres
     */
    public double inward() {
        return inward;
    }
}
