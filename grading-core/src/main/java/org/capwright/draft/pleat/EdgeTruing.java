package org.capwright.draft.pleat;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.capwright.geometry.Cubic;
import org.capwright.geometry.Curve;
import org.capwright.geometry.Isometry;
import org.capwright.geometry.Point;
import org.jspecify.annotations.Nullable;

/** Trues one edge: folds it flat, lays the seam over all layers, and unfolds what the seam cuts of each. Not safe for threads. */
final class EdgeTruing {

    /** Visible pieces shorter than this are none: neighbouring folds share a placement line. */
    private static final double NOTHING = 1e-9;

    private static final double SAME_LENGTH = 1e-6;

    /** Less of an under-layer than this may lie on the wrong side of its fold, mm: rounding. */
    private static final double ROUNDING = 1e-6;

    /** The lines of one fold lean no further than this from the square to its chord: 60°, as cosine and sine. Beyond, they would all but run along the edge. */
    private static final Point MOST_LEAN = new Point(0.5, Math.sqrt(0.75));

    /** A prolongation of the seam that comes nearer to the inner crease by less than this per length never gets there. */
    private static final double LEAST_ADVANCE = 0.05;

    /** Under most folds, the visible piece beside it included, there are fewer segments. */
    private static final int SEGMENTS_OF_A_FOLD = 6;

    private final Curve flat;
    private final PleatLayout layout;
    private final boolean pieceOnRight;

    /** Whether what lies behind the middle of the edge mirrors what lies before it, folds and all: then half of it is worked out, and mirrored. */
    private final boolean mirrors;

    /** The visible pieces in order, as they lie on the flat edge: one more than folds, empty where two folds share a placement line. Cut out once asked for. */
    private final @Nullable Chain[] visible;

    /** Of each fold, once asked for. */
    private final @Nullable Creases[] creases;

    /** Over the under-layers of each fold, once asked for. */
    private final @Nullable UnderLayers[] under;

    private final Seam seam;

    /** The visible pieces from one on, laid into the folded plane, where they are the seam: the first of them keeps its place. */
    private final class Seam {
        private final Isometry[] places = new Isometry[layout.folds().size() + 1];
        private int laid;

        Seam(int first) {
            Arrays.fill(places, 0, first + 1, Isometry.NONE);
            laid = first;
        }

        Isometry place(int piece) {
            for (; laid < piece; laid++) {
                places[laid + 1] = creases(laid).beyond(places[laid]);
            }
            return places[piece];
        }
    }

    /**
     * Takes an edge to be folded.
     *
     * @param flat the flat net edge, as for {@link TruedEdge#of}
     * @param layout where it is folded
     * @throws IllegalArgumentException if the edge has not the layout's length
     */
    EdgeTruing(Curve flat, PleatLayout layout) {
        if (!(Math.abs(flat.length() - layout.edge()) <= SAME_LENGTH)) {
            throw new IllegalArgumentException(
                    "the edge is " + flat.length() + " mm long, the layout's is " + layout.edge());
        }
        this.flat = flat;
        this.layout = layout;
        Point apex = flat.pointAtLength(layout.front().edge());
        pieceOnRight = flat.end().minus(flat.start()).cross(apex.minus(flat.start())) >= 0;
        int folds = layout.folds().size();
        mirrors = Mirror.halves(flat, layout.folds(), NOTHING);
        visible = new Chain[folds + 1];
        creases = new Creases[folds];
        under = new UnderLayers[folds];
        seam = new Seam(0);
    }

    /**
     * How far the under-layers of the outermost folds reach beyond the ends of the seam: those of the others lie further in.
     *
     * @return the overhang at both ends
     * @throws org.capwright.quantity.InvalidMeasuresException if such an under-layer cannot be cut along the seam, since the seam turns back before the inner crease
     */
    Overhang overhangOfOutermost() {
        List<PleatFold> folds = layout.folds();
        int first = 0;
        while (first < folds.size() && folds.get(first).lie() == Lie.TO_FRONT) {
            first++;
        }
        int last = folds.size() - 1;
        while (last >= 0 && folds.get(last).lie() == Lie.TO_BACK) {
            last--;
        }
        Overhang overhang = Overhang.NONE;
        if (first < folds.size()) {
            overhang = overhang.or(underLayers(first).overhang());
        }
        if (mirrors) {
            return overhang.or(overhang.mirrored());
        }
        return last < 0
                ? overhang
                : overhang.or(underLayers(last, new Seam(last)).overhang());
    }

