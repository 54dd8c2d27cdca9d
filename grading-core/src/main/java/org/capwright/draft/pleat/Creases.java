package org.capwright.draft.pleat;

import java.util.Arrays;
import java.util.List;
import org.capwright.geometry.Isometry;
import org.capwright.geometry.Point;

/**
 * The straight lines of one fold on the flat cloth. The inner crease halves the chord between the marks squarely, and the line at one mark is the mirror image of that at the
 * other: only so is the fold line laid on the placement line all along.
 *
 * @param fold the fold
 * @param firstPoint the mark that comes first along the edge
 * @param last the mark that comes last
 * @param firstWay unit vector from the first mark into the piece
 * @param middleWay unit vector of the inner crease into the piece
 * @param lastWay unit vector from the last mark into the piece
 */
record Creases(PleatFold fold, Point firstPoint, Point last, Point firstWay, Point middleWay, Point lastWay) {

    /** Lines that would meet are drawn this share of the way. */
    private static final double SHARE = 0.75;

    /** Lines that lean from the square to their chord by an angle of which cosine and sine are given. */
    static Creases of(PleatFold fold, Point first, Point last, Point into, Point lean) {
        double cos = lean.x();
        double sin = lean.y();
        Point firstWay = new Point(into.x() * cos + into.y() * sin, into.y() * cos - into.x() * sin);
        Point lastWay = new Point(into.x() * cos - into.y() * sin, into.y() * cos + into.x() * sin);
        return new Creases(fold, first, last, firstWay, into, lastWay);
    }

    /** The mirror image about x = 0, which has the lines of another fold. */
    Creases mirrored(PleatFold image) {
        return new Creases(
                image,
                last.mirrored(),
                firstPoint.mirrored(),
                lastWay.mirrored(),
                middleWay.mirrored(),
                firstWay.mirrored());
    }

    private boolean foldFirst() {
        return fold.lie() == Lie.TO_BACK;
    }

    Point foldPoint() {
        return foldFirst() ? firstPoint : last;
    }

    Point foldWay() {
        return foldFirst() ? firstWay : lastWay;
    }

    Point placement() {
        return foldFirst() ? last : firstPoint;
    }

    Point middle() {
        return firstPoint.towards(last, 0.5);
    }

    /** The reflection about the crease that comes first along the edge: the fold, or the inner crease where the placement line comes first. */
    Isometry first() {
        return foldFirst() ? Isometry.reflection(firstPoint, firstWay) : Isometry.reflection(middle(), middleWay);
    }

    Isometry second() {
        return foldFirst() ? Isometry.reflection(middle(), middleWay) : Isometry.reflection(last, lastWay);
    }

    /** How the strip beyond the fold is laid, if that before it is laid by a motion: both creases reflect what lies beyond them, the later one first. */
    Isometry beyond(Isometry place) {
        return place.after(first()).after(second());
    }

    /** The lines as they are drawn, the inner crease from the corner that the cut edge has on it. */
    FoldLines lines(Point corner, double length, double depth) {
        PleatLine one =
                line(foldFirst() ? PleatLine.Kind.FOLD : PleatLine.Kind.PLACEMENT, firstPoint, firstWay, length);
        PleatLine other = line(foldFirst() ? PleatLine.Kind.PLACEMENT : PleatLine.Kind.FOLD, last, lastWay, length);
        PleatLine between = line(PleatLine.Kind.MIDDLE, corner, middleWay, length);
        return new FoldLines(fold, foldFirst() ? one : other, between, foldFirst() ? other : one, depth);
    }

    private static PleatLine line(PleatLine.Kind kind, Point from, Point way, double length) {
        return new PleatLine(kind, from, from.plus(way.times(length)));
    }

    /** How long the lines of each fold are drawn, so that none meets another: those of one fold are equally long. */
    static double[] lengths(List<Creases> folds, double drawn) {
        double[] lengths = new double[folds.size()];
        Arrays.fill(lengths, drawn);
        for (int i = 0; i < lengths.length; i++) {
            Creases one = folds.get(i);
            shorten(lengths, i, i, meeting(one.firstPoint, one.firstWay, one.last, one.lastWay, drawn));
            for (int k = i + 1; k < lengths.length; k++) {
                Creases other = folds.get(k);
                if (one.last.distanceTo(other.firstPoint) > 2 * drawn) {
                    continue;
                }
                shorten(lengths, i, k, meeting(one.firstPoint, one.firstWay, other.firstPoint, other.firstWay, drawn));
                shorten(lengths, i, k, meeting(one.firstPoint, one.firstWay, other.last, other.lastWay, drawn));
                shorten(lengths, i, k, meeting(one.last, one.lastWay, other.firstPoint, other.firstWay, drawn));
                shorten(lengths, i, k, meeting(one.last, one.lastWay, other.last, other.lastWay, drawn));
            }
        }
        return lengths;
    }

    private static void shorten(double[] lengths, int one, int other, double meeting) {
        lengths[one] = Math.min(lengths[one], SHARE * meeting);
        lengths[other] = Math.min(lengths[other], SHARE * meeting);
    }

    /** The longer of the ways to where two lines cross inside the piece; infinite if they do not, or so far in that lines of a length need not be shorter for it. */
    private static double meeting(Point from, Point way, Point other, Point otherWay, double drawn) {
        double sine = way.cross(otherWay);
        double dx = other.x() - from.x();
        double dy = other.y() - from.y();
        double along = dx * otherWay.y() - dy * otherWay.x();
        double alongOther = dx * way.y() - dy * way.x();
        double longer = Math.max(Math.abs(along), Math.abs(alongOther));
        return along * sine < 0
                        || alongOther * sine < 0
                        || SHARE * longer >= drawn * Math.abs(sine)
                        || Math.abs(sine) < 1e-9
                        || from.distanceTo(other) < 1e-9
                ? Double.POSITIVE_INFINITY
                : longer / Math.abs(sine);
    }
}
