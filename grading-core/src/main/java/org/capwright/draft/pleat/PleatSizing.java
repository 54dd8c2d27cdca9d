package org.capwright.draft.pleat;

/** What is settled about the pleats beforehand; the rest follows from the length to be taken up. */
public sealed interface PleatSizing {

    /**
     * A number of pleats; the depth follows.
     *
     * @param count pleats over both halves, 1 to {@link PleatPlan#GREATEST_COUNT}; a box or inverted pleat counts once
     */
    record ByCount(int count) implements PleatSizing {}

    /**
     * A depth; the whole number of pleats is taken whose depth comes nearest, and their depth then follows exactly.
     *
     * @param depth depth of a fold in mm, above 0
     */
    record ByDepth(double depth) implements PleatSizing {}

    /**
     * A greatest depth; the fewest pleats are taken of which none is deeper.
     *
     * @param depth greatest depth of a fold in mm, above 0
     */
    record ByGreatestDepth(double depth) implements PleatSizing {}
}
