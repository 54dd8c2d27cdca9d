package org.capwright.pattern;

import java.util.ArrayList;
import java.util.List;
import org.capwright.geometry.Cubic;
import org.capwright.geometry.Curve;
import org.capwright.geometry.Point;
import org.capwright.geometry.Points;
import org.capwright.geometry.PointsBuilder;

/**
 * The lines that run beside the smooth seam lines of the pieces of a size, each at the distance of its allowance, outside the piece (to the right of the sense of travel), as points. Every point
 * stands exactly square off its seam line; the chords keep within {@link Piece#FLATTENING} of the true parallel. No two neighbouring points are equal. What pieces have in common is drawn once. Not safe for threads.
 */
final class EdgeOffset {

    private static final int DEEPEST = 10;

    /** What a chord may be off where it is tried, mm. */
    private static final double TRIED = 0.8 * Piece.FLATTENING;

    /** Told by the directions at its ends, a chord that is off by less or more than that by a twentieth is not tried; in parts of 64. */
    private static final double SURELY_WITHIN = 0.95 * 64 * TRIED;

    private static final double SURELY_OFF = 1.05 * 64 * TRIED;

    /** Between even ends a segment is run through faster at one than at the other by less than this, its direction turns by less than 8 degrees (cosine), and its derivative bows by less than this share. */
    private static final double FASTER = 1.25;

    private static final double STRAIGHT_ON = Math.cos(Math.toRadians(8));

    private static final double EVEN = 0.05;

    /** A segment run through slower than this, in mm, says its direction by its tangent alone. */
    private static final double STILL = 1e-12;

    /** Most pieces of a size have fewer points together. */
    private static final int ROOM = 1023;

    private final PointsBuilder line = new PointsBuilder(ROOM);

    /** The edges whose parallels stand in the line being built, the one that is followed, and an earlier one that may have segments and allowance in common with it. */
    private final List<Drawn> edges = new ArrayList<>();

    private Drawn followed = NONE;
    private Drawn model = NONE;
    private int modelSegment;

    private double allowance;

    /** The square of the coefficient of t³ in the segment that is followed: a sixth of how fast its derivative bows. */
    private double bend;

    private Place from = new Place();
    private Place to = new Place();
    private final Place tried = new Place();
    private final Place[] middles = new Place[DEEPEST];

    /** A place of the parallel: its parameter, the unit tangent there, and how fast the seam line is run through. */
    private static final class Place {
        double t;
        double x;
        double y;
        double wayX;
        double wayY;
        double speed;
    }

    /** An edge, and for each of its segments which points of that line were drawn along it: the first, and the one after the last. */
    private record Drawn(String edge, double allowance, List<Cubic> segments, int[] points) {}

    private static final Drawn NONE = new Drawn("", 0, List.of(), new int[0]);

    /** The parallels, one behind the other. */
    PointsBuilder parallels() {
        return line;
    }

    /** Wipes all parallels off. */
    void wipe() {
        line.cutBack(0);
        edges.clear();
    }

    /** Follows an edge of a piece from now on. Pieces of a size have edges of the same name in common, at least in part. */
    void follow(PieceEdge edge) {
        allowance = edge.allowance();
        model = NONE;
        modelSegment = 0;
        for (Drawn earlier : edges) {
            if (earlier.allowance == allowance && earlier.edge.equals(edge.name())) {
                model = earlier;
            }
        }
        List<Cubic> segments = edge.curve().segments();
        followed = new Drawn(edge.name(), allowance, segments, new int[2 * segments.size()]);
        edges.add(followed);
    }

    /** Begins a parallel at the start of a segment. */
    void begin(Cubic segment) {
        stand(segment, from, 0);
        line.add(from.x, from.y);
    }

    /** Goes on along a segment of the edge to its end. */
    void goOn(Curve curve, int number) {
        followed.points[2 * number] = line.size();
        int same = inModel(followed.segments.get(number));
        if (same < 0) {
            draw(curve, number);
        } else {
            int first = model.points[2 * same];
            int end = model.points[2 * same + 1];
            if (first < end) {
                line.goOn(line.x(first), line.y(first));
                line.addAll(line, first + 1, end);
            }
        }
        followed.points[2 * number + 1] = line.size();
    }

    /** The number of a segment in the model, where it is the next or the one after; -1 if it is neither. */
    private int inModel(Cubic segment) {
        for (int i = modelSegment; i < Math.min(modelSegment + 2, model.segments.size()); i++) {
            if (model.segments.get(i) == segment) {
                modelSegment = i + 1;
                return i;
            }
        }
        return -1;
    }

