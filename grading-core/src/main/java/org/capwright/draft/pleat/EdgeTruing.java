package org.capwright.draft.pleat;

import java.util.ArrayList;
import java.util.List;
import org.capwright.geometry.Cubic;
import org.capwright.geometry.Curve;
import org.capwright.geometry.Isometry;
import org.capwright.geometry.Point;

/** Trues one edge: folds it flat, lays the seam over all layers, and unfolds what the seam cuts of each. Immutable once made. */
public final class EdgeTruing {

    /** Visible pieces shorter than this are none: neighbouring folds share a placement line. */
    private static final double NOTHING = 1e-9;

    private static final double SAME_LENGTH = 1e-6;

    /** Less of an under-layer than this may lie on the wrong side of its fold, mm: rounding. */
    private static final double ROUNDING = 1e-6;

    /** The lines of one fold lean no further than this from the square to its chord: 60°. Beyond, they would all but run along the edge. */
    private static final double MOST_LEAN = Math.PI / 3;

    /** A prolongation of the seam that comes nearer to the inner crease by less than this per length never gets there. */
    private static final double LEAST_ADVANCE = 0.05;

    private final Curve flat;
    private final PleatLayout layout;
    private final boolean pieceOnRight;

    /** The visible pieces in order, as they lie on the flat edge: one more than folds, empty where two folds share a placement line. */
    private final List<List<Cubic>> visible;

    private final List<Creases> creases;

    /** How the visible pieces are laid into the folded plane, where they are the seam. */
    private final List<Isometry> places;

    private final List<UnderLayers> under;
    private double overhangFront;
    private double overhangBack;

    /**
     * Folds an edge.
     *
     * @param flat the flat net edge, as for {@link TruedEdge#of}
     * @param layout where it is folded
     * @throws IllegalArgumentException if the edge has not the layout's length
     * @throws org.capwright.quantity.InvalidMeasuresException if an under-layer cannot be cut along the seam, since the seam turns back before the inner crease
     */
    public EdgeTruing(Curve flat, PleatLayout layout) {
        if (!(Math.abs(flat.length() - layout.edge()) <= SAME_LENGTH)) {
            throw new IllegalArgumentException(
                    "the edge is " + flat.length() + " mm long, the layout's is " + layout.edge());
        }
        this.flat = flat;
        this.layout = layout;
        Point apex = flat.pointAtLength(layout.front().edge());
        pieceOnRight = flat.end().minus(flat.start()).cross(apex.minus(flat.start())) >= 0;
        int folds = layout.folds().size();
        visible = new ArrayList<>(folds + 1);
        creases = new ArrayList<>(folds);
        places = new ArrayList<>(folds + 1);
        under = new ArrayList<>(folds);
        cutOut();
        fold();
        for (int i = 0; i < creases.size(); i++) {
            under.add(underLayers(i, creases.get(i), places.get(i), places.get(i + 1)));
        }
    }

    /**
     * How far an under-layer reaches beyond the front end of the seam.
     *
     * @return mm, 0 for most
     */
    public double overhangFront() {
        return overhangFront;
    }

    /**
     * How far an under-layer reaches beyond the back end of the seam.
     *
     * @return mm, 0 for most
     */
    public double overhangBack() {
        return overhangBack;
    }

    /** Cuts the visible pieces out. Their ends are the marks; these are not looked for twice. */
    private void cutOut() {
        List<PleatFold> folds = layout.folds();
        double from = 0;
        for (int i = 0; i <= folds.size(); i++) {
            double to = i < folds.size() ? folds.get(i).firstMark() : flat.length();
            visible.add(to - from > NOTHING ? flat.part(from, to).segments() : List.of());
            if (i < folds.size()) {
                from = folds.get(i).lastMark();
            }
        }
    }

    private void fold() {
        Isometry place = Isometry.NONE; // the strip before the first fold keeps its place
        places.add(place);
        for (int i = 0; i < layout.folds().size(); i++) {
            Creases here = creases(i);
            creases.add(here);
            place = here.beyond(place);
            places.add(place);
        }
    }

    /** A mark within rounding of an end is the end. */
    private Point at(double mark) {
        if (mark <= NOTHING) {
            return flat.start();
        }
        return mark >= flat.length() - NOTHING ? flat.end() : flat.pointAtLength(mark);
    }

    private Point endOf(int piece, double mark) {
        List<Cubic> segments = visible.get(piece);
        return segments.isEmpty() ? at(mark) : segments.get(segments.size() - 1).end();
    }

    private Point startOf(int piece, double mark) {
        List<Cubic> segments = visible.get(piece);
        return segments.isEmpty() ? at(mark) : segments.get(0).start();
    }

    /** The three lines of a fold, square to the edge as far as that is possible: so that the seam runs on smoothly over the fold. */
    private Creases creases(int index) {
        PleatFold fold = layout.folds().get(index);
        Point first = endOf(index, fold.firstMark());
        Point last = startOf(index + 1, fold.lastMark());
        Point chord = last.minus(first).unit();
        double atFirst = angle(tangent(index, fold.firstMark(), 1), chord);
        double atLast = angle(chord, tangent(index + 1, fold.lastMark(), 0));
        double lean = (atFirst + atLast) / 2;
        if (shared(index, index + 1) && fold.lie() == Lie.TO_BACK) {
            lean = atLast;
        } else if (shared(index - 1, index) && fold.lie() == Lie.TO_FRONT) {
            lean = atFirst;
        }
        Point into = pieceOnRight ? chord.left().times(-1) : chord.left();
        return Creases.of(fold, first, last, into, Math.max(-MOST_LEAN, Math.min(MOST_LEAN, lean)));
    }

