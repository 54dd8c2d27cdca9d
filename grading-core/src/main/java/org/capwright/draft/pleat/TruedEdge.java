package org.capwright.draft.pleat;

import java.util.List;
import org.capwright.geometry.Curve;

/**
 * A top edge cut so that its pleats, once closed, are caught in the seam: between the marks of each fold the edge follows, mirrored and moved, the closed edge
 * that lies on top of it.
 *
 * @param curve the edge to cut, in the order of travel of the flat edge; it has the flat edge's ends, and its course outside the pleats
 * @param lines the lines of each fold, in order of arc length
 */
public record TruedEdge(Curve curve, List<FoldLines> lines) {

    /**
     * Keeps its own copy of the lines.
     *
     * @param curve the edge to cut
     * @param lines the lines of each fold, in order
     */
    public TruedEdge {
        lines = List.copyOf(lines);
    }

    /**
     * Trues an edge.
     *
     * <p>The pleat lines of a fold stand perpendicular to the chord from fold mark F to placement mark P, so that the two creases, reflections about parallel
     * lines half the chord apart, move everything beyond them by the vector from P to F. The closed edge is therefore made of the visible pieces, each moved
     * until it abuts on the one before. Unfolded again, the layer next to P is that closed edge moved from F to P, and the layer next to F its mirror image
     * about the fold line. Where the closed edge ends before the inner crease, or turns back from it, the cut goes straight on, and {@link FoldLines#uncovered}
     * says over what depth.
     *
     * @param flat the flat net edge from the front underarm end over the apex to the back underarm end; its length is the layout's edge to 1e-6 mm. The piece lies
     *     on the side of the edge where the chord between its ends lies, seen from the apex; to the right of travel for a straight edge
     * @param layout where it is folded
     * @param drawn length of the pleat lines, mm, above 0
     * @return the trued edge
     * @throws IllegalArgumentException if the edge has not the layout's length, or {@code drawn} is not above 0
     */
    public static TruedEdge of(Curve flat, PleatLayout layout, double drawn) {
        return new EdgeTruing(flat, layout, drawn).truedEdge();
    }

    /**
     * The greatest depth over which under-layers of a fold stick out of the seam.
     *
     * @return millimetres; 0 where every under-layer is caught all along
     */
    public double uncovered() {
        return lines.stream().mapToDouble(FoldLines::uncovered).reduce(0, Math::max);
    }
}
