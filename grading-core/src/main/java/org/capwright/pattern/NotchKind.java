package org.capwright.pattern;

/** What a notch tells the one who sews. */
public enum NotchKind {
    /** One notch: the front. */
    SINGLE,
    /** Two notches side by side: the back. */
    DOUBLE,
    /** The apex, to meet the shoulder seam. */
    APEX,
    /** Where the overlay begins or ends on the armhole. */
    OVERLAY_END,
    /** Any other place that must meet another. */
    BALANCE,
    /** A snip into the allowance, so that a point can turn. */
    CLIP,
    /** Where the fold or placement line of a pleat meets the cut edge. */
    PLEAT,
    /** On a piece cut on the fold: a second snip beside the first, in the layer of the back alone. */
    BACK_ONLY
}