    /** Whether two neighbouring folds are laid on one placement line. */
    private boolean shared(int one, int next) {
        if (one < 0 || next >= layout.folds().size()) {
            return false;
        }
        return visible.get(next).isEmpty()
                && layout.folds().get(one).lie() == Lie.TO_BACK
                && layout.folds().get(next).lie() == Lie.TO_FRONT;
    }

    /** The tangent of the flat edge at a mark; of a visible piece, so that it is the right one at a corner of the edge. */
    private Point tangent(int piece, double at, int end) {
        List<Cubic> segments = visible.get(piece);
        if (segments.isEmpty()) {
            return flat.tangentAtLength(Math.min(at, flat.length()));
        }
        return end == 0
                ? segments.get(0).tangentAt(0)
                : segments.get(segments.size() - 1).tangentAt(1);
    }

    private static double angle(Point from, Point to) {
        return Math.atan2(from.cross(to), from.dot(to));
    }

    /**
     * Unfolds the edge along which all layers are cut.
     *
     * @param drawn greatest length of the pleat lines, mm, above 0
     * @return the trued edge
     */
    public TruedEdge truedEdge(double drawn) {
        Chain chain = new Chain();
        List<FoldLines> lines = new ArrayList<>(creases.size());
        chain.addAll(visible.get(0));
        double[] lengths = Creases.lengths(creases, drawn);
        for (int i = 0; i < creases.size(); i++) {
            Creases here = creases.get(i);
            Point corner = under.get(i).unfoldedOnto(chain, here, places.get(i), places.get(i + 1));
            chain.addAll(visible.get(i + 1));
            lines.add(here.lines(corner, lengths[i], under.get(i).depth()));
        }
        return new TruedEdge(chain.curve(), lines, overhangFront, overhangBack);
    }

    /** Follows the seam away from a fold, on the side where its under-layers lie, as far as the inner crease. The creases are looked at from the flat cloth of each piece. */
    private UnderLayers underLayers(int index, Creases here, Isometry place, Isometry beyond) {
        boolean toBack = here.fold().lie() == Lie.TO_BACK;
        Isometry inner = toBack ? beyond : place;
        Isometry outer = toBack ? place : beyond;
        HalfPlane middle =
                HalfPlane.from(inner.of(here.middle()), inner.turned(here.middleWay()), inner.of(here.placement()));
        HalfPlane fold =
                HalfPlane.from(outer.of(here.foldPoint()), outer.turned(here.foldWay()), inner.of(here.middle()));
        List<UnderLayers.Over> arc = new ArrayList<>(4);
        int step = toBack ? -1 : 1;
        for (int piece = toBack ? index : index + 1; piece >= 0 && piece < visible.size(); piece += step) {
            List<Cubic> segments = visible.get(piece);
            Isometry motion = places.get(piece);
            HalfPlane middleHere = middle.before(motion);
            HalfPlane foldHere = fold.before(motion);
            for (int i = 0; i < segments.size(); i++) {
                Cubic segment = toBack ? segments.get(segments.size() - 1 - i).reversed() : segments.get(i);
                double crossing = middleHere.firstOutside(segment);
                Cubic covered = crossing < 1 ? segment.part(0, crossing) : segment;
                // on the wrong side of the fold line the top layer itself lies
                if (foldHere.reaches(covered, ROUNDING)) {
                    throw TruedEdge.doesNotLie();
                }
                arc.add(new UnderLayers.Over(covered, motion));
                if (crossing < 1) {
                    return new UnderLayers(arc, foldHere.depth(covered.end()));
                }
            }
        }
        Point end = arc.isEmpty()
                ? outer.of(here.foldPoint())
                : arc.get(arc.size() - 1).end();
        Point way = toBack ? firstTangent().times(-1) : lastTangent();
        double advance = middle.outward().dot(way);
        if (advance < LEAST_ADVANCE) {
            throw TruedEdge.doesNotLie();
        }
        double overhang = -middle.outside(end) / advance;
        Cubic prolonged = Cubic.line(end, end.plus(way.times(overhang)));
        arc.add(new UnderLayers.Over(prolonged, Isometry.NONE));
        if (toBack) {
            overhangFront = Math.max(overhangFront, overhang);
        } else {
            overhangBack = Math.max(overhangBack, overhang);
        }
        return new UnderLayers(arc, fold.depth(prolonged.end()));
    }

    private Point firstTangent() {
        List<Cubic> first = visible.get(0);
        return first.isEmpty() ? flat.tangentAtLength(0) : first.get(0).tangentAt(0);
    }

    private Point lastTangent() {
        for (int piece = visible.size() - 1; piece >= 0; piece--) {
            List<Cubic> segments = visible.get(piece);
            if (!segments.isEmpty()) {
                return places.get(piece)
                        .turned(segments.get(segments.size() - 1).tangentAt(1));
            }
        }
        return flat.tangentAtLength(flat.length());
    }
}