    private void draw(Curve curve, int number) {
        int before = number == 0 ? 0 : curve.flattenedEnd(number - 1, Piece.FLATTENING);
        int end = curve.flattenedEnd(number, Piece.FLATTENING);
        Cubic segment = curve.segments().get(number);
        if (allowance == 0) {
            Points flat = curve.flattened(Piece.FLATTENING);
            if (before < end) {
                line.goOn(flat.x(before + 1), flat.y(before + 1));
                line.addAll(flat, before + 2, end + 1);
            }
            return;
        }
        double bendX = segment.end().x()
                - segment.start().x()
                - 3 * (segment.control2().x() - segment.control1().x());
        double bendY = segment.end().y()
                - segment.start().y()
                - 3 * (segment.control2().y() - segment.control1().y());
        bend = bendX * bendX + bendY * bendY;
        int spans = Math.max(1, end - before);
        boolean straight = spans == 1 && segment.isStraight();
        stand(segment, from, 0);
        for (int i = 1; i <= spans; i++) {
            stand(segment, to, (double) i / spans);
            if (!straight) {
                refine(segment, from, to, 0);
            }
            line.goOn(to.x, to.y);
            Place reached = to;
            to = from;
            from = reached;
        }
    }

    /** Adds the points that are needed between two places. */
    private void refine(Cubic segment, Place low, Place high, int depth) {
        if (depth < DEEPEST && !isWithin(segment, low, high)) {
            Place middle = middles[depth];
            if (middle == null) {
                middle = new Place();
                middles[depth] = middle;
            }
            stand(segment, middle, (low.t + high.t) / 2);
            refine(segment, low, middle, depth + 1);
            line.goOn(middle.x, middle.y);
            refine(segment, middle, high, depth + 1);
        }
    }

    private void stand(Cubic segment, Place place, double t) {
        double wayX = segment.derivativeX(t);
        double wayY = segment.derivativeY(t);
        double speed = Math.sqrt(wayX * wayX + wayY * wayY);
        if (!(speed > STILL)) {
            Point tangent = segment.tangentAt(t);
            wayX = tangent.x();
            wayY = tangent.y();
            speed = 1;
        }
        place.t = t;
        place.wayX = wayX / speed;
        place.wayY = wayY / speed;
        place.speed = speed;
        place.x = segment.x(t) + allowance * place.wayY;
        place.y = segment.y(t) - allowance * place.wayX;
    }

    /** Whether a chord is near enough: told by the directions at its ends where that is certain, else tried. */
    private boolean isWithin(Cubic segment, Place low, Place high) {
        double x = high.x - low.x;
        double y = high.y - low.y;
        if (isEven(low, high)) {
            double risen = x * low.wayY - y * low.wayX;
            double fallen = y * high.wayX - x * high.wayY;
            double middle = 8 * Math.abs(risen + fallen);
            double before = Math.abs(9 * risen + 3 * fallen);
            double after = Math.abs(3 * risen + 9 * fallen);
            if (middle < SURELY_WITHIN && before < SURELY_WITHIN && after < SURELY_WITHIN) {
                return true;
            }
            if (middle > SURELY_OFF || before > SURELY_OFF || after > SURELY_OFF) {
                return false;
            }
        }
        double limit = TRIED * Math.sqrt(x * x + y * y);
        double step = high.t - low.t;
        return beside(segment, low, x, y, low.t + step * 0.5) <= limit
                && beside(segment, low, x, y, low.t + step * 0.25) <= limit
                && beside(segment, low, x, y, low.t + step * 0.75) <= limit;
    }

    /** How far the parallel lies beside a chord at a parameter, times the length of the chord; that is given by its start and its vector. */
    private double beside(Cubic segment, Place start, double chordX, double chordY, double t) {
        stand(segment, tried, t);
        return Math.abs(chordX * (tried.y - start.y) - chordY * (tried.x - start.x));
    }

    /**
     * Whether a parallel bends so evenly and so little that it is, but for a small share of its height, the cubic over its chord that has its directions at both ends: that stands an eighth of both slopes above the middle, and
     * nine and three parts of 64 above the quarters.
     */
    private boolean isEven(Place low, Place high) {
        double step = high.t - low.t;
        double bow = 0.75 * step * step; // of the derivative, whose own second derivative is 6 times the coefficient
        double bowed = bow * bow * bend;
        return low.speed < FASTER * high.speed
                && high.speed < FASTER * low.speed
                && bowed < EVEN * EVEN * low.speed * low.speed
                && bowed < EVEN * EVEN * high.speed * high.speed
                && low.wayX * high.wayX + low.wayY * high.wayY > STRAIGHT_ON
                && (high.x - low.x) * low.wayX + (high.y - low.y) * low.wayY > 0;
    }

    /** The point square off a line to the right. */
    static Point beside(Point point, Point tangent, double distance) {
        return new Point(point.x() + distance * tangent.y(), point.y() - distance * tangent.x());
    }
}
