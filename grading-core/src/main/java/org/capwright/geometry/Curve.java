package org.capwright.geometry;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A piecewise cubic curve: segments joined end to start. Positions on it are arc lengths in millimetres from its start. Guaranteed to be immutable.
 */
public final class Curve {

    /** Far above the rounding of distances, mm. */
    private static final double NOT_NEARER = 1e-6;

    private final List<Cubic> segments;

    /** Measures the curve, or takes over what is known of the one that it was made of: the same whenever it is asked. */
    private final Measuring measuring;

    /** Known once it was asked for. Threads may ask at once, with the same result; what has only final fields is seen whole by all of them. */
    private @Nullable ArcLengths lengths;

    /** The curve as it was last asked for in points. */
    private @Nullable Flat flat;

    /** Points whose chords keep within a distance of the curve, and the places among them where segments end. */
    private record Flat(double tolerance, List<Cubic> segments, Points points, int[] ends) {

        static final Flat NONE = new Flat(0, List.of(), Points.of(), new int[0]);

        boolean has(int number, Cubic segment) {
            return number < segments.size() && segments.get(number) == segment;
        }

        /** The place of the first point after the start of a segment. */
        int first(int number) {
            return number == 0 ? 1 : ends[number - 1] + 1;
        }

        /** Goes on along a segment. */
        void along(int number, PointsBuilder line) {
            int first = first(number);
            if (first <= ends[number]) {
                line.goOn(points.x(first), points.y(first));
                line.addAll(points, first + 1, ends[number] + 1);
            }
        }
    }

    private Curve(List<Cubic> segments) {
        this.segments = segments;
        this.measuring = new Measuring.Each(segments);
    }

    private Curve(List<Cubic> segments, Measuring measuring) {
        this.segments = segments;
        this.measuring = measuring;
    }

    /**
     * A curve of given segments.
     *
     * @param segments one or more, each starting exactly where the one before ends
     * @return the curve
     * @throws IllegalArgumentException if there is no segment, or a gap between two
     */
    public static Curve of(List<Cubic> segments) {
        return new Curve(joined(segments));
    }

    private static List<Cubic> joined(List<Cubic> segments) {
        Cubic[] all = segments.toArray(Cubic[]::new);
        if (all.length == 0) {
            throw new IllegalArgumentException("a curve needs a segment");
        }
        for (int i = 1; i < all.length; i++) {
            if (!all[i].start().equals(all[i - 1].end())) {
                throw new IllegalArgumentException("segment " + i + " starts at " + all[i].start()
                        + ", the one before ends at " + all[i - 1].end());
            }
        }
        return List.of(all);
    }

    /**
     * A curve of segments whose lengths are known, as those of moved pieces of other curves are.
     *
     * @param segments one or more, each starting exactly where the one before ends
     * @param lengths how long each is, mm; more may follow that are not looked at
     * @return the curve
     * @throws IllegalArgumentException if there is no segment, a gap between two, or a length missing
     */
    public static Curve of(List<Cubic> segments, double[] lengths) {
        if (lengths.length < segments.size()) {
            throw new IllegalArgumentException(lengths.length + " lengths for " + segments.size() + " segments");
        }
        return new Curve(joined(segments), ArcLengths.summed(lengths, segments.size()));
    }

    /**
     * A straight line.
     *
     * @param from start
     * @param to end
     * @return a curve of one straight segment
     */
    public static Curve line(Point from, Point to) {
        return new Curve(List.of(Cubic.line(from, to)));
    }

    /**
     * A line of straight segments.
     *
     * @param points two or more, in order of travel
     * @return a curve with one straight segment between neighbouring points
     */
    public static Curve polyline(List<Point> points) {
        List<Cubic> lines = new ArrayList<>(points.size() - 1);
        for (int i = 1; i < points.size(); i++) {
            lines.add(Cubic.line(points.get(i - 1), points.get(i)));
        }
        return of(lines);
    }

    /**
     * The exact cubic segments.
     *
     * @return one or more, in order of travel; unmodifiable
     */
    public List<Cubic> segments() {
        return segments;
    }

    /**
     * Whether the curve is a single straight line, run through forwards.
     *
     * @return true for one straight segment
     */
    public boolean isStraight() {
        return segments.size() == 1 && segments.get(0).isStraight();
    }

    /**
     * Where the curve begins.
     *
     * @return the first point
     */
    public Point start() {
        return segments.get(0).start();
    }

    /**
     * Where the curve ends.
     *
     * @return the last point
     */
    public Point end() {
        return segments.get(segments.size() - 1).end();
    }

