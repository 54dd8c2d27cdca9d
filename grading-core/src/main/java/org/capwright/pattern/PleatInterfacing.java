package org.capwright.pattern;

/** Whether the interfacing of a pleated overlay goes into the folds. */
public enum PleatInterfacing {
    /** It runs through every layer. */
    THROUGH,
    /** Between the fold line and the placement line of each pleat it is cut away, as far down as the lines are drawn, but at the very ends of the seam: the seam is thinner by two layers at every fold. */
    CUT_AWAY
}
