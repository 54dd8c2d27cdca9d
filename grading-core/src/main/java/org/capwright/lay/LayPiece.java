package org.capwright.lay;

import java.util.ArrayList;
import java.util.List;
import org.capwright.geometry.Point;
import org.capwright.pattern.CutInstruction;
import org.capwright.pattern.EdgeKind;
import org.capwright.pattern.MarkKind;
import org.capwright.pattern.MarkLine;
import org.capwright.pattern.Piece;
import org.capwright.pattern.PieceEdge;

/** A piece as it goes into a lay: its cut line with the grain along x (top of the piece toward +x), and the outline that keeps neighbours off. */
final class LayPiece {

    /** How far points may lie off the fold line and still count as on it, mm. */
    private static final double ON_FOLD = 1e-6;

    final Piece piece;
    final Placement.Cover cover;
    final Point grain;
    final double[] ring;
    final double area;
    final double left;
    final double right;
    final double low;
    final double high;

    /** The envelope grown by half the gap, in the four flips: index 0 as drawn, bit 0 flips x, bit 1 flips y. */
    final double[][] envelopes = new double[4][];

    private LayPiece(Piece piece, Placement.Cover cover, Point grain, double[] ring) {
        this.piece = piece;
        this.cover = cover;
        this.grain = grain;
        this.ring = ring;
        this.area = OuterOutline.area(ring);
        double x0 = Double.POSITIVE_INFINITY;
        double x1 = Double.NEGATIVE_INFINITY;
        double y0 = Double.POSITIVE_INFINITY;
        double y1 = Double.NEGATIVE_INFINITY;
        for (int i = 0; i < ring.length; i += 2) {
            x0 = Math.min(x0, ring[i]);
            x1 = Math.max(x1, ring[i]);
            y0 = Math.min(y0, ring[i + 1]);
            y1 = Math.max(y1, ring[i + 1]);
        }
        left = x0;
        right = x1;
        low = y0;
        high = y1;
    }

    static LayPiece of(Piece piece, Fabric.Laying laying) {
        if (!piece.onFold()) {
            Point grain = grainOf(piece);
            return new LayPiece(piece, Placement.Cover.DRAWN, grain, ring(piece.cutLine(), grain));
        }
        PieceEdge fold = foldOf(piece);
        Point grain = upward(fold.curve().end().minus(fold.curve().start()));
        if (laying == Fabric.Laying.FOLDED) {
            return new LayPiece(piece, Placement.Cover.HALF_ON_FOLD, grain, ring(piece.cutLine(), grain));
        }
        List<Point> whole = opened(piece.cutLine(), fold.curve().start(), grain);
        return new LayPiece(piece, Placement.Cover.OPENED_OUT, grain, ring(whole, grain));
    }

    /** Prepares the outlines that the search works with. */
    void prepare(double gap, double tolerance, int mostCorners) {
        double[] envelope = OuterOutline.around(ring, gap / 2, tolerance, mostCorners);
        for (int flip = 0; flip < 4; flip++) {
            envelopes[flip] = flipped(envelope, flip);
        }
    }

    double width() {
        return high - low;
    }

    double length() {
        return right - left;
    }

    double leftOf(int flip) {
        return (flip & 1) == 0 ? left : -right;
    }

    double rightOf(int flip) {
        return (flip & 1) == 0 ? right : -left;
    }

    double lowOf(int flip) {
        return (flip & 2) == 0 ? low : -high;
    }

    double highOf(int flip) {
        return (flip & 2) == 0 ? high : -low;
    }

    /** How much of the fold a half takes up. */
    double foldLength() {
        double fold = liesAboveFold() ? low : high;
        double from = Double.POSITIVE_INFINITY;
        double to = Double.NEGATIVE_INFINITY;
        for (int i = 0; i < ring.length; i += 2) {
            if (Math.abs(ring[i + 1] - fold) < ON_FOLD) {
                from = Math.min(from, ring[i]);
                to = Math.max(to, ring[i]);
            }
        }
        return Math.max(0, to - from);
    }

    /** Whether the half, as the grain puts it, lies above its fold edge (across the cloth). */
    boolean liesAboveFold() {
        double fold = grain.cross(foldOf(piece).curve().start());
        return Math.abs(fold - low) <= Math.abs(fold - high);
    }

    static double[] flipped(double[] ring, int flip) {
        double sx = (flip & 1) == 0 ? 1 : -1;
        double sy = (flip & 2) == 0 ? 1 : -1;
        double[] turned = new double[ring.length];
        int n = ring.length / 2;
        for (int i = 0; i < n; i++) {
            int from = sx * sy > 0 ? i : n - 1 - i; // a mirror image runs the other way round
            turned[2 * i] = sx * ring[2 * from];
            turned[2 * i + 1] = sy * ring[2 * from + 1];
        }
        return turned;
    }

    private static double[] ring(List<Point> outline, Point grain) {
        double[] ring = new double[2 * outline.size()];
        for (int i = 0; i < outline.size(); i++) {
            ring[2 * i] = grain.dot(outline.get(i));
            ring[2 * i + 1] = grain.cross(outline.get(i));
        }
        return OuterOutline.counterClockwise(ring);
    }

    private static Point grainOf(Piece piece) {
        for (MarkLine mark : piece.marks()) {
            if (mark.kind() == MarkKind.GRAIN) {
                return upward(mark.line().end().minus(mark.line().start()));
            }
        }
        return new Point(0, 1); // a draft stands upright on its grain
    }

    private static Point upward(Point direction) {
        Point unit = direction.unit();
        boolean down = unit.y() < 0 || (unit.y() == 0 && unit.x() < 0);
        // Adding zero keeps -0.0 out of the outlines.
        return down ? new Point(0.0 - unit.x(), 0.0 - unit.y()) : new Point(unit.x() + 0.0, unit.y() + 0.0);
    }

    private static PieceEdge foldOf(Piece piece) {
        for (PieceEdge edge : piece.edges()) {
            if (edge.kind() == EdgeKind.FOLD) {
                return edge;
            }
        }
        throw new IllegalArgumentException(
                piece.kind().words() + " is to be " + CutInstruction.Laying.ON_FOLD + " but has no fold edge");
    }

    /** A half and its mirror image about the line through {@code start} along {@code grain}, counter-clockwise. */
    private static List<Point> opened(List<Point> half, Point start, Point grain) {
        int n = half.size();
        int leaving = -1; // the last corner on the fold before the outline leaves it
        for (int i = 0; i < n; i++) {
            if (onLine(half.get(i), start, grain) && !onLine(half.get((i + 1) % n), start, grain)) {
                if (leaving >= 0) {
                    throw new IllegalArgumentException("the outline of a half meets its fold more than once");
                }
                leaving = i;
            }
        }
        if (leaving < 0) {
            throw new IllegalArgumentException("the cut line of a half has no edge on its fold");
        }
        List<Point> whole = new ArrayList<>(2 * n);
        int at = leaving;
        do {
            whole.add(half.get(at));
            at = (at + 1) % n;
        } while (!onLine(half.get(at), start, grain));
        whole.add(half.get(at));
        for (int i = whole.size() - 2; i > 0; i--) {
            Point from = whole.get(i).minus(start);
            double across = grain.cross(from);
            whole.add(start.plus(from).minus(grain.left().times(2 * across)));
        }
        return whole;
    }

    private static boolean onLine(Point point, Point start, Point grain) {
        return Math.abs(grain.cross(point.minus(start))) < ON_FOLD;
    }
}