    /**
     * The arc length of the whole curve.
     *
     * @return millimetres, right to better than 1e-7 mm
     */
    public double length() {
        return lengths().total();
    }

    ArcLengths lengths() {
        ArcLengths known = lengths;
        if (known == null) {
            known = measuring.lengths();
            lengths = known;
        }
        return known;
    }

    /** A place on a curve as segment number and parameter in it. */
    private record Place(int segment, double t) {}

    private Place placeAt(double distance) {
        ArcLengths known = lengths();
        int segment = known.segmentAt(distance);
        double before = known.before(segment);
        double after = known.after(segment);
        // Ends are said outright: a part must end exactly at a joint.
        if (distance > after - ArcLengths.AT_END) {
            return new Place(segment, 1);
        }
        return distance < before + ArcLengths.AT_END
                ? new Place(segment, 0)
                : new Place(segment, segments.get(segment).parameterAtLength(distance - before, after - before));
    }

    /**
     * The point at an arc length.
     *
     * @param distance millimetres from the start; values outside the curve give the nearer end
     * @return the point, right to 1e-6 mm along the curve
     */
    public Point pointAtLength(double distance) {
        Place place = placeAt(distance);
        return segments.get(place.segment).pointAt(place.t);
    }

    /**
     * The arc length to a place of a segment.
     *
     * @param segment number of the segment, from 0
     * @param t parameter in it, 0 to 1
     * @return millimetres from the start of the curve
     */
    public double lengthTo(int segment, double t) {
        ArcLengths known = lengths();
        if (t == 1) {
            return known.after(segment);
        }
        return t == 0
                ? known.before(segment)
                : known.before(segment) + segments.get(segment).length(0, t);
    }

    /**
     * How long a segment is.
     *
     * @param segment its number, from 0
     * @return millimetres
     */
    public double lengthOf(int segment) {
        ArcLengths known = lengths();
        return known.after(segment) - known.before(segment);
    }

    /**
     * The direction of travel at an arc length.
     *
     * @param distance millimetres from the start
     * @return a unit vector
     */
    public Point tangentAtLength(double distance) {
        Place place = placeAt(distance);
        return segments.get(place.segment).tangentAt(place.t);
    }

    /**
     * A place of a curve, and the direction of travel there.
     *
     * @param at the place
     * @param tangent a unit vector
     */
    public record Heading(Point at, Point tangent) {}

    /**
     * The point at an arc length with the direction of travel.
     *
     * @param distance millimetres from the start; values outside the curve give the nearer end
     * @return both, right to 1e-6 mm along the curve
     */
    public Heading headingAtLength(double distance) {
        Place place = placeAt(distance);
        Cubic segment = segments.get(place.segment);
        return new Heading(segment.pointAt(place.t), segment.tangentAt(place.t));
    }

    /**
     * The part between two arc lengths.
     *
     * @param from millimetres from the start, 0 or more
     * @param to millimetres from the start, greater than {@code from}, at most the length
     * @return the part, with exact cubic segments
     * @throws IllegalArgumentException if the part would be empty
     */
    public Curve part(double from, double to) {
        if (!(to > from)) {
            throw new IllegalArgumentException("no part of a curve lies between " + from + " and " + to);
        }
        Place first = placeAt(from);
        Place last = placeAt(to);
        int low = first.t == 1 ? first.segment + 1 : first.segment;
        int high = last.t == 0 ? last.segment - 1 : last.segment;
        if (low > high || first.segment == last.segment && first.t >= last.t) {
            throw new IllegalArgumentException(
                    "no part of a curve of length " + length() + " lies between " + from + " and " + to);
        }
        Cubic[] kept = new Cubic[high - low + 1];
        for (int i = low; i <= high; i++) {
            Cubic piece = segments.get(i).part(i == first.segment ? first.t : 0, i == last.segment ? last.t : 1);
            kept[i - low] = i == low ? piece : startingAt(kept[i - low - 1].end(), piece);
        }
        return new Curve(List.of(kept), new Measuring.Part(this, low, lengths().part(low, high, from, to)));
    }

    private static Cubic startingAt(Point start, Cubic piece) {
        return piece.start().equals(start) ? piece : new Cubic(start, piece.control1(), piece.control2(), piece.end());
    }