    /** A visible piece. Its ends are the marks; these are not looked for twice. */
    private Chain visible(int piece) {
        Chain known = visible[piece];
        if (known == null) {
            Chain image = visible[visible.length - 1 - piece];
            known = mirrors && image != null ? image.mirrored() : cutOut(piece);
            visible[piece] = known;
        }
        return known;
    }

    private Chain cutOut(int piece) {
        List<PleatFold> folds = layout.folds();
        double from = piece == 0 ? 0 : folds.get(piece - 1).lastMark();
        double to = piece < folds.size() ? folds.get(piece).firstMark() : flat.length();
        if (to - from <= NOTHING) {
            return new Chain(0);
        }
        boolean middle = mirrors && 2 * piece + 1 == visible.length;
        Chain cut = Chain.of(flat.part(from, middle ? flat.length() / 2 : to));
        if (middle) {
            cut.addImage(cut.size());
        }
        return cut;
    }

    /** A mark within rounding of an end is the end. */
    private Point at(double mark) {
        if (mark <= NOTHING) {
            return flat.start();
        }
        return mark >= flat.length() - NOTHING ? flat.end() : flat.pointAtLength(mark);
    }

    private Point endOf(int piece, double mark) {
        Chain visible = visible(piece);
        return visible.isEmpty() ? at(mark) : visible.last().end();
    }

    private Point startOf(int piece, double mark) {
        Chain visible = visible(piece);
        return visible.isEmpty() ? at(mark) : visible.segment(0).start();
    }

    /** The three lines of a fold, square to the edge as far as that is possible: so that the seam runs on smoothly over the fold. */
    private Creases creases(int index) {
        Creases known = creases[index];
        if (known == null) {
            Creases image = creases[creases.length - 1 - index];
            known = mirrors && image != null ? image.mirrored(layout.folds().get(index)) : creased(index);
            creases[index] = known;
        }
        return known;
    }

    private List<Creases> allCreases() {
        Creases[] all = new Creases[creases.length];
        for (int i = 0; i < all.length; i++) {
            all[i] = creases(i);
        }
        return Arrays.asList(all);
    }

    private Creases creased(int index) {
        PleatFold fold = layout.folds().get(index);
        Point first = endOf(index, fold.firstMark());
        Point last = startOf(index + 1, fold.lastMark());
        Point chord = last.minus(first).unit();
        Point before = tangent(index, fold.firstMark(), 1);
        Point behind = tangent(index + 1, fold.lastMark(), 0);
        Point lean;
        if (shared(index, index + 1) && fold.lie() == Lie.TO_BACK) {
            lean = turn(chord, behind);
        } else if (shared(index - 1, index) && fold.lie() == Lie.TO_FRONT) {
            lean = turn(before, chord);
        } else {
            lean = turn(before, before.plus(behind).unit()); // half the turn of the edge
        }
        Point into = pieceOnRight ? chord.left().times(-1) : chord.left();
        return Creases.of(
                fold,
                first,
                last,
                into,
                lean.x() >= MOST_LEAN.x()
                        ? lean
                        : new Point(MOST_LEAN.x(), lean.y() < 0 ? -MOST_LEAN.y() : MOST_LEAN.y()));
    }

    /** Whether two neighbouring folds are laid on one placement line. */
    private boolean shared(int one, int next) {
        if (one < 0 || next >= layout.folds().size()) {
            return false;
        }
        return visible(next).isEmpty()
                && layout.folds().get(one).lie() == Lie.TO_BACK
                && layout.folds().get(next).lie() == Lie.TO_FRONT;
    }

    /** The tangent of the flat edge at a mark; of a visible piece, so that it is the right one at a corner of the edge. */
    private Point tangent(int piece, double at, int end) {
        Chain visible = visible(piece);
        if (visible.isEmpty()) {
            return flat.tangentAtLength(Math.min(at, flat.length()));
        }
        return end == 0 ? visible.segment(0).tangentAt(0) : visible.last().tangentAt(1);
    }

    /** Cosine and sine of the angle from a unit vector to another. */
    private static Point turn(Point from, Point to) {
        return new Point(from.dot(to), from.cross(to));
    }

