package org.capwright.draft.pleat;

import java.util.List;
import java.util.Optional;
import org.capwright.geometry.Curve;
import org.capwright.geometry.Simplicity;
import org.capwright.measure.SleeveSubject;
import org.capwright.quantity.InvalidMeasuresException;
import org.capwright.quantity.Violation;
import org.jspecify.annotations.Nullable;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.GeometryFactory;

/** A top edge cut so that its pleats, once folded, are caught in the seam: every under-layer is cut where the seam lies over it. Guaranteed to be immutable. */
public final class TruedEdge {

    private static final double FLATTENING = 0.01;

    /** All of the edge, or that half of it of which the other is the mirror image. */
    private final Curve worked;

    private final boolean mirrors;
    private final List<FoldLines> lines;
    private final Overhang overhang;

    /** All of the edge, once asked for; threads may ask at once, with the same result. */
    private @Nullable Curve curve;

    private TruedEdge(Curve worked, boolean mirrors, List<FoldLines> lines, Overhang overhang) {
        this.worked = worked;
        this.mirrors = mirrors;
        this.lines = List.copyOf(lines);
        this.overhang = overhang;
    }

    static TruedEdge whole(Curve curve, List<FoldLines> lines, Overhang overhang) {
        return new TruedEdge(curve, false, lines, overhang);
    }

    /** An edge whose back half mirrors its front half, which is given. */
    static TruedEdge mirrored(Curve half, List<FoldLines> lines, Overhang overhang) {
        return new TruedEdge(half, true, lines, overhang);
    }

    /**
     * Trues an edge.
     *
     * <p>Folding is a chain of reflections: each crease mirrors whatever lies beyond it, so that every strip between two creases comes to lie by an isometry, the product of the
     * reflections at the creases before it (common practice of origami mathematics; E. D. Demaine and J. O'Rourke, Geometric Folding Algorithms, chapter 11, from memory). The
     * fold mark F is laid on the placement mark P; hence the inner crease halves the chord FP squarely, and the fold line is the mirror image of the placement line
     * about it. Which way both lean is free: they are set so that the seam runs on smoothly over the fold, which on a round edge is square to the edge; a placement line that two folds
     * share is exactly square to it.
     *
     * <p>The visible pieces, folded, are the seam. An under-layer is cut along the seam as well, over as many neighbours as it may reach: its edge is the seam between fold
     * line and inner crease, unfolded. Both layers of a fold meet on the inner crease.
     *
     * @param flat the flat net edge from the front underarm end over the apex to the back underarm end; its length is the layout's edge to 1e-6 mm. The piece lies
     *     on the side of the edge where the chord between its ends lies, seen from the apex; to the right of travel for a straight edge
     * @param layout where it is folded
     * @param drawn greatest length of the pleat lines, mm, above 0; lines that would meet are drawn shorter
     * @return the trued edge
     * @throws IllegalArgumentException if the edge has not the layout's length, or {@code drawn} is not above 0
     * @throws InvalidMeasuresException if an under-layer cannot be cut along the seam, since the seam turns back before the inner crease
     */
    public static TruedEdge of(Curve flat, PleatLayout layout, double drawn) {
        if (!(drawn > 0)) {
            throw new IllegalArgumentException("pleat lines need a length above 0, not " + drawn);
        }
        return new EdgeTruing(flat, layout).truedEdge(drawn);
    }

    /**
     * The edge to cut.
     *
     * @return in the order of travel of the flat edge; it has the flat edge's ends, and its course outside the pleats
     */
    public Curve curve() {
        Curve known = curve;
        if (known == null) {
            known = mirrors ? worked.unfolded() : worked;
            curve = known;
        }
        return known;
    }

    /**
     * The front half of an edge whose back half mirrors it.
     *
     * @return from the front end to the middle; nothing where the halves differ
     */
    public Optional<Curve> half() {
        return mirrors ? Optional.of(worked) : Optional.empty();
    }

    /**
     * The length of the edge to cut.
     *
     * @return millimetres
     */
    public double length() {
        return mirrors ? 2 * worked.length() : worked.length();
    }

    /**
     * The lines of each fold.
     *
     * @return in order of arc length
     */
    public List<FoldLines> lines() {
        return lines;
    }

    /**
     * How far under-layers reach beyond the ends of the seam.
     *
     * @return at both ends
     */
    public Overhang overhang() {
        return overhang;
    }

    /**
     * Whether the edge to cut crosses itself nowhere.
     *
     * @return false where it cannot be cut
     */
    public boolean isSimple() {
        if (Simplicity.runsAcross(worked) || Simplicity.ofCurve(curve(), FLATTENING)) {
            return true;
        }
        Coordinate[] coordinates = curve().flattened(FLATTENING).stream()
                .map(point -> new Coordinate(point.x(), point.y()))
                .toArray(Coordinate[]::new);
        return new GeometryFactory().createLineString(coordinates).isSimple();
    }

    /**
     * The refusal of pleats that cannot be laid.
     *
     * @return an exception about the pleats, without a number that works
     */
    static InvalidMeasuresException doesNotLie() {
        return new InvalidMeasuresException(Violation.of(
                SleeveSubject.Option.PLEATS,
                "the under-layers of such deep pleats would stick out of the seam; take more and shallower"
                        + " pleats, or lay them the other way"));
    }

    /**
     * The depth of the deepest fold as folded.
     *
     * @return millimetres; 0 without folds
     */
    public double greatestDepth() {
        double deepest = 0;
        for (FoldLines fold : lines) {
            deepest = Math.max(deepest, fold.depth());
        }
        return deepest;
    }

    /**
     * The depth of the shallowest fold as folded.
     *
     * @return millimetres; 0 without folds
     */
    public double leastDepth() {
        return lines.stream().mapToDouble(FoldLines::depth).min().orElse(0);
    }

    @Override
    public boolean equals(@Nullable Object other) {
        return other instanceof TruedEdge edge
                && curve().equals(edge.curve())
                && lines.equals(edge.lines)
                && overhang.equals(edge.overhang);
    }

    @Override
    public int hashCode() {
        return 31 * curve().hashCode() + lines.hashCode();
    }

    @Override
    public String toString() {
        return "TruedEdge[" + curve() + ", " + lines + ", " + overhang + "]";
    }
}