    /**
     * The point of the curve that is nearest to a given point, as an arc length. Of equally near points the first is given.
     *
     * @param point any point
     * @return millimetres from the start; the distance is the least possible to 1e-9 mm
     */
    public double closestLength(Point point) {
        if (isAt(start(), point)) {
            return 0;
        }
        double within = start().distanceTo(point);
        for (int i = 0; i < segments.size(); i++) {
            if (isAt(segments.get(i).end(), point)) {
                return lengths().after(i); // a mark that was drawn from its joint
            }
        }
        for (int i = 0; i < segments.size(); i++) {
            within = Math.min(within, segments.get(i).end().distanceTo(point));
        }
        double best = Double.POSITIVE_INFINITY;
        int bestSegment = 0;
        double bestT = 0;
        for (int i = 0; i < segments.size(); i++) {
            Cubic segment = segments.get(i);
            if (segment.hull().distanceTo(point) > within + NOT_NEARER) {
                continue; // a joint is nearer than all of it
            }
            double t = closestParameter(segment, point);
            double distance = segment.pointAt(t).distanceTo(point);
            if (distance < best - 1e-12) {
                best = distance;
                bestSegment = i;
                bestT = t;
            }
        }
        return lengthTo(bestSegment, bestT);
    }

    private static boolean isAt(Point joint, Point point) {
        return joint.x() == point.x() && joint.y() == point.y();
    }

    /** The squared distance to a cubic has at most five stationary points; 32 steps tell them apart on every curve a draft has. */
    private static double closestParameter(Cubic segment, Point point) {
        int steps = 32;
        double bestT = 0;
        double best = segment.start().distanceTo(point);
        double slopeBefore = slope(segment, point, 0);
        for (int i = 1; i <= steps; i++) {
            double t = (double) i / steps;
            double slope = slope(segment, point, t);
            if (slopeBefore < 0 && slope >= 0) {
                double low = t - 1.0 / steps;
                double high = t;
                for (int k = 0; k < 50; k++) {
                    double middle = (low + high) / 2;
                    if (slope(segment, point, middle) < 0) {
                        low = middle;
                    } else {
                        high = middle;
                    }
                }
                double distance = segment.pointAt(high).distanceTo(point);
                if (distance < best) {
                    best = distance;
                    bestT = high;
                }
            }
            slopeBefore = slope;
        }
        return segment.end().distanceTo(point) < best ? 1 : bestT;
    }

    private static double slope(Cubic segment, Point point, double t) {
        return segment.pointAt(t).minus(point).dot(segment.derivativeAt(t));
    }

    /**
     * How often the curve changes from a left turn to a right turn or back. Counted exactly: B' × B'' of a cubic is a quadratic in t. Turns weaker than
     * 1e-9 of the curve's own scale do not count.
     *
     * @return 0 for a curve that turns one way only
     */
    public int inflections() {
        int changes = 0;
        double last = 0;
        double weakest = 1e-9;
        for (Cubic segment : segments) {
            Point first = segment.control1().minus(segment.start());
            Point second = segment.control2().minus(segment.control1());
            Point third = segment.end().minus(segment.control2());
            // B' × B'' / 18 in Bernstein form: a at t = 0, c at t = 1.
            double a = first.cross(second);
            double b = first.cross(third) / 2;
            double c = second.cross(third);
            double scale = first.norm() + second.norm() + third.norm();
            double floor = weakest * scale * scale;
            double vertex = (a - b) / (a - 2 * b + c);
            double[] signs = vertex > 0 && vertex < 1
                    ? new double[] {
                        a, (1 - vertex) * (1 - vertex) * a + 2 * vertex * (1 - vertex) * b + vertex * vertex * c, c
                    }
                    : new double[] {a, c};
            for (double value : signs) {
                if (Math.abs(value) > floor) {
                    double sign = Math.signum(value);
                    if (last != 0 && sign != last) {
                        changes++;
                    }
                    last = sign;
                }
            }
        }
        return changes;
    }

    /**
     * The same curve run through from its end.
     *
     * @return the reversed curve
     */
    public Curve reversed() {
        int count = segments.size();
        Cubic[] back = new Cubic[count];
        for (int i = 0; i < count; i++) {
            back[i] = segments.get(count - 1 - i).reversed();
        }
        return new Curve(List.of(back), new Measuring.Reversed(this));
    }

    /**
     * The mirror image about x = 0.
     *
     * @return the mirrored curve, in the same order of travel
     */
    public Curve mirrored() {
        Cubic[] images = new Cubic[segments.size()];
        Point joint = start().mirrored();
        for (int i = 0; i < images.length; i++) {
            Cubic segment = segments.get(i);
            Point end = segment.end().mirrored();
            images[i] = new Cubic(
                    joint, segment.control1().mirrored(), segment.control2().mirrored(), end);
            joint = end;
        }
        return new Curve(List.of(images), new Measuring.Same(this));
    }