    /**
     * Unfolds the edge along which all layers are cut.
     *
     * @param drawn greatest length of the pleat lines, mm, above 0
     * @return the trued edge
     * @throws org.capwright.quantity.InvalidMeasuresException if an under-layer cannot be cut along the seam, since the seam turns back before the inner crease
     */
    TruedEdge truedEdge(double drawn) {
        int folds = layout.folds().size();
        int count = mirrors ? folds / 2 : folds;
        double[] lengths = Creases.lengths(allCreases(), drawn);
        Chain chain = new Chain(flat.segments().size() + SEGMENTS_OF_A_FOLD * count);
        List<FoldLines> lines = new ArrayList<>(folds);
        Overhang overhang = Overhang.NONE;
        for (int i = 0; i < count; i++) {
            UnderLayers under = underLayers(i);
            Chain visible = visible(i);
            chain.addAll(visible, visible.size());
            Point corner = under.unfoldedOnto(chain, creases(i), seam.place(i), seam.place(i + 1));
            lines.add(creases(i).lines(corner, lengths[i], under.depth()));
            overhang = overhang.or(under.overhang());
        }
        if (mirrors) {
            Chain middle = visible(count);
            chain.addAll(middle, middle.size() / 2);
            for (int i = count; i < folds; i++) {
                lines.add(lines.get(folds - 1 - i).mirrored(layout.folds().get(i)));
            }
            return TruedEdge.mirrored(chain.curve(), lines, overhang.or(overhang.mirrored()));
        }
        Chain end = visible(count);
        chain.addAll(end, end.size());
        return TruedEdge.whole(chain.curve(), lines, overhang);
    }

    private UnderLayers underLayers(int index) {
        UnderLayers known = under[index];
        if (known == null) {
            known = underLayers(index, seam);
            under[index] = known;
        }
        return known;
    }

    /** Follows the seam away from a fold, on the side where its under-layers lie, as far as the inner crease. The creases are looked at from the flat cloth of each piece. */
    private UnderLayers underLayers(int index, Seam seam) {
        Creases here = creases(index);
        boolean toBack = here.fold().lie() == Lie.TO_BACK;
        Isometry inner = seam.place(toBack ? index + 1 : index);
        Isometry outer = seam.place(toBack ? index : index + 1);
        HalfPlane middle =
                HalfPlane.from(inner.of(here.middle()), inner.turned(here.middleWay()), inner.of(here.placement()));
        HalfPlane fold =
                HalfPlane.from(outer.of(here.foldPoint()), outer.turned(here.foldWay()), inner.of(here.middle()));
        List<UnderLayers.Over> arc = new ArrayList<>(4);
        int step = toBack ? -1 : 1;
        for (int piece = toBack ? index : index + 1; piece >= 0 && piece < visible.length; piece += step) {
            Chain visible = visible(piece);
            Isometry motion = seam.place(piece);
            HalfPlane middleHere = middle.before(motion);
            HalfPlane foldHere = fold.before(motion);
            for (int i = 0; i < visible.size(); i++) {
                int number = toBack ? visible.size() - 1 - i : i;
                Cubic segment = toBack ? visible.segment(number).reversed() : visible.segment(number);
                double crossing = middleHere.firstOutside(segment);
                Cubic covered = crossing < 1 ? segment.part(0, crossing) : segment;
                // on the wrong side of the fold line the top layer itself lies
                if (foldHere.reaches(covered, ROUNDING)) {
                    throw TruedEdge.doesNotLie();
                }
                double length = crossing < 1 ? segment.length(0, crossing) : visible.length(number);
                arc.add(new UnderLayers.Over(covered, length, motion));
                if (crossing < 1) {
                    return new UnderLayers(arc, foldHere.depth(covered.end()), Overhang.NONE);
                }
            }
        }
        Point end = arc.isEmpty()
                ? outer.of(here.foldPoint())
                : arc.get(arc.size() - 1).end();
        Point way = toBack ? firstTangent().times(-1) : lastTangent(seam);
        double advance = middle.outward().dot(way);
        if (advance < LEAST_ADVANCE) {
            throw TruedEdge.doesNotLie();
        }
        double overhang = -middle.outside(end) / advance;
        Cubic prolonged = Cubic.line(end, end.plus(way.times(overhang)));
        arc.add(new UnderLayers.Over(prolonged, overhang, Isometry.NONE));
        return new UnderLayers(
                arc, fold.depth(prolonged.end()), toBack ? new Overhang(overhang, 0) : new Overhang(0, overhang));
    }

    private Point firstTangent() {
        Chain first = visible(0);
        return first.isEmpty() ? flat.tangentAtLength(0) : first.segment(0).tangentAt(0);
    }

    private Point lastTangent(Seam seam) {
        for (int piece = visible.length - 1; piece >= 0; piece--) {
            Chain visible = visible(piece);
            if (!visible.isEmpty()) {
                return seam.place(piece).turned(visible.last().tangentAt(1));
            }
        }
        return flat.tangentAtLength(flat.length());
    }
}
