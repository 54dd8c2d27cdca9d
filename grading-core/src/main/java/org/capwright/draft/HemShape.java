package org.capwright.draft;

/** The shape of the overlay's lower edge. */
public enum HemShape {
    /** Straight from the hem point on the fold up to the side. */
    VEE,
    /** From the hem point to the side, bowed by a given sagitta. */
    BOWED,
    /** Square to the fold all along. */
    LEVEL
}