    /**
     * The mirror image about x = 0, run through from its end.
     *
     * @return the mirrored curve, in the opposite order of travel
     */
    public Curve mirroredBack() {
        int count = segments.size();
        Cubic[] images = new Cubic[count];
        Point joint = end().mirrored();
        for (int i = 0; i < count; i++) {
            images[i] = segments.get(count - 1 - i).mirroredBack(joint);
            joint = images[i].end();
        }
        return new Curve(List.of(images), new Measuring.Reversed(this));
    }

    /**
     * This curve, which ends on the line x = 0, continued by its mirror image about it.
     *
     * @return both as one
     */
    public Curve unfolded() {
        int count = segments.size();
        Cubic[] all = segments.toArray(new Cubic[2 * count]);
        Point joint = end();
        for (int i = count; i < all.length; i++) {
            all[i] = all[all.length - 1 - i].mirroredBack(joint);
            joint = all[i].end();
        }
        ArcLengths half = lengths();
        return new Curve(List.of(all), half.joinedTo(half.reversed()));
    }

    /**
     * The curve moved by a vector.
     *
     * @param offset millimetres
     * @return the moved curve
     */
    public Curve translated(Point offset) {
        Cubic[] moved = new Cubic[segments.size()];
        for (int i = 0; i < moved.length; i++) {
            moved[i] = segments.get(i).translated(offset);
        }
        return new Curve(List.of(moved), new Measuring.Same(this));
    }

    /**
     * This curve continued by another.
     *
     * @param next a curve that starts exactly where this one ends
     * @return both as one
     * @throws IllegalArgumentException if there is a gap
     */
    public Curve joinedTo(Curve next) {
        if (!next.start().equals(end())) {
            throw new IllegalArgumentException(
                    "a curve that starts at " + next.start() + " does not go on from " + end());
        }
        int count = segments.size();
        Cubic[] all = segments.toArray(new Cubic[count + next.segments.size()]);
        for (int i = count; i < all.length; i++) {
            all[i] = next.segments.get(i - count);
        }
        return new Curve(List.of(all), new Measuring.Joined(this, next));
    }

    /**
     * Points of the curve whose chords keep within a distance of it.
     *
     * @param tolerance greatest distance in mm, above 0
     * @return two or more points in order of travel, the ends of all segments among them; no two neighbours are equal; unmodifiable
     */
    public Points flattened(double tolerance) {
        return flat(tolerance).points;
    }

    /**
     * Where a segment ends among the points of the curve.
     *
     * @param segment number of the segment, from 0
     * @param tolerance greatest distance of the chords in mm, above 0
     * @return the place of its end in {@link #flattened}
     */
    public int flattenedEnd(int segment, double tolerance) {
        return flat(tolerance).ends[segment];
    }

    private Flat flat(double tolerance) {
        Flat known = flat;
        if (known == null || known.tolerance != tolerance) {
            known = flattening(tolerance);
            flat = known;
        }
        return known;
    }

    /** What a curve has in common with the one that it is a part of is not flattened again. */
    private Flat flattening(double tolerance) {
        int before = 0;
        Flat whole = Flat.NONE;
        if (measuring instanceof Measuring.Part part) {
            before = part.first();
            whole = part.curve().ifFlat(tolerance);
        }
        int count = segments.size();
        int[] ends = new int[count];
        int all = 1;
        for (int i = 0; i < count; i++) {
            Cubic segment = segments.get(i);
            ends[i] = whole.has(before + i, segment)
                    ? whole.ends[before + i] + 1 - whole.first(before + i)
                    : segment.chordsWithin(tolerance);
            all += ends[i];
        }
        PointsBuilder line = new PointsBuilder(all);
        line.add(start());
        for (int i = 0; i < count; i++) {
            Cubic segment = segments.get(i);
            if (whole.has(before + i, segment)) {
                whole.along(before + i, line);
            } else {
                segment.chords(ends[i], line);
            }
            ends[i] = line.size() - 1;
        }
        return new Flat(tolerance, segments, line.points(), ends);
    }

    private Flat ifFlat(double tolerance) {
        Flat known = flat;
        return known != null && known.tolerance == tolerance ? known : Flat.NONE;
    }

    @Override
    public boolean equals(@Nullable Object other) {
        return other == this || other instanceof Curve curve && segments.equals(curve.segments);
    }

    @Override
    public int hashCode() {
        return segments.hashCode();
    }

    @Override
    public String toString() {
        return "Curve" + segments;
    }
}
