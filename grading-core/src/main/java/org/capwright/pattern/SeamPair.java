package org.capwright.pattern;

import org.capwright.words.Text;

/**
 * Two lengths of seam line that are sewn together, walked along the drafted lines of one size. On a piece drawn on the fold the lengths are those of the unfolded piece.
 *
 * @param size label of the size
 * @param name what is sewn to what
 * @param first the piece and edge that carries the ease
 * @param firstLength length of the first seam line as it is sewn, mm
 * @param second the piece and edge, or the place on the garment, it is sewn to
 * @param secondLength length of the second seam line, mm
 * @param ease how much longer the first is meant to be, mm; negative where it is shorter
 */
public record SeamPair(
        String size, String name, String first, double firstLength, String second, double secondLength, double ease) {

    /** A mismatch above this is a finding, mm. */
    public static final double TOLERANCE = 0.5;

    /**
     * How much longer the first line is than the second.
     *
     * @return millimetres
     */
    public double difference() {
        return firstLength - secondLength;
    }

    /**
     * What the stated ease does not account for.
     *
     * @return millimetres, 0 where the seams walk
     */
    public double mismatch() {
        return difference() - ease;
    }

    /**
     * Whether the two lines can be sewn together as stated.
     *
     * @return false if the mismatch is above {@link #TOLERANCE} either way
     */
    public boolean matches() {
        return Math.abs(mismatch()) <= TOLERANCE;
    }

    /**
     * The name for people.
     *
     * @return the seam, and the edge where there are several
     */
    public Text words() {
        int edge = name.indexOf(", ");
        return edge < 0
                ? Text.of(name)
                : Text.of("{seam}, {edge}")
                        .with("seam", Text.of(name.substring(0, edge)))
                        .with("edge", Text.of(name.substring(edge + 2)));
    }
}
